package org.printassay.acceptance;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.printassay.demo.PrintRoom;
import org.printassay.demo.flatbed.ScanFile;
import org.printassay.demo.print.Printing;

/**
 * Every bad input ends with one clear line, the documented exit code, and nothing half-written. The
 * scans are simulated.
 */
class BadInputTest {
    private static final int WRONG_USE = 2;
    private static final int INPUT = 3;
    private static final int CHART = 4;
    private static final int OUTPUT = 5;

    @TempDir static Path shared;
    @TempDir Path dir;

    private static Path scan;

    @BeforeAll
    static void scanOnce() throws Exception {
        scan = SimulatedPrint.plainGood(shared.resolve("good.png"));
    }

    /** Runs evaluate and expects one line with the words, the code, and no output folder. */
    private void refused(int code, List<?> arguments, String... words) throws IOException {
        Path out = dir.resolve("out");
        List<Object> all = new ArrayList<>(List.of("evaluate"));
        all.addAll(arguments);
        all.addAll(List.of("--out", out));
        CommandLineRun run = CommandLineRun.of(all.toArray());
        assertEquals(code, run.exitCode(), run.err());
        assertEquals(1, run.err().strip().lines().count(), run.err());
        assertEquals("", run.out());
        assertFalse(run.err().contains("\tat "), run.err());
        for (String word : words) {
            assertTrue(run.err().contains(word), () -> "\"" + word + "\" in: " + run.err());
        }
        assertFalse(Files.exists(out), "nothing half-written");
        try (Stream<Path> left = Files.list(dir)) {
            assertEquals(List.of(), left.filter(p -> p.toString().contains("-part-")).toList());
        }
    }

    private Path edited(String name, BufferedImage image) throws IOException {
        Path file = dir.resolve(name);
        assertTrue(ImageIO.write(image, "png", file.toFile()));
        return file;
    }

    private static BufferedImage good() throws IOException {
        return ImageIO.read(scan.toFile());
    }

    @Test
    void missingFile() throws Exception {
        refused(INPUT, List.of(dir.resolve("nowhere.tif")), "nowhere.tif", "no such file");
    }

    @Test
    void notAnImage() throws Exception {
        Path notes = Files.write(dir.resolve("notes.tif"), new byte[] {0, 1, 2, 3, 0, 9, 9, 9});
        refused(INPUT, List.of(notes), "notes.tif");
    }

    /** Such as a device that never ends; this one ends, so that a failure does not hang. */
    @Test
    void devicesAreRefusedBeforeTheyAreOpened() throws Exception {
        Path device = Path.of("/dev/null");
        assumeTrue(Files.exists(device), "there are no devices here");
        String words = "null: is neither a file nor a folder";
        refused(INPUT, List.of(device), words);
        refused(INPUT, List.of("--list", device), words);
        for (String option : List.of("--chart", "--profile", "--calibration", "--aim")) {
            refused(INPUT, List.of(scan, option, device), words);
        }
    }

    /** Told by its size, before it is read: a slip of the hand names a scan, or a film. */
    @Test
    void aHugeFileIsNoProfile() throws Exception {
        Path film = dir.resolve("film.mp4");
        try (RandomAccessFile file = new RandomAccessFile(film.toFile(), "rw")) {
            file.setLength(3L << 30);
        }
        for (String option : List.of("--profile", "--aim")) {
            refused(
                    INPUT,
                    List.of(scan, option, film),
                    "film.mp4: is 3072 MB, too large to be a profile");
        }
    }

    @Test
    void truncatedScans() throws Exception {
        for (String format : List.of("png", "jpg", "tiff")) {
            Path whole = dir.resolve("whole." + format);
            assertTrue(ImageIO.write(good(), format, whole.toFile()));
            byte[] bytes = Files.readAllBytes(whole);
            Path cut = dir.resolve("cut." + format);
            Files.write(cut, Arrays.copyOf(bytes, bytes.length * 2 / 3));
            refused(INPUT, List.of(cut), "cut." + format);
        }
    }

    @Test
    void imageWithoutAChart() throws Exception {
        BufferedImage grey = new BufferedImage(900, 1200, BufferedImage.TYPE_3BYTE_BGR);
        refused(CHART, List.of(edited("plain.png", grey)), "plain.png", "chart");
    }

    @Test
    void mirroredScan() throws Exception {
        BufferedImage image = good();
        BufferedImage mirrored =
                new BufferedImage(image.getWidth(), image.getHeight(), image.getType());
        for (int y = 0; y < image.getHeight(); y++) {
            for (int x = 0; x < image.getWidth(); x++) {
                mirrored.setRGB(image.getWidth() - 1 - x, y, image.getRGB(x, y));
            }
        }
        refused(CHART, List.of(edited("mirrored.png", mirrored)), "mirrored");
    }

    @Test
    void halfASheet() throws Exception {
        BufferedImage image = good();
        BufferedImage half = image.getSubimage(0, 0, image.getWidth(), image.getHeight() / 2);
        refused(CHART, List.of(edited("half.png", half)), "half.png");
    }

    @Test
    void seventyTwoSamplesAnInch() throws Exception {
        Path coarse = SimulatedPrint.coarse(dir.resolve("coarse.png"));
        refused(INPUT, List.of(coarse), "coarse.png", "samples an inch", "300");
    }

    @Test
    void wrongResolutionTagIsReadWithAWarning() throws Exception {
        for (boolean missing : new boolean[] {true, false}) {
            Path file = dir.resolve(missing ? "untagged.png" : "tagged.png");
            SimulatedPrint.declaring(
                    file, missing ? ScanFile.Resolution.ABSENT : ScanFile.Resolution.WRONG);
            Path out = dir.resolve("out-" + missing);
            CommandLineRun run = CommandLineRun.of("evaluate", file, "--out", out);
            assertEquals(0, run.exitCode(), run.err());
            JsonNode json = new ObjectMapper().readTree(out.resolve("evaluation.json").toFile());
            assertTrue(json.at("/placements/0/scaleX").isNull());
            String code = missing ? "resolution-missing" : "resolution-wrong";
            assertTrue(json.at("/warnings").toString().contains("\"" + code + "\""));
        }
    }

    @Test
    void wrongChartFile() throws Exception {
        Path other = dir.resolve("letter");
        assertEquals(0, CommandLineRun.of("chart", "--page", "Letter", "--out", other).exitCode());
        refused(CHART, List.of(scan, "--chart", other.resolve("chart.json")), "chart");
    }

    @Test
    void chartFileOfAnUnknownVersion() throws Exception {
        Path made = dir.resolve("made");
        assertEquals(0, CommandLineRun.of("chart", "--out", made).exitCode());
        String text = Files.readString(made.resolve("chart.json"));
        Path newer = dir.resolve("newer.json");
        Files.writeString(newer, text.replace("printassay/chart/1", "printassay/chart/99"));
        refused(INPUT, List.of(scan, "--chart", newer), "newer.json", "99");
    }

    @Test
    void measurementFileWithABadNumber() throws Exception {
        Path file = dir.resolve("bad.txt");
        Files.writeString(
                file,
                """
                CGATS.17
                NUMBER_OF_FIELDS 7
                BEGIN_DATA_FORMAT
                SAMPLE_ID RGB_R RGB_G RGB_B LAB_L LAB_A LAB_B
                END_DATA_FORMAT
                NUMBER_OF_SETS 2
                BEGIN_DATA
                1 0 0 0 12.0 0.1 0.2
                2 255 255 255 9x.0 0.1 0.2
                END_DATA
                """,
                StandardCharsets.US_ASCII);
        refused(INPUT, List.of(file), "bad.txt", "9");
    }

    /** Damaged measurement files: one line each that names the file, the place and what to do. */
    @Test
    void measurementFilesThatCannotBeUsed() throws Exception {
        String head = "BEGIN_DATA_FORMAT\nSAMPLE_ID RGB_R RGB_G RGB_B ";
        String lab = head + "LAB_L LAB_A LAB_B\nEND_DATA_FORMAT\nBEGIN_DATA\n";
        String spectra = head + "NM380 NM390 NM400 NM410\nEND_DATA_FORMAT\nBEGIN_DATA\n";
        String cxf = "<CxF xmlns=\"http://colorexchangeformat.com/CxF3-core\">&a;</CxF>";
        String[][] cases = {
            {"few.txt", lab + "1 0 0 0 12 0\nEND_DATA", "line 5", "6 values", "7 columns"},
            {"many.txt", lab + "1 0 0 0 12 0 0 0\nEND_DATA", "line 5", "8 values", "7 columns"},
            {"twice.txt", lab + "1 0 0 0 9 0 0\n1 1 1 1 9 0 0\nEND_DATA", "line 6", "line 5"},
            {"nan.txt", lab + "1 0 0 0 NaN 0 0\nEND_DATA", "line 5", "LAB_L", "NaN"},
            {"below.txt", lab + "1 0 0 0 -20 0 0\nEND_DATA", "line 5", "L* -20.0"},
            {
                "gap.txt",
                spectra.replace("NM410", "NM420") + "1 0 0 0 1 1 1 1\nEND_DATA",
                "410 nm is missing"
            },
            {"short.txt", spectra + "1 0 0 0 1 1 1 1\nEND_DATA", "380 to 410 nm", "Export"},
            {"bare.csv", "ID,L*,a*,b*\n1,50,0,0\n", "RGB_R", "--chart"},
            {"typed.txt", "50 0 0\n60 0 0\n", "RGB_R", "--chart"},
            {"bomb.cxf", "<!DOCTYPE CxF [<!ENTITY a \"aa\">]>" + cxf, "line 1", "document type"},
            {
                "outside.cxf",
                "<!DOCTYPE CxF [<!ENTITY a SYSTEM \"file:///etc/passwd\">]>" + cxf,
                "document type"
            },
            {"page.html", "<html><body>no</body></html>", "CxF"}
        };
        for (String[] bad : cases) {
            Path file = Files.writeString(dir.resolve(bad[0]), bad[1]);
            String[] words = bad.clone();
            words[1] = bad[0];
            refused(INPUT, List.of(file), words);
        }
    }

    @Test
    void cmykMeasurementFile() throws Exception {
        Path file = dir.resolve("press.txt");
        Files.writeString(
                file,
                """
                CGATS.17
                NUMBER_OF_FIELDS 8
                BEGIN_DATA_FORMAT
                SAMPLE_ID CMYK_C CMYK_M CMYK_Y CMYK_K LAB_L LAB_A LAB_B
                END_DATA_FORMAT
                NUMBER_OF_SETS 1
                BEGIN_DATA
                1 0 0 0 0 95.0 0 -2
                END_DATA
                """,
                StandardCharsets.US_ASCII);
        refused(INPUT, List.of(file), "press.txt", "CMYK", "RGB");
    }

    @Test
    void outputBelowAFileIsNotWritable() throws Exception {
        Path file = Files.writeString(dir.resolve("file"), "x");
        CommandLineRun run = CommandLineRun.of("evaluate", scan, "--out", file.resolve("results"));
        assertEquals(OUTPUT, run.exitCode(), run.err());
        assertEquals(1, run.err().strip().lines().count(), run.err());
        assertEquals("x", Files.readString(file));
    }

    @Test
    void outputThatIsAnInput() throws Exception {
        Path measured = dir.resolve("measured.txt");
        PrintRoom.measure(
                SimulatedPrint.print(SimulatedPrint.goodPaper(), Printing.EXACT, 7), 7, measured);
        Path out = Files.createDirectory(dir.resolve("results"));
        Path input = out.resolve("readings.txt");
        Files.copy(measured, input);
        byte[] before = Files.readAllBytes(input);
        CommandLineRun run = CommandLineRun.of("evaluate", input, "--out", out);
        assertEquals(OUTPUT, run.exitCode(), run.err());
        assertTrue(run.err().contains("readings.txt"), run.err());
        assertTrue(Arrays.equals(before, Files.readAllBytes(input)));

        Path linked = dir.resolve("linked.txt");
        Files.copy(measured, linked);
        Path links = Files.createDirectory(dir.resolve("links"));
        Files.createSymbolicLink(links.resolve("readings.txt"), linked);
        CommandLineRun throughLink = CommandLineRun.of("evaluate", linked, "--out", links);
        assertEquals(OUTPUT, throughLink.exitCode(), throughLink.err());
    }

    @Test
    void resultsOfAnotherPrintAreKept() throws Exception {
        Path out = dir.resolve("results");
        assertEquals(
                0, CommandLineRun.of("evaluate", scan, "--paper", "A", "--out", out).exitCode());
        byte[] before = Files.readAllBytes(out.resolve("evaluation.json"));
        CommandLineRun run = CommandLineRun.of("evaluate", scan, "--paper", "B", "--out", out);
        assertEquals(OUTPUT, run.exitCode(), run.err());
        assertTrue(run.err().contains("--force"), run.err());
        assertTrue(Arrays.equals(before, Files.readAllBytes(out.resolve("evaluation.json"))));
        assertEquals(
                0,
                CommandLineRun.of("evaluate", scan, "--paper", "A", "--out", out).exitCode(),
                "the same print again is welcome");
        assertEquals(
                0,
                CommandLineRun.of("evaluate", scan, "--paper", "B", "--out", out, "--force")
                        .exitCode());
    }

    @Test
    void wrongUse() {
        for (List<String> words :
                List.of(
                        List.of("evaluate"),
                        List.of("chart", "--page", "A9"),
                        List.of("chart", "--page", "10x10mm"),
                        List.of("chart", "--space", "cmyk"),
                        List.of("chart", "--dpi", "7"),
                        List.of("chart", "--margin-mm", "1,2"),
                        List.of("evaluate", "x.tif", "--threshold", "-1"),
                        List.of("chrat"))) {
            CommandLineRun run = CommandLineRun.of(words.toArray());
            assertEquals(WRONG_USE, run.exitCode(), run.err());
            assertFalse(run.err().contains("\tat "), run.err());
        }
    }
}
