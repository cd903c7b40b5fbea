package org.printassay.evaluation;

import static org.printassay.evaluation.Say.say;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;
import org.printassay.metric.Neutrality;

/** How neutral greys are, in words. */
final class GreyFindings {
    private static final String TOPIC = "neutrality";

    /** Less of an a* or b* than this cannot be set in a picture in earnest. */
    private static final double SMALLEST_OFFSET = 0.25;

    /** A lean that most would see beside a neutral grey (common practice, no source). */
    private static final double SEEN_LEAN = 1.5;

    /** A smaller lean of greys has no name. */
    private static final double NAMED_LEAN = 0.5;

    /**
     * Three ranges of tones on two axes are six questions: for all six together to be 95 % sure a
     * lean of one of them must be beyond this many half-widths (Bonferroni: 2.64 over 1.96).
     */
    private static final double OF_SIX = 1.35;

    /** Words of a route that say that greys are not meant to be neutral. */
    private static final Pattern TONED_ROUTE =
            Pattern.compile(
                    "(?<!\\p{L})(?<!un-)(?<!not )(toned|monochrome)(?!\\p{L})",
                    Pattern.CASE_INSENSITIVE);

    private final Neutrality greys;
    private final boolean repeats;

    private GreyFindings(Neutrality greys, boolean repeats) {
        this.greys = greys;
        this.repeats = repeats;
    }

    /** Greys of some tones, and how they lean. */
    private record Tones(String name, Neutrality.Cast cast) {}

    /**
     * What there is to say.
     *
     * @param toned whether the print has no colours but a tone, as its colours show
     */
    static Weighed of(
            Neutrality greys,
            PrintDetails details,
            boolean toned,
            Sharper sharper,
            boolean repeats) {
        String route = details.route();
        boolean said = route != null && TONED_ROUTE.matcher(route).find();
        return new GreyFindings(greys, repeats).find(said, toned, sharper);
    }

    private Weighed find(boolean said, boolean toned, Sharper sharper) {
        Neutrality.Cast cast = greys.cast();
        String sure = say("Mean lean %s against the paper's own tint fading to black.", lean(cast));
        if (said || (toned && isNamed(cast))) {
            String text =
                    isNamed(cast)
                            ? "Greys are toned: " + cast.words() + "."
                            : "Greys went a toned way; no cast of theirs is sure.";
            return FindingKind.TONED.weighed(TOPIC, text, sure, "");
        }
        if (greys.crossover()) {
            return FindingKind.CROSSOVER.weighed(
                    TOPIC,
                    "Greys cross over: shadows are "
                            + greys.shadows().words()
                            + ", highlights "
                            + greys.highlights().words()
                            + ".",
                    sure,
                    "One filter cannot mend this: use another profile or paper setting.");
        }
        if (isNamed(cast)) {
            return FindingKind.LEAN.weighed(
                    size(cast),
                    TOPIC,
                    "Greys lean " + cast.words() + ".",
                    sure,
                    "To offset it, move greys in the file by " + offset(cast) + ".");
        }
        List<Tones> leaning = leaning();
        if (!leaning.isEmpty()) {
            return ofTones(leaning);
        }
        if (Math.max(cast.uncertaintyA(), cast.uncertaintyB()) > SEEN_LEAN) {
            return FindingKind.GREYS_UNKNOWN.weighed(
                    TOPIC,
                    "Whether greys lean cannot be told.",
                    sure,
                    sharper.advice(cast.budgets()));
        }
        String found =
                size(cast) < NAMED_LEAN
                        ? "Greys are neutral on this paper."
                        : "Any lean of the greys as a whole is too small to be sure of.";
        return FindingKind.NEUTRAL.weighed(TOPIC, found, sure, "");
    }

    /** Tones that lean though greys in the mean do not, or not surely; most of all first. */
    private List<Tones> leaning() {
        List<Tones> leaning = new ArrayList<>();
        for (Tones tones :
                List.of(
                        new Tones("shadows", greys.shadows()),
                        new Tones("mid-tones", greys.midtones()),
                        new Tones("highlights", greys.highlights()))) {
            if (isNamed(tones.cast) && isSureOfSix(tones.cast)) {
                leaning.add(tones);
            }
        }
        leaning.sort(Comparator.comparingDouble((Tones tones) -> size(tones.cast)).reversed());
        return leaning;
    }

    private Weighed ofTones(List<Tones> leaning) {
        Map<String, String> where = new LinkedHashMap<>();
        List<String> leans = new ArrayList<>();
        for (Tones tones : leaning) {
            where.merge(tones.cast.words(), tones.name, (one, other) -> one + " and " + other);
            leans.add(say("in %s %s", tones.name, lean(tones.cast)));
        }
        List<String> ways = new ArrayList<>();
        where.forEach(
                (words, tones) ->
                        ways.add(words + (words.contains(",") ? ", in " : " in ") + tones));
        Tones most = leaning.get(0);
        return FindingKind.LEAN_OF_TONES.weighed(
                size(most.cast),
                TOPIC,
                "Greys lean " + String.join("; ", ways) + ".",
                say(
                        "Mean lean %s, of all greys %s, against the paper's own tint fading to"
                                + " black.",
                        String.join(", ", leans), lean(greys.cast())),
                say(
                        "To offset it, move %s alone in the file by %s.",
                        most.name, offset(most.cast)));
    }

    private static boolean isSureOfSix(Neutrality.Cast cast) {
        return Math.abs(cast.a()) > OF_SIX * cast.uncertaintyA()
                || Math.abs(cast.b()) > OF_SIX * cast.uncertaintyB();
    }

    private static boolean isNamed(Neutrality.Cast cast) {
        return cast.significant() && size(cast) >= NAMED_LEAN;
    }

    private static double size(Neutrality.Cast cast) {
        return Math.hypot(cast.a(), cast.b());
    }

    private String lean(Neutrality.Cast cast) {
        return repeats
                ? say(
                        "a* %+.1f (± %.1f), b* %+.1f (± %.1f)",
                        cast.a(), cast.uncertaintyA(), cast.b(), cast.uncertaintyB())
                : say("a* %+.1f, b* %+.1f (read once)", cast.a(), cast.b());
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
        return String.join(", ", parts);
    }
}
