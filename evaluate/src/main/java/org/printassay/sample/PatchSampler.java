package org.printassay.sample;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.concurrent.ForkJoinPool;
import java.util.concurrent.ForkJoinTask;
import java.util.function.IntToDoubleFunction;
import org.printassay.locate.LocatedSheet;
import org.printassay.locate.Locator;
import org.printassay.problem.Problem;
import org.printassay.scan.CodeLight;
import org.printassay.scan.ScanImage;
import org.printassay.scan.ScanInfo;
import org.printassay.sheet.Patch;
import org.printassay.sheet.RectMm;

/**
 * Reads the middle of every patch at full resolution in one pass over the scan. Only the patches
 * that the current row crosses are held in memory.
 */
public final class PatchSampler {
    /** Kept away from a patch's edge at least: placement, halos and the neighbour's stray ink. */
    private static final double INSET_MM = 1.0;

    /** Where blur is wider: a patch may be placed so much off. */
    private static final double PLACED_MM = 0.2;

    /** So many standard deviations of blur leave 0.05 % of a neighbour. */
    private static final double BLUR_REACH = 3.3;

    private static final double INSET_SHARE = 0.16;

    /** The middle of a large patch is enough. */
    private static final double LARGEST_MM = 12;

    /** Used itself: completable futures start a thread a task instead where cores are few. */
    private static final ForkJoinPool BESIDE = ForkJoinPool.commonPool();

    private PatchSampler() {}

    /** Blocks of lossy coding, with colour at half the sampling, mix what lies within them. */
    private static final double BLOCK_PIXELS = 16;

    /** Where the middle of a patch is read. */
    public static RectMm middle(RectMm area) {
        return middle(area, INSET_MM);
    }

    private static RectMm middle(RectMm area, double leastMm) {
        double byWidth = inset(area.width(), leastMm);
        double byHeight = inset(area.height(), leastMm);
        return new RectMm(
                area.x() + byWidth,
                area.y() + byHeight,
                area.width() - 2 * byWidth,
                area.height() - 2 * byHeight);
    }

    private static double inset(double side, double leastMm) {
        double least = Math.min(Math.max(leastMm, INSET_SHARE * side), side / 3);
        return Math.max(least, (side - LARGEST_MM) / 2);
    }

    /** Samples every patch that lies in the scan, in sheet order. */
    public static List<PatchSample> sample(ScanImage scan, CodeLight codes, LocatedSheet located)
            throws Problem {
        return sample(scan, codes, located, List.of(), List.of(), 0);
    }

    /**
     * Samples patches and edges, and lets others see the rows, in one pass.
     *
     * @param blurMm standard deviation of the scan's blur: neighbours stay out of what is read
     */
    static List<PatchSample> sample(
            ScanImage scan,
            CodeLight codes,
            LocatedSheet located,
            List<EdgeWindow> edges,
            List<RowWindow> others,
            double blurMm)
            throws Problem {
        ScanInfo info = scan.info();
        double block = info.lossy() ? BLOCK_PIXELS / located.placement().samplesPerMm() : 0;
        double blurred = PLACED_MM + BLUR_REACH * blurMm;
        double least = Math.max(Math.max(INSET_MM, blurred), block);
        List<PatchWindow> windows = new ArrayList<>();
        for (Patch patch : located.sheet().patches()) {
            RectMm middle = middle(patch.area(), least);
            if (!located.unlike().contains(patch)
                    && Locator.isInside(info, located.placement(), middle)) {
                windows.add(new PatchWindow(patch, middle, located.placement(), info));
            }
        }
        List<PatchWindow> byTop = new ArrayList<>(windows);
        byTop.sort(Comparator.comparingInt(PatchWindow::firstRow));
        float[][] curves = new float[info.channels()][];
        for (int c = 0; c < curves.length; c++) {
            curves[c] = codes.curve(info.channels() == 1 ? 1 : c);
        }
        Sweep sweep = new Sweep(byTop, edges, others, curves);
        scan.stream(sweep);
        sweep.summing.forEach(ForkJoinTask::join);
        return OwnSurface.settled(windows.stream().map(PatchWindow::result).toList());
    }

    /** Hands each row to the windows it crosses, and lets finished ones sum up. */
    private static final class Sweep implements ScanImage.RowSink {
        private final List<PatchWindow> byTop;
        private final List<EdgeWindow> edges;
        private final List<RowWindow> others;
        private final float[][] curves;
        private final int channels;
        private final List<PatchWindow> open = new ArrayList<>();

        /** Finished patches are summed up beside the reading. */
        private final List<ForkJoinTask<?>> summing = new ArrayList<>();

        private int next;

        Sweep(
                List<PatchWindow> byTop,
                List<EdgeWindow> edges,
                List<RowWindow> others,
                float[][] curves) {
            this.byTop = byTop;
            this.edges = edges;
            this.others = others;
            this.curves = curves;
            this.channels = curves.length;
        }

        private IntToDoubleFunction green(char[] samples) {
            float[] curve = curves[channels / 2];
            return column -> curve[samples[column * channels + channels / 2]];
        }

        @Override
        public boolean wants(int y) {
            if (!open.isEmpty() || (next < byTop.size() && byTop.get(next).firstRow() <= y)) {
                return true;
            }
            return edges.stream().anyMatch(e -> y >= e.firstRow() && y <= e.lastRow())
                    || isWanted(y);
        }

        private boolean isWanted(int y) {
            for (RowWindow other : others) {
                if (y >= other.firstRow() && y <= other.lastRow()) {
                    return true;
                }
            }
            return false;
        }

        @Override
        public void row(int y, char[] samples) {
            for (EdgeWindow edge : edges) {
                if (y >= edge.firstRow() && y <= edge.lastRow()) {
                    edge.take(y, samples.length / channels, green(samples));
                }
            }
            for (RowWindow other : others) {
                if (y >= other.firstRow() && y <= other.lastRow()) {
                    other.take(y, samples, curves);
                }
            }
            while (next < byTop.size() && byTop.get(next).firstRow() <= y) {
                open.add(byTop.get(next++));
            }
            for (int i = open.size() - 1; i >= 0; i--) {
                PatchWindow window = open.get(i);
                if (y <= window.lastRow()) {
                    window.take(y, samples, curves);
                }
                if (y >= window.lastRow()) {
                    summing.add(BESIDE.submit(() -> window.finish(curves)));
                    open.remove(i);
                }
            }
        }
    }
}
