package org.printassay.calibrate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.printassay.scan.LossyCoding;

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

    /**
     * JPEG of quality 60 keeps colour differences of even areas in steps of 1.75 codes (simulated).
     */
    @Test
    void tintsThatLossyCodingTookAwayDoNotTell() {
        LossyCoding coding = new LossyCoding(1.6, 1.75, 60, false);
        double lost = PaperBalance.rounded(Optional.of(coding)) / CODE;
        Random random = new Random(3);
        int told = 0;
        for (int k = 0; k < 20_000; k++) {
            double cr = random.nextGaussian() / (1.402 + 0.714136);
            double cb = 4 * random.nextGaussian() / (1.772 + 0.344136);
            double keptCr = coding.chromaStep() * Math.rint(cr / coding.chromaStep());
            double keptCb = coding.chromaStep() * Math.rint(cb / coding.chromaStep());
            double red = (1.402 + 0.714136) * keptCr + 0.344136 * keptCb;
            double blue = (1.772 + 0.344136) * keptCb + 0.714136 * keptCr;
            told += of(red, blue, 0.03 + lost, 0.7).exact() ? 1 : 0;
        }
        assertTrue(told < 200, told + " of 20000");
        assertEquals(0, PaperBalance.rounded(Optional.empty()), "nothing was lost");
    }
}
