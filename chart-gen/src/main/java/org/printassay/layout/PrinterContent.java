package org.printassay.layout;

import java.util.ArrayList;
import java.util.List;
import org.printassay.colour.Rgb8;
import org.printassay.sheet.Section;

/**
 * The colours of the printer sheet. An RGB printer cannot be asked for one ink, so each tint lies
 * where drivers mostly print one ink, or two, and light inks where there are such: common practice,
 * no source. Which ink a line belongs to follows from the tints that show it and those that do not.
 */
final class PrinterContent {
    private static final int[] GREYS = {224, 176, 128, 80, 32, 0};

    /** Tints of the evenness grid: three of the greys, so that the long tints are twins of them. */
    private static final int[] EVEN = {224, 128, 80};

    private PrinterContent() {}

    /** Greys from light to black, then yellow. */
    static List<Ink> neutrals(String prefix) {
        List<Ink> inks = new ArrayList<>();
        for (int level : GREYS) {
            inks.add(new Ink(prefix + "G" + level, Section.TINTS, Rgb8.grey(level)));
        }
        inks.add(tint(prefix, "Y", 255, 236, 20));
        return inks;
    }

    /** Light cyan, cyan, light magenta, magenta, and the three mixes of two inks. */
    static List<Ink> colours(String prefix) {
        return List.of(
                tint(prefix, "LC", 178, 224, 244),
                tint(prefix, "C", 0, 160, 226),
                tint(prefix, "LM", 244, 190, 214),
                tint(prefix, "M", 226, 20, 128),
                tint(prefix, "R", 218, 40, 34),
                tint(prefix, "GN", 20, 140, 66),
                tint(prefix, "B", 48, 50, 142));
    }

    private static Ink tint(String prefix, String name, int r, int g, int b) {
        return new Ink(prefix + name, Section.TINTS, new Rgb8(r, g, b));
    }

    /** The three tints of the evenness grid at its n-th place. */
    static List<Ink> evenness(int sheet, int place) {
        List<Ink> inks = new ArrayList<>();
        for (int level : EVEN) {
            String id = PaperContent.two("E" + level + "S" + sheet + "N", place);
            inks.add(new Ink(id, Section.EVENNESS, Rgb8.grey(level)));
        }
        return inks;
    }
}
