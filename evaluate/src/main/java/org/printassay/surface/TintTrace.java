package org.printassay.surface;

import org.printassay.colour.Rgb8;

/**
 * Light along one axis of one tint, kept apart in strips side by side, so that dust on one of them
 * can be told from a line that crosses all.
 */
public final class TintTrace {
    private static final double[] LUMINANCE = {0.2126, 0.7152, 0.0722};

    private final String id;
    private final Rgb8 rgb;
    private final Along along;
    private final double startMm;
    private final double stepMm;
    private final double acrossMm;
    private final double lightness;
    private final float[][][] light;

    /**
     * A trace.
     *
     * @param id of the tint's patch
     * @param rgb codes that were printed; 255 255 255 is bare paper
     * @param startMm page position of the middle of the first bin
     * @param stepMm from bin to bin, about one pixel of the scan
     * @param acrossMm page position of its middle on the other axis
     * @param lightness L* of the tint, which turns contrast into L*
     * @param light mean linear light by strip, channel (three, or one of a grey scan) and bin; not
     *     copied, not modified
     */
    public TintTrace(
            String id,
            Rgb8 rgb,
            Along along,
            double startMm,
            double stepMm,
            double acrossMm,
            double lightness,
            float[][][] light) {
        if (light.length == 0 || light[0].length == 0 || light[0][0].length < 2) {
            throw new IllegalArgumentException("tint " + id + " has no light");
        }
        this.id = id;
        this.rgb = rgb;
        this.along = along;
        this.startMm = startMm;
        this.stepMm = stepMm;
        this.acrossMm = acrossMm;
        this.lightness = lightness;
        this.light = light;
    }

    /** The same light, its lightness known. */
    public TintTrace at(double knownLightness) {
        return new TintTrace(id, rgb, along, startMm, stepMm, acrossMm, knownLightness, light);
    }

    /** Luminance of device light by bin, the strips with dust on them left out. */
    public double[] meanLuminance() {
        double[][] strips = new double[light.length][];
        for (int s = 0; s < strips.length; s++) {
            strips[s] = luminance(s);
            double level = level(s);
            for (int i = 0; i < strips[s].length; i++) {
                strips[s][i] *= level;
            }
        }
        return Baseline.middle(strips);
    }

    /** Id of the tint's patch. */
    public String id() {
        return id;
    }

    /** Codes that were printed. */
    public Rgb8 rgb() {
        return rgb;
    }

    /** Axis that it runs along. */
    public Along along() {
        return along;
    }

    /** Page position of a bin's middle; fractions lie between bins. */
    public double positionMm(double bin) {
        return startMm + bin * stepMm;
    }

    /** Bin of a page position. */
    public double binOf(double positionMm) {
        return (positionMm - startMm) / stepMm;
    }

    /** Page position of its middle on the other axis. */
    public double acrossMm() {
        return acrossMm;
    }

    /** From bin to bin, millimetres. */
    public double stepMm() {
        return stepMm;
    }

    /** Number of bins. */
    public int bins() {
        return light[0][0].length;
    }

    /** Number of strips. */
    public int strips() {
        return light.length;
    }

    /** Length, millimetres. */
    public double lengthMm() {
        return bins() * stepMm;
    }

    /** L* of the tint. */
    public double lightness() {
        return lightness;
    }

    /** Whether nothing is printed there. */
    public boolean bare() {
        return rgb.r() == 255 && rgb.g() == 255 && rgb.b() == 255;
    }

    /**
     * Light of a strip in the channels where the tint's inks absorb, each channel relative to its
     * mean, so that a missing ink of any colour is seen at its full contrast.
     */
    double[] absorbed(int strip) {
        int channels = light[strip].length;
        double[] weights = {255 - rgb.r(), 255 - rgb.g(), 255 - rgb.b()};
        double sum = weights[0] + weights[1] + weights[2];
        double[] values = new double[bins()];
        for (int c = 0; c < channels; c++) {
            double weight = channels == 1 ? 1 : sum == 0 ? 1.0 / channels : weights[c] / sum;
            add(values, light[strip][c], weight);
        }
        return values;
    }

    /**
     * Luminance of a strip relative to its mean, by the weights of IEC 61966-2-1, which serve any
     * scanner well enough for small differences.
     */
    double[] luminance(int strip) {
        double[] values = new double[bins()];
        double all = level(strip);
        for (int c = 0; c < light[strip].length; c++) {
            double part = weight(strip, c) * mean(light[strip][c]);
            add(values, light[strip][c], all > 0 ? part / all : 0);
        }
        return values;
    }

    /** Mean luminance of a strip. */
    private double level(int strip) {
        double sum = 0;
        for (int c = 0; c < light[strip].length; c++) {
            sum += weight(strip, c) * mean(light[strip][c]);
        }
        return sum;
    }

    private double weight(int strip, int channel) {
        return light[strip].length == 1 ? 1 : LUMINANCE[channel];
    }

    private static void add(double[] values, float[] channel, double weight) {
        double mean = mean(channel);
        if (weight > 0 && mean > 0) {
            for (int i = 0; i < values.length; i++) {
                values[i] += weight * channel[i] / mean;
            }
        }
    }

    private static double mean(float[] values) {
        double sum = 0;
        for (float value : values) {
            sum += value;
        }
        return sum / values.length;
    }
}
