package org.printassay.scannercalibration;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.RealVector;
import org.apache.commons.math3.linear.SingularValueDecomposition;
import org.printassay.calibrate.light.LightSurface;
import org.printassay.colour.LinearRgb;
import org.printassay.robust.Mad;
import org.printassay.robust.Median;
import org.printassay.sheet.PointMm;
import org.printassay.sheet.RectMm;

/**
 * How a scanner's light falls off, from areas of one colour spread over what was scanned: a
 * low-order polynomial for each channel, 1 in the middle. Areas far off the others (dust, print)
 * are left out once.
 */
public final class BackgroundLight {
    /** A plane has three numbers, a quadratic surface six; each rests on a few more areas. */
    private static final int FEWEST_FOR_PLANE = 5;

    private static final int FEWEST_FOR_QUADRATIC = 10;
    private static final int PLANE = 2;

    /** Largest ratio of singular values: beyond it the areas stand in a row. */
    private static final double IN_A_ROW = 30;

    private static final double OUTLIER = 4;

    /** Less than this, as a share, is no outlier. */
    private static final double SURELY_ALIKE = 0.002;

    private final LightSurface surface;
    private final double[][] coefficients;
    private final List<PointMm> places;

    private BackgroundLight(LightSurface surface, double[][] coefficients, List<PointMm> places) {
        this.surface = surface;
        this.coefficients = coefficients;
        this.places = List.copyOf(places);
    }

    /**
     * The light; empty where the areas are too few, dark or stand in a row.
     *
     * @param page what the areas are spread over, millimetres
     * @param places middle of each area
     * @param lights linear device light of each
     */
    public static Optional<BackgroundLight> of(
            RectMm page, List<PointMm> places, List<LinearRgb> lights) {
        if (places.size() < FEWEST_FOR_PLANE) {
            return Optional.empty();
        }
        LightSurface surface = new LightSurface(page);
        double[][] coefficients = new double[3][];
        for (int c = 0; c < 3; c++) {
            int channel = c;
            double[] light = lights.stream().mapToDouble(l -> l.channel(channel)).toArray();
            double[] fit = robust(surface, places, light);
            if (fit.length == 0) {
                return Optional.empty();
            }
            coefficients[c] = fit;
        }
        return Optional.of(new BackgroundLight(surface, coefficients, places));
    }

    /** Light as it would be in the middle. */
    public LinearRgb evened(PointMm at, LinearRgb light) {
        double[] terms = surface.terms(at.x(), at.y());
        return new LinearRgb(
                light.r() / LightSurface.at(coefficients[0], terms),
                light.g() / LightSurface.at(coefficients[1], terms),
                light.b() / LightSurface.at(coefficients[2], terms));
    }

    /** Difference between its lightest and its darkest area as percent of the middle; largest. */
    public double falloffPercent() {
        double largest = 0;
        for (double[] channel : coefficients) {
            double low = Double.POSITIVE_INFINITY;
            double high = Double.NEGATIVE_INFINITY;
            for (PointMm place : places) {
                double at = LightSurface.at(channel, surface.terms(place.x(), place.y()));
                low = Math.min(low, at);
                high = Math.max(high, at);
            }
            largest = Math.max(largest, 100 * (high - low));
        }
        return largest;
    }

    /** Coefficients relative to the constant; empty when they cannot be told. */
    private static double[] robust(LightSurface surface, List<PointMm> places, double[] light) {
        boolean[] used = new boolean[light.length];
        Arrays.fill(used, true);
        double[] fit = fit(surface, places, light, used);
        if (fit.length == 0) {
            return fit;
        }
        double[] off = new double[light.length];
        double[] lit = new double[light.length];
        for (int i = 0; i < light.length; i++) {
            PointMm at = places.get(i);
            lit[i] = light[i] / LightSurface.at(fit, surface.terms(at.x(), at.y()));
        }
        double middle = Median.of(lit);
        for (int i = 0; i < off.length; i++) {
            off[i] = Math.abs(lit[i] / middle - 1);
        }
        double limit = Math.max(SURELY_ALIKE, OUTLIER * Mad.sigma(off));
        boolean changed = false;
        for (int i = 0; i < off.length; i++) {
            used[i] = off[i] <= limit;
            changed |= !used[i];
        }
        return changed ? fit(surface, places, light, used) : fit;
    }

    private static double[] fit(
            LightSurface surface, List<PointMm> places, double[] light, boolean[] used) {
        int n = 0;
        for (boolean one : used) {
            n += one ? 1 : 0;
        }
        int terms = n >= FEWEST_FOR_QUADRATIC ? LightSurface.QUADRATIC : PLANE;
        if (n < FEWEST_FOR_PLANE) {
            return new double[0];
        }
        double[][] rows = new double[n][terms + 1];
        double[] values = new double[n];
        int at = 0;
        for (int i = 0; i < light.length; i++) {
            if (used[i]) {
                double[] all = surface.terms(places.get(i).x(), places.get(i).y());
                rows[at][0] = 1;
                System.arraycopy(all, 0, rows[at], 1, terms);
                values[at++] = light[i];
            }
        }
        SingularValueDecomposition svd =
                new SingularValueDecomposition(new Array2DRowRealMatrix(rows, false));
        if (svd.getConditionNumber() > IN_A_ROW) {
            return new double[0];
        }
        RealVector solved = svd.getSolver().solve(new ArrayRealVector(values, false));
        if (!(solved.getEntry(0) > 0)) {
            return new double[0];
        }
        return solved.mapDivide(solved.getEntry(0)).getSubVector(1, terms).toArray();
    }
}
