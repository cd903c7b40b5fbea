package org.printassay.layout;

import org.printassay.colour.Rgb8;
import org.printassay.sheet.Section;

/** Stray-light patches: the same grey once on white and once on black, each at two distances. */
final class StrayLight {
    static final int MID = 128;
    static final int DARK = 48;
    static final int BLACK = 0;

    private StrayLight() {}

    static Ink onBlack(int level, int which) {
        return ink("XB", level, which);
    }

    static Ink onWhite(int level, int which) {
        return ink("XW", level, which);
    }

    private static Ink ink(String prefix, int level, int which) {
        String letter = String.valueOf((char) ('A' + which - 1));
        return new Ink(prefix + level + letter, Section.STRAY_LIGHT, Rgb8.grey(level));
    }
}
