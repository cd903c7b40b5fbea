package org.printassay.recipe;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.Color;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.printassay.colour.DeltaE;
import org.printassay.colour.Lab;
import org.printassay.colour.Rgb8;
import org.printassay.colour.RgbSpace;
import org.printassay.colour.icc.RgbProfiles;
import org.printassay.problem.Problem;

class PictureColoursTest {
    @TempDir private Path folder;

    private static List<Lab> colours(Path file, int count) throws Problem {
        return PictureColours.of(file, count, "here", RgbSpace.SRGB, new ArrayList<>());
    }

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
        List<Lab> colours = colours(stripes(), 4);
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
        assertEquals(4, colours(stripes(), 24).size());
    }

    /** Cut short at every length: few colours or one line, never a fault. */
    @Test
    void damagedPicturesAreRefusedInOneLine() throws IOException {
        byte[] whole = Files.readAllBytes(stripes());
        for (int length = 0; length < whole.length; length += 7) {
            Path file = folder.resolve("cut.png");
            Files.write(file, Arrays.copyOf(whole, length));
            try {
                assertTrue(colours(file, 4).size() <= 5);
            } catch (Problem problem) {
                assertEquals(Problem.Kind.INPUT, problem.kind());
                assertEquals(1, String.valueOf(problem.getMessage()).lines().count());
            }
        }
    }

    @Test
    void whatIsNoPictureIsRefusedInOneLine() throws IOException {
        Path file = Files.writeString(folder.resolve("notes.txt"), "not a picture");
        Problem problem = assertThrows(Problem.class, () -> colours(file, 4));
        assertTrue(String.valueOf(problem.getMessage()).startsWith("notes.txt: is not a picture"));
        assertEquals(Problem.Kind.INPUT, problem.kind());
    }

    /** Full green of a wide encoding, as the kinds of file carry its profile. */
    @ParameterizedTest
    @ValueSource(strings = {"png", "tiff", "jpg"})
    void aWidePictureIsConvertedByItsProfile(String format) throws IOException, Problem {
        byte[] profile = RgbProfiles.of(RgbSpace.ADOBE_RGB);
        Path file = folder.resolve("wide." + format);
        Files.write(file, WidePicture.of(format, 0, 255, 0, profile));
        List<String> notes = new ArrayList<>();
        List<Lab> found = PictureColours.of(file, 3, "/sections/0", RgbSpace.SRGB, notes);
        // Adobe RGB (1998) Color Image Encoding: full green; L* 83.2, far outside sRGB.
        Lab wanted = RgbSpace.ADOBE_RGB.toLab(new Rgb8(0, 255, 0));
        double tolerance = format.equals("jpg") ? 1.5 : 0.2;
        assertEquals(0, DeltaE.ciede2000(wanted, found.get(0)), tolerance);
        assertEquals(
                List.of(
                        "/sections/0: the picture is in "
                                + RgbSpace.ADOBE_RGB.title()
                                + "; its colours were converted."),
                notes);
    }

    @ParameterizedTest
    @ValueSource(strings = {"png", "tiff", "jpg"})
    void anSrgbPictureNeedsNoNote(String format) throws IOException, Problem {
        Path file = folder.resolve("usual." + format);
        Files.write(file, WidePicture.of(format, 200, 40, 90, RgbProfiles.of(RgbSpace.SRGB)));
        List<String> notes = new ArrayList<>();
        List<Lab> found = PictureColours.of(file, 3, "here", RgbSpace.ROMM, notes);
        Lab wanted = RgbSpace.SRGB.toLab(new Rgb8(200, 40, 90));
        double tolerance = format.equals("jpg") ? 1.5 : 0.2;
        assertEquals(0, DeltaE.ciede2000(wanted, found.get(0)), tolerance);
        assertEquals(List.of(), notes);
    }

    @Test
    void aPictureWithoutAProfileForAWideChartIsNoted() throws IOException, Problem {
        List<String> notes = new ArrayList<>();
        PictureColours.of(stripes(), 4, "here", RgbSpace.DISPLAY_P3, notes);
        assertEquals(
                List.of("here: the picture carries no profile; its colours were taken as sRGB."),
                notes);
    }

    @Test
    void aProfileThatCannotBeUsedIsNoted() throws IOException, Problem {
        byte[] damaged = RgbProfiles.of(RgbSpace.ADOBE_RGB);
        Arrays.fill(damaged, 128, damaged.length, (byte) 0);
        Path file = folder.resolve("odd.png");
        Files.write(file, WidePicture.of("png", 10, 200, 30, damaged));
        List<String> notes = new ArrayList<>();
        PictureColours.of(file, 4, "here", RgbSpace.SRGB, notes);
        assertEquals(
                List.of(
                        "here: the picture's profile cannot be used; its colours were taken as"
                                + " sRGB."),
                notes);
    }

    /** Greys keep their codes: 128 of sRGB is L* 53.6 (IEC 61966-2-1). */
    @Test
    void aGreyPictureKeepsItsCodes() throws IOException, Problem {
        BufferedImage picture = new BufferedImage(20, 20, BufferedImage.TYPE_BYTE_GRAY);
        for (int i = 0; i < 400; i++) {
            picture.getRaster().setSample(i % 20, i / 20, 0, 128);
        }
        Path file = folder.resolve("grey.png");
        ImageIO.write(picture, "png", file.toFile());
        assertEquals(53.6, colours(file, 2).get(0).l(), 0.1);
    }
}
