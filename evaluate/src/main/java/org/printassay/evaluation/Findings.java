package org.printassay.evaluation;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import org.printassay.colour.Lab;
import org.printassay.metric.ColourDetail;
import org.printassay.metric.Extreme;
import org.printassay.metric.Gradient;
import org.printassay.metric.Neutrality;
import org.printassay.metric.Tone;
import org.printassay.metric.Wedge;
import org.printassay.reading.Trust;

/**
 * Findings in words, most consequential first. Ranking: what a picture loses counts first. Each
 * candidate has a weight in L* (or chroma units) of picture lost: shadows and highlights by the L*
 * range of the aim that merges, tone by its RMS, a jump in the greys by its height and six more (it
 * shows as an edge in every sky), skin by its mean dE00 and two more, greys by their mean lean,
 * dull full colours by a twentieth of the chroma they miss (few pictures hold them), paper and
 * black behind them, good news last. At most seven are told.
 */
final class Findings {
    private static final int MOST = 7;

    /** Less of an a* or b* than this cannot be set in a picture in earnest. */
    private static final double SMALLEST_OFFSET = 0.25;

    private static final double DARKER_THAN_BLACK = 11;

    /** A lean that most would see beside a neutral grey (common practice, no source). */
    private static final double SEEN_LEAN = 1.5;

    /** Tone that is off by less, RMS L*, follows its aim (common practice, no source). */
    private static final double FOLLOWS = 1.2;

    /** L* of a black from which pictures look dull (common practice, no source). */
    private static final double GREY = 14;

    /** A black known no better than this, L*, is not known. */
    private static final double UNKNOWN_BLACK = 3;

    private record Ranked(double weight, Finding finding) {}

    private final List<Ranked> ranked = new ArrayList<>();

    private Findings() {}

    static List<Finding> of(
            Trust trust,
            boolean repeats,
            PrintDetails details,
            @Nullable Extreme white,
            @Nullable Extreme black,
            @Nullable Tone tone,
            @Nullable Wedge shadows,
            @Nullable Wedge highlights,
            @Nullable Neutrality neutrality,
            @Nullable ColourDetail colours,
            @Nullable Gradient gradient,
            List<PlacementSummary> placements,
            boolean scannerLimited,
            @Nullable PrintSurface surface) {
        Findings findings = new Findings();
        for (PlacementSummary placement : placements) {
            findings.size(placement);
        }
        if (shadows != null) {
            findings.add(WedgeFindings.shadows(shadows, trust, repeats));
            WedgeFindings.darkerThanBlack(shadows, repeats)
                    .ifPresent(found -> findings.ranked.add(new Ranked(DARKER_THAN_BLACK, found)));
        }
        if (highlights != null) {
            findings.add(WedgeFindings.highlights(highlights, trust, repeats));
        }
        if (tone != null) {
            findings.tone(tone, trust, repeats);
        }
        if (neutrality != null) {
            findings.neutrality(neutrality, details, repeats);
        }
        ColourFindings.of(
                        trust, colours, tone == null ? List.of() : tone.irregularities(), gradient)
                .forEach(findings::add);
        if (white != null && black != null) {
            findings.range(white, black, trust, scannerLimited);
        }
        SurfaceFindings.of(surface).forEach(findings::add);
        findings.ranked.sort(Comparator.comparingDouble(Ranked::weight).reversed());
        return findings.ranked.stream().limit(MOST).map(Ranked::finding).toList();
    }

    private void add(WedgeFindings.Weighed found) {
        ranked.add(new Ranked(found.weight(), found.finding()));
    }

    private void add(double weight, String topic, String text, String sure, String advice) {
        ranked.add(new Ranked(weight, new Finding(topic, text, sure, advice)));
    }

    private void size(PlacementSummary placement) {
        Double x = placement.scaleX();
        Double y = placement.scaleY();
        if (x == null || y == null || (Math.abs(x - 1) < 0.006 && Math.abs(y - 1) < 0.006)) {
            return;
        }
        add(
                100,
                "print",
                say(
                        "The sheet was printed at %.1f %% across and %.1f %% down, not at 100 %%.",
                        100 * x, 100 * y),
                "To 0.1 %, if the scan's declared resolution is true.",
                "Switch \"fit to page\" off; colours hold, but print at 100 % to compare.");
    }

    private void tone(Tone tone, Trust trust, boolean repeats) {
        String sure =
                say(
                                "RMS %.1f L* (%s), largest %+.1f at level %d.",
                                tone.rmsDeltaL(),
                                repeats ? say("± %.1f", tone.rmsUncertainty()) : "read once",
                                tone.maxDeltaL(),
                                tone.maxAtLevel())
                        + (trust.absolute() ? "" : " Roughly: the scan carries no colour profile.");
        if (!tone.monotonic()) {
            add(
                    12,
                    "tone",
                    "Tone runs backwards near level " + tone.reversalLevels().get(0) + ".",
                    sure,
                    "Check paper type and profile in the driver; gradients will show a step.");
        }
        double unsure = repeats ? tone.rmsUncertainty() : 0;
        if (unsure > FOLLOWS && tone.rmsDeltaL() - unsure < FOLLOWS) {
            add(
                    3,
                    "tone",
                    "Whether tone follows its aim cannot be told.",
                    sure,
                    "Print the chart again, or scan with less noise.");
            return;
        }
        if (tone.rmsDeltaL() < FOLLOWS) {
            add(
                    0.8,
                    "tone",
                    "Tone follows its aim: the print matches the file as far as this paper goes.",
                    sure,
                    "If prints look darker than the screen, lower the screen's brightness or raise"
                            + " the viewing light (ISO 3664).");
            return;
        }
        double middle = tone.meanDeltaLMidtones();
        double least = Math.max(0.7, unsure);
        String where =
                Math.abs(middle) >= least
                        ? say(
                                "Mid-tones print %.1f L* too %s.",
                                Math.abs(middle), middle < 0 ? "dark" : "light")
                        : Math.abs(tone.meanDeltaLShadows()) >= least
                                ? say(
                                        "Shadows print %.1f L* too %s.",
                                        Math.abs(tone.meanDeltaLShadows()),
                                        tone.meanDeltaLShadows() < 0 ? "dark" : "light")
                                : say("Tone departs from its aim by %.1f L*.", tone.rmsDeltaL());
        add(
                2 + 2 * tone.rmsDeltaL(),
                "tone",
                where,
                sure,
                middle <= -least
                        ? "Lift mid-tones by about as much in the file, or have the profile made"
                                + " anew."
                        : "Correct with a curve in the file, or have the profile made anew.");
    }

    private void neutrality(Neutrality n, PrintDetails details, boolean repeats) {
        Neutrality.Cast cast = n.cast();
        String sure =
                repeats
                        ? say(
                                "Mean lean a* %+.1f (± %.1f), b* %+.1f (± %.1f) against the"
                                        + " paper's own tint fading to black.",
                                cast.a(), cast.uncertaintyA(), cast.b(), cast.uncertaintyB())
                        : say(
                                "Mean lean a* %+.1f, b* %+.1f (read once) against the paper's own"
                                        + " tint fading to black.",
                                cast.a(), cast.b());
        String route = details.route() == null ? "" : details.route().toLowerCase(Locale.ROOT);
        if (route.contains("monochrome") || route.contains("toned")) {
            add(1, "neutrality", "Greys are toned: " + cast.words() + ".", sure, "");
            return;
        }
        if (n.crossover()) {
            add(
                    5,
                    "neutrality",
                    "Greys cross over: shadows are "
                            + n.shadows().words()
                            + ", highlights "
                            + n.highlights().words()
                            + ".",
                    sure,
                    "One filter cannot mend this: use another profile or paper setting.");
        } else if (cast.significant() && Math.hypot(cast.a(), cast.b()) >= 0.5) {
            add(
                    1 + 1.5 * Math.hypot(cast.a(), cast.b()),
                    "neutrality",
                    "Greys lean " + cast.words() + ".",
                    sure,
                    offset(cast));
        } else if (Math.max(cast.uncertaintyA(), cast.uncertaintyB()) > SEEN_LEAN) {
            add(
                    3,
                    "neutrality",
                    "Whether greys lean cannot be told.",
                    sure,
                    "Print the chart again, or scan with less noise.");
        } else {
            add(0.7, "neutrality", "Greys are neutral on this paper.", sure, "");
        }
    }

    private void range(Extreme white, Extreme black, Trust trust, boolean scannerLimited) {
        Lab paper = white.lab();
        Lab ink = black.lab();
        if (trust.absolute() && (paper == null || ink == null)) {
            add(
                    3,
                    "white",
                    paper == null
                            ? "How white the paper is, and what it does to highlights and greys,"
                                    + " cannot be told."
                            : "How deep the black is cannot be told.",
                    "The scan is clipped there.",
                    "Scan again with a lower exposure and automatic corrections off, or in a wider"
                            + " colour space.");
            return;
        }
        if (paper == null || ink == null) {
            add(
                    0.4,
                    "white",
                    "How white the paper and how deep the black is cannot be told.",
                    "The scan carries no colour profile.",
                    "Scan with the scanner's profile embedded.");
            return;
        }
        if (scannerLimited) {
            add(
                    0.9,
                    "black",
                    say("How deep the black is cannot be told; it reads L* %.1f.", ink.l()),
                    say("The scanner's own floor may hide it. Paper white L* %.1f.", paper.l()),
                    "Scan with the lid closed, or measure with an instrument.");
            return;
        }
        double unsure = black.uncertainty().l();
        if (unsure > UNKNOWN_BLACK && Math.abs(ink.l() - GREY) < unsure) {
            add(
                    0.9,
                    "black",
                    say("How deep the black is cannot be told; it reads L* %.1f.", ink.l()),
                    say("± %.1f, %s. Paper white L* %.1f.", unsure, basis(trust), paper.l()),
                    "Print the chart again, or scan with less noise.");
            return;
        }
        add(
                ink.l() > GREY ? 3.5 : 0.9,
                "black",
                ink.l() > GREY
                        ? say("The black is grey: L* %.1f. Dark pictures will look dull.", ink.l())
                        : say("The black is deep: L* %.1f.", ink.l()),
                say(
                        "± %.1f, %s. Paper white L* %.1f.",
                        black.uncertainty().l(), basis(trust), paper.l()),
                "");
    }

    private static String basis(Trust trust) {
        return switch (trust) {
            case INSTRUMENT -> "read with an instrument";
            case CALIBRATED_SCAN -> "by a calibrated scan";
            case PROFILED_SCAN, PLAIN_SCAN -> "true only if automatic exposure was off";
        };
    }

    /** What to add to greys in the file; a part too small to set is left out. */
    private static String offset(Neutrality.Cast cast) {
        List<String> parts = new ArrayList<>();
        if (Math.abs(cast.a()) >= SMALLEST_OFFSET) {
            parts.add(say("a* %+.1f", -cast.a()));
        }
        if (Math.abs(cast.b()) >= SMALLEST_OFFSET) {
            parts.add(say("b* %+.1f", -cast.b()));
        }
        return "To offset it, move greys in the file by " + String.join(", ", parts) + ".";
    }

    private static String say(String format, Object... values) {
        return String.format(Locale.ROOT, format, values);
    }
}
