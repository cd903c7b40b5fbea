package org.printassay.colour.icc;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.printassay.colour.RgbSpace;

/** Tables for pictures against the exact way. */
class PixelTransformTest {
    private final Random random = new Random(5);

    /** Between matrix profiles every 8-bit code is the exact one, rounded. */
    @Test
    void shapersAreExact() throws IccException {
        for (RgbSpace space : RgbSpace.values()) {
            IccProfile from = IccProfile.parse(RgbProfiles.of(RgbSpace.SRGB));
            IccProfile to = IccProfile.parse(RgbProfiles.of(space));
            Difference d = compare(from, to, Intent.RELATIVE);
            assertTrue(d.worst8 <= 0.52, space + " worst of 8 bits: " + d);
            assertTrue(d.worst16 <= 20, space + " worst of 16 bits: " + d);
        }
    }

    /** Table profiles (simulated): what lies between the points of our table is small. */
    @Test
    void tablesAreClose() throws IccException {
        byte[] toColour = TestProfile.lut(4, 2, 7);
        byte[] inks = TestProfile.lut(3, 4, 2, 9);
        IccProfile cmyk =
                IccProfile.parse(
                        TestProfile.of(2, "prtrCMYKLab ", Map.of("A2B0", toColour, "B2A0", inks)));
        for (RgbSpace space : RgbSpace.values()) {
            IccProfile rgb = IccProfile.parse(RgbProfiles.of(space));
            Difference there = compare(rgb, cmyk, Intent.RELATIVE);
            assertTrue(there.mean8 < 0.4, space + " to inks: " + there);
            assertTrue(there.worst8 < 5, space + " to inks: " + there);
            Difference back = compare(cmyk, rgb, Intent.RELATIVE);
            assertTrue(back.mean8 < 0.6, "inks to " + space + ": " + back);
        }
    }

    @Test
    void greyIsConverted() throws IccException {
        IccProfile grey =
                IccProfile.parse(
                        TestProfile.of(2, "mntrGRAYXYZ ", Map.of("kTRC", TestProfile.gamma(1.8))));
        Difference d =
                compare(grey, IccProfile.parse(RgbProfiles.of(RgbSpace.SRGB)), Intent.RELATIVE);
        assertTrue(d.worst8 < 0.6, d::toString);
    }

    @Test
    void refusesTooShortArrays() throws IccException {
        IccProfile srgb = IccProfile.parse(RgbProfiles.of(RgbSpace.SRGB));
        PixelTransform transform = PixelTransform.between(srgb, srgb, Intent.RELATIVE, false);
        assertEquals(3, transform.inputs());
        assertThrows(
                IllegalArgumentException.class,
                () -> transform.convert(new byte[5], new byte[6], 2));
    }

    /** In codes of their own depth. */
    private record Difference(double mean8, double worst8, double worst16) {}

    private Difference compare(IccProfile from, IccProfile to, Intent intent) throws IccException {
        IccTransform exact = IccTransform.between(from, to, intent, true);
        PixelTransform fast = PixelTransform.between(from, to, intent, true);
        int pixels = 3000;
        int inputs = exact.inputs();
        int outputs = exact.outputs();
        byte[] from8 = new byte[pixels * inputs];
        random.nextBytes(from8);
        short[] from16 = new short[from8.length];
        double[] exactFrom8 = new double[from8.length];
        double[] exactFrom16 = new double[from8.length];
        for (int i = 0; i < from8.length; i++) {
            from16[i] = (short) random.nextInt(65536);
            exactFrom8[i] = (from8[i] & 0xFF) / 255.0;
            exactFrom16[i] = (from16[i] & 0xFFFF) / 65535.0;
        }
        byte[] to8 = new byte[pixels * outputs];
        short[] to16 = new short[pixels * outputs];
        double[] exactTo8 = new double[pixels * outputs];
        double[] exactTo16 = new double[pixels * outputs];
        fast.convert(from8, to8, pixels);
        fast.convert(from16, to16, pixels);
        exact.convert(exactFrom8, exactTo8, pixels);
        exact.convert(exactFrom16, exactTo16, pixels);
        double sum = 0;
        double worst8 = 0;
        double worst16 = 0;
        for (int i = 0; i < to8.length; i++) {
            double difference = Math.abs((to8[i] & 0xFF) - 255 * exactTo8[i]);
            sum += difference;
            worst8 = Math.max(worst8, difference);
            worst16 = Math.max(worst16, Math.abs((to16[i] & 0xFFFF) - 65535 * exactTo16[i]));
        }
        return new Difference(sum / to8.length, worst8, worst16);
    }
}
