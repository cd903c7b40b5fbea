package org.printassay.calibrate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.printassay.colour.Lab;
import org.printassay.reading.Warning;
import org.printassay.reading.WarningCode;

class ProfileDoubtTest {
    private static final List<Lab> COLOURS =
            List.of(new Lab(95, 0, 0), new Lab(20, 0, 0), new Lab(5, 0, 0));

    @Test
    void nothingSpeaksAgainstAGoodScan() {
        assertTrue(ProfileDoubt.of(COLOURS, List.of(), true).isEmpty());
    }

    /**
     * Where no sheet shows stray light it may be there: half a percent of the light, which by the
     * definition of L* (ISO/CIE 11664-4) moves L* 5 by 4.5 and paper by a quarter.
     */
    @Test
    void unknownStrayLightMovesDarkColours() {
        List<Lab> errors = ProfileDoubt.of(COLOURS, List.of(), false);
        assertEquals(116 / 3.0 * 0.005 / Math.pow(111 / 116.0, 2), errors.get(0).l(), 0.01);
        double cube = Math.pow(36 / 116.0, 3);
        assertEquals(116 * Math.cbrt(cube + 0.005) - 16 - 20, errors.get(1).l(), 1e-9);
        // The straight part of L*, up to 8, and a little of the curve behind it.
        assertEquals(4.4, errors.get(2).l(), 0.15);
        assertEquals(0, errors.get(2).a());
    }

    @Test
    void automaticExposureMovesAllAlike() {
        Warning exposed = new Warning(WarningCode.AUTOMATIC_EXPOSURE, "");
        ProfileDoubt.of(COLOURS, List.of(exposed), true)
                .forEach(error -> assertEquals(new Lab(3, 1, 1), error));
    }

    /**
     * A profile describes what the scanner gives, not what a curve made of it afterwards. By the
     * definition of L* a gamma of 1.35 over codes of gamma 2.2 moves L* 8 to 20 and L* 41 to 52.5:
     * two standard errors hold that.
     */
    @Test
    void aCurveLaidOverTheScanMovesAllAlike() {
        double black = Math.pow(24 / 116.0, 3);
        double moved = 116 * Math.cbrt(Math.pow(black, 1 / 1.35)) - 16 - 8;
        assertEquals(12, moved, 0.2);
        Warning edited = new Warning(WarningCode.HISTOGRAM_GAPS, "");
        List<Lab> errors = ProfileDoubt.of(COLOURS, List.of(edited), true);
        assertEquals(3, errors.size());
        errors.forEach(error -> assertTrue(2 * error.l() >= 11.9 && error.a() == 2, "" + error));
    }

    /** A calibration knows no more of what was done to a scan afterwards; independent errors. */
    @Test
    void aCalibrationIsInTheSameDoubt() {
        List<Lab> own = List.of(new Lab(0.5, 0.3, 0.4), new Lab(8, 0, 1.5));
        assertEquals(own, ProfileDoubt.added(own, List.of()));
        Warning edited = new Warning(WarningCode.HISTOGRAM_GAPS, "");
        List<Lab> errors = ProfileDoubt.added(own, List.of(edited));
        assertEquals(Math.sqrt(36.25), errors.get(0).l(), 1e-12);
        assertEquals(10, errors.get(1).l(), 1e-12);
        assertEquals(2.5, errors.get(1).b(), 1e-12);
    }

    /** Independent errors: all of it at black, none at L* 100, and others stay. */
    @Test
    void aBlackPutAtTheEndMovesDarkColoursMost() {
        List<Lab> colours = List.of(new Lab(0, 0, 0), new Lab(50, 9, 9), new Lab(100, 0, 0));
        List<Lab> errors =
                ProfileDoubt.blackMoved(
                        List.of(new Lab(3, 1, 2), new Lab(3, 1, 2), new Lab(3, 4, 4)), colours);
        assertEquals(new Lab(Math.hypot(3, 10), 1, 2), errors.get(0));
        assertEquals(new Lab(Math.hypot(3, 5), 1, 2), errors.get(1));
        assertEquals(new Lab(3, 4, 4), errors.get(2));
        assertEquals(new Lab(10, 0, 0), ProfileDoubt.blackMoved(List.of(), colours).get(0));
    }

    /** Of two doubts the greater counts, part by part. */
    @Test
    void theGreaterDoubtCounts() {
        Warning edited = new Warning(WarningCode.HISTOGRAM_GAPS, "");
        Warning automatic = new Warning(WarningCode.AUTOMATIC_COLOUR, "");
        ProfileDoubt.of(COLOURS, List.of(edited, automatic), true)
                .forEach(error -> assertEquals(new Lab(6, 4, 4), error));
    }
}
