package org.printassay.calibrate.codes;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.printassay.colour.LinearRgb;
import org.printassay.scan.LossyCoding;

/**
 * What coding does to the colour of an even patch. By lossy coding the means of lightness and of
 * the two colour differences are kept in steps, the same step for every patch of about the same
 * colour, so that not even many patches average it out. The colour differences are those of ITU-R
 * BT.601, as JPEG uses them (ISO/IEC 10918-5). Where red, green and blue are coded as they are,
 * each is kept in steps of its own.
 */
public final class CodeErrors {
    /** Standard deviation of what is lost by rounding to steps of 1. */
    private static final double ROUNDING = 1 / Math.sqrt(12);

    private CodeErrors() {}

    /** Code, 0-1, of a light on a rising curve. */
    public static double codeOf(float[] curve, double light) {
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
        List<double[]> causes = new ArrayList<>();
        for (int k = 0; k < LossyCoding.COMPONENTS; k++) {
            double[] cause = new double[3];
            for (int c = 0; c < 3; c++) {
                float[] curve = colour.codeLight().curve(c);
                cause[c] =
                        coding.codes(k, c)
                                * coding.step(k)
                                * ROUNDING
                                * perCode(
                                        curve,
                                        (int) Math.round(255 * codeOf(curve, light.channel(c))));
            }
            causes.add(cause);
        }
        return causes;
    }

    /**
     * The same by gaps between codes that an edit in 8 bits left, in each channel by itself, or in
     * the one of a grey scan; empty without any.
     */
    static List<double[]> ofGaps(ScanPart part, LinearRgb light) {
        if (!ToneEdit.leftGaps(part.samples())) {
            return List.of();
        }
        double[] lost = Arrays.stream(gap(part, light)).map(step -> step * ROUNDING).toArray();
        if (part.colour().grey()) {
            return List.of(lost);
        }
        List<double[]> causes = new ArrayList<>();
        for (int c = 0; c < lost.length; c++) {
            double[] cause = new double[lost.length];
            cause[c] = lost[c];
            causes.add(cause);
        }
        return causes;
    }

    /** Change of device light by one step in which gaps between codes keep the mean. */
    private static double[] gap(ScanPart part, LinearRgb light) {
        double[] step = new double[3];
        for (int c = 0; c < step.length; c++) {
            float[] curve = part.colour().codeLight().curve(c);
            int code = (int) Math.round(255 * codeOf(curve, light.channel(c)));
            double gap = part.samples().census().stepNear(c, code);
            step[c] = Math.sqrt(gap * gap - 1) * perCode(curve, code);
        }
        return step;
    }

    /**
     * Change of device light by one step in which the mean lightness of even areas is kept: by
     * lossy coding, and by gaps between codes that an edit in 8 bits left. Noise of single pixels
     * takes care of the rounding to whole codes, so that a step of one code is none; but not after
     * lossy coding, which takes that noise away before whole codes are made again.
     */
    static double[] meanStep(ScanPart part, LinearRgb light) {
        double[] step = ToneEdit.leftGaps(part.samples()) ? gap(part, light) : new double[3];
        for (int c = 0; c < step.length; c++) {
            int channel = c;
            float[] curve = part.colour().codeLight().curve(c);
            int code = (int) Math.round(255 * codeOf(curve, light.channel(c)));
            double lossy =
                    part.samples()
                            .scan()
                            .coding()
                            .map(coding -> coding.greyStep(channel))
                            .orElse(0.0);
            step[c] = Math.hypot(lossy * perCode(curve, code), step[c]);
        }
        return step;
    }

    /** Light for one 8 bit code. */
    private static double perCode(float[] curve, int code) {
        int low = Math.max(0, code - 1);
        int high = Math.min(255, code + 1);
        return (curve[257 * high] - curve[257 * low]) / (high - low);
    }
}
