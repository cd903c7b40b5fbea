package org.printassay.surface;

import java.util.Arrays;
import org.printassay.colour.Rgb8;

/**
 * Light along one axis of one tint, kept apart in strips side by side, so that dust on one of them
 * can be told from a line that crosses all.
 */
public final class TintTrace {
    private static final double[] LUMINANCE = {0.2126, 0.7152, 0.0722};

    /** A channel whose mean is nearer than this to the most that a scan can hold is clipped. */
    private static final double CLIPPED = 0.01;

    private final String id;
    private final Rgb8 rgb;
    private final Along along;
    private final double startMm;
    private final double stepMm;
    private final double acrossMm;
    private final double lightness;
    private final float[][][] light;
    private final double[] most;

    /**
     * A trace of a scan that can hold any light.
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
        this(id, rgb, along, startMm, stepMm, acrossMm, lightness, light, new double[0]);
    }

    private TintTrace(
            String id,
            Rgb8 rgb,
            Along along,
            double startMm,
            double stepMm,
            double acrossMm,
            double lightness,
            float[][][] light,
            double[] most) {
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
        this.most = most;
    }

    /** The same light, its lightness known. */
    public TintTrace at(double knownLightness) {
        return new TintTrace(
                id, rgb, along, startMm, stepMm, acrossMm, knownLightness, light, most);
    }

    /**
     * The same light of a scan that holds only so much.
     *
     * @param mostLight of each channel: what its largest code stands for
     */
    public TintTrace within(double... mostLight) {
        return new TintTrace(
                id, rgb, along, startMm, stepMm, acrossMm, lightness, light, mostLight.clone());
    }

    /** Luminance of device light by bin, the strips with dust on them left out. */
    public double[] meanLuminance() {
        return RunningMedian.middle(stripLuminance());
    }

    /** Luminance of device light by strip and bin; each strip keeps a level of its own. */
    public double[][] stripLuminance() {
        double[][] strips = new double[light.length][];
        for (int s = 0; s < strips.length; s++) {
            strips[s] = luminance(s);
            double level = level(s);
            for (int i = 0; i < strips[s].length; i++) {
                strips[s][i] *= level;
            }
        }
        return strips;
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

    /** Channels of light: three, or one of a grey scan. */
    int channels() {
        return light[0].length;
    }

    /**
     * Light of one channel from a bin up to another, relative to its mean, strips with dust out.
     */
    double[] channel(int channel, int from, int to) {
        double[][] strips = new double[light.length][];
        for (int s = 0; s < strips.length; s++) {
            float[] part = Arrays.copyOfRange(light[s][channel], from, to);
            strips[s] = new double[part.length];
            add(strips[s], part, 1);
        }
        return RunningMedian.middle(strips);
    }

    /**
     * Light of a strip in the channels where the tint's inks absorb, each channel relative to its
     * mean, so that a missing ink of any colour is seen at its full contrast.
     */
    double[] absorbed(int strip) {
        double[] values = new double[bins()];
        double[] weights = inkWeights();
        for (int c = 0; c < weights.length; c++) {
            add(values, light[strip][c], weights[c]);
        }
        return values;
    }

    /** Shares of the channels in {@link #absorbed}; their sum is 1. */
    private double[] inkWeights() {
        int channels = light[0].length;
        double[] depths = {255 - rgb.r(), 255 - rgb.g(), 255 - rgb.b()};
        double sum = depths[0] + depths[1] + depths[2];
        double[] weights = new double[channels];
        for (int c = 0; c < channels; c++) {
            weights[c] = channels == 1 ? 1 : sum == 0 ? 1.0 / channels : depths[c] / sum;
        }
        return weights;
    }

    /**
     * What a scan that holds no more light than its largest code leaves of a line's contrast, dR/R:
     * light lines end there, dark ones may lie wholly above it.
     */
    double left(double contrast) {
        if (most.length == 0) {
            return contrast;
        }
        double[] weights = inkWeights();
        double left = 0;
        for (int c = 0; c < weights.length; c++) {
            double room = room(c);
            double here = contrast > 0 ? Math.min(contrast, room) : room > CLIPPED ? contrast : 0;
            left += weights[c] * here;
        }
        return left;
    }

    /** Whether the scan holds no more light than this in any channel, so that nothing shows. */
    public boolean clipped() {
        for (int c = 0; c < light[0].length; c++) {
            if (most.length == 0 || room(c) > CLIPPED) {
                return false;
            }
        }
        return true;
    }

    /** How much lighter a channel could get, share of its mean. */
    private double room(int channel) {
        double sum = 0;
        for (float[][] strip : light) {
            sum += mean(strip[channel]) / light.length;
        }
        return sum > 0 ? Math.max(0, most[channel] / sum - 1) : Double.POSITIVE_INFINITY;
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
