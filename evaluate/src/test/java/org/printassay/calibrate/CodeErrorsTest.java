package org.printassay.calibrate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.printassay.colour.LinearRgb;
import org.printassay.scan.LossyCoding;
import org.printassay.scan.ScanInfo;

/** What lossy coding of a mid grey takes from its three channels. */
class CodeErrorsTest {
    private static final ScanColour COLOUR =
            ScanColour.plain(
                    new ScanInfo(
                            "a.tif",
                            "TIFF",
                            100,
                            100,
                            3,
                            8,
                            Optional.empty(),
                            Optional.empty(),
                            true));

    private static List<double[]> causes(boolean rgb) {
        return CodeErrors.of(COLOUR, new LossyCoding(3, 3, 75, rgb), new LinearRgb(0.2, 0.2, 0.2));
    }

    /** Red, green and blue that are coded as they are lose each on its own, and the same amount. */
    @Test
    void channelsThatAreCodedApartLoseApart() {
        List<double[]> apart = causes(true);
        for (int k = 0; k < 3; k++) {
            for (int c = 0; c < 3; c++) {
                assertEquals(c == k ? apart.get(0)[0] : 0, apart.get(k)[c], 1e-12);
            }
        }
        assertTrue(apart.get(0)[0] > 0);
    }

    /** ITU-R BT.601: lightness moves all three alike, Cb no red, Cr no blue. */
    @Test
    void lightnessAndColourDifferencesLoseTogether() {
        List<double[]> coded = causes(false);
        assertEquals(coded.get(0)[0], coded.get(0)[1], 1e-12);
        assertEquals(0, coded.get(1)[0], 1e-12);
        assertEquals(0, coded.get(2)[2], 1e-12);
        assertEquals(1.772, coded.get(1)[2] / coded.get(0)[2], 1e-6);
    }
}
