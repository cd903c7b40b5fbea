package org.printassay.colour;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * A second, independent way from reflectance to CIELAB: CIE 15 sums over every nanometre, with
 * reflectance between its bands by Sprague's fifth-order polynomials (CIE 167:2005, coefficients
 * from memory; they are checked on a polynomial), and the illuminant linear between its own points.
 * It shares only the CIE tables with {@link ObserverWeights}, which interpolates by cubics and sums
 * ten nanometres at once. A library's example and the library itself are in {@link
 * SpectrumWitnessTest}; no worked example of ASTM E308 itself is at hand.
 */
class NanometreSumTest {
    private static final int FROM_NM = 360;
    private static final int TO_NM = 780;

    /** Measured prints are not smooth at 10 nm: two interpolations differ; largest seen 0.012. */
    private static final double TWO_INTERPOLATIONS = 0.02;

    @Test
    void weightsGiveWhatNanometresGive() {
        double worst = 0;
        List<Spectrum> prints = PublishedSpectra.prints();
        for (Spectrum print : prints) {
            worst = Math.max(worst, DeltaE.cie1976(summed(print), print.toLab()));
        }
        assertEquals(24, prints.size());
        assertTrue(worst < TWO_INTERPOLATIONS, "largest " + worst);
    }

    /** A polynomial of the fourth degree is given back, near the ends a straight line. */
    @Test
    void spraguesCoefficientsAreRight() {
        double[] bands = new double[9];
        for (int i = 0; i < bands.length; i++) {
            bands[i] = quartic(i);
        }
        double[] line = {1, 2, 3, 4, 5, 6, 7, 8, 9};
        for (double x = 0; x <= 8; x += 0.1) {
            assertEquals(1 + x, sprague(line, x), 1e-9, "at " + x);
            if (x >= 2 && x <= 6) {
                assertEquals(quartic(x), sprague(bands, x), 1e-9, "at " + x);
            }
        }
    }

    private static double quartic(double x) {
        return 0.3 + 0.2 * x - 0.07 * x * x + 0.011 * Math.pow(x, 3) - 0.0007 * Math.pow(x, 4);
    }

    private static Lab summed(Spectrum spectrum) {
        double[] bands = spectrum.factors().stream().mapToDouble(f -> f).toArray();
        double[][] observer = NumberTable.rows("cie1931-2deg-1nm.csv");
        double[][] light = NumberTable.rows("cie-d50-5nm.csv");
        double[] colour = new double[3];
        double[] white = new double[3];
        for (int nm = FROM_NM; nm <= TO_NM; nm++) {
            double place = (double) (nm - spectrum.startNm()) / spectrum.stepNm();
            double factor = sprague(bands, Math.max(0, Math.min(bands.length - 1, place)));
            double along = (nm - light[0][0]) / 5;
            int i = Math.min((int) along, light.length - 2);
            double power = light[i][1] + (along - i) * (light[i + 1][1] - light[i][1]);
            double[] eye = observer[nm - (int) observer[0][0]];
            for (int c = 0; c < 3; c++) {
                colour[c] += factor * power * eye[c + 1];
                white[c] += power * eye[c + 1];
            }
        }
        double k = 100 / white[1];
        return Lab.of(
                new Xyz(k * colour[0], k * colour[1], k * colour[2]),
                new Xyz(k * white[0], 100, k * white[2]));
    }

    /** Value at a place counted in bands. */
    private static double sprague(double[] bands, double place) {
        int n = bands.length;
        double[] r = new double[n + 4];
        System.arraycopy(bands, 0, r, 2, n);
        r[0] = beyond(bands, 0, 1, 884, -1960, 3033, -2648, 1080, -180);
        r[1] = beyond(bands, 0, 1, 508, -540, 488, -367, 144, -24);
        r[n + 2] = beyond(bands, n - 1, -1, 508, -540, 488, -367, 144, -24);
        r[n + 3] = beyond(bands, n - 1, -1, 884, -1960, 3033, -2648, 1080, -180);
        int i = Math.min((int) place, n - 2);
        double x = place - i;
        int[][] of24 = {
            {0, 0, 24, 0, 0, 0},
            {2, -16, 0, 16, -2, 0},
            {-1, 16, -30, 16, -1, 0},
            {-9, 39, -70, 66, -33, 7},
            {13, -64, 126, -124, 61, -12},
            {-5, 25, -50, 50, -25, 5}
        };
        double sum = 0;
        double power = 1;
        for (int[] row : of24) {
            double coefficient = 0;
            for (int k = 0; k < 6; k++) {
                coefficient += row[k] / 24.0 * r[i + k];
            }
            sum += coefficient * power;
            power *= x;
        }
        return sum;
    }

    private static double beyond(double[] bands, int end, int inwards, int... of209) {
        double sum = 0;
        for (int k = 0; k < of209.length; k++) {
            sum += of209[k] / 209.0 * bands[end + inwards * k];
        }
        return sum;
    }
}
