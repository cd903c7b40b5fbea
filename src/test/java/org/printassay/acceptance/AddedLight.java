package org.printassay.acceptance;

import java.awt.image.BufferedImage;
import java.util.function.DoubleBinaryOperator;
import org.printassay.colour.RgbSpace;

/** Puts light from outside into a scan in 8 bits, encoded as sRGB. */
final class AddedLight {
    private AddedLight() {}

    /**
     * Adds the same to all channels.
     *
     * @param image modified
     * @param light paper in white light is 1, by millimetres from the left and the top of the scan
     */
    static void to(BufferedImage image, double samplesPerInch, DoubleBinaryOperator light) {
        double perMm = samplesPerInch / 25.4;
        for (int y = 0; y < image.getHeight(); y++) {
            for (int x = 0; x < image.getWidth(); x++) {
                double added = light.applyAsDouble((x + 0.5) / perMm, (y + 0.5) / perMm);
                int rgb = image.getRGB(x, y);
                int lit = 0xff;
                for (int shift = 16; shift >= 0; shift -= 8) {
                    double sum = RgbSpace.SRGB.decode(((rgb >> shift) & 255) / 255.0) + added;
                    long code = Math.round(255 * RgbSpace.SRGB.encode(Math.min(1, sum)));
                    lit = lit << 8 | (int) Math.min(255, code);
                }
                image.setRGB(x, y, lit);
            }
        }
    }
}
