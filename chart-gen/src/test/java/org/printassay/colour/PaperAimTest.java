package org.printassay.colour;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.printassay.colour.Published.number;
import static org.printassay.colour.Published.text;

import java.util.Map;
import java.util.Objects;
import org.junit.jupiter.api.Test;

class PaperAimTest {
    private static final Lab PAPER = new Lab(96, 0.5, -3);
    private static final Lab BLACK = new Lab(15, 1, 2);

    @Test
    void whiteAndBlackLandOnPaperWhiteAndBlack() {
        PaperAim aim = PaperAim.relativeColorimetric(PAPER, BLACK);
        Lab white = aim.absoluteLab(RgbSpace.SRGB, Rgb8.grey(255));
        assertEquals(0, DeltaE.cie1976(PAPER, white), 1e-9);
        Lab black = aim.absoluteLab(RgbSpace.SRGB, Rgb8.grey(0));
        assertEquals(BLACK.l(), black.l(), 1e-9);
        assertEquals(0, aim.relativeLab(RgbSpace.SRGB, Rgb8.grey(255)).chroma(), 1e-9);
        assertEquals(0, aim.relativeLab(RgbSpace.SRGB, Rgb8.grey(0)).chroma(), 1e-9);
    }

    /** ISO 18619: straight scaling means that Y is a linear function of the file's Y. */
    @Test
    void luminanceIsScaledStraight() {
        PaperAim aim = PaperAim.relativeColorimetric(PAPER, BLACK);
        double paper = 100 * Lab.luminanceFactor(96);
        double black = 100 * Lab.luminanceFactor(15);
        for (int level = 0; level <= 255; level += 15) {
            Xyz file = RgbSpace.SRGB.toXyz(Rgb8.grey(level));
            double expected = black + (paper - black) * file.y() / 100;
            assertEquals(expected, aim.absolute(file).y(), 1e-9, "level " + level);
        }
    }

    /**
     * LittleCMS 2.14 with black point compensation onto three printing conditions, black points as
     * the table's header names them. What it gives has gone to inks and back through coarse tables,
     * hence the tolerance (largest difference seen 0.29), and hence no darks and no lights: the
     * inks do not follow there. Without compensation level 64 would be off by 2.5 to 5.4.
     */
    @Test
    void agreesWithLittleCmsInTheMidTones() {
        Map<String, Double> blackL =
                Map.of(
                        "FOGRA39L_coated.icc", 9.556,
                        "ISOcoated_v2_300_bas.icc", 12.937,
                        "default_cmyk.icc", 16.500);
        int compared = 0;
        for (Map<String, String> row : Published.rows("icc-transform-checks.csv")) {
            int level = (int) number(row, "R");
            boolean neutral = number(row, "G") == level && number(row, "B") == level;
            if (!"relcol_bpc".equals(text(row, "transform"))
                    || !neutral
                    || level < 64
                    || level > 224) {
                continue;
            }
            Double black = Objects.requireNonNull(blackL.get(text(row, "profile")));
            PaperAim aim = PaperAim.relativeColorimetric(new Lab(100, 0, 0), new Lab(black, 0, 0));
            Lab expected = aim.relativeLab(RgbSpace.SRGB, Rgb8.grey(level));
            assertEquals(expected.l(), number(row, "rel_L"), 0.3, row::toString);
            compared++;
        }
        assertTrue(compared >= 20, "rows compared: " + compared);
    }

    @Test
    void compensationIsTheIdentityForEqualBlacksAndUndoesItself() {
        Xyz dark = Xyz.PCS_WHITE.times(0.012);
        Xyz none = new Xyz(0, 0, 0);
        Xyz colour = new Xyz(30, 20, 5);
        Xyz same = BlackPointCompensation.between(dark, dark).apply(colour);
        assertEquals(colour.x(), same.x(), 1e-12);
        Xyz there = BlackPointCompensation.between(none, dark).apply(colour);
        Xyz back = BlackPointCompensation.between(dark, none).apply(there);
        assertEquals(colour.x(), back.x(), 1e-12);
        assertEquals(colour.y(), back.y(), 1e-12);
        assertEquals(colour.z(), back.z(), 1e-12);
    }

    @Test
    void refusesBlackThatIsNotDarker() {
        assertThrows(
                IllegalArgumentException.class,
                () -> PaperAim.relativeColorimetric(new Lab(20, 0, 0), new Lab(20, 0, 0)));
    }
}
