package org.printassay.calibrate.codes;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import javax.imageio.IIOImage;
import javax.imageio.ImageIO;
import javax.imageio.ImageWriteParam;
import javax.imageio.ImageWriter;
import javax.imageio.stream.ImageOutputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.printassay.colour.LinearRgb;
import org.printassay.scan.LossyCoding;
import org.printassay.scan.ScanFiles;
import org.printassay.scan.ScanInfo;

/** What lossy coding of a mid grey takes from its three channels. */
class CodeErrorsTest {
    @TempDir Path dir;

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

    /**
     * The JDK's own coder (independent): even areas with noise of 0.3 codes, which coding takes
     * away. What their means lose is more than the step of the table alone, 6/8 of a code at
     * quality 81 (ISO/IEC 10918-1, table K.1), makes by rounding; whole codes are made after it.
     */
    @Test
    void meansOfEvenAreasLoseWholeCodesToo() throws Exception {
        Random random = new Random(81);
        double squares = 0;
        int areas = 0;
        LossyCoding coding = null;
        for (double mean = 30; mean < 36; mean += 0.05) {
            BufferedImage area = new BufferedImage(24, 24, BufferedImage.TYPE_INT_RGB);
            for (int i = 0; i < 24 * 24; i++) {
                int code = (int) Math.round(mean + 0.3 * random.nextGaussian());
                area.setRGB(i % 24, i / 24, code << 16 | code << 8 | code);
            }
            Path file = dir.resolve("area.jpg");
            write(area, file);
            coding = ScanFiles.open(file).info().coding().orElseThrow();
            BufferedImage read = ImageIO.read(file.toFile());
            double sum = 0;
            for (int i = 0; i < 24 * 24; i++) {
                sum += read.getRGB(i % 24, i / 24) >> 8 & 255;
            }
            squares += Math.pow(sum / (24 * 24) - mean, 2);
            areas++;
        }
        double lost = Math.sqrt(squares / areas);
        assertNotNull(coding);
        assertEquals(81, coding.quality(), 1);
        assertTrue(lost > 1.2 * 6 / 8.0 / Math.sqrt(12), "lost " + lost);
        assertTrue(lost < coding.greyStep(1) / Math.sqrt(12), "lost " + lost);
    }

    @Test
    void eachOfRedGreenAndBlueHasItsOwnStep() {
        assertEquals(1.2, new LossyCoding(1.2, 2, 80, false).greyStep(1));
        assertEquals(2, new LossyCoding(1.2, 2, 80, true).greyStep(1));
        assertEquals(1.2, new LossyCoding(1.2, 2, 80, true).greyStep(0));
    }

    private static void write(BufferedImage image, Path file) throws IOException {
        ImageWriter writer = ImageIO.getImageWritersByFormatName("jpeg").next();
        ImageWriteParam how = writer.getDefaultWriteParam();
        how.setCompressionMode(ImageWriteParam.MODE_EXPLICIT);
        how.setCompressionQuality(0.81f);
        try (ImageOutputStream out = ImageIO.createImageOutputStream(file.toFile())) {
            writer.setOutput(out);
            writer.write(null, new IIOImage(image, null, null), how);
        } finally {
            writer.dispose();
        }
    }
}
