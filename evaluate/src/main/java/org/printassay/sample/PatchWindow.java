package org.printassay.sample;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import org.printassay.locate.Placement;
import org.printassay.locate.PointPx;
import org.printassay.scan.ScanInfo;
import org.printassay.sheet.Patch;
import org.printassay.sheet.PointMm;
import org.printassay.sheet.RectMm;

/** The middle of one patch in the scan, turned as the sheet is: its cells, while rows come in. */
final class PatchWindow {
    /** Patches nearer to the scan's edge than this have a neighbourhood that is not known. */
    private static final double EDGE_MM = 2;

    /** 16 bit codes from one 8 bit code to the next. */
    private static final int CODE = 257;

    /**
     * Colour that lossy coding keeps at half the sampling comes over edges, by some codes of 8 bits
     * however finely it is kept (common practice, no source).
     */
    private static final double LEAST_LOSSY = 2;

    private final Patch patch;
    private final double[] cornerX = new double[4];
    private final double[] cornerY = new double[4];
    private final int firstRow;
    private final int lastRow;
    private final int left;
    private final int channels;

    /** 16 bit codes from one value to the next by channel, with what lossy coding keeps. */
    private final int[] codeSteps;

    private final double samplesPerMm;
    private final boolean nearEdge;
    private final int width;

    /** Direction of the page's x in the scan, radians from its rows. */
    private final double turn;

    private @Nullable PatchCells cells;
    private @Nullable PatchReads result;

    PatchWindow(Patch patch, RectMm middle, Placement placement, ScanInfo info) {
        this.patch = patch;
        this.channels = info.channels();
        this.codeSteps = IntStream.range(0, channels).map(c -> codeStep(info, c)).toArray();
        this.samplesPerMm = placement.samplesPerMm();
        List<PointPx> corners = new ArrayList<>();
        corners.add(placement.toScan(new PointMm(middle.x(), middle.y())));
        corners.add(placement.toScan(new PointMm(middle.right(), middle.y())));
        corners.add(placement.toScan(new PointMm(middle.right(), middle.bottom())));
        corners.add(placement.toScan(new PointMm(middle.x(), middle.bottom())));
        for (int i = 0; i < 4; i++) {
            cornerX[i] = corners.get(i).x();
            cornerY[i] = corners.get(i).y();
        }
        double top = Arrays.stream(cornerY).min().orElseThrow();
        double bottom = Arrays.stream(cornerY).max().orElseThrow();
        double leftmost = Arrays.stream(cornerX).min().orElseThrow();
        double rightmost = Arrays.stream(cornerX).max().orElseThrow();
        this.turn = Math.atan2(cornerY[1] - cornerY[0], cornerX[1] - cornerX[0]);
        this.firstRow = Math.max(0, (int) Math.ceil(top - 0.5));
        this.lastRow = Math.min(info.height() - 1, (int) Math.floor(bottom - 0.5));
        this.left = (int) leftmost;
        this.width = (int) Math.ceil(rightmost) - left + 1;
        double edge = EDGE_MM * samplesPerMm;
        this.nearEdge =
                leftmost < edge
                        || top < edge
                        || rightmost > info.width() - edge
                        || bottom > info.height() - edge;
    }

    private int codeStep(ScanInfo info, int channel) {
        int whole = info.bits() == 8 ? CODE : 1;
        return info.coding()
                .map(coding -> channels == 1 ? coding.lumaStep() : coding.channelStep(channel))
                .map(step -> (int) Math.round(whole * Math.max(LEAST_LOSSY, step)))
                .orElse(whole);
    }

    int firstRow() {
        return firstRow;
    }

    int lastRow() {
        return lastRow;
    }

    /** Adds the pixels of a row whose centres lie in the window. */
    void take(int y, char[] row, float[][] curves) {
        double at = y + 0.5;
        double from = Double.POSITIVE_INFINITY;
        double to = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < 4; i++) {
            int k = (i + 1) % 4;
            double y0 = cornerY[i];
            double y1 = cornerY[k];
            if (at < Math.min(y0, y1) || at > Math.max(y0, y1)) {
                continue;
            }
            if (y0 == y1) {
                from = Math.min(from, Math.min(cornerX[i], cornerX[k]));
                to = Math.max(to, Math.max(cornerX[i], cornerX[k]));
            } else {
                double x = cornerX[i] + (at - y0) / (y1 - y0) * (cornerX[k] - cornerX[i]);
                from = Math.min(from, x);
                to = Math.max(to, x);
            }
        }
        int begin = Math.max(0, (int) Math.ceil(from - 0.5));
        int end = Math.min(row.length / channels, (int) Math.floor(to - 0.5) + 1);
        if (end <= begin) {
            return;
        }
        cells().add(row, begin, end, left, y - firstRow, curves);
    }

    /** Sums up and lets go of the cells. */
    void finish(float[][] curves) {
        PatchCells all = cells();
        result = RobustPatch.of(patch, all, codeSteps, curves, nearEdge, turn);
        cells = null;
    }

    private PatchCells cells() {
        PatchCells made = cells;
        if (made == null) {
            made = new PatchCells(width, lastRow - firstRow + 1, samplesPerMm, channels);
            cells = made;
        }
        return made;
    }

    PatchReads result() {
        PatchReads done = result;
        if (done == null) {
            throw new IllegalStateException("patch " + patch.id() + " was not finished");
        }
        return done;
    }
}
