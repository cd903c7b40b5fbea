package org.printassay.prints;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

class PrintNamesTest {
    @Test
    void noTwoAreTheSame() {
        PrintNames names = new PrintNames();
        assertEquals("matte", names.give("matte"));
        assertEquals("Matte-2", names.give("Matte"));
        assertEquals("monday-matte", names.give("monday/matte"));
    }

    /** They become folders below the one for the results, never beside or above it. */
    @Test
    void noneLeavesItsFolderOrHidesInIt() {
        PrintNames names = new PrintNames();
        assertEquals("-..-etc", names.give("../../etc"));
        assertEquals("hidden", names.give(".hidden"));
        assertEquals("print", names.give("..."));
        assertEquals("a-b", names.give("a\u0000\u001bb"));
        assertEquals("summary.json-2", names.give("summary.json"));
        assertTrue(names.give("x".repeat(300)).length() <= 60);
    }
}
