package org.printassay.evaluation;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.printassay.surface.Along;
import org.printassay.surface.FoundLine;

/**
 * Lines in dark tints are told in L*, relative to paper. Expected values by hand from the
 * definition of L* (CIE 15, ISO/CIE 11664-4): L* = 903.3 Y up to Y = 0.008856, else 116 Y^(1/3) -
 * 16.
 */
class LineWordsTest {
    private static FoundLine line(double contrast, @Nullable Double tintL) {
        return new FoundLine(
                Along.Y, 80, 0.1, contrast, 20, List.of("L1"), List.of(), false, tintL);
    }

    @ParameterizedTest
    @CsvSource({
        // Bare paper, Y = 1, in a black of L* 4, Y = 0.004428: L* 100.
        "224.8, 4, 96 L*",
        // Half of it uncovered, Y = 0.5: L* 76.07.
        "111.9, 4, 72 L*",
        // 0.12 x 0.004428 x 903.3 = 0.48.
        "0.12, 4, 0.5 L*",
        "-0.5, 4, 2 L*",
        // Mid tints as ever: a share of their light.
        "0.15, 50, 15 %",
        "-0.15, 50, 15 %",
        "0.15, 16, 15 %",
        // Paper, Y = 1, in a tint of L* 50, Y = 0.1842.
        "4.429, 50, 50 L*",
        // Narrower than the blur, contrast may be overrated: nothing is lighter than paper.
        "900, 4, 96 L*",
        // Of older files, that do not say what lightness the tint has.
        "190, , more than 100 %",
        "0.15, , 15 %"
    })
    void amountsAreThoseAnEyeSees(double contrast, @Nullable Double tintL, String said) {
        assertEquals(said, LineWords.amount(line(contrast, tintL)));
    }

    @Test
    void reportsNameNoThousandsOfPercent() {
        String evidence =
                new MadeFindings()
                        .line(224.8, 0.1, 4, SurfaceCause.PRINT).told().stream()
                                .map(Finding::sureness)
                                .filter(said -> said.contains("than its tint"))
                                .findFirst()
                                .orElseThrow();
        assertTrue(evidence.contains("96 L* lighter than its tint"), evidence);
    }

    /** The same difference of light, once in black and once in a shadow of L* 8. */
    @Test
    void inBlackStrengthGoesByLightAndNotByItsRatioToHardlyAny() {
        FoundLine black = line(-0.4, 4.0);
        FoundLine shadow = line(-0.2, 8.0);
        assertEquals(shadow.strength(), black.strength(), 1e-6);
        assertEquals(
                Objects.requireNonNull(shadow.deltaL()),
                Objects.requireNonNull(black.deltaL()),
                1e-9);
        assertEquals(0.1 * 0.2, line(0.2, 50.0).strength(), 1e-12);
    }
}
