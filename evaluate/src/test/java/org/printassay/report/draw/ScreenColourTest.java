package org.printassay.report.draw;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import org.printassay.colour.Lab;

class ScreenColourTest {
    /** L* 50 is sRGB 119, and white and black are themselves: IEC 61966-2-1 with CIE 15. */
    @Test
    void neutralsStayNeutral() {
        assertEquals("#ffffff", ScreenColour.of(new Lab(100, 0, 0)));
        assertEquals("#777777", ScreenColour.of(new Lab(50, 0, 0)));
        assertEquals("#000000", ScreenColour.of(new Lab(0, 0, 0)));
    }

    /**
     * D50 CIELAB of the sRGB primaries, as published with CSS Color Module Level 4 (from memory).
     */
    @Test
    void primariesComeBack() {
        assertEquals("#ff0000", ScreenColour.of(new Lab(54.29, 80.81, 69.89)));
        assertEquals("#00ff00", ScreenColour.of(new Lab(87.82, -79.29, 80.99)));
        assertEquals("#0000ff", ScreenColour.of(new Lab(29.57, 68.30, -112.03)));
    }

    @Test
    void whatTheScreenCannotShowIsClipped() {
        assertEquals("#ffffff", ScreenColour.of(new Lab(110, 0, 0)));
    }
}
