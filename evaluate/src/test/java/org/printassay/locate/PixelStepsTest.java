package org.printassay.locate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.OptionalDouble;
import java.util.Random;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Made images (simulated): flat patches with noise, resized by the JDK. */
class PixelStepsTest {
    private static final int SIDE = 1200;

    /** Patches of a few dozen pixels in rows and columns, as a sheet that lies straight. */
    private static BufferedImage patches(double noise8, int blur, long seed) {
        Random random = new Random(seed);
        double[][] light = new double[SIDE][SIDE];
        for (int y = 0; y < SIDE; y++) {
            for (int x = 0; x < SIDE; x++) {
                light[y][x] =
                        40 + 30 * ((x / 41 + 3 * (y / 37)) % 7) + noise8 * random.nextGaussian();
            }
        }
        BufferedImage image = new BufferedImage(SIDE, SIDE, BufferedImage.TYPE_INT_RGB);
        for (int y = 0; y < SIDE; y++) {
            for (int x = 0; x < SIDE; x++) {
                double sum = 0;
                for (int k = -blur; k <= blur; k++) {
                    sum += light[y][Math.max(0, Math.min(SIDE - 1, x + k))];
                }
                int code = (int) Math.round(sum / (2 * blur + 1));
                image.setRGB(x, y, code << 16 | code << 8 | code);
            }
        }
        return image;
    }

    private static BufferedImage resized(BufferedImage from, double factor, String how) {
        Object hint =
                switch (how) {
                    case "bilinear" -> RenderingHints.VALUE_INTERPOLATION_BILINEAR;
                    case "bicubic" -> RenderingHints.VALUE_INTERPOLATION_BICUBIC;
                    default -> RenderingHints.VALUE_INTERPOLATION_NEAREST_NEIGHBOR;
                };
        int side = (int) (factor * SIDE);
        BufferedImage to = new BufferedImage(side, side, BufferedImage.TYPE_INT_RGB);
        Graphics2D graphics = to.createGraphics();
        graphics.setRenderingHint(RenderingHints.KEY_INTERPOLATION, hint);
        graphics.drawImage(from, 0, 0, side, side, null);
        graphics.dispose();
        return to;
    }

    private static OptionalDouble period(BufferedImage image) {
        PixelSteps steps = new PixelSteps(image.getWidth());
        char[] row = new char[image.getWidth()];
        for (int y = 0; y < image.getHeight(); y += CodeCensus.EVERY) {
            for (int x = 0; x < row.length; x++) {
                row[x] = (char) (257 * (image.getRGB(x, y) & 0xff));
            }
            steps.add(row, 1);
        }
        return steps.interpolationPeriod();
    }

    @ParameterizedTest
    @CsvSource({
        "bilinear, 2, 2",
        "bicubic, 2, 2",
        "nearest, 2, 2",
        "bilinear, 1.5, 3",
        "bicubic, 1.5, 3",
        "nearest, 1.5, 3",
        "bilinear, 4, 4",
        "bicubic, 3, 3",
        "bicubic, 2.4, 2.4"
    })
    void enlargedImagesShowTheirPeriod(String how, double factor, double period) {
        OptionalDouble found = period(resized(patches(1.5, 0, 1), factor, how));
        assertTrue(found.isPresent());
        assertEquals(period, found.getAsDouble(), 0.02);
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, 0.4, 1, 2, 5})
    void imagesAsScannedShowNone(double noise8) {
        assertEquals(OptionalDouble.empty(), period(patches(noise8, 0, 2)));
    }

    /** Clipped paper has no noise; what steps there is a row of fine lines of the chart's own. */
    @Test
    void clippedPaperWithFineLinesShowsNone() {
        BufferedImage image = patches(4, 1, 6);
        for (int y = 0; y < SIDE; y++) {
            for (int x = 0; x < SIDE; x++) {
                boolean lines = y > SIDE / 2 && y < SIDE / 2 + 60 && x > 100 && x < 900;
                if (y % 200 < 150) {
                    int code = lines && x % 4 == 0 ? 253 : 255;
                    image.setRGB(x, y, code << 16 | code << 8 | code);
                }
            }
        }
        assertEquals(OptionalDouble.empty(), period(image));
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 2, 3, 5})
    void blurredImagesShowNone(int blur) {
        assertEquals(OptionalDouble.empty(), period(patches(6, blur, 3)));
    }

    @ParameterizedTest
    @CsvSource({
        "bilinear, 0.5",
        "bilinear, 0.667",
        "bilinear, 0.8",
        "bicubic, 0.75",
        "nearest, 0.8"
    })
    void imagesMadeSmallerShowNone(String how, double factor) {
        assertEquals(OptionalDouble.empty(), period(resized(patches(2, 0, 4), factor, how)));
    }

    @Test
    void blocksOfLossyCodingAreNoPeriodOfEnlarging() throws IOException {
        ByteArrayOutputStream jpeg = new ByteArrayOutputStream();
        ImageIO.write(patches(3, 0, 5), "jpeg", jpeg);
        BufferedImage lossy = ImageIO.read(new ByteArrayInputStream(jpeg.toByteArray()));
        assertEquals(OptionalDouble.empty(), period(lossy));
    }

    @Test
    void narrowImagesTellNothing() {
        PixelSteps steps = new PixelSteps(100);
        steps.add(new char[100], 1);
        assertEquals(OptionalDouble.empty(), steps.interpolationPeriod());
        assertEquals(OptionalDouble.empty(), PixelSteps.none().interpolationPeriod());
    }
}
