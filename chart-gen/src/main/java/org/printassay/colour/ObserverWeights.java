package org.printassay.colour;

import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;

/**
 * Weights that turn reflectance factors into tristimulus values, for illuminant D50 and the CIE
 * 1931 2 degree observer, for data at any step of whole nanometres.
 *
 * <p>Made as ASTM E2022 tells: reflectance between the measured bands follows a cubic (Lagrange;
 * quadratic in the first and last interval), so that each product of light and observer at 1 nm is
 * shared out among the bands around it. At 10 nm these are the weights of ASTM E308 Table 5, for
 * data that are already corrected for bandpass. Wavelengths 360 to 780 nm.
 */
final class ObserverWeights {
    private static final int FROM_NM = 360;
    private static final int TO_NM = 780;

    private static final Map<Long, ObserverWeights> KNOWN = new ConcurrentHashMap<>();

    private final int startNm;
    private final int stepNm;
    private final double[][] weights;

    private ObserverWeights(int startNm, int stepNm, double[][] weights) {
        this.startNm = startNm;
        this.stepNm = stepNm;
        this.weights = weights;
    }

    /**
     * Tristimulus values of a spectrum. Bands that are missing at an end are folded: their weights
     * are added to the first or last measured one (ASTM E308, 7.3.2.2).
     */
    static double[] sums(Spectrum spectrum) {
        int step = spectrum.stepNm();
        int phase = Math.floorMod(spectrum.startNm() - FROM_NM, step);
        ObserverWeights table =
                KNOWN.computeIfAbsent(phase * 1000L + step, key -> make(phase, step));
        double[] sums = new double[3];
        int last = spectrum.factors().size() - 1;
        for (int i = 0; i < table.weights.length; i++) {
            int nm = table.startNm + i * table.stepNm;
            int band = Math.max(0, Math.min(last, Math.floorDiv(nm - spectrum.startNm(), step)));
            double factor = spectrum.factors().get(band);
            for (int c = 0; c < 3; c++) {
                sums[c] += table.weights[i][c] * factor;
            }
        }
        return sums;
    }

    /** Weights at nodes that cover all wavelengths, one of them at 360 nm plus the phase. */
    private static ObserverWeights make(int phase, int step) {
        double[][] products = products();
        int start = phase == 0 ? FROM_NM : FROM_NM + phase - step;
        int nodes = (TO_NM - start + step - 1) / step + 1;
        double[][] weights = new double[nodes][3];
        for (int nm = FROM_NM; nm <= TO_NM; nm++) {
            int interval = Math.min((nm - start) / step, nodes - 2);
            int first = Math.max(0, interval - 1);
            int end = Math.min(nodes - 1, interval + 2);
            double place = (double) (nm - start) / step;
            for (int i = first; i <= end; i++) {
                double share = 1;
                for (int k = first; k <= end; k++) {
                    share *= k == i ? 1 : (place - k) / (i - k);
                }
                for (int c = 0; c < 3; c++) {
                    weights[i][c] += share * products[nm - FROM_NM][c];
                }
            }
        }
        return new ObserverWeights(start, step, weights);
    }

    /** Light times observer at every nanometre, Y of the perfect diffuser = 100. */
    private static double[][] products() {
        double[][] observer = NumberTable.rows("cie1931-2deg-1nm.csv");
        double[][] light = NumberTable.rows("cie-d50-5nm.csv");
        double[][] products = new double[TO_NM - FROM_NM + 1][3];
        double sumY = 0;
        for (int nm = FROM_NM; nm <= TO_NM; nm++) {
            double[] row = observer[nm - (int) observer[0][0]];
            double power = power(light, nm);
            for (int c = 0; c < 3; c++) {
                products[nm - FROM_NM][c] = power * row[c + 1];
            }
            sumY += products[nm - FROM_NM][1];
        }
        for (double[] product : products) {
            for (int c = 0; c < 3; c++) {
                product[c] *= 100 / sumY;
            }
        }
        return products;
    }

    /** Power of the illuminant at one nanometre: cubic Lagrange between the 5 nm values. */
    private static double power(double[][] light, int nm) {
        double from = light[0][0];
        double step = light[1][0] - from;
        double place = (nm - from) / step;
        int first = Math.max(0, Math.min((int) place - 1, light.length - 4));
        double sum = 0;
        for (int i = 0; i < 4; i++) {
            double share = 1;
            for (int k = 0; k < 4; k++) {
                share *= k == i ? 1 : (place - first - k) / (i - k);
            }
            sum += share * light[first + i][1];
        }
        return sum;
    }
}
