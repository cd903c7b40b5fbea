package org.printassay.scan;

/**
 * How coarsely a JPEG (ISO/IEC 10918-1) keeps an even area: the quantisation step of a block's
 * mean, in 8 bit codes. The coefficient of the mean is eight times the mean.
 *
 * @param lumaStep of the mean of lightness, codes; of red where red, green and blue are coded
 * @param chromaStep of the means of the two colour differences, codes; that of lightness for a grey
 *     image; of green and blue where those are coded
 * @param quality how the luminance table compares with the example table of the standard (Annex
 *     K.1) by the usual scaling from 1 to 100 (common practice, no source)
 * @param ofRgb whether red, green and blue were coded as they are, without the transform to
 *     lightness and colour differences
 */
public record LossyCoding(double lumaStep, double chromaStep, int quality, boolean ofRgb) {
    private static final int BLOCK_GAIN = 8;

    /**
     * Codes of red, green and blue for one code of lightness, of Cb and of Cr (ITU-R BT.601, as
     * JPEG uses them: ISO/IEC 10918-5).
     */
    private static final double[][] CODES = {
        {1, 1, 1}, {0, -0.344136, 1.772}, {1.402, -0.714136, 0}
    };

    /** Components of a colour image. */
    public static final int COMPONENTS = 3;

    /** Sum of the luminance table of ISO/IEC 10918-1, table K.1. */
    private static final double EXAMPLE_SUM = 3688;

    /**
     * Step in which a channel of even grey areas is kept, codes: of lightness, or of red, green and
     * blue each by itself.
     *
     * @param channel 0 red, 1 green, 2 blue
     */
    public double greyStep(int channel) {
        return step(ofRgb ? channel : 0);
    }

    /** Step of the mean of a component, codes: lightness, Cb and Cr; or red, green and blue. */
    public double step(int component) {
        return component == 0 ? lumaStep : chromaStep;
    }

    /** Codes of red (0), green or blue for one code of a component. */
    public double codes(int component, int channel) {
        return ofRgb ? (component == channel ? 1 : 0) : CODES[component][channel];
    }

    /**
     * Step of one channel by those of all components together, codes, its rounding to whole ones
     * counted once. What coding leaves beside edges is about as large (common practice, no source).
     *
     * @param channel 0 red, 1 green, 2 blue
     */
    public double channelStep(int channel) {
        double squares = 1;
        for (int k = 0; k < COMPONENTS; k++) {
            squares += Math.pow(codes(k, channel), 2) * (step(k) * step(k) - 1);
        }
        return Math.sqrt(squares);
    }

    /** The same, its components being red, green and blue or not. */
    LossyCoding withRgb(boolean rgb) {
        return new LossyCoding(lumaStep, chromaStep, quality, rgb);
    }

    /** What is surely no finer than either of two. */
    LossyCoding coarser(LossyCoding other) {
        return new LossyCoding(
                Math.max(lumaStep, other.lumaStep),
                Math.max(chromaStep, other.chromaStep),
                Math.min(quality, other.quality),
                ofRgb);
    }

    /**
     * From quantisation tables.
     *
     * @param luma 64 values of the table of the first component
     * @param chroma 64 values of the table of the second component; the first's where there is none
     * @param ofRgb whether the components are red, green and blue
     */
    static LossyCoding of(int[] luma, int[] chroma, boolean ofRgb) {
        double sum = 0;
        for (int value : luma) {
            sum += value;
        }
        double scale = 100 * sum / EXAMPLE_SUM;
        double quality = scale > 100 ? 5000 / scale : (200 - scale) / 2;
        // Lightness and colour differences are whole numbers before they are coded, which is a step
        // of its own.
        return new LossyCoding(
                Math.hypot(1, (double) luma[0] / BLOCK_GAIN),
                Math.hypot(1, (double) chroma[0] / BLOCK_GAIN),
                (int) Math.round(Math.max(1, Math.min(100, quality))),
                ofRgb);
    }
}
