package org.printassay.calibrate.codes;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.printassay.calibrate.light.LeakedLight;
import org.printassay.calibrate.light.LightFit;
import org.printassay.colour.DeltaE;
import org.printassay.colour.Lab;
import org.printassay.colour.LinearRgb;
import org.printassay.colour.Xyz;
import org.printassay.reading.LabError;
import org.printassay.reading.ReadingFlag;
import org.printassay.sample.PatchSample;
import org.printassay.sample.SheetSamples;
import org.printassay.scan.LossyCoding;
import org.printassay.sheet.Patch;

/**
 * The colour of one patch in one scan.
 *
 * @param patch which
 * @param sheet sheet number from 1
 * @param xyz absolute, as far as the scan's colour is
 * @param relative the same with the paper at the connection space white
 * @param evenedY Y without the removal of stray light, on the scale of {@code xyz}
 * @param error random part, CIELAB of {@code xyz}
 * @param causes how far one standard error of each cause in the removal of uneven and stray light
 *     moves it, CIELAB; the same causes in the same order in all patches of a scan
 * @param codingStep step in L* in which lossy coding, or an edit in 8 bits, kept the mean lightness
 *     of even areas; 0 without them
 * @param flags of the sample, the edge of the scan, light from outside, and what twins and colours
 *     nearby tell
 */
public record PatchColour(
        Patch patch,
        int sheet,
        Xyz xyz,
        Xyz relative,
        double evenedY,
        LabError error,
        List<Lab> causes,
        double codingStep,
        Set<ReadingFlag> flags) {
    /** Relative step of a finite difference. */
    private static final double STEP = 0.01;

    /** Twice the standard deviation of what coding lost, dE00, from which a colour is coarse. */
    private static final double COARSE = 0.8;

    /** Colours of all patches of a scan, in the order of its samples. */
    public static List<PatchColour> of(ScanPart part, LightFit light) {
        SheetSamples samples = part.samples();
        ScanColour colour = part.colour();
        Xyz paper = colour.toXyz(channels(light.paper()));
        Optional<LossyCoding> coding = colour.grey() ? Optional.empty() : samples.scan().coding();
        List<PatchColour> colours = new ArrayList<>();
        for (int i = 0; i < samples.samples().size(); i++) {
            PatchSample sample = samples.samples().get(i);
            double[] rgb = column(light.corrected(), i);
            Xyz xyz = colour.toXyz(channels(rgb));
            Set<ReadingFlag> flags = EnumSet.noneOf(ReadingFlag.class);
            flags.addAll(sample.flags());
            if (light.nearEdge()[i]) {
                flags.add(ReadingFlag.EDGE);
            }
            if (light.leak().isPresent() && lit(colour, rgb, light.leak().get(), i)) {
                flags.add(ReadingFlag.LIT);
            }
            List<double[]> lost = new ArrayList<>(CodeErrors.ofGaps(part, sample.linear()));
            if (coding.isPresent()) {
                lost.addAll(CodeErrors.of(colour, coding.get(), sample.linear()));
            }
            if (coarse(colour, rgb, lost)) {
                flags.add(ReadingFlag.COARSE);
            }
            colours.add(
                    new PatchColour(
                            sample.patch(),
                            samples.located().sheet().number(),
                            xyz,
                            relative(xyz, paper),
                            colour.toXyz(channels(column(light.evened(), i))).y(),
                            error(colour, rgb, sample, light, i),
                            causes(colour, rgb, light, i, lost),
                            codingStep(part, rgb, sample.linear()),
                            flags));
        }
        return colours;
    }

    /** The same at another exposure; colour relative to paper does not change. */
    public PatchColour scaled(double factor) {
        return new PatchColour(
                patch,
                sheet,
                xyz.times(factor),
                relative,
                evenedY * factor,
                error,
                causes,
                codingStep,
                flags);
    }

    /** The same with one more flag. */
    public PatchColour flagged(ReadingFlag flag) {
        Set<ReadingFlag> more = EnumSet.of(flag);
        more.addAll(flags);
        return withFlags(more);
    }

    /** The same with other flags. */
    PatchColour withFlags(Set<ReadingFlag> others) {
        return new PatchColour(
                patch,
                sheet,
                xyz,
                relative,
                evenedY,
                error,
                causes,
                codingStep,
                Set.copyOf(others));
    }

    private static Xyz relative(Xyz xyz, Xyz paper) {
        Xyz white = Xyz.PCS_WHITE;
        return new Xyz(
                xyz.x() / paper.x() * white.x(),
                xyz.y() / paper.y() * white.y(),
                xyz.z() / paper.z() * white.z());
    }

    /**
     * Through the transform by finite differences. Grain moves all channels together, noise each by
     * itself: L* takes the channels as moving together, a* and b* as independent, the larger of the
     * two for each.
     */
    private static LabError error(
            ScanColour colour, double[] rgb, PatchSample sample, LightFit light, int i) {
        Lab here = Lab.of(colour.toXyz(channels(rgb)), Xyz.PCS_WHITE);
        double l = 0;
        double a = 0;
        double b = 0;
        for (int c = 0; c < 3; c++) {
            double step = sample.standardError().channel(c) * light.gain()[c][i];
            if (!Double.isFinite(step)) {
                return new LabError(Double.NaN, Double.NaN, Double.NaN);
            }
            double[] moved = rgb.clone();
            moved[c] += step;
            Lab there = Lab.of(colour.toXyz(channels(moved)), Xyz.PCS_WHITE);
            l += Math.abs(there.l() - here.l());
            a = Math.hypot(a, there.a() - here.a());
            b = Math.hypot(b, there.b() - here.b());
        }
        return new LabError(l, a, b);
    }

    /**
     * Whether light from outside, or twice the standard error of what is known of it, changes a
     * colour by more than 1 dE00.
     */
    private static boolean lit(ScanColour colour, double[] rgb, LeakedLight leak, int i) {
        double[] added = column(leak.added(), i);
        double[] cause = column(leak.cause(), i);
        double[] with = rgb.clone();
        for (int c = 0; c < with.length; c++) {
            with[c] += Math.max(added[c], 2 * cause[c]);
        }
        Lab seen = Lab.of(colour.toXyz(channels(with)), Xyz.PCS_WHITE);
        return DeltaE.ciede2000(seen, Lab.of(colour.toXyz(channels(rgb)), Xyz.PCS_WHITE)) > 1;
    }

    /** Whether what coding may have lost, twice its standard deviation, is more than it may be. */
    private static boolean coarse(ScanColour colour, double[] rgb, List<double[]> lost) {
        Lab here = Lab.of(colour.toXyz(channels(rgb)), Xyz.PCS_WHITE);
        double squares = 0;
        for (double[] cause : lost) {
            double[] moved = rgb.clone();
            for (int c = 0; c < moved.length; c++) {
                moved[c] += 2 * cause[c];
            }
            Lab there = Lab.of(colour.toXyz(channels(moved)), Xyz.PCS_WHITE);
            squares += Math.pow(DeltaE.ciede2000(here, there), 2);
        }
        return squares > COARSE * COARSE;
    }

    /** Step in L* in which coding keeps the mean lightness of an even area of this colour. */
    private static double codingStep(ScanPart part, double[] rgb, LinearRgb sampled) {
        ScanColour colour = part.colour();
        double[] step = CodeErrors.meanStep(part, sampled);
        double[] moved = rgb.clone();
        for (int c = 0; c < moved.length; c++) {
            moved[c] += step[c];
        }
        Lab here = Lab.of(colour.toXyz(channels(rgb)), Xyz.PCS_WHITE);
        return Math.abs(Lab.of(colour.toXyz(channels(moved)), Xyz.PCS_WHITE).l() - here.l());
    }

    /** Through the transform by its slopes here; what coding lost comes last. */
    private static List<Lab> causes(
            ScanColour colour, double[] rgb, LightFit light, int i, List<double[]> lost) {
        Lab here = Lab.of(colour.toXyz(channels(rgb)), Xyz.PCS_WHITE);
        Lab[] slopes = new Lab[rgb.length];
        for (int c = 0; c < rgb.length; c++) {
            double[] moved = rgb.clone();
            double step = STEP * Math.max(STEP, rgb[c]);
            moved[c] += step;
            Lab there = Lab.of(colour.toXyz(channels(moved)), Xyz.PCS_WHITE);
            slopes[c] =
                    new Lab(
                            (there.l() - here.l()) / step,
                            (there.a() - here.a()) / step,
                            (there.b() - here.b()) / step);
        }
        List<Lab> causes = new ArrayList<>();
        for (double[][] cause : light.causes()) {
            causes.add(along(slopes, new double[] {cause[0][i], cause[1][i], cause[2][i]}));
        }
        for (double[] cause : lost) {
            causes.add(along(slopes, cause));
        }
        return causes;
    }

    private static Lab along(Lab[] slopes, double[] moved) {
        double l = 0;
        double a = 0;
        double b = 0;
        for (int c = 0; c < moved.length; c++) {
            l += slopes[c].l() * moved[c];
            a += slopes[c].a() * moved[c];
            b += slopes[c].b() * moved[c];
        }
        return new Lab(l, a, b);
    }

    private static double[] column(double[][] values, int i) {
        return new double[] {values[0][i], values[1][i], values[2][i]};
    }

    private static LinearRgb channels(double[] rgb) {
        return new LinearRgb(rgb[0], rgb[1], rgb[2]);
    }
}
