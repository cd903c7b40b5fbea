package org.printassay.calibrate.part;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.ToDoubleFunction;
import org.printassay.calibrate.codes.CodeErrors;
import org.printassay.colour.Lab;
import org.printassay.colour.LinearRgb;
import org.printassay.colour.Rgb8;
import org.printassay.colour.Xyz;
import org.printassay.reading.ReadingFlag;
import org.printassay.reading.Trust;
import org.printassay.reading.WarningCode;
import org.printassay.robust.Median;
import org.printassay.sample.PatchSample;
import org.printassay.sample.SheetSamples;

/**
 * The part of {@link ScanHealth} that looks at paper and black: where exposure put them in the
 * range, and what the profile makes of them.
 */
final class RangeHealth {
    /** Paper this near the end of the range, in all channels, was put there. */
    private static final double FULL = 0.992;

    /** The same where it is exactly neutral too. */
    private static final double NEARLY_FULL = 0.975;

    /** Channels of paper that differ by less, in code, are made equal: paper has a tint. */
    private static final double NEUTRAL = 0.0015;

    /** Black this near the other end, in all channels, was put there. */
    private static final double EMPTY = 0.008;

    /** Linear codes hold deep blacks below that: light of L* 1, less than any print has. */
    private static final double NO_LIGHT = 0.0011;

    /** A clipped patch with this much light in some channel is clipped at the light end. */
    private static final double HIGH = 0.9;

    /** No paper is lighter than the perfect diffuser by much, brighteners included. */
    private static final double BRIGHTEST_Y = 103;

    /** Nor does a scanner's lamp show any quite as light (L* 99; common practice, no source). */
    private static final double LIGHTEST_Y = 97.5;

    /** Even on uncoated newsprint black is darker than this L* (common practice, no source). */
    private static final double PALEST_BLACK = 40;

    /** Papers are less coloured than this; so are greys of a usable print. */
    private static final double PAPER_CHROMA = 14;

    private static final double GREY_CHROMA = 20;

    /** Where bare margin and windows differ by more than this share of light, ink is in one. */
    private static final double INKED = 0.03;

    private final PartResult result;
    private final SheetSamples samples;
    private final HealthNotes notes;

    private RangeHealth(PartResult result, HealthNotes notes) {
        this.result = result;
        this.samples = result.part().samples();
        this.notes = notes;
    }

    /** Adds what there is to say. */
    static void note(PartResult result, HealthNotes notes) {
        RangeHealth health = new RangeHealth(result, notes);
        health.range();
        health.profile();
        health.margin();
    }

    /** Whether black was put at the very end of the range, or what is darkest was. */
    static boolean blackMoved(PartResult result) {
        return result.part().samples().census().stretched()
                || new RangeHealth(result, new HealthNotes(result.part().samples().scan()))
                        .blackAtTheEnd();
    }

    private boolean paperAtTheEnd() {
        double[] paper = codes(Rgb8.grey(255));
        return paper.length > 0 && Arrays.stream(paper).min().orElseThrow() > FULL;
    }

    private boolean blackAtTheEnd() {
        double[] black = codes(Rgb8.grey(0));
        return black.length > 0
                && Arrays.stream(black).max().orElseThrow() < EMPTY
                && mostLight(Rgb8.grey(0)) < NO_LIGHT;
    }

    /** Both ends of the range: clipped patches, and ends that were put where they are. */
    private void range() {
        double[] paper = codes(Rgb8.grey(255));
        if (paper.length == 0) {
            return;
        }
        double least = Arrays.stream(paper).min().orElseThrow();
        double most = Arrays.stream(paper).max().orElseThrow();
        boolean full = paperAtTheEnd();
        boolean empty = blackAtTheEnd();
        if (full) {
            notes.add(
                    WarningCode.AUTOMATIC_EXPOSURE,
                    "paper is at the very end of the range%s: automatic exposure or contrast is on,"
                            + " or the exposure is too high. Switch automatic corrections off.",
                    empty ? " and black at the other" : "");
        } else if (empty) {
            notes.add(
                    WarningCode.AUTOMATIC_EXPOSURE,
                    "black is at the very end of the range: automatic contrast or a black point is"
                            + " set. Switch automatic corrections off.");
        } else if (result.blackCut()) {
            notes.add(
                    WarningCode.AUTOMATIC_EXPOSURE,
                    "black reads darker than any print is: automatic contrast is on or a black point"
                            + " is set, and shadows are lost. Switch automatic corrections off.");
        } else if (samples.census().stretched()) {
            notes.add(
                    WarningCode.AUTOMATIC_EXPOSURE,
                    "a few pixels of every channel lie at both ends of the range, each channel's at"
                            + " other places: automatic exposure or contrast stretched the channels"
                            + " to the full range. Black and shadows read too dark, and paper too"
                            + " light. Switch automatic corrections off.");
        }
        balance(paper, most, least);
        clipped();
    }

    /** Whether the channels were set against each other. */
    private void balance(double[] paper, double most, double least) {
        // Lossy coding rounds the slight tints of light papers to grey, and clipping loses all.
        boolean lost = samples.scan().coding().isPresent() || result.paperClipped();
        if (!lost && paper.length == 3 && most - least < NEUTRAL && least > NEARLY_FULL) {
            notes.add(
                    WarningCode.AUTOMATIC_COLOUR,
                    "paper is exactly neutral and nearly white, which real papers seldom are:"
                            + " automatic colour or white balance seems to be on. Switch it off;"
                            + " paper tint and casts are doubtful.");
        } else if (!result.part().colour().grey() && PaperBalance.of(result.part()).exact()) {
            notes.add(
                    WarningCode.AUTOMATIC_COLOUR,
                    "paper has the same code in all channels, which few papers have by themselves:"
                            + " automatic colour or white balance may be on. Switch it off; unless"
                            + " this paper is quite neutral, its tint and casts are doubtful.");
        } else if (samples.census().stretched()) {
            notes.add(
                    WarningCode.AUTOMATIC_COLOUR,
                    "each channel was stretched to the full range by itself, which moves the balance"
                            + " of colours: paper tint and casts are doubtful. Switch automatic"
                            + " colour and contrast off.");
        }
    }

    private void clipped() {
        long paper = 0;
        long dark = 0;
        for (PatchSample sample : samples.samples()) {
            if (sample.flags().contains(ReadingFlag.CLIPPED)) {
                LinearRgb light = sample.linear();
                boolean high = Math.max(light.r(), Math.max(light.g(), light.b())) > HIGH;
                paper += high ? 1 : 0;
                dark += high ? 0 : 1;
            }
        }
        if (result.paperClipped()) {
            notes.add(
                    WarningCode.CLIPPED,
                    "paper is clipped at the light end (%d patches): paper white and highlights"
                            + " cannot be judged. Lower the exposure, with automatic corrections"
                            + " off.",
                    paper);
        } else if (paper > 0 && 50 * paper > samples.samples().size()) {
            notes.add(
                    WarningCode.CLIPPED,
                    "%d patches are clipped at the light end. Lower the exposure, or let the scanner deliver a"
                            + " wider colour space.",
                    paper);
        }
        if (dark > 0 && 50 * dark > samples.samples().size()) {
            notes.add(
                    WarningCode.CLIPPED,
                    "%d dark patches are clipped at the dark end: what they hold is lost. Lower the"
                            + " scanner's black point.",
                    dark);
        }
    }

    /** Median code, 0-1, of the patches of one printed code in each channel; empty without any. */
    private double[] codes(Rgb8 printed) {
        List<PatchSample> of =
                samples.samples().stream().filter(s -> s.patch().rgb().equals(printed)).toList();
        if (of.isEmpty()) {
            return new double[0];
        }
        double[] codes = new double[samples.scan().channels() == 1 ? 1 : 3];
        for (int c = 0; c < codes.length; c++) {
            int channel = codes.length == 1 ? 1 : c;
            codes[c] =
                    CodeErrors.codeOf(
                            result.part().colour().codeLight().curve(channel),
                            median(of, s -> s.linear().channel(channel)));
        }
        return codes;
    }

    /** Median light of the patches of one printed code in the channel that has most. */
    private double mostLight(Rgb8 printed) {
        List<PatchSample> of =
                samples.samples().stream().filter(s -> s.patch().rgb().equals(printed)).toList();
        double most = 0;
        for (int c = 0; c < 3; c++) {
            int channel = c;
            most = Math.max(most, median(of, s -> s.linear().channel(channel)));
        }
        return most;
    }

    private static double median(List<PatchSample> samples, ToDoubleFunction<PatchSample> of) {
        return Median.of(samples.stream().mapToDouble(of).toArray());
    }

    /** A profile that does not belong to the scan makes paper or greys that no print has. */
    private void profile() {
        if (!result.part().colour().trust().absolute() || result.part().colour().grey()) {
            return;
        }
        double[] paper = result.light().paper();
        Xyz xyz = result.part().colour().toXyz(new LinearRgb(paper[0], paper[1], paper[2]));
        Lab white = Lab.of(xyz, Xyz.PCS_WHITE);
        double grey =
                result.colours().stream()
                        .filter(colour -> colour.patch().rgb().isNeutral())
                        .map(colour -> Lab.of(colour.xyz(), Xyz.PCS_WHITE))
                        .filter(lab -> lab.l() > 35 && lab.l() < 75)
                        .mapToDouble(lab -> Math.hypot(lab.a() - white.a(), lab.b() - white.b()))
                        .sorted()
                        .skip(4)
                        .findFirst()
                        .orElse(0);
        if (xyz.y() > BRIGHTEST_Y || white.chroma() > PAPER_CHROMA || grey > GREY_CHROMA) {
            // Greys on coloured paper lean from its colour to none.
            boolean ofPaper =
                    xyz.y() <= BRIGHTEST_Y
                            && white.chroma() > PAPER_CHROMA
                            && grey <= Math.max(GREY_CHROMA, white.chroma());
            notes.add(
                    WarningCode.PROFILE_DOUBTFUL,
                    "by its profile paper is L* %.1f, a* %.1f, b* %.1f and greys lean by %.0f, which"
                            + " hardly a print does: %sthe profile seems to be another scanner's, or"
                            + " the exposure was not what it was made with.",
                    white.l(),
                    white.a(),
                    white.b(),
                    grey,
                    ofPaper ? "unless the paper is so coloured, " : "");
        } else if (paleBlack().isPresent()) {
            notes.add(
                    WarningCode.PROFILE_DOUBTFUL,
                    "by its profile black is L* %.0f, paler than a print's: unless the ink ran out,"
                            + " the profile seems to be another scanner's, or a curve lies over the"
                            + " scan.",
                    paleBlack().getAsDouble());
        } else if (xyz.y() > LIGHTEST_Y
                && result.part().colour().trust() == Trust.PROFILED_SCAN
                && !paperAtTheEnd()
                && !blackMoved(result)
                && !result.blackCut()) {
            notes.add(
                    WarningCode.AUTOMATIC_EXPOSURE,
                    "by its profile paper is L* %.1f, lighter than papers are: automatic exposure or"
                            + " contrast seems to be on, or the exposure was not what the profile was"
                            + " made with. Switch automatic corrections off.",
                    white.l());
        }
    }

    /** L* of a black that is paler than that of a print; empty where it is not. */
    private OptionalDouble paleBlack() {
        PartResult.Blacks blacks = result.blacks();
        return blacks == null
                        || blacks.corrected() <= PALEST_BLACK
                        || result.part().colour().trust() != Trust.PROFILED_SCAN
                ? OptionalDouble.empty()
                : OptionalDouble.of(blacks.corrected());
    }

    /** Windows in the picture against the bare margin. */
    private void margin() {
        Optional<double[]> differences = MarginLight.overWindows(samples, result.light());
        if (differences.isEmpty()) {
            return;
        }
        double most = 0;
        for (double ratio : differences.get()) {
            most = Math.max(most, ratio - 1);
        }
        if (most > INKED) {
            notes.add(
                    WarningCode.WINDOWS_INKED,
                    "the bare margin is %.1f %% lighter than the windows of code 255: the printer puts"
                            + " ink on white. Paper white is that of the windows.",
                    100 * most);
        }
    }
}
