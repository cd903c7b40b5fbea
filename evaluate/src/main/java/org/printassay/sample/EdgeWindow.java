package org.printassay.sample;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.IntToDoubleFunction;
import org.printassay.locate.LocatedSheet;
import org.printassay.locate.LocatingImage;
import org.printassay.locate.PointPx;
import org.printassay.robust.Median;
import org.printassay.scan.ScanInfo;
import org.printassay.sheet.Marker;
import org.printassay.sheet.PointMm;
import org.printassay.sheet.RectMm;

/** One outer side of a marker while rows come in: light by distance from the edge. */
final class EdgeWindow {
    /** Paper within this distance is free by the layout; the black border is about as wide. */
    private static final double REACH_MM = 0.9;

    private static final double BIN_MM = 0.04;
    private static final int BINS = (int) Math.round(2 * REACH_MM / BIN_MM);

    /** Part of the side that is used: away from the corners. */
    private static final double PART = 0.6;

    /** A halo is looked for up to this far from the edge; beyond is the level itself. */
    private static final double HALO_MM = 0.55;

    private static final int FEWEST_EDGES = 8;

    private final double x;
    private final double y;
    private final double outX;
    private final double outY;
    private final double alongX;
    private final double alongY;
    private final double halfMm;
    private final int firstRow;
    private final int lastRow;
    private final double[] sums = new double[BINS];
    private final int[] counts = new int[BINS];

    private EdgeWindow(
            LocatedSheet located,
            double scale,
            int height,
            PointMm middle,
            int nx,
            int ny,
            double side) {
        PointPx at = located.placement().toScan(middle);
        PointPx out = located.placement().toScan(new PointMm(middle.x() + nx, middle.y() + ny));
        this.x = at.x() / scale;
        this.y = at.y() / scale;
        double perMmX = out.x() / scale - x;
        double perMmY = out.y() / scale - y;
        double square = perMmX * perMmX + perMmY * perMmY;
        this.outX = perMmX / square;
        this.outY = perMmY / square;
        this.alongX = -outY;
        this.alongY = outX;
        this.halfMm = PART * side / 2;
        double perMm = Math.sqrt(square);
        double reach = perMm * Math.hypot(REACH_MM, halfMm);
        this.firstRow = Math.max(0, (int) Math.floor(y - reach));
        this.lastRow = Math.min(height - 1, (int) Math.ceil(y + reach));
    }

    /** All outer sides of the markers that were found, in a scan. */
    static List<EdgeWindow> of(LocatedSheet located, ScanInfo info) {
        return of(located, 1, info.height());
    }

    /** The same in the small image of a scan. */
    static List<EdgeWindow> of(LocatedSheet located, LocatingImage image) {
        return of(located, image.factor(), image.height());
    }

    private static List<EdgeWindow> of(LocatedSheet located, double scale, int height) {
        List<EdgeWindow> windows = new ArrayList<>();
        for (Marker marker : located.sheet().markers()) {
            if (located.markerCentres().containsKey(marker.id())) {
                RectMm area = marker.area();
                PointMm c = area.centre();
                double side = area.width();
                PointMm right = new PointMm(area.right(), c.y());
                PointMm left = new PointMm(area.x(), c.y());
                PointMm bottom = new PointMm(c.x(), area.bottom());
                PointMm top = new PointMm(c.x(), area.y());
                windows.add(new EdgeWindow(located, scale, height, right, 1, 0, side));
                windows.add(new EdgeWindow(located, scale, height, left, -1, 0, side));
                windows.add(new EdgeWindow(located, scale, height, bottom, 0, 1, side));
                windows.add(new EdgeWindow(located, scale, height, top, 0, -1, side));
            }
        }
        return windows;
    }

    int firstRow() {
        return firstRow;
    }

    int lastRow() {
        return lastRow;
    }

    /**
     * Takes the pixels of a row.
     *
     * @param columns how many the row has
     * @param light linear light of each
     */
    void take(int row, int columns, IntToDoubleFunction light) {
        double dy = row + 0.5 - y;
        double reach = (lastRow - firstRow) / 2.0 + 1;
        int from = Math.max(0, (int) Math.floor(x - reach));
        int to = Math.min(columns, (int) Math.ceil(x + reach) + 1);
        for (int column = from; column < to; column++) {
            double dx = column + 0.5 - x;
            double out = dx * outX + dy * outY;
            double along = dx * alongX + dy * alongY;
            if (Math.abs(out) < REACH_MM && Math.abs(along) < halfMm) {
                int bin = Math.min(BINS - 1, (int) ((out + REACH_MM) / BIN_MM));
                sums[bin] += light.applyAsDouble(column);
                counts[bin]++;
            }
        }
    }

    /**
     * The profile with dark at 0 and light at 1, its middle moved to the middle; NaN where no pixel
     * was; null when this is no clean edge.
     */
    private double[] normalised() {
        double[] profile = new double[BINS];
        for (int i = 0; i < BINS; i++) {
            profile[i] = counts[i] == 0 ? Double.NaN : sums[i] / counts[i];
        }
        double light = level(profile, BINS - (int) ((REACH_MM - HALO_MM) / BIN_MM), BINS);
        double dark = level(profile, 0, (int) ((REACH_MM - HALO_MM) / BIN_MM));
        if (!(light - dark > 0.1)) {
            return new double[0];
        }
        double crossing = Double.NaN;
        int last = -1;
        for (int i = 0; i < BINS; i++) {
            profile[i] = (profile[i] - dark) / (light - dark);
            if (Double.isNaN(profile[i])) {
                continue;
            }
            if (last >= 0 && profile[last] < 0.5 && profile[i] >= 0.5 && Double.isNaN(crossing)) {
                double part = (0.5 - profile[last]) / (profile[i] - profile[last]);
                crossing = last + part * (i - last);
            }
            last = i;
        }
        if (Double.isNaN(crossing) || Math.abs(crossing - BINS / 2.0) > 0.3 / BIN_MM) {
            return new double[0];
        }
        int shift = (int) Math.round(crossing - (BINS - 1) / 2.0);
        double[] centred = new double[BINS];
        for (int i = 0; i < BINS; i++) {
            int from = i + shift;
            centred[i] = from < 0 || from >= BINS ? Double.NaN : profile[from];
        }
        return centred;
    }

    private static double level(double[] profile, int from, int to) {
        return Median.upper(
                Arrays.stream(profile, from, to).filter(v -> !Double.isNaN(v)).toArray());
    }

    /** What all edges together say. */
    static EdgeProfile profile(List<EdgeWindow> windows) {
        List<double[]> profiles = new ArrayList<>();
        for (EdgeWindow window : windows) {
            double[] one = window.normalised();
            if (one.length > 0) {
                profiles.add(one);
            }
        }
        if (profiles.size() < FEWEST_EDGES) {
            return EdgeProfile.NONE;
        }
        double[] mean = new double[BINS];
        for (int i = 0; i < BINS; i++) {
            int bin = i;
            mean[i] =
                    level(profiles.stream().mapToDouble(p -> p[bin]).toArray(), 0, profiles.size());
        }
        fill(mean);
        double width = (crossing(mean, 0.9) - crossing(mean, 0.1)) * BIN_MM;
        double top = 0;
        int middle = BINS / 2;
        // Three bins together, so that noise in one does not make a halo.
        for (int i = middle + 1; i + 1 < middle + HALO_MM / BIN_MM; i++) {
            double around = (mean[i - 1] + mean[i] + mean[i + 1]) / 3;
            top = around > top ? around : top;
        }
        return new EdgeProfile(width, Math.max(0, top - 1), profiles.size());
    }

    /** Bins that no pixel fell into, as on a sheet that lies straight: lines between neighbours. */
    private static void fill(double[] profile) {
        int before = -1;
        for (int i = 0; i < profile.length; i++) {
            if (Double.isNaN(profile[i])) {
                continue;
            }
            for (int k = before + 1; k < i; k++) {
                double part = (double) (k - before) / (i - before);
                profile[k] =
                        before < 0 ? profile[i] : (1 - part) * profile[before] + part * profile[i];
            }
            before = i;
        }
        for (int k = before + 1; k < profile.length && before >= 0; k++) {
            profile[k] = profile[before];
        }
    }

    private static double crossing(double[] profile, double level) {
        for (int i = 1; i < profile.length; i++) {
            if (profile[i - 1] < level && profile[i] >= level) {
                return i - 1 + (level - profile[i - 1]) / (profile[i] - profile[i - 1]);
            }
        }
        return Double.NaN;
    }
}
