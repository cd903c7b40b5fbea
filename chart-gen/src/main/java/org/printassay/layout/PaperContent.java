package org.printassay.layout;

import java.util.ArrayList;
import java.util.List;
import org.printassay.colour.Lab;
import org.printassay.colour.Rgb8;
import org.printassay.colour.RgbSpace;
import org.printassay.sheet.Section;

/** What the full paper sheet holds: every patch that is not part of a fixed block's artwork. */
final class PaperContent {
    /** Neutrals of the ramp. */
    static final int RAMP_STEPS = 33;

    /** Codes of the cube's edge: five levels, as even as whole codes allow. */
    private static final int[] CUBE = {0, 64, 128, 191, 255};

    /** Codes of the hue ramps, half-way between those of the cube. */
    private static final int[] BETWEEN = {224, 160, 96, 32};

    /** The six ramps: which channels stay full. */
    private static final String[] HUES = {"R", "Y", "G", "C", "B", "M"};

    private static final boolean[][] FULL = {
        {true, false, false},
        {true, true, false},
        {false, true, false},
        {false, true, true},
        {false, false, true},
        {true, false, true}
    };

    private PaperContent() {}

    /** Levels of the shadow wedge: 0 to 24 each, then every second to 48. */
    static List<Integer> shadowLevels() {
        List<Integer> levels = new ArrayList<>();
        for (int level = 0; level <= 48; level += level < 24 ? 1 : 2) {
            levels.add(level);
        }
        return levels;
    }

    /** Levels of the highlight wedge, from paper: 255 to 231 each, then every second to 207. */
    static List<Integer> highlightLevels() {
        return shadowLevels().stream().map(level -> 255 - level).toList();
    }

    /**
     * One copy of a wedge, in order.
     *
     * @param copy 0 for the one in order, 1 to 3 for the scattered ones
     */
    static List<Ink> wedge(Section section, int copy) {
        boolean dark = section == Section.SHADOWS;
        List<Ink> inks = new ArrayList<>();
        for (int level : dark ? shadowLevels() : highlightLevels()) {
            String id = (dark ? "D" : "H") + level + (char) ('A' + copy);
            inks.add(new Ink(id, section, Rgb8.grey(level)));
        }
        return inks;
    }

    /** The neutral ramp, even in L* of the encoding from code 0 to 255, each level twice. */
    static List<Ink> neutralRamp(RgbSpace space) {
        List<Ink> inks = new ArrayList<>();
        for (int step = 0; step < RAMP_STEPS; step++) {
            double lightness = 100.0 * step / (RAMP_STEPS - 1);
            double linear = Math.min(1, Math.max(0, Lab.luminanceFactor(lightness)));
            int level = (int) Math.round(255 * space.encode(linear));
            for (char twin = 'A'; twin <= 'B'; twin++) {
                inks.add(new Ink(two("N", step) + twin, Section.NEUTRAL_RAMP, Rgb8.grey(level)));
            }
        }
        return inks;
    }

    /** The 98 colours on the surface of the cube of five levels an edge. */
    static List<Ink> cube() {
        List<Ink> inks = new ArrayList<>();
        for (int r = 0; r < 5; r++) {
            for (int g = 0; g < 5; g++) {
                for (int b = 0; b < 5; b++) {
                    if (r % 4 == 0 || g % 4 == 0 || b % 4 == 0) {
                        Rgb8 rgb = new Rgb8(CUBE[r], CUBE[g], CUBE[b]);
                        inks.add(new Ink("C" + r + g + b, Section.CUBE, rgb));
                    }
                }
            }
        }
        return inks;
    }

    /**
     * Six ramps, each from near paper towards the full colour and on to near black; the steps that
     * the cube already has (full colour included) are left out.
     */
    static List<List<Ink>> hueRamps() {
        List<List<Ink>> ramps = new ArrayList<>();
        for (int hue = 0; hue < HUES.length; hue++) {
            List<Ink> ramp = new ArrayList<>();
            for (int code : BETWEEN) {
                ramp.add(hueStep(hue, ramp.size(), 255, code));
            }
            for (int code : BETWEEN) {
                ramp.add(hueStep(hue, ramp.size(), code, 0));
            }
            ramps.add(ramp);
        }
        return ramps;
    }

    private static Ink hueStep(int hue, int step, int full, int rest) {
        boolean[] on = FULL[hue];
        Rgb8 rgb = new Rgb8(on[0] ? full : rest, on[1] ? full : rest, on[2] ? full : rest);
        return new Ink("T" + HUES[hue] + (step + 1), Section.HUE_RAMPS, rgb);
    }

    /** Everything that is scattered over the mosaic, groups of copies side by side. */
    static List<Ink> scattered(RgbSpace space) {
        List<Ink> inks = new ArrayList<>();
        for (int copy = 1; copy <= 3; copy++) {
            inks.addAll(wedge(Section.SHADOWS, copy));
            inks.addAll(wedge(Section.HIGHLIGHTS, copy));
        }
        inks.addAll(neutralRamp(space));
        inks.addAll(cube());
        inks.addAll(SkinTones.twinned(space));
        return inks;
    }

    /** An id whose number has at least two digits. */
    static String two(String prefix, int number) {
        return prefix + (number < 10 ? "0" : "") + number;
    }
}
