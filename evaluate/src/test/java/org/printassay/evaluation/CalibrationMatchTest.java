package org.printassay.evaluation;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.printassay.scannermodel.Circumstances;

class CalibrationMatchTest {
    private static CalibrationMatch match(
            @Nullable String printer,
            @Nullable String paper,
            @Nullable String family,
            PrintDetails print) {
        return CalibrationMatch.of(
                new Circumstances(
                        "Scanner A", printer, paper, family, null, 8, null, null, List.of()),
                print);
    }

    @Test
    void familiesCountWhereBothAreKnown() {
        PrintDetails print =
                new PrintDetails("Paper B", "Printer A", null, null, "Scanner A", "matte");
        assertFalse(match("Printer A", "Paper A", "matte", print).foreign());
        assertTrue(match("Printer A", "Paper B", "glossy", print).foreign());
        assertTrue(match("Printer A", "Paper A", null, print).otherPaper());
    }

    @Test
    void whatIsNotSaidIsNotAnother() {
        PrintDetails print = new PrintDetails("Paper B", null, null, null);
        CalibrationMatch match = match("Printer A", null, "matte", print);
        assertTrue(match.unsaid());
        assertFalse(match.foreign());
        assertEquals(List.of(), match.others());
    }

    /** Umlauts are one character or two (Unicode normalisation forms C and D). */
    @Test
    void namesAreTheSameHoweverTheyAreTyped() {
        PrintDetails print =
                new PrintDetails(
                        "Satin Bu\u0308tten", "printer  A", null, null, "scanner  a", null);
        CalibrationMatch match = match("Printer A", "satin  B\u00fctten", null, print);
        assertFalse(match.foreign(), match.toString());
    }

    @Test
    void printersAndScannersAreNamed() {
        PrintDetails print =
                new PrintDetails("Paper A", "Printer B", null, null, " scanner a ", null);
        CalibrationMatch match = match("Printer A", "paper a", null, print);
        assertFalse(match.otherPaper());
        assertTrue(match.foreign());
        assertEquals(List.of("printer (Printer A, not Printer B)"), match.others());
    }
}
