package org.printassay.acceptance;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.printassay.colour.DeltaE;
import org.printassay.colour.Lab;
import org.printassay.colour.RgbSpace;
import org.printassay.colour.icc.RgbProfiles;
import org.printassay.demo.PrintRoom;
import org.printassay.demo.flatbed.Dirt;
import org.printassay.demo.flatbed.Flatbed;
import org.printassay.demo.flatbed.Placing;
import org.printassay.demo.flatbed.ScanFile;
import org.printassay.demo.paper.PaperModel;
import org.printassay.demo.print.Printing;
import org.printassay.evaluation.Evaluation;
import org.printassay.evaluation.EvaluationRequest;
import org.printassay.evaluation.Evaluator;
import org.printassay.evaluation.PrintSurface;
import org.printassay.reading.Reading;
import org.printassay.reading.ReadingFlag;
import org.printassay.reading.WarningCode;
import org.printassay.recipe.Recipe;
import org.printassay.report.EvaluationJson;

/**
 * Faults that dust is not: a sensor in parts that differ, nozzles that do not print, ringing of
 * lossy coding. All put into simulated scans.
 */
class SensorFaultsTest {
    /** Gains of six parts of a sensor by channel, percent of light. */
    private static final double[][] GAINS = {
        {1.5, -0.6, 0.3}, {-0.9, 1.2, 1.4}, {0.2, 0.7, -1.6},
        {1.1, -1.3, 0.8}, {-1.4, 0.4, 1.0}, {0.6, -0.2, -1.2}
    };

    /** Blacks of the same, percent of light. */
    private static final double[][] BLACKS = {
        {0.3, 0.1, 0.2},
        {0, 0.35, 0.1},
        {0.2, 0, 0.4},
        {0.35, 0.2, 0},
        {0.1, 0.3, 0.25},
        {0, 0.1, 0}
    };

    @TempDir Path dir;

    private static Flatbed flatbed() {
        return SimulatedPrint.flatbed()
                .withSamplesPerInch(200)
                .withPlacing(Placing.STRAIGHT)
                .withFile(ScanFile.TIFF16.withFormat(ScanFile.Format.PNG, 8));
    }

    private BufferedImage scanned() throws Exception {
        Path file = dir.resolve("scan.png");
        PrintRoom.scan(
                SimulatedPrint.print(SimulatedPrint.goodPaper(), Printing.EXACT, 5),
                flatbed(),
                5,
                file);
        return ImageIO.read(file.toFile());
    }

    /** What becomes of the code of a channel at a place. */
    private interface Fault {
        double code(int x, int y, int channel, int code);
    }

    private Evaluation evaluated(BufferedImage image, Fault fault) throws Exception {
        for (int y = 0; y < image.getHeight(); y++) {
            for (int x = 0; x < image.getWidth(); x++) {
                int rgb = image.getRGB(x, y);
                int changed = 0xff;
                for (int c = 0; c < 3; c++) {
                    double code = fault.code(x, y, c, (rgb >> (16 - 8 * c)) & 255);
                    changed = changed << 8 | (int) Math.round(Math.max(0, Math.min(255, code)));
                }
                image.setRGB(x, y, changed);
            }
        }
        return evaluated(image, "png");
    }

    private Evaluation evaluated(BufferedImage image, String format) throws Exception {
        Path file = dir.resolve("changed." + format);
        ImageIO.write(image, format, file.toFile());
        return evaluated(file);
    }

    /** As a scan in sRGB, which the files written here do not say. */
    private Evaluation evaluated(Path file) throws Exception {
        Path profile = dir.resolve("srgb.icc");
        Files.write(profile, RgbProfiles.of(RgbSpace.SRGB));
        return Evaluator.evaluate(SimulatedPrint.through(file, profile)).evaluation();
    }

    private static String text(Evaluation e, WarningCode code) {
        return e.warnings().stream()
                .filter(warning -> warning.code() == code)
                .map(warning -> warning.text())
                .findFirst()
                .orElse("");
    }

    /** Each reading of a code by itself cannot be relied on, nor steps between the parts. */
    @Test
    void aSensorInPartsIsToldAndNoPatchIsLeftUnflagged() throws Exception {
        BufferedImage image = scanned();
        Evaluation plain = evaluated(dir.resolve("scan.png"));
        int width = image.getWidth();
        Evaluation e =
                evaluated(
                        image,
                        (x, y, c, code) -> {
                            int part = 6 * x / width;
                            double light =
                                    RgbSpace.SRGB.decode(code / 255.0) * (1 + GAINS[part][c] / 100)
                                            + BLACKS[part][c] / 100;
                            return 255 * RgbSpace.SRGB.encode(Math.min(1, light));
                        });
        String told = text(e, WarningCode.SCANNER_UNEVEN);
        assertTrue(told.contains("hardly the ink"), e.warnings().toString());
        Map<String, Lab> truth = new HashMap<>();
        plain.patches().forEach(patch -> truth.put(patch.id(), patch.best()));
        int flagged = 0;
        for (Reading patch : e.patches()) {
            Lab before = Objects.requireNonNull(truth.get(patch.id()));
            double off = DeltaE.ciede2000(before, patch.best());
            flagged += patch.flags().contains(ReadingFlag.SCATTERED) ? 1 : 0;
            assertTrue(!patch.flags().isEmpty() || off < 2, patch.id() + " is off by " + off);
        }
        assertTrue(flagged > 400, flagged + " flagged");
        assertNull(Objects.requireNonNull(e.surface()).vignettes());
    }

    /**
     * A smudge over one place of the sensor darkens everything below it, from margin to margin; the
     * same on the picture alone is the print's.
     */
    @Test
    void aSmudgeOnTheScannerIsNoStepOfTheGradients() throws Exception {
        BufferedImage image = scanned();
        double perMm = 200 / 25.4;
        for (boolean scanners : new boolean[] {false, true}) {
            Evaluation e =
                    evaluated(
                            rgb(image),
                            (x, y, c, code) -> {
                                boolean there = scanners || y / perMm % 280 > 30;
                                double from = (x / perMm - 120) / 0.5;
                                double share = there ? 1 - 0.04 * Math.exp(-from * from / 2) : 1;
                                double light = RgbSpace.SRGB.decode(code / 255.0);
                                return 255 * RgbSpace.SRGB.encode(share * light);
                            });
            PrintSurface surface = Objects.requireNonNull(e.surface());
            List<PrintSurface.Vignette> vignettes = Objects.requireNonNull(surface.vignettes());
            long steps = vignettes.stream().filter(v -> !v.steps().isEmpty()).count();
            long told = vignettes.stream().filter(v -> !v.scannerSteps().isEmpty()).count();
            Evaluation kept = EvaluationJson.parse("e.json", EvaluationJson.write(e));
            long inFile =
                    Objects.requireNonNull(Objects.requireNonNull(kept.surface()).vignettes())
                            .stream()
                            .filter(v -> !v.scannerSteps().isEmpty())
                            .count();
            assertEquals(told, inFile);
            boolean finding = e.findings().toString().contains("break into a step");
            assertEquals(!scanners, finding, vignettes.toString());
            assertEquals(!scanners, steps > 0, vignettes.toString());
            assertEquals(scanners, told > 0, vignettes.toString());
            assertEquals(
                    scanners,
                    text(e, WarningCode.SCANNER_STREAK).contains("bare paper"),
                    e.warnings().toString());
        }
    }

    /**
     * Every third of an inch some nozzles are out, below the sheet code, and paper has no ink to
     * miss.
     */
    @Test
    void linesOfNozzlesAreNotDust() throws Exception {
        BufferedImage image = scanned();
        double perMm = 200 / 25.4;
        int[] paper = new int[3];
        for (int c = 0; c < 3; c++) {
            paper[c] = (image.getRGB(image.getWidth() / 2, 60) >> (16 - 8 * c)) & 255;
        }
        Evaluation e =
                evaluated(
                        image,
                        (x, y, c, code) ->
                                y > 60 * perMm && y / perMm % (25.4 / 3) < 0.6
                                        ? code + 0.6 * Math.max(0, paper[c] - code)
                                        : code);
        String told = text(e, WarningCode.DUSTY);
        assertTrue(told.contains("straight lines"), e.warnings().toString());
        assertFalse(told.contains("dust, hairs"), told);
        assertTrue(told.contains("nozzle check"), told);
        assertFalse(told.contains("glass"), told);
    }

    /** Dirty spots of a sensor every third of an inch darken columns, bare paper too. */
    @Test
    void streaksOfASensorAreNoNozzles() throws Exception {
        double perMm = 200 / 25.4;
        Evaluation e =
                evaluated(
                        scanned(),
                        (x, y, c, code) -> {
                            double light = RgbSpace.SRGB.decode(code / 255.0);
                            double share = x / perMm % (25.4 / 3) < 0.6 ? 0.9 : 1;
                            return 255 * RgbSpace.SRGB.encode(share * light);
                        });
        String told = text(e, WarningCode.DUSTY);
        assertTrue(told.contains("cross bare paper too"), e.warnings().toString());
        assertFalse(told.contains("nozzle"), told);
    }

    /** Blocks beside edges keep ripples; on an even field nothing else stands out. */
    @Test
    void ringingOfLossyCodingIsNotDust() throws Exception {
        PaperModel paper = SimulatedPrint.goodPaper();
        Path file = dir.resolve("short.png");
        PrintRoom.scan(
                RenderedChart.of(Recipe.Kind.SHORT, "4x6in", 5).print(paper, Printing.EXACT, 5),
                flatbed(),
                5,
                file);
        BufferedImage scan = ImageIO.read(file.toFile());
        Evaluation plain = evaluated(file);
        Evaluation e = evaluated(rgb(scan), "jpg");
        assertEquals("", text(e, WarningCode.DUSTY));
        assertEquals(
                0, e.patches().stream().filter(p -> p.flags().contains(ReadingFlag.DUSTY)).count());
        Lab black = Objects.requireNonNull(Objects.requireNonNull(e.black()).lab());
        Lab before = Objects.requireNonNull(Objects.requireNonNull(plain.black()).lab());
        assertEquals(before.l(), black.l(), 0.1);
    }

    /** Ripples are small: hairs on the same scans are told as before. */
    @Test
    void hairsOnLossyScansAreStillTold() throws Exception {
        Path file = dir.resolve("scan.jpg");
        Flatbed bed =
                SimulatedPrint.flatbed()
                        .withDirt(new Dirt(0, 400))
                        .withFile(
                                ScanFile.TIFF16
                                        .withFormat(ScanFile.Format.JPEG, 8)
                                        .withJpegQuality(0.75));
        Path plain = dir.resolve("scan.tif");
        for (Path each : new Path[] {file, plain}) {
            PrintRoom.scan(
                    SimulatedPrint.print(SimulatedPrint.goodPaper(), Printing.EXACT, 5),
                    each.equals(file) ? bed : bed.withFile(ScanFile.TIFF16),
                    5,
                    each);
        }
        long of16 = dusty(Evaluator.evaluate(EvaluationRequest.of(plain)).evaluation());
        long ofLossy = dusty(Evaluator.evaluate(EvaluationRequest.of(file)).evaluation());
        assertTrue(of16 > 20, of16 + " dusty");
        assertTrue(ofLossy >= of16, ofLossy + " of " + of16);
    }

    private static long dusty(Evaluation e) {
        return e.patches().stream().filter(p -> p.flags().contains(ReadingFlag.DUSTY)).count();
    }

    private static BufferedImage rgb(BufferedImage image) throws IOException {
        BufferedImage plain =
                new BufferedImage(image.getWidth(), image.getHeight(), BufferedImage.TYPE_INT_RGB);
        for (int y = 0; y < image.getHeight(); y++) {
            for (int x = 0; x < image.getWidth(); x++) {
                plain.setRGB(x, y, image.getRGB(x, y));
            }
        }
        return plain;
    }
}
