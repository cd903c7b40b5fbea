package org.printassay.surface;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.printassay.colour.Rgb8;

/**
 * Which inks a line comes from, by the tints that show it. A tint of cyan holds cyan ink, blue
 * holds cyan and magenta, and so on; how a driver makes grey is not known, so grey may hold any
 * ink. An ink is suspect when some tint that holds it shows the line and no coloured tint that
 * holds it lacks it; black when only greys show it and cyan, magenta and yellow are all found where
 * it lacks; none when every tint shows it, for then nothing is told apart.
 *
 * <p>Where the scan has colour, the line's own colour tells more: cyan ink lightens red most where
 * it is missing, magenta green, yellow blue, black all alike. Tints that hold one ink alone show
 * that colour whatever is missing and are not asked. Where both ways disagree nothing is told.
 *
 * <p>Light tints are printed with light inks by printers that have them: they tell of the full inks
 * neither way, and of light inks when no full tint shows the line (common practice, no source).
 */
public final class SuspectInks {
    /** Names of inks, in the order of the result. */
    private enum Ink {
        CYAN("cyan"),
        MAGENTA("magenta"),
        YELLOW("yellow"),
        BLACK("black");

        private final String word;

        Ink(String word) {
            this.word = word;
        }
    }

    /** Codes of one tint that differ by less than this are grey. */
    private static final int GREY = 12;

    /** An ink is in a tint when its channel is at least this share of the deepest one. */
    private static final double PART = 0.4;

    /** Depth of its deepest channel below which a tint is light, of 255. */
    private static final int LIGHT = 100;

    /** The channel of an ink changes by so many times what the next one does. */
    private static final double OUTSTANDING = 2;

    /** Black leaves no channel with less than this share of the largest change. */
    private static final double EVEN = 0.5;

    /** Standard errors from which a difference of channels is believed. */
    private static final double SURE = 3;

    /** Density changes of light beyond this share are no longer told apart. */
    private static final double LEAST_LIGHT = 0.05;

    private SuspectInks() {}

    /**
     * Names of suspect inks; empty when neither tints nor colours tell anything.
     *
     * @param shows codes of tints that show the line
     * @param lacks codes of tints that it would cross and that do not show it
     * @param colours of the line in tints that show it; none of a grey scan
     */
    public static List<String> of(List<Rgb8> shows, List<Rgb8> lacks, List<LineColour> colours) {
        List<String> byTints = of(shows, lacks);
        if (shows.stream().allMatch(SuspectInks::isLight)) {
            return byTints;
        }
        Optional<Ink> seen = byColour(colours);
        if (seen.isEmpty()) {
            return byTints;
        }
        Ink ink = seen.get();
        List<Rgb8> full = lacks.stream().filter(rgb -> !isLight(rgb)).toList();
        if (ink == Ink.BLACK) {
            // Black may be in any tint or in none: what all inks lack together looks the same.
            boolean onlyGreys = shows.stream().allMatch(rgb -> inks(rgb).isEmpty());
            boolean lacking = full.stream().anyMatch(rgb -> !inks(rgb).isEmpty());
            return onlyGreys && lacking ? List.of(ink.word) : byTints;
        }
        boolean acquitted = full.stream().anyMatch(rgb -> inks(rgb).contains(ink));
        boolean another = !byTints.isEmpty() && !byTints.contains(ink.word);
        return acquitted || another ? List.of() : List.of(ink.word);
    }

    /** The ink that all tints name which tell by colour; empty when they differ or none does. */
    private static Optional<Ink> byColour(List<LineColour> colours) {
        Set<Ink> named = EnumSet.noneOf(Ink.class);
        for (LineColour colour : colours) {
            if (depth(colour.tint()) >= LIGHT && inks(colour.tint()).size() != 1) {
                byColour(colour).ifPresent(named::add);
            }
        }
        return named.size() == 1 ? Optional.of(named.iterator().next()) : Optional.empty();
    }

    private static Optional<Ink> byColour(LineColour colour) {
        double[] change = new double[3];
        double[] error = new double[3];
        double sum = 0;
        for (int c = 0; c < 3; c++) {
            double left = Math.max(LEAST_LIGHT, 1 + colour.contrasts().get(c));
            change[c] = Math.log(left);
            error[c] = colour.errors().get(c) / left;
            sum += change[c];
        }
        int most = 0;
        for (int c = 0; c < 3; c++) {
            change[c] *= Math.signum(sum);
            most = change[c] > change[most] ? c : most;
        }
        boolean alone = true;
        boolean even = inks(colour.tint()).isEmpty();
        for (int c = 0; c < 3; c++) {
            if (c != most) {
                double next = Math.max(0, change[c]);
                double unsure = Math.hypot(error[most], OUTSTANDING * error[c]);
                alone &= change[most] - OUTSTANDING * next > SURE * unsure;
                unsure = Math.hypot(error[c], EVEN * error[most]);
                even &= change[c] - EVEN * change[most] > SURE * unsure;
            }
        }
        return alone
                ? Optional.of(Ink.values()[most])
                : even ? Optional.of(Ink.BLACK) : Optional.empty();
    }

    /**
     * Names of suspect inks; empty when the tints tell nothing.
     *
     * @param shows codes of tints that show the line
     * @param lacks codes of tints that it would cross and that do not show it
     */
    public static List<String> of(List<Rgb8> shows, List<Rgb8> lacks) {
        List<String> names = new ArrayList<>();
        if (shows.isEmpty() || lacks.isEmpty()) {
            return names;
        }
        List<Rgb8> full = shows.stream().filter(rgb -> !isLight(rgb)).toList();
        if (full.isEmpty()) {
            return suspects(shows, lacks.stream().filter(SuspectInks::isLight).toList()).stream()
                    .map(ink -> "light " + ink.word)
                    .toList();
        }
        return full(full, lacks.stream().filter(rgb -> !isLight(rgb)).toList());
    }

    private static List<String> full(List<Rgb8> shows, List<Rgb8> lacks) {
        List<String> names = new ArrayList<>();
        boolean onlyGreys = shows.stream().allMatch(rgb -> inks(rgb).isEmpty());
        if (onlyGreys) {
            Set<Ink> lacking = EnumSet.noneOf(Ink.class);
            lacks.forEach(rgb -> lacking.addAll(inks(rgb)));
            if (lacking.containsAll(EnumSet.of(Ink.CYAN, Ink.MAGENTA, Ink.YELLOW))) {
                names.add(Ink.BLACK.word);
            }
            return names;
        }
        // Lines in all inks are no single nozzle's.
        List<String> all = List.of(Ink.CYAN.word, Ink.MAGENTA.word, Ink.YELLOW.word);
        suspects(shows, lacks).forEach(ink -> names.add(ink.word));
        return names.containsAll(all) ? List.of() : names;
    }

    private static List<Ink> suspects(List<Rgb8> shows, List<Rgb8> lacks) {
        List<Ink> suspects = new ArrayList<>();
        for (Ink ink : Ink.values()) {
            boolean shown = shows.stream().anyMatch(rgb -> inks(rgb).contains(ink));
            boolean missed = lacks.stream().anyMatch(rgb -> inks(rgb).contains(ink));
            if (shown && !missed) {
                suspects.add(ink);
            }
        }
        return suspects;
    }

    /** A coloured tint so pale that light inks may print it alone. */
    private static boolean isLight(Rgb8 rgb) {
        return !inks(rgb).isEmpty() && depth(rgb) < LIGHT;
    }

    /** Depth of the deepest channel. */
    private static int depth(Rgb8 rgb) {
        return 255 - Math.min(rgb.r(), Math.min(rgb.g(), rgb.b()));
    }

    /** Inks that a coloured tint surely holds; none for greys. */
    private static Set<Ink> inks(Rgb8 rgb) {
        int[] depth = {255 - rgb.r(), 255 - rgb.g(), 255 - rgb.b()};
        int deepest = Math.max(depth[0], Math.max(depth[1], depth[2]));
        int lightest = Math.min(depth[0], Math.min(depth[1], depth[2]));
        Set<Ink> inks = EnumSet.noneOf(Ink.class);
        if (deepest - lightest < GREY) {
            return inks;
        }
        for (int c = 0; c < 3; c++) {
            if (depth[c] - lightest >= PART * (deepest - lightest)) {
                inks.add(Ink.values()[c]);
            }
        }
        return inks;
    }
}
