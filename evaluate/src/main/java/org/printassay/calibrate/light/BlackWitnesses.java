package org.printassay.calibrate.light;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.RealMatrix;
import org.printassay.colour.Lab;
import org.printassay.colour.LinearRgb;
import org.printassay.sample.MarkerBlack;
import org.printassay.sample.PatchSample;
import org.printassay.sample.PatchSampler;
import org.printassay.sample.SheetSamples;
import org.printassay.sheet.RectMm;

/**
 * The markers of a sheet and its patches that stand more than once: places that were printed alike,
 * and how far scans and prints that are in order let them be read apart.
 */
final class BlackWitnesses {
    /** Spread of areas printed alike, L* (common practice, no source). */
    private static final double TWIN_L = 0.3;

    /**
     * How much lighter or darker a print may be at the edges of the sheet than in its middle, and
     * along it from end to end, standard deviation in L* (common practice, no source).
     */
    private static final double DRIFT_L = 0.4;

    /**
     * What lies beyond the scan may be white or black where the sheet beside it is neither: its
     * reflectance less that of what is known nearby, standard deviation.
     */
    private static final double BEYOND = 0.5;

    /** The level that areas of a kind have in common may be any: variance, paper 1. */
    private static final double ANY = 1;

    private final RectMm page;
    private final List<RectMm> areas = new ArrayList<>();
    private final List<Integer> kinds = new ArrayList<>();

    /** By channel, then by witness, paper 1, evened out. */
    private final double[][] light;

    private final double[] errorL;
    private final RealMatrix covariance;

    /**
     * Witnesses of one scan.
     *
     * @param plain its light surface, found without stray light
     */
    BlackWitnesses(SheetSamples samples, ScanLight scan, LightFitter.Outcome plain) {
        this.page = samples.located().sheet().page();
        List<LinearRgb> seen = new ArrayList<>();
        List<LinearRgb> errors = new ArrayList<>();
        for (MarkerBlack marker : samples.markers()) {
            add(marker.area(), -1, marker.light(), seen);
            errors.add(marker.standardError());
        }
        TwinData data = scan.channels().get(0).data();
        for (int i : clean(samples, data)) {
            PatchSample sample = samples.samples().get(i);
            add(PatchSampler.middle(sample.patch().area()), data.group()[i], sample.linear(), seen);
            errors.add(sample.standardError());
        }
        int n = areas.size();
        this.light = new double[scan.channels().size()][n];
        this.errorL = new double[n];
        LightSurface surface = new LightSurface(page);
        for (int k = 0; k < n; k++) {
            double[] terms = surface.terms(areas.get(k).centre().x(), areas.get(k).centre().y());
            for (int c = 0; c < light.length; c++) {
                double even = LightSurface.at(plain.fits()[c].surface(), terms);
                light[c][k] = seen.get(k).channel(c) / scan.paper()[c] / even;
            }
            int green = light.length / 2;
            double error = errors.get(k).channel(green) / scan.paper()[green];
            errorL[k] = Double.isFinite(error) ? error * slope(mean(k)) : 0;
        }
        // A matrix may not be of nothing.
        this.covariance = n == 0 ? new Array2DRowRealMatrix() : covariance(scan);
    }

    private void add(RectMm area, int kind, LinearRgb read, List<LinearRgb> seen) {
        areas.add(area);
        kinds.add(kind);
        seen.add(read);
    }

    /** Inked patches with clean twins. */
    private static int[] clean(SheetSamples samples, TwinData data) {
        int[] clean =
                Arrays.stream(data.rows())
                        .filter(i -> data.group()[i] != data.paperGroup())
                        .filter(i -> samples.samples().get(i).flags().isEmpty())
                        .toArray();
        int[] sizes = new int[data.groups()];
        for (int i : clean) {
            sizes[data.group()[i]]++;
        }
        return Arrays.stream(clean).filter(i -> sizes[data.group()[i]] > 1).toArray();
    }

    private static double slope(double reflectance) {
        return Lab.slope(Math.max(0, reflectance));
    }

    /** Mean of the channels: ink is off alike in all of them, so that they are one witness. */
    private double mean(int witness) {
        double sum = 0;
        for (double[] channel : light) {
            sum += channel[witness] / light.length;
        }
        return sum;
    }

    int channels() {
        return light.length;
    }

    int count() {
        return areas.size();
    }

    /** Light of a channel, paper 1; not copied. */
    double[] light(int channel) {
        return light[channel];
    }

    /** The same, mean of all channels. */
    double[] light() {
        return IntStream.range(0, count()).mapToDouble(this::mean).toArray();
    }

    /** How much of a beam reaches each. */
    double[] reached(LeakedLight.Beam beam) {
        return areas.stream().mapToDouble(area -> beam.at(area.centre(), page)).toArray();
    }

    /** L* by which so much light changes the darkest of them. */
    double inDarkest(double amount) {
        double darkest = Arrays.stream(light()).min().orElse(1);
        return Lab.lightness(darkest + amount) - Lab.lightness(Math.max(0, darkest));
    }

    /** Of what was read, paper 1, of scans and prints that are in order. */
    RealMatrix covariance() {
        return covariance;
    }

    private RealMatrix covariance(ScanLight scan) {
        int n = count();
        RealMatrix sum = new Array2DRowRealMatrix(n, n);
        for (int k = 0; k < n; k++) {
            for (int l = 0; l < n; l++) {
                boolean alike = kinds.get(k).equals(kinds.get(l));
                double own = Math.hypot(TWIN_L, errorL[k]) / slope(mean(k));
                sum.setEntry(k, l, (alike ? ANY : 0) + (k == l ? own * own : 0));
            }
        }
        drift(sum);
        stray(scan, sum);
        return sum;
    }

    /** Slow unevenness of the print. */
    private void drift(RealMatrix sum) {
        LightSurface surface = new LightSurface(page);
        for (int term = 0; term < LightSurface.QUADRATIC; term++) {
            double[] by = new double[count()];
            for (int k = 0; k < by.length; k++) {
                RectMm area = areas.get(k);
                double at = surface.terms(area.centre().x(), area.centre().y())[term];
                by[k] = DRIFT_L * at / slope(mean(k));
            }
            add(sum, by);
        }
    }

    /** Stray light as flatbeds ordinarily have it, of what is known and of what is beyond. */
    private void stray(ScanLight scan, RealMatrix sum) {
        SurroundGrid grid = scan.grid();
        float[] map = new float[scan.anyMap().length];
        for (int c = 0; c < light.length; c++) {
            float[] one = grid.values(c, scan.paper()[c]);
            for (int i = 0; i < map.length; i++) {
                map[i] += one[i] / light.length;
            }
        }
        for (double width : OrdinaryStray.WIDTHS_MM) {
            Blur blur = new Blur(grid, width, scan.anyMap());
            double[] around = at(grid, blur.of(map));
            double[] known = at(grid, blur.known());
            double[] glare = new double[around.length];
            double[] returned = new double[around.length];
            for (int k = 0; k < around.length; k++) {
                glare[k] = OrdinaryStray.GLARE * (around[k] - mean(k));
                returned[k] = OrdinaryStray.RETURNED * mean(k) * around[k];
            }
            add(sum, glare);
            add(sum, returned);
            for (LeakedLight.Edge edge : LeakedLight.Edge.values()) {
                double[] beyond = new double[around.length];
                for (int k = 0; k < beyond.length; k++) {
                    boolean here = edge == LeakedLight.Edge.nearest(areas.get(k).centre(), page);
                    beyond[k] = here ? OrdinaryStray.GLARE * BEYOND * (1 - known[k]) : 0;
                }
                add(sum, beyond);
            }
        }
    }

    private double[] at(SurroundGrid grid, float[] map) {
        return areas.stream()
                .mapToDouble(
                        area ->
                                Arrays.stream(ScanLight.places(grid, area))
                                        .mapToDouble(place -> place.in(map))
                                        .average()
                                        .orElse(0))
                .toArray();
    }

    /** What one standard deviation of a cause does adds to the covariance (modified). */
    private static void add(RealMatrix sum, double[] by) {
        for (int k = 0; k < by.length; k++) {
            for (int l = 0; l < by.length; l++) {
                // In this order both halves of the matrix are the same to the last digit.
                sum.addToEntry(k, l, by[k] * by[l]);
            }
        }
    }
}
