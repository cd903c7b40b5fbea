package org.printassay.sample;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.Executor;
import java.util.concurrent.ForkJoinPool;
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
    /** Kept away from a patch's edge: blur, placement and the neighbour's stray ink. */
    private static final double INSET_MM = 1.0;

    private static final double INSET_SHARE = 0.16;

    /** The middle of a large patch is enough. */
    private static final double LARGEST_MM = 12;

    /** Named, for without a name each task gets a thread of its own where cores are few. */
    private static final Executor BESIDE = ForkJoinPool.commonPool();

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
        return sample(scan, codes, located, List.of());
    }

    /** Samples patches and edges in one pass. */
    static List<PatchSample> sample(
            ScanImage scan, CodeLight codes, LocatedSheet located, List<EdgeWindow> edges)
            throws Problem {
        ScanInfo info = scan.info();
        double block = info.lossy() ? BLOCK_PIXELS / located.placement().samplesPerMm() : 0;
        double least = Math.max(INSET_MM, block);
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
        Sweep sweep = new Sweep(byTop, edges, curves);
        scan.stream(sweep);
        sweep.summing.forEach(CompletableFuture::join);
        List<PatchSample> samples = new ArrayList<>();
        for (PatchWindow window : windows) {
            samples.add(window.result());
        }
        return samples;
    }

    /** Hands each row to the windows it crosses, and lets finished ones sum up. */
    private static final class Sweep implements ScanImage.RowSink {
        private final List<PatchWindow> byTop;
        private final List<EdgeWindow> edges;
        private final float[][] curves;
        private final List<PatchWindow> open = new ArrayList<>();

        /** Finished patches are summed up beside the reading. */
        private final List<CompletableFuture<Void>> summing = new ArrayList<>();

        private int next;

        Sweep(List<PatchWindow> byTop, List<EdgeWindow> edges, float[][] curves) {
            this.byTop = byTop;
            this.edges = edges;
            this.curves = curves;
        }

        @Override
        public boolean wants(int y) {
            if (!open.isEmpty() || (next < byTop.size() && byTop.get(next).firstRow() <= y)) {
                return true;
            }
            return edges.stream().anyMatch(e -> y >= e.firstRow() && y <= e.lastRow());
        }

        @Override
        public void row(int y, char[] samples) {
            for (EdgeWindow edge : edges) {
                if (y >= edge.firstRow() && y <= edge.lastRow()) {
                    edge.take(y, samples, curves[curves.length / 2]);
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
                    summing.add(CompletableFuture.runAsync(() -> window.finish(curves), BESIDE));
                    open.remove(i);
                }
            }
        }
    }
}
