package org.printassay.scan;

import java.util.List;
import org.printassay.problem.Problem;

/**
 * One image that a PDF draws in strips.
 *
 * @param strips from the top, all as wide
 * @param info of the whole
 */
record PdfStrips(List<ScanImage> strips, ScanInfo info) implements ScanImage {
    /** The first strip tells of all but the height. */
    static PdfStrips of(List<ScanImage> strips) {
        ScanInfo first = strips.get(0).info();
        int height = strips.stream().mapToInt(strip -> strip.info().height()).sum();
        ScanInfo whole =
                new ScanInfo(
                        first.name(),
                        first.format(),
                        first.width(),
                        height,
                        first.channels(),
                        first.bits(),
                        first.samplesPerInch(),
                        first.iccProfile(),
                        first.lossy(),
                        first.coding());
        return new PdfStrips(strips, whole);
    }

    @Override
    public void stream(RowSink sink) throws Problem {
        int top = 0;
        for (ScanImage strip : strips) {
            strip.stream(new Lower(sink, top));
            top += strip.info().height();
        }
    }

    /** Rows of a strip in the whole. */
    private record Lower(RowSink sink, int top) implements RowSink {
        @Override
        public void row(int y, char[] samples) {
            sink.row(top + y, samples);
        }

        @Override
        public boolean wants(int y) {
            return sink.wants(top + y);
        }
    }
}
