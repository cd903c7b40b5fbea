package org.printassay.scan;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.image.BufferedImage;
import java.awt.image.WritableRaster;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.printassay.colour.RgbSpace;
import org.printassay.colour.icc.RgbProfiles;
import org.printassay.problem.Problem;

/**
 * Reads what independent writers wrote (libtiff's tools, ImageMagick, libvips, the JDK) and holds
 * every pixel against the made image, which ImageMagick reads back as a second reader.
 */
class ScanFilesTest extends ScanFixture {

    /** Only LZW and Deflate know a predictor. */
    private static List<String> predictors(String compression) {
        return compression.equals("LZW") || compression.equals("Zip")
                ? List.of("1", "2")
                : List.of("");
    }

    @ParameterizedTest
    @ValueSource(strings = {"None", "LZW", "Zip", "RLE"})
    void readsImageMagickTiffInEveryDepthAndOrder(String compression) throws Exception {
        for (int channels : new int[] {1, 3}) {
            for (int bits : new int[] {8, 16}) {
                char[] samples = image(channels, bits);
                String from = pixmap(samples, channels, bits).getFileName().toString();
                for (String endian : List.of("LSB", "MSB")) {
                    for (String predictor : predictors(compression)) {
                        tool(
                                "convert",
                                from,
                                "-compress",
                                compression,
                                "-endian",
                                endian,
                                "-define",
                                predictor.isEmpty() ? "any:none" : "tiff:predictor=" + predictor,
                                "-define",
                                "tiff:rows-per-strip=7",
                                "out.tif");
                        assertSame(samples, read(dir.resolve("out.tif")));
                    }
                }
            }
        }
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "-c none -r 1000", "-c lzw:2 -t -w 32 -l 16", "-c zip:2 -p separate -r 5",
                "-c packbits -r 9", "-c none -p separate -t -w 16 -l 32", "-8 -c zip -r 4",
                "-c lzw -B -r 100", "-c zip:2 -L -t -w 48 -l 64"
            })
    void readsLibtiffLayouts(String options) throws Exception {
        boolean planarTiles = options.contains("separate") && options.contains("-t");
        for (int bits : new int[] {8, 16}) {
            if (bits == 16 && planarTiles) {
                continue; // tiffcp garbles these: other readers of its output see it too
            }
            char[] samples = image(3, bits);
            String from = pixmap(samples, 3, bits).getFileName().toString();
            String planes = options.contains("separate") ? "plane" : "none";
            tool("convert", from, "-compress", "None", "-interlace", planes, "plain.tif");
            List<String> command = new ArrayList<>(List.of("tiffcp"));
            command.addAll(List.of(options.split(" ", -1)));
            command.addAll(List.of("plain.tif", "out.tif"));
            tool(command.toArray(new String[0]));
            assertSame(samples, read(dir.resolve("out.tif")));
        }
    }

    @Test
    void readsLibvipsTilesPyramidsAndBigTiff() throws Exception {
        char[] samples = image(3, 16);
        String from = pixmap(samples, 3, 16).getFileName().toString();
        tool(
                "vips",
                "tiffsave",
                from,
                "out.tif",
                "--tile",
                "--tile-width",
                "64",
                "--tile-height",
                "64",
                "--compression",
                "deflate",
                "--predictor",
                "horizontal",
                "--bigtiff");
        assertSame(samples, read(dir.resolve("out.tif")));
        tool(
                "vips",
                "tiffsave",
                from,
                "pyramid.tif",
                "--tile",
                "--pyramid",
                "--compression",
                "lzw",
                "--tile-width",
                "16",
                "--tile-height",
                "16");
        assertSame(samples, read(dir.resolve("pyramid.tif")));
    }

    @Test
    void readsJpegInTiffAsItsOwnWriterReadsIt() throws Exception {
        char[] samples = image(3, 8);
        String from = pixmap(samples, 3, 8).getFileName().toString();
        tool("convert", from, "-compress", "None", "plain.tif");
        for (String options : List.of("jpeg:95", "jpeg:r:90")) {
            tool("tiffcp", "-c", options, "-r", "16", "plain.tif", "jpeg.tif");
            tool("convert", "jpeg.tif", "-depth", "8", "back.ppm");
            assertClose(dir.resolve("back.ppm"), read(dir.resolve("jpeg.tif")), 2);
            int quality = Integer.parseInt(options.replaceAll("\\D", ""));
            LossyCoding coding =
                    ScanFiles.open(dir.resolve("jpeg.tif")).info().coding().orElseThrow();
            assertEquals(quality, coding.quality(), 2);
        }
    }

    /** Each channel a JPEG of its own, as libtiff writes them; strips shorter than the picture. */
    @Test
    void readsJpegInPlanesAsItsOwnWriterReadsIt() throws Exception {
        char[] samples = image(3, 8);
        String from = pixmap(samples, 3, 8).getFileName().toString();
        tool("convert", from, "-compress", "None", "plain.tif");
        for (String layout : List.of("-r 16", "-r 61", "-t -w 32 -l 32")) {
            List<String> command =
                    new ArrayList<>(List.of("tiffcp", "-c", "jpeg:r:90", "-p", "separate"));
            command.addAll(List.of(layout.split(" ", -1)));
            command.addAll(List.of("plain.tif", "planes.tif"));
            tool(command.toArray(new String[0]));
            tool("convert", "planes.tif", "-depth", "8", "back.ppm");
            Path planes = dir.resolve("planes.tif");
            assertClose(dir.resolve("back.ppm"), read(planes), 2);
            LossyCoding coding = ScanFiles.open(planes).info().coding().orElseThrow();
            assertEquals(90, coding.quality(), 2);
            assertTrue(coding.ofRgb(), layout);
        }
    }

    @Test
    void readsPngOfEveryKind() throws Exception {
        for (int channels : new int[] {1, 3}) {
            for (int bits : new int[] {8, 16}) {
                char[] samples = image(channels, bits);
                String from = pixmap(samples, channels, bits).getFileName().toString();
                for (String interlace : List.of("None", "PNG")) {
                    tool("convert", from, "-interlace", interlace, "out.png");
                    assertSame(samples, read(dir.resolve("out.png")));
                    tool("convert", from, "-alpha", "on", "-interlace", interlace, "out.png");
                    assertSame(samples, read(dir.resolve("out.png")));
                }
                tool("vips", "pngsave", from, "vips.png", "--filter", "all");
                assertSame(samples, read(dir.resolve("vips.png")));
            }
        }
    }

    @Test
    void readsPaletteAndLowDepthPng() throws Exception {
        pixmap(image(3, 8), 3, 8);
        tool("convert", "made-3-8.ppm", "-colors", "60", "PNG8:out.png");
        tool("convert", "out.png", "-depth", "8", "back.ppm");
        assertClose(dir.resolve("back.ppm"), read(dir.resolve("out.png")), 0);
        tool(
                "convert",
                "made-3-8.ppm",
                "-colorspace",
                "Gray",
                "-depth",
                "2",
                "-define",
                "png:color-type=0",
                "-define",
                "png:bit-depth=2",
                "out2.png");
        tool("convert", "out2.png", "-depth", "8", "back.pgm");
        assertClose(dir.resolve("back.pgm"), read(dir.resolve("out2.png")), 0);
    }

    @Test
    void readsJpegAsAnotherDecoderDoes() throws Exception {
        for (String options : List.of("-interlace None", "-interlace JPEG")) {
            pixmap(image(3, 8), 3, 8);
            List<String> command = new ArrayList<>(List.of("convert", "made-3-8.ppm"));
            command.addAll(List.of(options.split(" ", -1)));
            command.addAll(
                    List.of(
                            "-quality",
                            "92",
                            "-density",
                            "300",
                            "-units",
                            "PixelsPerInch",
                            "-sampling-factor",
                            "1x1",
                            "out.jpg"));
            tool(command.toArray(new String[0]));
            tool("convert", "out.jpg", "-depth", "8", "back.ppm");
            assertClose(dir.resolve("back.ppm"), read(dir.resolve("out.jpg")), 2);
            assertEquals(
                    new ScanInfo.Resolution(300, 300),
                    ScanFiles.open(dir.resolve("out.jpg")).info().samplesPerInch().orElseThrow());
        }
    }

    /** Codes stay codes: a decoder that knows the profile must not convert from it. */
    @Test
    void profileInAJpegDoesNotChangeItsCodes() throws Exception {
        pixmap(image(3, 8), 3, 8);
        Files.write(dir.resolve("wide.icc"), RgbProfiles.of(RgbSpace.ROMM));
        tool(
                "convert",
                "made-3-8.ppm",
                "-profile",
                "wide.icc",
                "-quality",
                "95",
                "-sampling-factor",
                "1x1",
                "tagged.jpg");
        Path tagged = dir.resolve("tagged.jpg");
        assertTrue(ScanFiles.open(tagged).info().iccProfile().isPresent());
        tool("vips", "copy", "tagged.jpg", "back.ppm");
        assertClose(dir.resolve("back.ppm"), read(tagged), 2);
    }

    @Test
    void readsWhatTheJdkWrites() throws Exception {
        BufferedImage image = new BufferedImage(WIDTH, HEIGHT, BufferedImage.TYPE_3BYTE_BGR);
        char[] samples = image(3, 8);
        WritableRaster raster = image.getRaster();
        for (int i = 0; i < samples.length; i++) {
            raster.setSample(i / 3 % WIDTH, i / 3 / WIDTH, i % 3, samples[i] / 257);
        }
        for (String format : List.of("tiff", "png")) {
            Path file = dir.resolve("jdk." + format);
            assertTrue(ImageIO.write(image, format, file.toFile()));
            assertSame(samples, read(file));
        }
    }

    @Test
    void readsResolutionProfileAndDepth() throws Exception {
        pixmap(image(3, 16), 3, 16);
        byte[] profile = new byte[600];
        new Random(1).nextBytes(profile);
        Files.write(dir.resolve("any.icc"), profile);
        tool(
                "vips",
                "tiffsave",
                "made-3-16.ppm",
                "out.tif",
                "--xres",
                "11.811",
                "--yres",
                "23.622",
                "--resunit",
                "cm");
        ScanInfo info = ScanFiles.open(dir.resolve("out.tif")).info();
        assertEquals(300, info.samplesPerInch().orElseThrow().x(), 0.1);
        assertEquals(600, info.samplesPerInch().orElseThrow().y(), 0.1);
        assertEquals(16, info.bits());
        assertFalse(info.lossy());
        assertTrue(info.iccProfile().isEmpty());
    }

    @Test
    void findsAProfileInEachFormat() throws Exception {
        pixmap(image(3, 8), 3, 8);
        Path profile = Path.of("/usr/share/color/icc/ghostscript/srgb.icc");
        Assumptions.assumeTrue(Files.exists(profile), "no independent profile installed");
        for (String type : List.of("tif", "png", "jpg")) {
            tool("convert", "made-3-8.ppm", "-profile", profile.toString(), "out." + type);
            assertArrayEquals(
                    Files.readAllBytes(profile),
                    ScanFiles.open(dir.resolve("out." + type)).info().iccProfile().orElseThrow());
        }
    }

    @Test
    void mirrorsWhatTheOrientationTagSaysIsMirrored() throws Exception {
        char[] samples = image(3, 8);
        pixmap(samples, 3, 8);
        tool("convert", "made-3-8.ppm", "-compress", "None", "out.tif");
        tool("tiffset", "-s", "274", "2", "out.tif");
        char[] flipped = samples.clone();
        for (int y = 0; y < HEIGHT; y++) {
            char[] row = Arrays.copyOfRange(samples, y * WIDTH * 3, (y + 1) * WIDTH * 3);
            SampleRows.mirror(row, WIDTH, 3);
            System.arraycopy(row, 0, flipped, y * row.length, row.length);
        }
        assertSame(flipped, read(dir.resolve("out.tif")));
    }

    private void assertRefused(Path file, String... words) {
        Problem problem = assertThrows(Problem.class, () -> read(file));
        assertEquals(Problem.Kind.INPUT, problem.kind());
        for (String word : words) {
            assertTrue(problem.getMessage().contains(word), problem.getMessage());
        }
        assertEquals(-1, problem.getMessage().indexOf('\n'));
    }

    @Test
    void truncatedFilesAreRefusedWhereverTheyEnd() throws Exception {
        pixmap(image(3, 16), 3, 16);
        tool("convert", "made-3-16.ppm", "-compress", "None", "a.tif");
        tool("convert", "made-3-16.ppm", "-compress", "Zip", "b.tif");
        tool("convert", "made-3-16.ppm", "-compress", "LZW", "c.tif");
        tool("convert", "made-3-16.ppm", "d.png");
        tool("convert", "made-3-16.ppm", "-quality", "90", "e.jpg");
        for (String name : List.of("a.tif", "b.tif", "c.tif", "d.png", "e.jpg")) {
            byte[] whole = Files.readAllBytes(dir.resolve(name));
            for (double share : new double[] {0.02, 0.3, 0.6, 0.9}) {
                Path cut = dir.resolve("cut-" + name);
                Files.write(cut, Arrays.copyOf(whole, (int) (whole.length * share)));
                assertRefused(cut, "cut-" + name);
            }
        }
    }

    @Test
    void hugeClaimsInASmallFileAreRefusedBeforeAnythingIsAllocated() throws Exception {
        ByteBuffer tiff = ByteBuffer.allocate(200).order(ByteOrder.LITTLE_ENDIAN);
        tiff.put(new byte[] {'I', 'I', 42, 0}).putInt(8).putShort((short) 3);
        tiff.putShort((short) 256).putShort((short) 4).putInt(1).putInt(0x7fffffff);
        tiff.putShort((short) 257).putShort((short) 4).putInt(1).putInt(0x7fffffff);
        tiff.putShort((short) 273).putShort((short) 4).putInt(0x7fffffff).putInt(8);
        Path file = Files.write(dir.resolve("huge.tif"), tiff.array());
        assertRefused(file, "huge.tif");
        tiff.putInt(18, 100).putInt(30, 100).putInt(46, 0x7fffffff);
        assertRefused(Files.write(dir.resolve("huge-count.tif"), tiff.array()), "273", "claims");
    }

    @Test
    void directoriesThatRunInACircleAreRefused() throws Exception {
        ByteBuffer tiff = ByteBuffer.allocate(40).order(ByteOrder.LITTLE_ENDIAN);
        tiff.put(new byte[] {'I', 'I', 42, 0}).putInt(8).putShort((short) 1);
        tiff.putShort((short) 254).putShort((short) 4).putInt(1).putInt(1).putInt(8);
        assertRefused(Files.write(dir.resolve("circle.tif"), tiff.array()), "circle");
    }

    @Test
    void whatIsNotAScanIsRefusedInWords() throws Exception {
        assertRefused(dir.resolve("nowhere.tif"), "no such file", dir.toString());
        assertRefused(dir, "folder");
        Path text = Files.writeString(dir.resolve("notes.tif"), "not an image at all");
        assertRefused(text, "not an image");
        Path empty = Files.write(dir.resolve("empty.png"), new byte[0]);
        assertRefused(empty, "is empty");
        pixmap(image(3, 8), 3, 8);
        tool("convert", "made-3-8.ppm", "-colorspace", "CMYK", "cmyk.tif");
        assertRefused(dir.resolve("cmyk.tif"), "CMYK", "RGB");
        tool("convert", "made-3-8.ppm", "-colorspace", "CMYK", "cmyk.jpg");
        assertRefused(dir.resolve("cmyk.jpg"), "CMYK", "RGB");
        tool(
                "convert",
                "made-3-8.ppm",
                "-type",
                "bilevel",
                "-depth",
                "1",
                "-compress",
                "None",
                "bits.tif");
        assertRefused(dir.resolve("bits.tif"), "bit");
    }

    /** Other formats by their first bytes, from memory. */
    @Test
    void otherPicturesAreToldByTheirKind() throws Exception {
        assertUnread("HEIC picture", "\0\0\0\30ftypheic\0\0\0\0mif1heic");
        assertUnread("AVIF picture", "\0\0\0\40ftypavif\0\0\0\0");
        assertUnread("BMP picture", "BM\346\223n\0\0\0\0\0\212\0\0\0");
        assertUnread("GIF picture", "GIF89a\20\0\20\0\367\0\0");
        assertUnread("GIF picture", "GIF89a");
        assertUnread("GIF picture", "GIF87a");
        assertUnread("WebP picture", "RIFF\44\0\0\0WEBPVP8 ");
        assertUnread("JPEG 2000 picture", "\0\0\0\14jP  \r\n\207\n");
        assertUnread("PSD picture", "8BPS\0\1\0\0\0\0\0\0\0\3");
        assertUnread("PNM picture", "P6\n16 16\n255\n\377\376\375");
        assertUnread("neither a picture", "\177ELF\2\1\1\0\0\0");
        assertUnread("neither a picture", "some words, and then \377\330\377\340\0\20JFIF\0");
        assertUnread("is empty", "");
    }

    private void assertUnread(String words, String head) throws Exception {
        Path file = Files.write(dir.resolve("odd"), head.getBytes(StandardCharsets.ISO_8859_1));
        for (Executable reading :
                List.<Executable>of(
                        () -> ScanFiles.refuseUnread(file), () -> ScanFiles.open(file))) {
            Problem problem = assertThrows(Problem.class, reading);
            assertEquals(Problem.Kind.INPUT, problem.kind());
            assertTrue(problem.getMessage().contains(words), problem.getMessage());
        }
    }

    /** Text may be a measurement, in any coding that such files have. */
    @Test
    void textIsNotTakenForAPicture() throws Exception {
        String text = "BM 12\nP5 255 254 1 \u00e9\nBEGIN_DATA\n";
        for (Charset coding :
                List.of(
                        StandardCharsets.UTF_8,
                        StandardCharsets.UTF_16,
                        StandardCharsets.ISO_8859_1)) {
            ScanFiles.refuseUnread(Files.write(dir.resolve("text"), text.getBytes(coding)));
        }
        byte[] little = ("\uFEFF" + text).getBytes(StandardCharsets.UTF_16LE);
        ScanFiles.refuseUnread(Files.write(dir.resolve("text"), little));
    }

    @Test
    void controlCharactersInAFileNameAreNotPrinted() throws Exception {
        Path file = Files.writeString(dir.resolve("a\u001b[31mb\u202ec.tif"), "x");
        Problem problem = assertThrows(Problem.class, () -> ScanFiles.open(file));
        assertTrue(problem.getMessage().startsWith("a?[31mb?c.tif: "), problem.getMessage());
    }
}
