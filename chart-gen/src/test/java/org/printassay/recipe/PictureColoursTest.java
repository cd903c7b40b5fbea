package org.printassay.recipe;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.Color;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.printassay.colour.DeltaE;
import org.printassay.colour.Lab;
import org.printassay.colour.Rgb8;
import org.printassay.colour.RgbSpace;
import org.printassay.problem.Problem;

class PictureColoursTest {
    @TempDir private Path folder;

    /** Stripes of known colours in known shares. */
    private Path stripes() throws IOException {
        BufferedImage picture = new BufferedImage(400, 100, BufferedImage.TYPE_INT_RGB);
        int[] widths = {200, 120, 60, 20};
        int[] colours = {0x804020, 0x2050a0, 0xf0e0d0, 0x109030};
        int x = 0;
        for (int i = 0; i < widths.length; i++) {
            for (int end = x + widths[i]; x < end; x++) {
                for (int y = 0; y < 100; y++) {
                    picture.setRGB(x, y, colours[i]);
                }
            }
        }
        Path file = folder.resolve("stripes.png");
        ImageIO.write(picture, "png", file.toFile());
        return file;
    }

    @Test
    void coloursComeWithTheMostFrequentFirst() throws IOException, Problem {
        List<Lab> colours = PictureColours.of(stripes(), 4);
        int[] wanted = {0x804020, 0x2050a0, 0xf0e0d0, 0x109030};
        assertEquals(4, colours.size());
        for (int i = 0; i < wanted.length; i++) {
            Color c = new Color(wanted[i]);
            Lab lab = RgbSpace.SRGB.toLab(new Rgb8(c.getRed(), c.getGreen(), c.getBlue()));
            assertEquals(0, DeltaE.ciede2000(lab, colours.get(i)), 1e-6, "colour " + i);
        }
    }

    @Test
    void aPictureOfFewColoursGivesFew() throws IOException, Problem {
        assertEquals(4, PictureColours.of(stripes(), 24).size());
    }

    /** Cut short at every length: few colours or one line, never a fault. */
    @Test
    void damagedPicturesAreRefusedInOneLine() throws IOException {
        byte[] whole = Files.readAllBytes(stripes());
        for (int length = 0; length < whole.length; length += 7) {
            Path file = folder.resolve("cut.png");
            Files.write(file, Arrays.copyOf(whole, length));
            try {
                assertTrue(PictureColours.of(file, 4).size() <= 5);
            } catch (Problem problem) {
                assertEquals(Problem.Kind.INPUT, problem.kind());
                assertEquals(1, String.valueOf(problem.getMessage()).lines().count());
            }
        }
    }

    @Test
    void whatIsNoPictureIsRefusedInOneLine() throws IOException {
        Path file = Files.writeString(folder.resolve("notes.txt"), "not a picture");
        Problem problem = assertThrows(Problem.class, () -> PictureColours.of(file, 4));
        assertTrue(String.valueOf(problem.getMessage()).startsWith("notes.txt: is not a picture"));
        assertEquals(Problem.Kind.INPUT, problem.kind());
    }
}
