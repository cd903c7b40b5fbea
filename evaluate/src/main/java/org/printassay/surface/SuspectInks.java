package org.printassay.surface;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import org.printassay.colour.Rgb8;

/**
 * Which inks a line comes from, by the tints that show it. A tint of cyan holds cyan ink, blue
 * holds cyan and magenta, and so on; how a driver makes grey is not known, so grey may hold any
 * ink. An ink is suspect when some tint that holds it shows the line and no coloured tint that
 * holds it lacks it; black when only greys show it; none when every tint shows it, for then nothing
 * is told apart. Light tints are printed with light inks by printers that have them: they tell of
 * the full inks neither way, and of light inks when no full tint shows the line (common practice,
 * no source).
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

    private SuspectInks() {}

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
            if (lacks.stream().anyMatch(rgb -> !inks(rgb).isEmpty())) {
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
        return !inks(rgb).isEmpty() && 255 - Math.min(rgb.r(), Math.min(rgb.g(), rgb.b())) < LIGHT;
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
