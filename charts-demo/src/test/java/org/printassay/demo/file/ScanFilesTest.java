package org.printassay.demo.file;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.color.ICC_Profile;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.printassay.colour.Lab;
import org.printassay.colour.Rgb8;
import org.printassay.colour.RgbSpace;
import org.printassay.demo.PrintRoom;
import org.printassay.demo.RealChart;
import org.printassay.demo.flatbed.Encoding;
import org.printassay.demo.flatbed.Exposure;
import org.printassay.demo.flatbed.Flatbed;
import org.printassay.demo.flatbed.ScanFile;
import org.printassay.demo.flatbed.Sensor;
import org.printassay.demo.paper.PaperModel;
import org.printassay.demo.print.Print;
import org.printassay.demo.print.Printing;
import org.printassay.problem.Problem;
import org.printassay.sheet.PointMm;

class ScanFilesTest {
    private static final Lab WHITE = new Lab(94, 0, 3);
    private static final PaperModel PAPER =
            PaperModel.faultless("simulated", WHITE, new Lab(8, 0, 0));
    private static final Print PRINT =
            Print.of(
                    RealChart.RENDERED,
                    RgbSpace.SRGB,
                    RealChart.CHART.sheets().get(0),
                    PAPER,
                    Printing.EXACT,
                    1);

    @TempDir Path folder;

    private Path scan(ScanFile file, Encoding encoding) throws Problem {
        Flatbed flatbed =
                Flatbed.perfect(100)
                        .withFile(file)
                        .withSensor(Sensor.NOISELESS.withEncoding(encoding));
        Path to = folder.resolve("scan" + ScanWriter.ending(file.format()));
        PrintRoom.scan(PRINT, flatbed, 1, to);
        return to;
    }

    /** The JDK's own readers see the size and, in the bare margin, the paper's white. */
    @ParameterizedTest
    @CsvSource({"TIFF, 16", "TIFF, 8", "PNG, 16", "PNG, 8", "JPEG, 8"})
    void readBackByTheJdk(ScanFile.Format format, int bits) throws Exception {
        Path file = scan(ScanFile.TIFF16.withFormat(format, bits), Encoding.SRGB);
        BufferedImage image = ImageIO.read(file.toFile());
        Exposure same = new Exposure(PRINT, Flatbed.perfect(100), 1);
        assertEquals(same.frame().width(), image.getWidth());
        assertEquals(same.frame().height(), image.getHeight());
        assertEquals(bits, image.getColorModel().getComponentSize(0));
        PointMm margin = same.frame().toScan(new PointMm(5, 100));
        double highest = Math.pow(2, bits) - 1;
        int[] pixel = image.getRaster().getPixel((int) margin.x(), (int) margin.y(), new int[3]);
        double y =
                RgbSpace.SRGB
                        .linearToXyz(
                                RgbSpace.SRGB.decode(pixel[0] / highest),
                                RgbSpace.SRGB.decode(pixel[1] / highest),
                                RgbSpace.SRGB.decode(pixel[2] / highest))
                        .y();
        assertEquals(WHITE.l(), Lab.lightness(y / 100), bits == 16 ? 0.01 : 0.4);
    }

    @ParameterizedTest
    @EnumSource(Encoding.class)
    void profilesAreAcceptedByTheJdk(Encoding encoding) {
        ICC_Profile profile = ICC_Profile.getInstance(ProfileBytes.of(encoding));
        assertEquals(
                encoding == Encoding.SCANNER ? ICC_Profile.CLASS_INPUT : ICC_Profile.CLASS_DISPLAY,
                profile.getProfileClass());
    }

    /** LittleCMS turns codes with our profile into the encoding's own CIELAB. */
    @ParameterizedTest
    @EnumSource(Encoding.class)
    void profilesMeanTheEncodingForAnIndependentEngine(Encoding encoding) throws Exception {
        needs("transicc");
        Path profile = folder.resolve("p.icc");
        Files.write(profile, ProfileBytes.of(encoding));
        int[] codes = {200, 60, 20};
        String out = run("200 60 20\n", "transicc", "-i" + profile, "-o*Lab", "-t1", "-n", "-c2");
        double[] m = encoding.toXyz();
        double[] v = new double[3];
        for (int i = 0; i < 3; i++) {
            v[i] = encoding.decode(codes[i] / 255.0);
        }
        Lab expected =
                Lab.of(
                        new org.printassay.colour.Xyz(
                                100 * (m[0] * v[0] + m[1] * v[1] + m[2] * v[2]),
                                100 * (m[3] * v[0] + m[4] * v[1] + m[5] * v[2]),
                                100 * (m[6] * v[0] + m[7] * v[1] + m[8] * v[2])),
                        org.printassay.colour.Xyz.PCS_WHITE);
        String[] lines = out.trim().split("\n", -1);
        String[] numbers = lines[lines.length - 1].trim().split("\\s+", -1);
        assertEquals(expected.l(), Double.parseDouble(numbers[0]), 0.05, out);
        assertEquals(expected.a(), Double.parseDouble(numbers[1]), 0.05, out);
        assertEquals(expected.b(), Double.parseDouble(numbers[2]), 0.05, out);
    }

    /** ImageMagick reads resolution, depth and profile of every format. */
    @ParameterizedTest
    @CsvSource({
        "TIFF, 16, RIGHT, 100",
        "TIFF, 8, WRONG, 72",
        "PNG, 16, RIGHT, 100",
        "PNG, 8, WRONG, 72",
        "JPEG, 8, RIGHT, 100",
        "JPEG, 8, WRONG, 72"
    })
    void headerReadByAnIndependentReader(
            ScanFile.Format format, int bits, ScanFile.Resolution resolution, double sampling)
            throws Exception {
        needs("identify");
        Path file =
                scan(
                        ScanFile.TIFF16.withFormat(format, bits).withResolution(resolution),
                        Encoding.SCANNER);
        String out =
                run(
                        "",
                        "identify",
                        "-units",
                        "PixelsPerInch",
                        "-format",
                        "%x %z %[icc:description]",
                        file.toString());
        String[] words = out.trim().split(" ", 3);
        assertEquals(sampling, Double.parseDouble(words[0]), 0.05, out);
        assertEquals(bits, Integer.parseInt(words[1]), out);
        assertEquals("Simulated flatbed", words[2]);
    }

    @Test
    void libtiffFindsNothingToWarnOf() throws Exception {
        needs("tiffinfo");
        String out = run("", "tiffinfo", scan(ScanFile.TIFF16, Encoding.SRGB).toString());
        assertTrue(out.contains("ICC Profile: <present>"), out);
        assertTrue(!out.contains("Warning") && !out.contains("Error"), out);
    }

    @Test
    void jobWritesScanReadingsAndTruthThatSaySimulated() throws Exception {
        Path scan =
                PrintRoom.job(
                        RealChart.RENDERED,
                        RealChart.CHART,
                        1,
                        PAPER,
                        Printing.EXACT,
                        Flatbed.perfect(72),
                        3,
                        folder.resolve("job"),
                        "scan");
        assertTrue(Files.size(scan) > 1_000_000);
        String readings = Files.readString(folder.resolve("job/measurement.txt"));
        assertTrue(readings.contains("# SIMULATED"), "comment");
        int patches = RealChart.CHART.sheets().get(0).patches().size();
        assertTrue(readings.contains("NUMBER_OF_SETS " + patches + "\n"), "count");
        String truth = Files.readString(folder.resolve("job/truth.json"));
        assertTrue(truth.contains("SIMULATED"), "note");
    }

    /** IEC 61966-2-1 and a perfect black: level 2 is the first 0.5 L* above black (design, 8). */
    @Test
    void truthOfAnIdealPrint() {
        PaperModel ideal = PaperModel.faultless("simulated", new Lab(100, 0, 0), new Lab(0, 0, 0));
        Print print = PrintRoom.printPage(RealChart.RENDERED, ideal, Printing.EXACT, 1);
        assertEquals(2, TruthFile.Levels.of(print, 0.5).firstVisible());
        assertEquals(0.274, print.colourOf(Rgb8.grey(1)).l(), 0.001);
    }

    private static void needs(String tool) {
        boolean there =
                List.of(System.getenv("PATH").split(java.io.File.pathSeparator)).stream()
                        .anyMatch(dir -> Files.isExecutable(Path.of(dir, tool)));
        if ("required".equals(System.getProperty("witnesses"))) {
            assertTrue(there, tool + " is missing");
        }
        Assumptions.assumeTrue(there, tool + " is missing");
    }

    private static String run(String input, String... command)
            throws IOException, InterruptedException {
        Process process = new ProcessBuilder(command).redirectErrorStream(true).start();
        try (var in = process.getOutputStream()) {
            in.write(input.getBytes(StandardCharsets.US_ASCII));
        }
        String out = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        process.waitFor();
        return out;
    }
}
