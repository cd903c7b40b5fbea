package org.printassay.evaluation;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import org.printassay.surface.Along;
import org.printassay.surface.FoundBand;
import org.printassay.surface.FoundLine;
import org.printassay.surface.SwathPattern;

/** Findings about lines, bands, grain and vignettes. */
final class SurfaceFindings {
    private static final double GOOD_NEWS = 0.45;

    /** Lines run through every picture: from here on, by how wide and strong they are. */
    private static final double ANY_LINE = 3.5;

    private static final double PER_CONTRAST_MM = 200;
    private static final double MOST_FOR_A_LINE = 6;
    private static final double ANY_BAND = 2.5;
    private static final double MOST_FOR_A_BAND = 3.5;
    private static final double STEP_IN_A_GRADIENT = 2;

    /** Grain in mid-tones that is seen without looking for it (common practice, no source). */
    private static final double GRAINY = 1.5;

    private static final String MAY_BE_THE_SCANNERS =
            " They may be the scanner's: scan the sheet once more, turned by a quarter.";

    private static final String FEED_UNKNOWN =
            " Say with --feed which way the sheet ran: what runs along the feed comes from rollers.";

    private final PrintSurface surface;
    private final List<WedgeFindings.Weighed> found = new ArrayList<>();

    private SurfaceFindings(PrintSurface surface) {
        this.surface = surface;
    }

    static List<WedgeFindings.Weighed> of(@Nullable PrintSurface surface) {
        if (surface == null) {
            return List.of();
        }
        SurfaceFindings findings = new SurfaceFindings(surface);
        findings.lines();
        findings.bands();
        findings.grain();
        findings.vignettes();
        return findings.found;
    }

    private void add(double weight, String topic, String text, String sure, String advice) {
        found.add(new WedgeFindings.Weighed(weight, new Finding(topic, text, sure, advice)));
    }

    private void lines() {
        List<PrintLine> lines = surface.lines();
        List<PrintBand> bands = surface.bands();
        if (lines == null || bands == null) {
            return;
        }
        boolean seen = bands.stream().anyMatch(band -> band.band().visible());
        if (lines.isEmpty() && !seen) {
            add(
                    GOOD_NEWS,
                    "lines",
                    "No lines and no visible bands were found.",
                    "In long tints, by lines that cross them.",
                    "");
        }
        if (lines.isEmpty()) {
            return;
        }
        List<PrintLine> sure =
                lines.stream().filter(line -> line.cause() == SurfaceCause.PRINT).toList();
        if (sure.isEmpty()) {
            maybeLines(lines);
            return;
        }
        PrintLine strongest = strongest(sure);
        FoundLine line = strongest.line();
        String text =
                sure.size() == 1
                        ? say("A %s line runs %s.", line.polarity(), place(line))
                        : say(
                                "%d lines; the strongest, a %s one, runs %s.",
                                sure.size(), line.polarity(), place(line));
        int others = lines.size() - sure.size();
        add(
                ANY_LINE + Math.min(MOST_FOR_A_LINE, PER_CONTRAST_MM * line.strength()),
                "lines",
                text,
                shape(line)
                        + (others == 0
                                ? ""
                                : say(" %d more may be the print's or the scanner's.", others)),
                advice(strongest));
    }

    /** Lines that may be the scanner's: half of what they would be worth, and no advice to clean. */
    private void maybeLines(List<PrintLine> lines) {
        FoundLine line = strongest(lines).line();
        String others =
                lines.size() == 1 ? "" : say(" %d such lines in all.", lines.size());
        add(
                (ANY_LINE + Math.min(MOST_FOR_A_LINE, PER_CONTRAST_MM * line.strength())) / 2,
                "lines",
                say(
                        "Whether a %s line %s is the print's or the scanner's cannot be told.",
                        line.polarity(), place(line)),
                shape(line) + others,
                "Scan the sheet once more, turned by half: what turns with it is the print's.");
    }

    private static PrintLine strongest(List<PrintLine> lines) {
        return lines.stream()
                .max(Comparator.comparingDouble((PrintLine l) -> l.line().strength()))
                .orElseThrow();
    }

    private static String place(FoundLine line) {
        return say(
                "%s the page, %.1f mm from the %s edge",
                line.along() == Along.Y ? "across" : "down",
                line.positionMm(),
                line.along().edge());
    }

    private static String shape(FoundLine line) {
        return say(
                "%.2f mm wide, %.0f %% %s than its tint; %s.",
                line.widthMm(),
                100 * Math.abs(line.contrast()),
                line.contrast() > 0 ? "lighter" : "darker",
                line.shows().size() == 1
                        ? "one tint shows it"
                        : line.shows().size() + " tints show it");
    }

    private String advice(PrintLine strongest) {
        FoundLine line = strongest.line();
        SwathPattern pattern = surface.pattern();
        String repeats =
                pattern == null
                        ? ""
                        : say(
                                "%d of them repeat every %.1f mm, as one nozzle does from swath to"
                                        + " swath. ",
                                pattern.lines(), pattern.periodMm());
        if (surface.feed() != null && surface.feed() != line.along()) {
            return repeats + "It runs along the feed: look for rollers and guides, not nozzles.";
        }
        String inks =
                strongest.inks().isEmpty()
                        ? ""
                        : " (suspect: " + String.join(", ", strongest.inks()) + ")";
        return repeats
                + (line.contrast() > 0
                        ? "Clean the nozzles" + inks + ", then print this sheet again."
                        : "Align the heads and clean the nozzles"
                                + inks
                                + ": a jet that leaves its way prints dark lines.")
                + (surface.feed() == null ? FEED_UNKNOWN : "");
    }

    private void bands() {
        List<PrintBand> bands = surface.bands();
        if (bands == null || bands.stream().noneMatch(band -> band.band().visible())) {
            return;
        }
        FoundBand band = bands.get(0).band();
        boolean undecided = bands.get(0).cause() == SurfaceCause.UNDECIDED;
        boolean acrossFeed = surface.feed() != null && surface.feed() != band.along();
        String axis =
                surface.feed() == band.along()
                        ? "along the feed"
                        : band.along() == surface.longSide()
                                ? "along the long side"
                                : "along the short side";
        add(
                ANY_BAND + Math.min(MOST_FOR_A_BAND, band.overThreshold() / 3),
                "bands",
                say("Bands repeat every %.1f mm %s.", band.periodMm(), axis),
                say(
                                "+-%.1f L*, %.1f times what an eye sees at %.0f mm and %.0f lx.",
                                band.amplitudeDeltaL(),
                                band.overThreshold(),
                                surface.viewing().distanceMm(),
                                surface.viewing().illuminanceLux())
                        + (undecided ? MAY_BE_THE_SCANNERS : ""),
                acrossFeed
                        ? "It varies across the feed: look at how the head travels, or align the heads."
                        : "Adjust the paper feed in the driver, or print with more passes."
                                + (surface.feed() == null ? FEED_UNKNOWN : ""));
    }

    private void grain() {
        PrintSurface.Grain grain = surface.grain();
        if (grain == null || grain.midtones() == null || grain.midtones().graininess() < GRAINY) {
            return;
        }
        add(
                1 + Math.min(2, grain.midtones().graininess() / GRAINY - 1),
                "grain",
                say("Mid-tones are grainy: %.1f L*.", grain.midtones().graininess()),
                "Standard deviation of fine unevenness, the paper's own taken off.",
                "Choose a finer quality in the driver, or check the paper setting.");
    }

    private void vignettes() {
        List<PrintSurface.Vignette> vignettes = surface.vignettes();
        if (vignettes == null) {
            return;
        }
        PrintSurface.Step largest = null;
        int count = 0;
        for (PrintSurface.Vignette vignette : vignettes) {
            for (PrintSurface.Step step : vignette.steps()) {
                count++;
                if (largest == null || Math.abs(step.deltaL()) > Math.abs(largest.deltaL())) {
                    largest = step;
                }
            }
        }
        if (largest != null) {
            add(
                    STEP_IN_A_GRADIENT,
                    "vignettes",
                    say("Smooth gradients break into a step near level %.0f.", largest.level()),
                    say(
                            "%.1f L* within half a millimetre; %d %s in all.",
                            Math.abs(largest.deltaL()), count, count == 1 ? "step" : "steps"),
                    "Use a 16 bit file and another profile or quality setting.");
        }
    }

    private static String say(String format, Object... values) {
        return String.format(Locale.ROOT, format, values);
    }
}
