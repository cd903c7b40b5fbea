package org.printassay.scan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.printassay.problem.Problem;

/**
 * Files of one writer, read by us and by a reader that is not their writer's, pixel by pixel: PNG
 * images of a published test set (PngSuite, see published/png/SOURCE.md), and made images.
 */
class ScanWitnessTest extends ScanFixture {
    private static final String SUITE = "/published/png/";

    @ParameterizedTest
    @ValueSource(
            strings = {
                "basn0g08", "basn2c08", "basn3p08", "basn4a08", "basn6a08", "f00n0g08", "f00n2c08",
                "f01n0g08", "f01n2c08", "f02n0g08", "f02n2c08", "f03n0g08", "f03n2c08", "f04n0g08",
                "f04n2c08", "tbrn2c08", "tp0n0g08", "tp0n2c08", "tp0n3p08", "tp1n3p08"
            })
    void readsPublishedPngAsLibpngDoes(String name) throws Exception {
        try (var in = ScanWitnessTest.class.getResourceAsStream(SUITE + name + ".png")) {
            Files.copy(Objects.requireNonNull(in), dir.resolve("in.png"));
        }
        char[] ours = read(dir.resolve("in.png"));
        int channels = ScanFiles.open(dir.resolve("in.png")).info().channels();
        String back = channels == 1 ? "back.pgm" : "back.ppm";
        String wanted = Integer.toString(channels);
        tool("vips", "extract_band", "in.png", back, "0", "--n", wanted);
        assertClose(dir.resolve(back), ours, 0);
    }

    /** Writer's command, then the reader's; {@code IN} is the made image, channels and bits. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "3 | 8  | convert IN -compress LZW out.tif      | vips copy out.tif BACK",
                "3 | 16 | convert IN -compress Zip out.tif      | vips copy out.tif BACK",
                "1 | 8  | convert IN -compress RLE out.tif      | vips copy out.tif BACK",
                "1 | 16 | convert IN -endian MSB -compress None out.tif | vips copy out.tif BACK",
                "1 | 8  | convert IN -define quantum:polarity=min-is-white out.tif"
                        + " | vips copy out.tif BACK",
                "3 | 8  | convert IN -alpha on -compress LZW out.tif"
                        + " | vips extract_band out.tif BACK 0 --n 3",
                "3 | 16 | convert IN -interlace PNG out.png     | vips copy out.png BACK",
                "1 | 16 | convert IN out.png                    | vips copy out.png BACK",
                "3 | 16 | vips tiffsave IN out.tif --bigtiff --compression lzw"
                        + " | convert out.tif BACK",
                "3 | 8  | vips tiffsave IN out.tif --tile --tile-width 32 --tile-height 16"
                        + " --compression packbits | convert out.tif BACK",
                "1 | 16 | vips tiffsave IN out.tif --compression deflate --predictor horizontal"
                        + " | convert out.tif BACK",
                "3 | 16 | vips pngsave IN out.png --interlace   | convert out.png BACK",
                "1 | 8  | vips pngsave IN out.png --filter all  | convert out.png BACK",
            })
    void readsAsAnotherReaderThanItsWriterDoes(int channels, int bits, String write, String back)
            throws Exception {
        char[] made = image(channels, bits);
        String in = pixmap(made, channels, bits).getFileName().toString();
        String out = channels == 3 ? "back.ppm" : "back.pgm";
        tool(write.replace("IN", in).split(" +"));
        tool(back.replace("BACK", out).split(" +"));
        char[] ours = read(dir.resolve(write.contains("out.tif") ? "out.tif" : "out.png"));
        byte[] theirs = Files.readAllBytes(dir.resolve(out));
        int bytes = bits / 8;
        int start = theirs.length - ours.length * bytes;
        assertTrue(start > 0, "the other reader holds fewer samples");
        for (int i = 0; i < ours.length; i++) {
            int high = theirs[start + i * bytes] & 0xff;
            int low = bits == 16 ? theirs[start + i * bytes + 1] & 0xff : high;
            assertEquals(high << 8 | low, ours[i], "sample " + i);
        }
    }

    /** One reader of two divides by alpha by itself; the made picture is what both start from. */
    @ParameterizedTest
    @ValueSource(strings = {"60", "100"})
    void coloursThatAlphaWasMultipliedIntoAreReadAsLibvipsDoes(String percent) throws Exception {
        char[] made = image(3, 8);
        String in = pixmap(made, 3, 8).getFileName().toString();
        String write =
                "convert IN -alpha set -channel A -evaluate set PART% +channel"
                        + " -define tiff:alpha=associated -compress LZW out.tif";
        tool(write.replace("IN", in).replace("PART", percent).split(" "));
        tool("vips", "extract_band", "out.tif", "back.ppm", "0", "--n", "3");
        char[] ours = read(dir.resolve("out.tif"));
        assertClose(dir.resolve("back.ppm"), ours, 1);
        for (int i = 0; i < made.length; i++) {
            assertEquals(made[i] / 257.0, ours[i] / 257.0, 1, "sample " + i);
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"jpeg:90", "jpeg:r:90"})
    void readsJpegInTiffInTilesAndOneStripAsLibvipsDoes(String coding) throws Exception {
        String from = pixmap(image(3, 8), 3, 8).getFileName().toString();
        tool("convert", from, "-compress", "None", "plain.tif");
        for (String layout : List.of("-r 1000", "-r 16", "-t -w 32 -l 48")) {
            List<String> command = new ArrayList<>(List.of("tiffcp", "-c", coding));
            command.addAll(List.of(layout.split(" ", -1)));
            command.addAll(List.of("plain.tif", "out.tif"));
            tool(command.toArray(new String[0]));
            tool("vips", "copy", "out.tif", "back.ppm");
            assertClose(dir.resolve("back.ppm"), read(dir.resolve("out.tif")), 2);
        }
    }

    @Test
    void greyJpegInTiffIsRead() throws Exception {
        String from = pixmap(image(1, 8), 1, 8).getFileName().toString();
        tool("convert", from, "-compress", "None", "plain.tif");
        tool("tiffcp", "-c", "jpeg:90", "-r", "16", "plain.tif", "out.tif");
        tool("vips", "copy", "out.tif", "back.pgm");
        assertClose(dir.resolve("back.pgm"), read(dir.resolve("out.tif")), 1);
    }

    /** Exif in a JPEG, written by hand, says mirrored (2); libvips turns it as it says. */
    @Test
    void mirrorsWhatExifSaysIsMirrored() throws Exception {
        pixmap(image(3, 8), 3, 8);
        tool("convert", "made-3-8.ppm", "-sampling-factor", "1x1", "plain.jpg");
        byte[] plain = Files.readAllBytes(dir.resolve("plain.jpg"));
        byte[] exif = {
            (byte) 0xff,
            (byte) 0xe1,
            0,
            34,
            'E',
            'x',
            'i',
            'f',
            0,
            0,
            'M',
            'M',
            0,
            42,
            0,
            0,
            0,
            8,
            0,
            1,
            1,
            0x12,
            0,
            3,
            0,
            0,
            0,
            1,
            0,
            2,
            0,
            0,
            0,
            0,
            0,
            0
        };
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        out.write(plain, 0, 2);
        out.write(exif, 0, exif.length);
        out.write(plain, 2, plain.length - 2);
        Path tagged = Files.write(dir.resolve("tagged.jpg"), out.toByteArray());
        tool("vips", "autorot", "tagged.jpg", "back.ppm");
        char[] ours = read(tagged);
        assertClose(dir.resolve("back.ppm"), ours, 2);
        assertEquals(false, Arrays.equals(ours, read(dir.resolve("plain.jpg"))), "not mirrored");
    }

    @Test
    void severalPagesAreRefusedAPreviewIsPassedOver() throws Exception {
        char[] samples = image(3, 8);
        pixmap(samples, 3, 8);
        tool("convert", "made-3-8.ppm", "made-3-8.ppm", "-compress", "LZW", "pages.tif");
        Problem problem = assertThrows(Problem.class, () -> read(dir.resolve("pages.tif")));
        assertEquals(
                "pages.tif: holds 2 pages. Save each page as a file of its own.",
                problem.getMessage());
        for (String order : List.of("small.ppm made-3-8.ppm", "made-3-8.ppm small.ppm")) {
            tool("convert", "made-3-8.ppm", "-resize", "20x15!", "small.ppm");
            List<String> command = new ArrayList<>(List.of("convert"));
            command.addAll(List.of(order.split(" ", -1)));
            command.add("preview.tif");
            tool(command.toArray(new String[0]));
            assertSame(samples, read(dir.resolve("preview.tif")));
        }
    }

    @Test
    void codingsThatAreNotReadAreNamed() throws Exception {
        pixmap(image(3, 8), 3, 8);
        tool("convert", "made-3-8.ppm", "-endian", "LSB", "-compress", "LZW", "out.tif");
        byte[] tiff = Files.readAllBytes(dir.resolve("out.tif"));
        swap(tiff, new int[] {3, 1, 3, 0, 1, 0, 0, 0, 5}, 8, 6);
        Files.write(dir.resolve("old-style-jpeg.tif"), tiff);
        assertTold("old-style-jpeg.tif", "compression 6 is not read");
        tool("convert", "made-3-8.ppm", "-colors", "40", "-type", "Palette", "palette.tif");
        assertTold("palette.tif", "palette");
        tool("convert", "made-3-8.ppm", "-quality", "90", "out.jpg");
        byte[] jpeg = Files.readAllBytes(dir.resolve("out.jpg"));
        swap(jpeg, new int[] {0xff, 0xc0}, 1, 0xc9);
        Files.write(dir.resolve("arithmetic.jpg"), jpeg);
        assertTold("arithmetic.jpg", "arithmetic");
    }

    /** Sets the byte at {@code at} behind the first place where the wanted bytes stand. */
    private static void swap(byte[] in, int[] wanted, int at, int value) {
        for (int i = 0; i <= in.length - wanted.length; i++) {
            int same = 0;
            while (same < wanted.length && (in[i + same] & 0xff) == wanted[same]) {
                same++;
            }
            if (same == wanted.length) {
                in[i + at] = (byte) value;
                return;
            }
        }
        throw new AssertionError("bytes not found");
    }

    private void assertTold(String file, String words) {
        Problem problem = assertThrows(Problem.class, () -> read(dir.resolve(file)));
        assertTrue(problem.getMessage().contains(words), problem.getMessage());
    }
}
