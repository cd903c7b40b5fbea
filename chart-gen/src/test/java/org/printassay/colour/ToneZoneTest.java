package org.printassay.colour;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ToneZoneTest {
    /**
     * The bounds as evaluate/SOURCES.md states them; whatever tells zones must agree on the ends.
     */
    @ParameterizedTest
    @CsvSource({
        "-1, SHADOWS",
        "32.9, SHADOWS",
        "33, MIDTONES",
        "67, MIDTONES",
        "67.1, HIGHLIGHTS",
        "101, HIGHLIGHTS"
    })
    void bothBoundsAreMidTones(double lightness, ToneZone zone) {
        assertEquals(zone, ToneZone.of(lightness));
    }
}
