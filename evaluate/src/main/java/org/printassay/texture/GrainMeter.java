package org.printassay.texture;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.printassay.robust.Mad;

/**
 * Graininess and mottle of flat areas, after the idea of ISO/IEC 24790 (and ISO/IEC 13660 before
 * it): graininess is unevenness finer than 0.4 cycles per millimetre, mottle what is coarser,
 * measured as the spread of the means of tiles of 1.27 mm. Both in L*: dL* = (L* + 16) / 3 dY/Y.
 *
 * <p>Graininess G: G^2 = ((L* + 16) / 3)^2 times the integral of (P(f) - N) / M(f)^2 over 2 pi f df
 * from 0.4 per mm to F, with P the power density of dY/Y, N the scanner's noise (alike at all
 * frequencies, from where the optics leave nothing of the print), M the Gaussian modulation of the
 * optics and F where M falls to {@value #LEAST_LEFT}, at most 0.8 of what the sampling carries.
 * Beyond F the corrected density goes on as a Gaussian, as it falls below F, but for no more than
 * half of what was measured.
 */
public final class GrainMeter {
    /** ISO/IEC 24790: graininess above, mottle below, cycles per millimetre (from memory). */
    public static final double SPLIT_PER_MM = 0.4;

    /** ISO/IEC 13660: side of a tile, millimetres (from memory). */
    public static final double TILE_MM = 1.27;

    private static final double LEAST_LEFT = 0.2;
    private static final double MOST_BEYOND = 0.5;
    private static final double SHARE_OF_NYQUIST = 0.8;

    /** Where this little of the print is left, what is there is noise. */
    private static final double ONLY_NOISE = 0.2;

    /** Tiles further from their plane than this many robust standard deviations have dust. */
    private static final double DUSTY = 4;

    private static final double NOISE_FROM = 0.88;
    private static final double NOISE_TO = 1.3;

    private GrainMeter() {}

    /**
     * Unevenness of one kind of area.
     *
     * @param graininess standard deviation of L*, fine
     * @param mottle standard deviation of L*, coarse; NaN when the areas are too small to tell
     * @param highestPerMm frequency up to which graininess counts
     * @param noiseRemoved whether the scanner's noise could be told and taken off
     * @param areas how many areas it is from
     */
    public record Measured(
            double graininess,
            double mottle,
            double highestPerMm,
            boolean noiseRemoved,
            int areas) {
        /** What is left when another's, such as the paper's, is taken off. */
        public Measured less(double otherGraininess, double otherMottle) {
            return new Measured(
                    apart(graininess, otherGraininess),
                    apart(mottle, otherMottle),
                    highestPerMm,
                    noiseRemoved,
                    areas);
        }

        private static double apart(double all, double other) {
            return Math.sqrt(Math.max(0, all * all - other * other));
        }
    }

    /**
     * Measures flat areas of about one lightness.
     *
     * @param tiles the areas
     * @param lightness their L*
     * @param sigmaMm blur of the optics, as the standard deviation of a Gaussian
     */
    public static Measured measure(List<PixelTile> tiles, double lightness, double sigmaMm) {
        GrainSpectrum spectrum = GrainSpectrum.of(tiles);
        double nyquist = spectrum.nyquistPerMm();
        double byOptics = Math.sqrt(-2 * Math.log(LEAST_LEFT)) / (2 * Math.PI * sigmaMm);
        double highest = Math.min(SHARE_OF_NYQUIST * nyquist, byOptics);
        boolean tells = GrainSpectrum.modulation(NOISE_FROM * nyquist, sigmaMm) < ONLY_NOISE;
        double floor = tells ? spectrum.meanDensity(NOISE_FROM * nyquist, NOISE_TO * nyquist) : 0;
        double variance = spectrum.variance(SPLIT_PER_MM, highest, floor, sigmaMm);
        variance += Math.min(MOST_BEYOND * variance, spectrum.beyond(highest, floor, sigmaMm));
        double perContrast = (lightness + 16) / 3;
        return new Measured(
                perContrast * Math.sqrt(Math.max(0, variance)),
                perContrast * Math.sqrt(mottleVariance(tiles)),
                highest,
                tells,
                tiles.size());
    }

    /** Variance of means of tiles, a plane taken out of each area. */
    private static double mottleVariance(List<PixelTile> tiles) {
        List<double[]> areas = new ArrayList<>();
        for (PixelTile tile : tiles) {
            int side = (int) Math.round(TILE_MM * tile.samplesPerMm());
            int columns = tile.columns() / side;
            int rows = tile.rows() / side;
            if (columns < 2 || rows < 2 || columns * rows < 6) {
                continue;
            }
            List<double[]> means = new ArrayList<>();
            double mean = tile.mean();
            for (int row = 0; row < rows; row++) {
                for (int column = 0; column < columns; column++) {
                    double sum = 0;
                    for (int y = row * side; y < (row + 1) * side; y++) {
                        for (int x = column * side; x < (column + 1) * side; x++) {
                            sum += tile.at(x, y);
                        }
                    }
                    means.add(
                            new double[] {
                                column - (columns - 1) / 2.0,
                                row - (rows - 1) / 2.0,
                                sum / (side * side) / mean - 1
                            });
                }
            }
            areas.add(leftByPlane(means));
        }
        double[] departures = areas.stream().flatMapToDouble(Arrays::stream).toArray();
        double most = departures.length == 0 ? 0 : DUSTY * Mad.sigma(departures);
        double squares = 0;
        double freedom = 0;
        for (double[] area : areas) {
            for (double left : area) {
                // Dust is no mottle.
                if (Math.abs(left) <= most) {
                    squares += left * left;
                    freedom += (area.length - 3.0) / area.length;
                }
            }
        }
        return freedom == 0 ? Double.NaN : squares / freedom;
    }

    /** What the plane leaves; positions are centred, so its parts are independent. */
    private static double[] leftByPlane(List<double[]> means) {
        double xx = 0;
        double yy = 0;
        double xz = 0;
        double yz = 0;
        double z = 0;
        for (double[] one : means) {
            xx += one[0] * one[0];
            yy += one[1] * one[1];
            xz += one[0] * one[2];
            yz += one[1] * one[2];
            z += one[2] / means.size();
        }
        double[] left = new double[means.size()];
        for (int i = 0; i < left.length; i++) {
            double[] one = means.get(i);
            left[i] = one[2] - z - xz / xx * one[0] - yz / yy * one[1];
        }
        return left;
    }
}
