package org.printassay.evaluation;

import org.printassay.problem.Problem;
import org.printassay.scan.ScanImage;
import org.printassay.scan.ScanInfo;

/** A scan that tells how much of it was streamed; {@code passes} streams make up the whole. */
final class WatchedScan implements ScanImage {
    private static final int EVERY = 64;

    private final ScanImage scan;
    private final Progress progress;
    private final double start;
    private final double share;
    private int pass;

    /**
     * Watches a scan.
     *
     * @param start how far the whole work is when this scan begins
     * @param share how much of the whole work one pass over this scan is
     */
    WatchedScan(ScanImage scan, Progress progress, double start, double share) {
        this.scan = scan;
        this.progress = progress;
        this.start = start;
        this.share = share;
    }

    @Override
    public ScanInfo info() {
        return scan.info();
    }

    @Override
    public void stream(RowSink sink) throws Problem {
        scan.stream(new Watch(sink, start + share * pass++));
    }

    private final class Watch implements RowSink {
        private final RowSink sink;
        private final double done;
        private int next;

        Watch(RowSink sink, double done) {
            this.sink = sink;
            this.done = done;
        }

        @Override
        public void row(int y, char[] samples) {
            if (y >= next) {
                next = y + EVERY;
                progress.reached(Math.min(1, done + share * y / info().height()));
            }
            sink.row(y, samples);
        }

        @Override
        public boolean wants(int y) {
            return sink.wants(y);
        }
    }
}
