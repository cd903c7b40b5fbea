package org.printassay.calibrate.part;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.junit.jupiter.api.Test;

class PaperBalanceTest {
    private static final double CODE = 1 / 255.0;

    private static PaperBalance of(double red, double blue, double error, double spread) {
        return new PaperBalance(red * CODE, blue * CODE, error * CODE, spread * CODE, 0.95, true);
    }

    @Test
    void anExactTieTellsAndATintDoesNot() {
        assertTrue(of(0.03, 0.02, 0.03, 0.7).exact());
        assertFalse(of(0.03, 0.4, 0.03, 0.7).exact());
        assertFalse(of(-0.2, 0.02, 0.03, 0.7).exact());
        assertFalse(of(0.03, 0.02, 0.2, 0.7).exact(), "too uncertain to tell");
    }

    @Test
    void paperOfOneCodeInEightBitsDoesNotTell() {
        PaperBalance locked = new PaperBalance(0, 0, 0, 0.1 * CODE, 0.95, false);
        assertFalse(locked.exact());
        assertTrue(new PaperBalance(0, 0, 0.03 * CODE, 0.7 * CODE, 0.95, false).exact());
    }

    /** Tints as papers have them (common practice, no source; simulated). */
    @Test
    void hardlyAPaperTiesByItself() {
        Random random = new Random(3);
        int told = 0;
        for (int k = 0; k < 20_000; k++) {
            double red = random.nextGaussian();
            double blue = 4 * random.nextGaussian();
            told += of(red, blue, 0.03, 0.7).exact() ? 1 : 0;
        }
        assertTrue(told > 0 && told < 200, told + " of 20000");
    }
}
