package org.printassay.evaluation;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import org.printassay.colour.Lab;
import org.printassay.metric.Extreme;
import org.printassay.metric.Neutrality;
import org.printassay.metric.Tone;
import org.printassay.metric.Wedge;
import org.printassay.reading.Trust;

/**
 * Findings in words, most consequential first. Ranking: what a picture loses counts first. Each
 * candidate has a weight in L* (or chroma units) of picture lost: shadows and highlights by the L*
 * range of the aim that merges, tone by its RMS, greys by their mean lean, paper and black behind
 * them, good news last. At most seven are told.
 */
final class Findings {
    private static final int MOST = 7;

    private record Ranked(double weight, Finding finding) {}

    private final List<Ranked> ranked = new ArrayList<>();

    private Findings() {}

    static List<Finding> of(
            Trust trust,
            PrintDetails details,
            @Nullable Extreme white,
            @Nullable Extreme black,
            @Nullable Tone tone,
            @Nullable Wedge shadows,
            @Nullable Wedge highlights,
            @Nullable Neutrality neutrality,
            List<PlacementSummary> placements) {
        Findings findings = new Findings();
        for (PlacementSummary placement : placements) {
            findings.size(placement);
        }
        if (shadows != null) {
            findings.shadows(shadows);
        }
        if (highlights != null) {
            findings.highlights(highlights);
        }
        if (tone != null) {
            findings.tone(tone);
        }
        if (neutrality != null) {
            findings.neutrality(neutrality, details);
        }
        if (white != null && black != null) {
            findings.range(white, black, trust);
        }
        findings.ranked.sort(Comparator.comparingDouble(Ranked::weight).reversed());
        return findings.ranked.stream().limit(MOST).map(Ranked::finding).toList();
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

    private void shadows(Wedge w) {
        Integer best = w.best();
        if (best == null) {
            add(
                    30,
                    "shadows",
                    "No level up to 48 separates from black for sure.",
                    "The spread between equal patches is too large to tell.",
                    "Print the chart again, or scan with less noise.");
            return;
        }
        double lost = aimOf(w, best);
        Wedge.Interval range = w.interval();
        String sure =
                range == null
                        ? "Each level was read once, so this is a single reading."
                        : "95 % sure: the first level that shows is " + say(range) + ".";
        int keep = w.separated() == null ? best : w.separated();
        if (best <= 3) {
            add(
                    0.6,
                    "shadows",
                    say("Shadows are open: level %d already shows against black.", best),
                    sure,
                    "");
            return;
        }
        Integer merged = w.merged();
        String least =
                merged != null && merged > 0 && w.separated() != null
                        ? say(" (0 to %d at least, 0 to %d at most)", merged, keep - 1)
                        : "";
        add(
                4 + lost,
                "shadows",
                say("Levels 0 to %d print as one black%s.", best - 1, least),
                sure,
                say("Keep detail that must be seen at %d or above.", keep));
    }

    private void highlights(Wedge w) {
        Integer best = w.best();
        if (best == null) {
            add(
                    30,
                    "highlights",
                    "No level down to 207 separates from the paper for sure.",
                    "The spread between equal patches is too large to tell.",
                    "Print the chart again, or scan with less noise.");
            return;
        }
        double lost = aimOf(w, best);
        Wedge.Interval range = w.interval();
        String sure =
                range == null
                        ? "Each level was read once, so this is a single reading."
                        : "95 % sure: the last level that shows is " + say(range) + ".";
        int keep = w.separated() == null ? best : w.separated();
        if (best >= 252) {
            add(
                    0.5,
                    "highlights",
                    say("Highlights are held: level %d still shows against the paper.", best),
                    sure,
                    "");
            return;
        }
        add(
                4 + lost,
                "highlights",
                say("Levels %d to 255 print as bare paper.", best + 1),
                sure,
                say("Keep the lightest detail at %d or below.", keep));
    }

    /** How much of the aim, in L*, lies between the anchor and a level. */
    private static double aimOf(Wedge w, int level) {
        return w.steps().stream()
                .filter(step -> step.level() == level)
                .mapToDouble(step -> step.aim())
                .findFirst()
                .orElse(0);
    }

    private void tone(Tone tone) {
        String sure =
                say(
                        "RMS %.1f L* (± %.1f), largest %+.1f at level %d.",
                        tone.rmsDeltaL(),
                        tone.rmsUncertainty(),
                        tone.maxDeltaL(),
                        tone.maxAtLevel());
        if (!tone.monotonic()) {
            add(
                    12,
                    "tone",
                    "Tone runs backwards near level " + tone.reversalLevels().get(0) + ".",
                    sure,
                    "Check paper type and profile in the driver; gradients will show a step.");
        }
        if (tone.rmsDeltaL() < 1.2) {
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
        String where =
                Math.abs(middle) >= 0.7
                        ? say(
                                "Mid-tones print %.1f L* too %s.",
                                Math.abs(middle), middle < 0 ? "dark" : "light")
                        : Math.abs(tone.meanDeltaLShadows()) >= 0.7
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
                middle < -0.7
                        ? "Lift mid-tones by about as much in the file, or have the profile made"
                                + " anew."
                        : "Correct with a curve in the file, or have the profile made anew.");
    }

    private void neutrality(Neutrality n, PrintDetails details) {
        Neutrality.Cast cast = n.cast();
        String sure =
                say(
                        "Mean lean a* %+.1f (± %.1f), b* %+.1f (± %.1f) against the paper's own tint"
                                + " fading to black.",
                        cast.a(), cast.uncertaintyA(), cast.b(), cast.uncertaintyB());
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
                    say(
                            "To offset it, move greys in the file by a* %+.1f, b* %+.1f.",
                            -cast.a(), -cast.b()));
        } else {
            add(0.7, "neutrality", "Greys are neutral on this paper.", sure, "");
        }
    }

    private void range(Extreme white, Extreme black, Trust trust) {
        Lab paper = white.lab();
        Lab ink = black.lab();
        if (!trust.absolute() || paper == null || ink == null) {
            add(
                    0.4,
                    "white",
                    "How white the paper and how deep the black is cannot be told.",
                    "The scan carries no colour profile.",
                    "Scan with the scanner's profile embedded.");
            return;
        }
        add(
                ink.l() > 14 ? 3.5 : 0.9,
                "black",
                ink.l() > 14
                        ? say("The black is grey: L* %.1f. Dark pictures will look dull.", ink.l())
                        : say("The black is deep: L* %.1f.", ink.l()),
                say(
                        "± %.1f, true only if automatic exposure was off. Paper white L* %.1f.",
                        black.uncertainty().l(), paper.l()),
                "");
    }

    private static String say(Wedge.Interval range) {
        return range.low() == range.high()
                ? "" + range.low()
                : "between " + range.low() + " and " + range.high();
    }

    private static String say(String format, Object... values) {
        return String.format(Locale.ROOT, format, values);
    }
}
