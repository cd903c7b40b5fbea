package org.printassay.calibrate;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.printassay.sample.LinearRgb;
import org.printassay.scan.LossyCoding;

/**
 * What lossy coding does to the colour of an even patch: the means of lightness and of the two
 * colour differences are kept in steps, the same step for every patch of about the same colour, so
 * that not even many patches average it out. The colour differences are those of ITU-R BT.601, as
 * JPEG uses them (ISO/IEC 10918-5). Where red, green and blue are coded as they are, each is kept
 * in steps of its own.
 */
final class CodeErrors {
    /** Standard deviation of what is lost by rounding to steps of 1. */
    private static final double ROUNDING = 1 / Math.sqrt(12);

    /** Codes of red, green and blue for one code of lightness, of Cb and of Cr. */
    private static final double[][] CODES = {
        {1, 1, 1}, {0, -0.344136, 1.772}, {1.402, -0.714136, 0}
    };

    private static final double[][] APART = {{1, 0, 0}, {0, 1, 0}, {0, 0, 1}};

    private CodeErrors() {}

    /** Code, 0-1, of a light on a rising curve. */
    static double codeOf(float[] curve, double light) {
        int at = Arrays.binarySearch(curve, (float) light);
        int code = at < 0 ? Math.min(curve.length - 1, -at - 1) : at;
        return code / (curve.length - 1.0);
    }

    /**
     * Change of device light by one standard deviation of each cause: lightness, Cb, Cr; or red,
     * green, blue.
     *
     * @param light device light of the patch
     */
    static List<double[]> of(ScanColour colour, LossyCoding coding, LinearRgb light) {
        double[] steps = {coding.lumaStep(), coding.chromaStep(), coding.chromaStep()};
        double[][] codes = coding.ofRgb() ? APART : CODES;
        List<double[]> causes = new ArrayList<>();
        for (int k = 0; k < steps.length; k++) {
            double[] cause = new double[3];
            for (int c = 0; c < 3; c++) {
                cause[c] =
                        codes[k][c]
                                * steps[k]
                                * ROUNDING
                                * perCode(colour.codeLight().curve(c), light.channel(c));
            }
            causes.add(cause);
        }
        return causes;
    }

    /** Change of device light by one step of the mean lightness of even areas. */
    static double[] meanStep(ScanColour colour, LossyCoding coding, LinearRgb light) {
        double[] step = new double[3];
        for (int c = 0; c < 3; c++) {
            step[c] = coding.meanStep() * perCode(colour.codeLight().curve(c), light.channel(c));
        }
        return step;
    }

    /** Light for one 8 bit code. */
    private static double perCode(float[] curve, double light) {
        int code = (int) Math.round(255 * codeOf(curve, light));
        int low = Math.max(0, code - 1);
        int high = Math.min(255, code + 1);
        return (curve[257 * high] - curve[257 * low]) / (high - low);
    }
}
