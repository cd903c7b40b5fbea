package org.printassay.calibrate.light;

import java.util.Arrays;
import java.util.Optional;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import org.printassay.colour.Lab;
import org.printassay.robust.Median;

/**
 * How a print itself gets lighter from one side of the sheet to the other. Light that falls off
 * does so on bare paper too; less ink does not, for there is none. So twins of all tones, paper
 * among them, tell the two apart in a single scan; without that, the fit of the light would take a
 * print's own unevenness for the lamp's in part, and take it off.
 *
 * @param shares for each channel, by how much the two sides are lighter, as shares of light, by the
 *     profiles over tone
 */
@SuppressWarnings("ArrayRecordComponent") // numbers on their way, never compared
public record PrintGradient(double[][] shares) {
    /** Profiles over tone, each across and down. */
    private static final int TERMS = 6;

    /** Chi-square for as many degrees of freedom, 0.1 % level over three channels (Bonferroni). */
    private static final double SURE_CHI2 = 25.06;

    /**
     * Reflectance about which a profile tells blacks from what is lighter (common practice, no
     * source).
     */
    private static final double DARK = 0.02;

    /** A mid-tone, for saying how much it is. */
    private static final double MID_TONE = Lab.luminanceFactor(50);

    /** Empty where the twins do not show any for sure, in any channel. */
    static Optional<PrintGradient> of(ScanLight scan, LightFitter.Outcome full) {
        double[][] shares = new double[full.fits().length][];
        boolean sure = false;
        for (int c = 0; c < shares.length; c++) {
            Fit fit = fit(scan.channels().get(c).data(), full, c);
            if (fit == null) {
                return Optional.empty();
            }
            shares[c] = fit.shares;
            sure |= fit.chi2 > SURE_CHI2;
        }
        return sure ? Optional.of(new PrintGradient(shares)) : Optional.empty();
    }

    @SuppressWarnings("ArrayRecordComponent") // on its way
    private record Fit(double[] shares, double chi2) {}

    private static @Nullable Fit fit(TwinData data, LightFitter.Outcome full, int channel) {
        int light = Math.max(LightSurface.QUADRATIC, full.surfaceTerms());
        double[][] inks = terms(data);
        double[][] both = new double[inks.length][];
        for (int i = 0; i < both.length; i++) {
            both[i] = Arrays.copyOf(data.surface()[i], light + TERMS);
            System.arraycopy(inks[i], 0, both[i], light, TERMS);
        }
        StrayKind[] kinds = full.kinds();
        double[][] around = full.around()[channel];
        TwinFit.Result like = full.fits()[channel];
        TwinFit.Result without = TwinFit.fit(data, kinds, around, light, like);
        TwinFit.Result with =
                TwinFit.fit(data.withSurface(both), kinds, around, light + TERMS, like);
        if (without == null || with == null) {
            return null;
        }
        return new Fit(
                Arrays.copyOfRange(with.surface(), light, light + TERMS),
                without.misfit() - with.misfit());
    }

    /** The scan, its twins as if the print were even; what lies around them stays as it is. */
    ScanLight evened(ScanLight scan) {
        return scan.with(
                IntStream.range(0, shares.length)
                        .mapToObj(
                                c -> {
                                    ChannelLight channel = scan.channels().get(c);
                                    return channel.with(evened(channel.data(), shares[c]));
                                })
                        .toList());
    }

    private static TwinData evened(TwinData data, double[] shares) {
        double[] light = data.light().clone();
        double[][] terms = terms(data);
        for (int i = 0; i < light.length; i++) {
            light[i] /= LightSurface.at(shares, terms[i]);
        }
        return data.withLight(light);
    }

    /**
     * How much lighter a mid-tone, L* 50, prints at a place than in the middle, as share of light.
     *
     * @param at the terms of a {@link LightSurface} at the place
     */
    public double ofMidTone(int channel, double[] at) {
        return LightSurface.at(shares[channel], terms(MID_TONE, at)) - 1;
    }

    private static double[][] terms(TwinData data) {
        double[] reflectance = reflectance(data);
        return IntStream.range(0, reflectance.length)
                .mapToObj(i -> terms(reflectance[i], data.surface()[i]))
                .toArray(double[][]::new);
    }

    /**
     * Three profiles over tone, all nothing on paper, across and down each: in proportion to the
     * light that ink takes, as in light tones by Murray and Davies; of mid-tones; and of blacks,
     * for solid ink may hide that there is a little more or less of it, or be darker for it.
     */
    private static double[] terms(double reflectance, double[] at) {
        double light = Math.max(0, reflectance);
        double ink = Math.max(0, 1 - light);
        double part = 4 * ink * light;
        double dark = ink * DARK / (DARK + light);
        double u = at[0];
        double v = at[1];
        return new double[] {ink * u, ink * v, part * u, part * v, dark * u, dark * v};
    }

    /** What the twins of each patch throw back, over paper; that of paper where it has none. */
    private static double[] reflectance(TwinData data) {
        double[] ofGroup = new double[data.groups()];
        int[] rows = data.rows();
        for (int g = 0; g < ofGroup.length; g++) {
            int one = g;
            double[] twins =
                    Arrays.stream(rows)
                            .filter(i -> data.group()[i] == one)
                            .mapToDouble(i -> data.light()[i])
                            .toArray();
            ofGroup[g] = twins.length == 0 ? 1 : Median.of(twins);
        }
        return Arrays.stream(data.group()).mapToDouble(g -> g < 0 ? 1 : ofGroup[g]).toArray();
    }
}
