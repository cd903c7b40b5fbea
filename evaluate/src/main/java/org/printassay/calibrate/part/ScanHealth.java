package org.printassay.calibrate.part;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import org.printassay.calibrate.codes.PatchColour;
import org.printassay.calibrate.codes.ToneEdit;
import org.printassay.calibrate.light.LeakedLight;
import org.printassay.calibrate.outlier.TwinScatter;
import org.printassay.colour.Rgb8;
import org.printassay.reading.ReadingFlag;
import org.printassay.reading.Warning;
import org.printassay.reading.WarningCode;
import org.printassay.sample.EdgeProfile;
import org.printassay.sample.PatchSample;
import org.printassay.sample.SheetSamples;
import org.printassay.scan.LossyCoding;
import org.printassay.scan.ScanInfo;
import org.printassay.sheet.PointMm;

/**
 * Settings of a scanner that spoil a measurement, told from what they leave in the scan. Each
 * warning names the setting. Limits are such that good scans of many kinds stay without one (see
 * the tests); what they are based on is written beside them.
 */
public final class ScanHealth {
    /** Halo beside an edge, share of its step. A lens alone makes none. */
    private static final double HALO = 0.025;

    /** A sharp scanner draws an edge in less: blur of 100 um makes 0.26 mm. */
    private static final double BLURRED_MM = 0.35;

    private static final double BLURRED_PIXELS = 2.5;

    /** Lossy coding at and above this quality moves no patch by more than about 0.5 dE00. */
    private static final int GOOD_QUALITY = 93;

    private static final int POOR_QUALITY = 80;

    /** Share of patches with dust from which the glass wants cleaning. */
    private static final double DUSTY_SHARE = 0.05;

    /** Share of them that straight lines cross from which it is no dust. */
    private static final double MOSTLY = 0.5;

    private static final Rgb8 BARE = Rgb8.grey(255);

    /** So many bare patches that lines cross are no chance (common practice, no source). */
    private static final int FEWEST_BARE = 2;

    /** Where lines would cross so many bare patches and do none, they are of ink (likewise). */
    private static final double EXPECTED_BARE = 5;

    /** So many places are named. */
    private static final int PLACES = 6;

    private static final String LOOK =
            " Look there for marks, smudges or damage, clean, and scan again; or print anew.";

    private final PartResult result;
    private final SheetSamples samples;
    private final ScanInfo info;
    private final HealthNotes notes;

    private ScanHealth(PartResult result, HealthNotes notes) {
        this.result = result;
        this.samples = result.part().samples();
        this.info = samples.scan();
        this.notes = notes;
    }

    public static List<Warning> of(PartResult result) {
        HealthNotes notes = new HealthNotes(result.part().samples().scan());
        ScanHealth health = new ScanHealth(result, notes);
        health.coding();
        health.edges();
        health.dust();
        health.twins();
        health.scatter();
        health.disturbed();
        health.lit();
        health.lone();
        RangeHealth.note(result, notes);
        return notes.warnings();
    }

    private void coding() {
        if (info.bits() == 8) {
            notes.add(
                    WarningCode.EIGHT_BIT,
                    "8 bits a channel: shadow levels fall together. Scan with 16 bits (48-bit"
                            + " colour).");
        } else if (ToneEdit.disguised(samples)) {
            notes.add(
                    WarningCode.EIGHT_BIT,
                    "only 8 of its 16 bits are used: shadow levels fall together. Let the scanner"
                            + " itself deliver 16 bits, and do not convert afterwards.");
        }
        gaps();
        if (info.lossy()) {
            lossy(info.coding());
        }
    }

    private void gaps() {
        if (ToneEdit.afterwards(samples)) {
            notes.add(
                    WarningCode.HISTOGRAM_GAPS,
                    "it has no more tones than 8 bits hold, at other codes: it was brought to 8 bits"
                            + " and its tones were changed afterwards, so tone and the levels that"
                            + " show are doubtful. Switch automatic contrast and curves off, and do"
                            + " not edit the scan.");
        } else if (samples.census().merged()) {
            notes.add(
                    WarningCode.HISTOGRAM_GAPS,
                    "it has few tones, far apart: %.0f %% of the codes in its range never occur, so"
                            + " tone and the levels that show are doubtful. Scan in full colour, with"
                            + " 16 bits (48-bit colour), and do not edit the scan.",
                    100 * samples.census().gaps());
        } else if (ToneEdit.everywhere(samples)) {
            notes.add(
                    WarningCode.HISTOGRAM_GAPS,
                    "%.0f %% of the codes in its range never occur: its tones were stretched in 8"
                            + " bits, so tone and the levels that show are doubtful. Switch"
                            + " automatic contrast and curves off, and do not edit the scan.",
                    100 * samples.census().gaps());
        } else if (ToneEdit.inAThird(samples)) {
            notes.add(
                    WarningCode.HISTOGRAM_GAPS,
                    "%.0f %% of the codes in a third of its range never occur: a curve was laid over"
                            + " it in 8 bits (brightness, contrast, gamma), so tone and the levels"
                            + " that show are doubtful. Switch automatic contrast and curves off, and"
                            + " do not edit the scan.",
                    100 * samples.census().gapsInAThird());
        }
    }

    private void lossy(Optional<LossyCoding> coding) {
        if (coding.isEmpty()) {
            notes.add(
                    WarningCode.LOSSY,
                    "it was compressed with loss, how strongly it does not say; fine differences of"
                            + " dark colours are blurred. Save scans as TIFF or PNG without loss.");
            return;
        }
        int quality = coding.get().quality();
        if (quality >= GOOD_QUALITY) {
            return;
        }
        notes.add(
                WarningCode.LOSSY,
                quality >= POOR_QUALITY
                        ? "it was compressed with loss (quality about %d), which blurs fine"
                                + " differences of dark colours. Save scans as TIFF or PNG."
                        : "it was compressed with much loss (quality about %d): dark colours and"
                                + " casts are uncertain. Scan again to TIFF or PNG.",
                quality);
    }

    private void edges() {
        EdgeProfile edges = samples.edges();
        double pixels = edges.widthMm() * samples.located().placement().samplesPerMm();
        if (edges.overshoot() > HALO) {
            notes.add(
                    WarningCode.SHARPENED,
                    "edges have halos of %.0f %%: sharpening is on. Switch it off (unsharp mask,"
                            + " sharpness, detail).",
                    100 * edges.overshoot());
        }
        OptionalDouble period = samples.enlargement();
        if (period.isPresent()) {
            notes.add(
                    WarningCode.UPSAMPLED,
                    "its pixels were computed between others (in a period of %.2f pixels): the scanner"
                            + " was set to a resolution that its optics do not have, or the scan was"
                            + " enlarged. That adds no detail: choose a resolution that the scanner"
                            + " has, and do not resize.",
                    period.getAsDouble());
        } else if (edges.widthMm() > BLURRED_MM && pixels > BLURRED_PIXELS) {
            notes.add(
                    WarningCode.BLURRED,
                    "edges are %.2f mm wide, as of a scan at %.0f samples an inch. Switch descreening"
                            + " and noise reduction off, lay the sheet flat on clean glass. If other"
                            + " prints scan sharp, ink spreads in this paper.",
                    edges.widthMm(),
                    25.4 / edges.widthMm());
        }
    }

    private void dust() {
        List<PatchSample> dusty =
                samples.samples().stream()
                        .filter(sample -> sample.flags().contains(ReadingFlag.DUSTY))
                        .toList();
        if (dusty.size() <= DUSTY_SHARE * samples.samples().size()) {
            return;
        }
        long crossed = dusty.stream().filter(PatchSample::crossed).count();
        int all = samples.samples().size();
        if (crossed >= MOSTLY * dusty.size()) {
            notes.add(
                    WarningCode.DUSTY,
                    "%d of %d patches are crossed by straight lines along the page%s; they were left"
                            + " out where twins allow. %s",
                    crossed,
                    all,
                    crossed == dusty.size()
                            ? ""
                            : ", and " + (dusty.size() - crossed) + " have dust on them",
                    whose());
        } else {
            notes.add(
                    WarningCode.DUSTY,
                    "%d of %d patches have dust, hairs or scratches on them; they were left out where"
                            + " twins allow. Clean glass and print, and scan again.",
                    dusty.size(),
                    all);
        }
    }

    /** Whose lines are, by whether they cross bare patches as often as others. */
    private String whose() {
        int bare = 0;
        int onBare = 0;
        int inked = 0;
        int onInk = 0;
        for (PatchSample sample : samples.samples()) {
            boolean crossed = sample.crossed() && sample.flags().contains(ReadingFlag.DUSTY);
            if (!sample.patch().rgb().equals(BARE)) {
                inked++;
                onInk += crossed ? 1 : 0;
            } else if (!sample.flags().contains(ReadingFlag.CLIPPED)) {
                bare++;
                onBare += crossed ? 1 : 0;
            }
        }
        double expected = inked == 0 ? 0 : (double) bare * onInk / inked;
        if (onBare >= FEWEST_BARE && onBare >= MOSTLY * expected) {
            return "They cross bare paper too, so they are the scanner's: clean its glass, the"
                    + " narrow one too if it has one, let it calibrate itself, and scan again.";
        }
        return onBare == 0 && expected >= EXPECTED_BARE
                ? "Bare paper has none, so they are the printer's: some nozzles miss or leave their"
                        + " way. Print its nozzle check."
                : "Some nozzles of the printer may miss or leave their way: print its nozzle check."
                        + " If the lines go on over bare paper, clean the scanner's glass.";
    }

    /**
     * Patches that something covers evenly, or that the printer drew otherwise than their twins.
     */
    private void twins() {
        List<PatchColour> unlike = flagged(ReadingFlag.UNLIKE_TWINS);
        if (!unlike.isEmpty()) {
            notes.add(
                    WarningCode.UNLIKE_TWINS,
                    "%s from others of the same code by more than the print and the scan vary: %s."
                            + LOOK,
                    unlike.size() == 1 ? "1 patch differs" : unlike.size() + " patches differ",
                    places(unlike));
        }
    }

    /** Twins that lie apart everywhere; none is the odd one then. */
    private void scatter() {
        int scattered = flagged(ReadingFlag.SCATTERED).size();
        if (scattered == 0) {
            return;
        }
        TwinScatter scatter = TwinScatter.of(result.colours());
        String pattern =
                "patches of one code differ over the sheet by %s (dE00, root mean square), where"
                        + " scans and prints in order differ by some tenths. Means of many patches"
                        + " are sure as stated, single ones are not: %d are flagged. ";
        if (scatter.onPaper()) {
            notes.add(
                    WarningCode.SCANNER_UNEVEN,
                    pattern
                            + "Bare paper differs too, so it is hardly the ink: lay the print flat,"
                            + " clean the scanner's glass, let it warm up and calibrate itself, and"
                            + " scan again.",
                    scatter.words(),
                    scattered);
        } else {
            notes.add(
                    WarningCode.SCATTERED,
                    pattern
                            + "Lay the print flat and scan again, turned by 180 degrees: what stays"
                            + " with the print is its own.",
                    scatter.words(),
                    scattered);
        }
    }

    /** Parts of the sheet that something changes. */
    private void disturbed() {
        List<PatchColour> disturbed = flagged(ReadingFlag.DISTURBED);
        if (!disturbed.isEmpty()) {
            notes.add(
                    WarningCode.DISTURBED,
                    "%s in parts of the sheet that read otherwise than the same colours elsewhere: %s."
                            + " Look there for a stain, a fold or light from outside, and scan again; or"
                            + " print anew.",
                    disturbed.size() == 1 ? "1 patch lies" : disturbed.size() + " patches lie",
                    places(disturbed));
        }
    }

    private void lit() {
        Optional<LeakedLight> leak = result.light().leak();
        if (leak.isEmpty()) {
            return;
        }
        int lit = flagged(ReadingFlag.LIT).size();
        String patches = lit == 1 ? "1 patch is" : lit + " patches are";
        double percent = 100 * leak.get().largest(result.light().paper());
        if (leak.get().sure()) {
            notes.add(
                    WarningCode.LEAKED_LIGHT,
                    "light came in at the %s of the page (as printed), up to %.1f %% of paper; it was"
                            + " taken off as far as it is known, and %s flagged. Close the"
                            + " lid or cover it, and scan again.",
                    leak.get().words(),
                    percent,
                    patches);
        } else {
            notes.add(
                    WarningCode.LEAKED_LIGHT,
                    "dark patches at the %s of the page (as printed) read lighter, by up to %.1f %% of"
                            + " paper: light came in, or less ink lies there. It was taken off as if it"
                            + " were light, and %s flagged. Cover the lid, turn the print by"
                            + " 180 degrees and scan again: light stays where it is, the print turns.",
                    leak.get().words(),
                    percent,
                    patches);
        }
    }

    /** Colours without twins that something covers evenly, or that the printer got wrong. */
    private void lone() {
        List<PatchColour> far = flagged(ReadingFlag.OUT_OF_LINE);
        if (!far.isEmpty()) {
            notes.add(
                    WarningCode.OUT_OF_LINE,
                    "%s far from what colours near %s in RGB lead one to expect: %s."
                            + LOOK
                            + " If there is nothing to see, the print itself makes such colours unlike"
                            + " their neighbours. They count neither for colours nor for the gamut.",
                    far.size() == 1 ? "1 patch is" : far.size() + " patches are",
                    far.size() == 1 ? "it" : "them",
                    places(far));
        }
    }

    private List<PatchColour> flagged(ReadingFlag flag) {
        return result.colours().stream().filter(colour -> colour.flags().contains(flag)).toList();
    }

    private static String places(List<PatchColour> patches) {
        return patches.stream()
                        .limit(PLACES)
                        .map(colour -> place(colour.patch().area().centre()))
                        .collect(Collectors.joining(", "))
                + (patches.size() > PLACES ? " and more" : "")
                + " (mm from the left and the top of the page)";
    }

    private static String place(PointMm at) {
        return String.format(Locale.ROOT, "%.0f/%.0f", at.x(), at.y());
    }
}
