package org.printassay.evaluation;

import static org.printassay.evaluation.Say.say;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.printassay.surface.Along;
import org.printassay.surface.FoundBand;
import org.printassay.surface.FoundLine;
import org.printassay.surface.SwathPattern;

/** Findings about lines, bands, grain and vignettes. */
final class SurfaceFindings {
    /** Grain in mid-tones that is seen without looking for it (common practice, no source). */
    private static final double GRAINY = 1.5;

    private static final String FEED_UNKNOWN =
            " Say with --feed which way the sheet ran: what runs along the feed comes from rollers.";

    private final PrintSurface surface;
    private final List<Weighed> found = new ArrayList<>();

    private SurfaceFindings(PrintSurface surface) {
        this.surface = surface;
    }

    static List<Weighed> of(@Nullable PrintSurface surface) {
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

    private void lines() {
        List<PrintLine> lines = surface.lines();
        List<PrintBand> bands = surface.bands();
        if (lines == null || bands == null) {
            return;
        }
        boolean seen = bands.stream().anyMatch(band -> band.band().visible());
        if (lines.isEmpty() && !seen) {
            found.add(
                    FindingKind.NO_LINES.weighed(
                            "lines",
                            "No lines and no visible bands were found.",
                            "In long tints, by lines that cross them.",
                            ""));
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
        String more = others == 0 ? "" : say(" %d more may be the scanner's.", others);
        found.add(
                FindingKind.LINES.weighed(
                        line.strength(), "lines", text, shape(line) + more, advice(strongest)));
    }

    /** Lines that may be the scanner's are no reason to clean anything. */
    private void maybeLines(List<PrintLine> lines) {
        FoundLine line = strongest(lines).line();
        String others = lines.size() == 1 ? "" : say(" %d such lines in all.", lines.size());
        found.add(
                FindingKind.LINES_UNSURE.weighed(
                        line.strength(),
                        "lines",
                        say(
                                "Whether a %s line %s is the print's or the scanner's cannot be"
                                        + " told.",
                                line.polarity(), place(line)),
                        shape(line) + others,
                        "Scan the sheet once more, turned by half: what turns with it is the"
                                + " print's."));
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
                "%.2f mm wide, %s %s than its tint; %s.",
                line.widthMm(),
                LineWords.amount(line),
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
        if (bands == null) {
            return;
        }
        List<PrintBand> visible = bands.stream().filter(b -> b.band().visible()).toList();
        PrintBand sure =
                visible.stream()
                        .filter(b -> b.cause() == SurfaceCause.PRINT)
                        .findFirst()
                        .orElse(null);
        if (sure != null) {
            FoundBand band = sure.band();
            found.add(
                    FindingKind.BANDS.weighed(
                            band.overThreshold(),
                            "bands",
                            say("Bands repeat every %.1f mm %s.", band.periodMm(), axis(band)),
                            size(band),
                            bandAdvice(band)));
        } else if (!visible.isEmpty()) {
            FoundBand band = visible.get(0).band();
            found.add(
                    FindingKind.BANDS_UNSURE.weighed(
                            band.overThreshold(),
                            "bands",
                            say(
                                    "Whether bands every %.1f mm %s are the print's or the scanner's"
                                            + " cannot be told.",
                                    band.periodMm(), axis(band)),
                            size(band),
                            "Scan the sheet once more, turned by a quarter: what turns with it is"
                                    + " the print's."));
        }
    }

    private String axis(FoundBand band) {
        if (surface.feed() == band.along()) {
            return "along the feed";
        }
        return band.along() == surface.longSide() ? "along the long side" : "along the short side";
    }

    private String size(FoundBand band) {
        return say(
                "± %.1f L*, %.1f times what an eye sees at %.0f mm and %.0f lx.",
                band.amplitudeDeltaL(),
                band.overThreshold(),
                surface.viewing().distanceMm(),
                surface.viewing().illuminanceLux());
    }

    private String bandAdvice(FoundBand band) {
        boolean acrossFeed = surface.feed() != null && surface.feed() != band.along();
        return acrossFeed
                ? "It varies across the feed: look at how the head travels, or align the heads."
                : "Adjust the paper feed in the driver, or print with more passes."
                        + (surface.feed() == null ? FEED_UNKNOWN : "");
    }

    private void grain() {
        PrintSurface.Grain grain = surface.grain();
        if (grain == null || grain.midtones() == null || grain.midtones().graininess() < GRAINY) {
            return;
        }
        found.add(
                FindingKind.GRAIN.weighed(
                        grain.midtones().graininess() / GRAINY - 1,
                        "grain",
                        say("Mid-tones are grainy: %.1f L*.", grain.midtones().graininess()),
                        "Standard deviation of fine unevenness, the paper's own taken off.",
                        "Choose a finer quality in the driver, or check the paper setting."));
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
            found.add(
                    FindingKind.GRADIENT_STEP.weighed(
                            "vignettes",
                            say(
                                    "Smooth gradients break into a step near level %.0f.",
                                    largest.level()),
                            say(
                                    "%.1f L* within half a millimetre; %d %s in all.",
                                    Math.abs(largest.deltaL()),
                                    count,
                                    count == 1 ? "step" : "steps"),
                            "Use a 16 bit file and another profile or quality setting."));
        }
    }
}
