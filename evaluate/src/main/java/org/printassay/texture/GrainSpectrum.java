package org.printassay.texture;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.apache.commons.math3.transform.DftNormalization;
import org.apache.commons.math3.transform.FastFourierTransformer;
import org.apache.commons.math3.transform.TransformType;
import org.printassay.robust.Median;

/**
 * Power of relative fluctuations of light by frequency, all directions together: the mean of
 * periodograms of square pieces (Welch, IEEE Trans. AU-15, 1967), a plane taken out of each and a
 * Hann window laid on.
 */
public final class GrainSpectrum {
    /** Frequency bins, cycles per millimetre. */
    private static final double BIN = 0.2;

    /** A piece with this many times the usual power has dust on it. */
    private static final double DUSTY = 2;

    private static final int LARGEST = 128;
    private static final int SMALLEST = 16;

    private final double nyquist;
    private final double[] density;

    private GrainSpectrum(double nyquist, double[] density) {
        this.nyquist = nyquist;
        this.density = density;
    }

    /**
     * The spectrum of areas of one kind.
     *
     * @param tiles of one sampling; those smaller than 16 pixels are passed over
     * @return NaN at frequencies that nothing tells
     */
    public static GrainSpectrum of(List<PixelTile> tiles) {
        if (tiles.isEmpty()) {
            throw new IllegalArgumentException("no tiles");
        }
        double perMm = tiles.get(0).samplesPerMm();
        int bins = (int) Math.ceil(perMm / Math.sqrt(2) / BIN) + 1;
        double[] sums = new double[bins];
        double[] counts = new double[bins];
        List<double[][]> pieces = new ArrayList<>();
        for (PixelTile tile : tiles) {
            int side = Integer.highestOneBit(Math.min(tile.columns(), tile.rows()));
            side = Math.min(side, LARGEST);
            if (side < SMALLEST) {
                continue;
            }
            for (int y : starts(tile.rows(), side)) {
                for (int x : starts(tile.columns(), side)) {
                    pieces.add(piece(tile, x, y, side));
                }
            }
        }
        Map<Integer, Plan> plans = new HashMap<>();
        double usual = Median.of(pieces.stream().mapToDouble(GrainSpectrum::power).toArray());
        for (double[][] piece : pieces) {
            if (power(piece) <= DUSTY * usual) {
                Plan plan = plans.computeIfAbsent(piece.length, side -> new Plan(side, perMm));
                add(piece, plan, sums, counts);
            }
        }
        double[] density = new double[bins];
        for (int b = 0; b < bins; b++) {
            density[b] = counts[b] == 0 ? Double.NaN : sums[b] / counts[b];
        }
        return new GrainSpectrum(perMm / 2, density);
    }

    /** First pixels of pieces that leave no gap and reach both ends. */
    private static int[] starts(int length, int side) {
        int gaps = (length - 1) / side;
        int[] starts = new int[gaps + 1];
        for (int i = 1; i <= gaps; i++) {
            starts[i] = (int) Math.round((double) i * (length - side) / gaps);
        }
        return starts;
    }

    private static double power(double[][] piece) {
        double sum = 0;
        for (double[] row : piece) {
            for (double value : row) {
                sum += value * value;
            }
        }
        return sum / piece.length / piece.length;
    }

    /** Window and frequencies of pieces of one size. */
    private static final class Plan {
        final double[] window;
        final int[] bins;
        final double scale;

        Plan(int side, double perMm) {
            window = new double[side];
            double squares = 0;
            for (int i = 0; i < side; i++) {
                window[i] = 0.5 - 0.5 * Math.cos(2 * Math.PI * (i + 0.5) / side);
                squares += window[i] * window[i];
            }
            // Power density: square millimetres a sample, less what the window takes.
            scale = 1 / (perMm * perMm) / (squares * squares);
            bins = new int[side * side];
            double step = perMm / side;
            for (int y = 0; y < side; y++) {
                double fy = Math.min(y, side - y) * step;
                for (int x = 0; x < side; x++) {
                    double fx = Math.min(x, side - x) * step;
                    bins[y * side + x] = (int) (Math.sqrt(fx * fx + fy * fy) / BIN);
                }
            }
            bins[0] = Integer.MAX_VALUE;
        }
    }

    /** Adds the periodogram of a piece, which is modified. */
    private static void add(double[][] re, Plan plan, double[] sums, double[] counts) {
        int side = re.length;
        double[][] im = new double[side][side];
        for (int y = 0; y < side; y++) {
            for (int x = 0; x < side; x++) {
                re[y][x] *= plan.window[x] * plan.window[y];
            }
        }
        transform(re, im);
        for (int y = 0; y < side; y++) {
            for (int x = 0; x < side; x++) {
                int bin = plan.bins[y * side + x];
                if (bin < sums.length) {
                    sums[bin] += plan.scale * (re[y][x] * re[y][x] + im[y][x] * im[y][x]);
                    counts[bin]++;
                }
            }
        }
    }

    /** A piece relative to its mean, less the plane that fits it. */
    private static double[][] piece(PixelTile tile, int left, int top, int side) {
        double mean = 0;
        double slopeX = 0;
        double slopeY = 0;
        double squares = 0;
        double middle = (side - 1) / 2.0;
        for (int y = 0; y < side; y++) {
            for (int x = 0; x < side; x++) {
                double value = tile.at(left + x, top + y);
                mean += value;
                slopeX += (x - middle) * value;
                slopeY += (y - middle) * value;
                squares += (x - middle) * (x - middle);
            }
        }
        mean /= (double) side * side;
        slopeX /= squares;
        slopeY /= squares;
        double[][] out = new double[side][side];
        for (int y = 0; y < side && mean > 0; y++) {
            for (int x = 0; x < side; x++) {
                double plane = mean + slopeX * (x - middle) + slopeY * (y - middle);
                out[y][x] = (tile.at(left + x, top + y) - plane) / mean;
            }
        }
        return out;
    }

    private static void transform(double[][] re, double[][] im) {
        int n = re.length;
        for (int y = 0; y < n; y++) {
            line(re[y], im[y]);
        }
        double[] columnRe = new double[n];
        double[] columnIm = new double[n];
        for (int x = 0; x < n; x++) {
            for (int y = 0; y < n; y++) {
                columnRe[y] = re[y][x];
                columnIm[y] = im[y][x];
            }
            line(columnRe, columnIm);
            for (int y = 0; y < n; y++) {
                re[y][x] = columnRe[y];
                im[y][x] = columnIm[y];
            }
        }
    }

    private static void line(double[] re, double[] im) {
        FastFourierTransformer.transformInPlace(
                new double[][] {re, im}, DftNormalization.STANDARD, TransformType.FORWARD);
    }

    /** Highest frequency that the sampling carries along an axis, cycles per millimetre. */
    public double nyquistPerMm() {
        return nyquist;
    }

    /** Mean power density between two frequencies, square millimetres; NaN where nothing is. */
    public double meanDensity(double fromPerMm, double toPerMm) {
        double sum = 0;
        double weights = 0;
        for (int b = 0; b < density.length; b++) {
            double f = (b + 0.5) * BIN;
            if (f >= fromPerMm && f <= toPerMm && !Double.isNaN(density[b])) {
                sum += f * density[b];
                weights += f;
            }
        }
        return weights == 0 ? Double.NaN : sum / weights;
    }

    /**
     * Variance of relative light between two frequencies, what the optics took given back.
     *
     * @param floor power density of noise that every frequency has alike, taken off
     * @param sigmaMm blur of the optics, as the standard deviation of a Gaussian
     */
    public double variance(double fromPerMm, double toPerMm, double floor, double sigmaMm) {
        double sum = 0;
        for (int b = 0; b < density.length; b++) {
            double low = Math.max(fromPerMm, b * BIN);
            double high = Math.min(toPerMm, (b + 1) * BIN);
            if (high > low && !Double.isNaN(density[b])) {
                double f = (low + high) / 2;
                double left = modulation(f, sigmaMm);
                double ring = Math.PI * (high * high - low * low);
                sum += ring * (density[b] - floor) / (left * left);
            }
        }
        return sum;
    }

    /**
     * Variance beyond a frequency, if the corrected density goes on falling as exp(-b f^2) as it
     * does in the last half of the way there; 0 where it does not fall.
     */
    public double beyond(double perMm, double floor, double sigmaMm) {
        double low = variance(0.5 * perMm, 0.75 * perMm, floor, sigmaMm);
        double high = variance(0.75 * perMm, perMm, floor, sigmaMm);
        double lowRing = Math.PI * perMm * perMm * (0.75 * 0.75 - 0.5 * 0.5);
        double highRing = Math.PI * perMm * perMm * (1 - 0.75 * 0.75);
        double lowSquare = perMm * perMm * (0.75 * 0.75 + 0.5 * 0.5) / 2;
        double highSquare = perMm * perMm * (1 + 0.75 * 0.75) / 2;
        if (low <= 0 || high <= 0) {
            return 0;
        }
        double b = Math.log(low / lowRing / (high / highRing)) / (highSquare - lowSquare);
        double atEnd = high / highRing * Math.exp(-b * (perMm * perMm - highSquare));
        return b > 0 ? Math.PI * atEnd / b : 0;
    }

    /** What a Gaussian blur leaves of a modulation. */
    static double modulation(double perMm, double sigmaMm) {
        double angle = 2 * Math.PI * perMm * sigmaMm;
        return Math.exp(-angle * angle / 2);
    }
}
