package org.printassay.scannercalibration;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.printassay.colour.Lab;

class PaddedNamesTest {
    private static final Lab DARK = new Lab(20, 0, 0);
    private static final Lab LIGHT = new Lab(80, 0, 0);

    @Test
    void zerosInFrontOfANumberDoNotMatter() {
        PaddedNames names = new PaddedNames(List.of("A1", "A12", "GS0", "Dmin"));
        assertTrue(names.all().containsAll(List.of("A1", "A01", "GS00", "Dmin", "A012")));
        assertEquals(
                Map.of("A1", DARK, "GS0", LIGHT, "Dmin", LIGHT),
                names.own(Map.of("A01", DARK, "GS00", LIGHT, "Dmin", LIGHT)));
        assertEquals(Map.of("A01", DARK), new PaddedNames(List.of("A01")).own(Map.of("A1", DARK)));
    }

    @Test
    void nothingIsGuessedWhereTwoCouldBeMeant() {
        PaddedNames both = new PaddedNames(List.of("A1", "A01"));
        assertEquals(Map.of("A01", DARK), both.own(Map.of("A01", DARK)));
        PaddedNames one = new PaddedNames(List.of("A1"));
        assertEquals(Map.of(), one.own(Map.of("A01", DARK, "A001", LIGHT)));
        assertEquals(Map.of("A1", LIGHT), one.own(Map.of("A01", DARK, "A1", LIGHT)));
    }
}
