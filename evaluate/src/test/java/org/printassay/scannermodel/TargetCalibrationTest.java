package org.printassay.scannermodel;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.image.BufferedImage;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Random;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.printassay.colour.DeltaE;
import org.printassay.colour.Lab;
import org.printassay.colour.LinearRgb;
import org.printassay.colour.Rgb8;
import org.printassay.colour.RgbSpace;
import org.printassay.evaluation.Progress;
import org.printassay.locate.PointPx;
import org.printassay.problem.Problem;
import org.printassay.reading.Warning;
import org.printassay.reading.WarningCode;
import org.printassay.scannercalibration.CalibrationRequest;
import org.printassay.scannercalibration.Calibrator;

/** A simulated reference target of 12 by 12 patches of 6 mm, scanned at 6 pixels a millimetre. */
class TargetCalibrationTest {
    private static final int SIDE = 12;
    private static final int PATCH_PIXELS = 36;
    private static final int MARGIN_PIXELS = 30;

    @TempDir Path dir;

    private final SpectralPrint print = new SpectralPrint(SpectralPrint.Paper.ONE);
    private final List<Rgb8> codes = SpectralPrint.randomCodes(SIDE * SIDE, 9);
    private Path scan;
    private Path data;
    private Path layout;

    /**
     * By how much the right side gets less light than the left one, and the top than the middle.
     */
    private double fall;

    @BeforeEach
    void make() throws Exception {
        scan = dir.resolve("target.png");
        data = dir.resolve("target.txt");
        layout = dir.resolve("layout.json");
        int size = SIDE * PATCH_PIXELS + 2 * MARGIN_PIXELS;
        BufferedImage image = new BufferedImage(size, size, BufferedImage.TYPE_INT_RGB);
        Random random = new Random(2);
        String head =
                """
                IT8.7/2
                ORIGINATOR "simulated"
                NUMBER_OF_FIELDS 4
                BEGIN_DATA_FORMAT
                SAMPLE_ID LAB_L LAB_A LAB_B
                END_DATA_FORMAT
                NUMBER_OF_SETS 144
                BEGIN_DATA
                """;
        StringBuilder text = new StringBuilder(head);
        for (int y = 0; y < size; y++) {
            for (int x = 0; x < size; x++) {
                int card = (int) Math.round(255 * RgbSpace.SRGB.encode(0.7 * lamp(x, y, size)));
                image.setRGB(x, y, card << 16 | card << 8 | card);
            }
        }
        for (int i = 0; i < codes.size(); i++) {
            double[] spectrum = print.spectrum(codes.get(i));
            LinearRgb light = SpectralPrint.Scanner.FILTERS.light(spectrum);
            int left = MARGIN_PIXELS + i % SIDE * PATCH_PIXELS;
            int top = MARGIN_PIXELS + i / SIDE * PATCH_PIXELS;
            for (int y = top; y < top + PATCH_PIXELS; y++) {
                for (int x = left; x < left + PATCH_PIXELS; x++) {
                    int rgb = 0;
                    for (int c = 0; c < 3; c++) {
                        double lit = light.channel(c) * lamp(x, y, size);
                        double code = 255 * RgbSpace.SRGB.encode(lit);
                        int noisy = (int) Math.round(code + 0.7 * random.nextGaussian());
                        rgb = rgb << 8 | Math.max(0, Math.min(255, noisy));
                    }
                    image.setRGB(x, y, rgb);
                }
            }
            Lab lab = SpectralPrint.lab(spectrum);
            text.append(
                    String.format(
                            Locale.ROOT,
                            "%c%d %.3f %.3f %.3f%n",
                            'A' + i / SIDE,
                            i % SIDE + 1,
                            lab.l(),
                            lab.a(),
                            lab.b()));
        }
        ImageIO.write(image, "png", scan.toFile());
        Files.writeString(data, text.append("END_DATA\n"));
        List<String> rows = new ArrayList<>();
        List<String> columns = new ArrayList<>();
        for (int i = 0; i < SIDE; i++) {
            rows.add("\"" + (char) ('A' + i) + "\"");
            columns.add("\"" + (i + 1) + "\"");
        }
        Files.writeString(
                layout,
                "{\"schema\": \"printassay/target/1\", \"name\": \"simulated\","
                        + " \"corners\": [[0, 0], [72, 0], [72, 72], [0, 72]],"
                        + " \"grids\": [{\"rows\": "
                        + rows
                        + ", \"columns\": "
                        + columns
                        + ", \"xMm\": 0, \"yMm\": 0, \"stepXMm\": 6, \"stepYMm\": 6,"
                        + " \"widthMm\": 6, \"heightMm\": 6}]}");
    }

    private double lamp(int x, int y, int size) {
        double across = (double) x / size - 0.5;
        double down = (double) y / size - 0.5;
        return 1 - fall * across - fall * down * down;
    }

    /** Areas of the card around the target, from its corners outwards. */
    private void nameBackground() throws Exception {
        List<String> areas = new ArrayList<>();
        for (int at : new int[] {-4, 13, 30, 48, 72}) {
            for (int[] place : new int[][] {{at, -4}, {at, 72}, {-4, at}, {72, at}}) {
                areas.add(
                        String.format(
                                Locale.ROOT,
                                "{\"xMm\": %d, \"yMm\": %d, \"widthMm\": 4, \"heightMm\": 4}",
                                place[0],
                                place[1]));
            }
        }
        String text = Files.readString(layout);
        String named = text.substring(0, text.length() - 1) + ", \"background\": " + areas + "}";
        Files.writeString(layout, named);
    }

    /** Light that falls off by a tenth, and what it does to a patch in the brightest corner. */
    @Test
    void theTargetsBackgroundEvensTheLight() throws Exception {
        fall = 0.1;
        make();
        Calibrator.Result uneven = calibrate(0);
        nameBackground();
        Calibrator.Result even = calibrate(0);
        double left = uneven.calibration().error().meanDeltaE00();
        double gone = even.calibration().error().meanDeltaE00();
        assertTrue(gone < 0.4, even.calibration().error().toString());
        assertTrue(left > 2 * gone, left + " " + gone);
        assertTrue(uneven.warnings().get(0).text().contains("stays in"), uneven::toString);
        // Over the card: 10 % from left to right, and 2.5 % from the middle to top and bottom.
        String text = even.warnings().get(0).text();
        double told = Double.parseDouble(text.replaceAll(".*differs by ([0-9.]+) %.*", "$1"));
        assertEquals(10.5, told, 2, text);
        double[] spectrum = print.spectrum(new Rgb8(120, 80, 60));
        Lab seen = even.calibration().model().lab(SpectralPrint.Scanner.FILTERS.light(spectrum));
        assertTrue(DeltaE.ciede2000(SpectralPrint.lab(spectrum), seen) < 0.6, seen.toString());
    }

    /** Four corners, or areas in a row, do not tell how light lies over a target. */
    @Test
    void tooLittleBackgroundIsSaid() throws Exception {
        String text = Files.readString(layout);
        StringBuilder row = new StringBuilder();
        for (int x = 0; x < 60; x += 6) {
            row.append(x == 0 ? "" : ", ");
            row.append("{\"xMm\": " + x + ", \"yMm\": -4, \"widthMm\": 4, \"heightMm\": 4}");
        }
        Files.writeString(
                layout, text.substring(0, text.length() - 1) + ", \"background\": [" + row + "]}");
        Calibrator.Result made = calibrate(0);
        assertTrue(made.warnings().get(0).text().contains("could not be told"), made::toString);
    }

    private Calibrator.Result calibrate(double offset) throws Problem {
        double low = MARGIN_PIXELS + offset;
        double high = low + SIDE * PATCH_PIXELS;
        return Calibrator.calibrate(
                new CalibrationRequest(
                        List.of(scan),
                        data,
                        Optional.empty(),
                        null,
                        null,
                        "Target 1",
                        null,
                        Optional.of(
                                new CalibrationRequest.Target(
                                        layout,
                                        List.of(
                                                new PointPx(low, low),
                                                new PointPx(high, low),
                                                new PointPx(high, high),
                                                new PointPx(low, high))))),
                Progress.NONE);
    }

    @Test
    void aTargetCalibratesTheScanner() throws Exception {
        ScannerCalibration made = calibrate(0).calibration();
        assertFalse(made.strayLightKnown());
        assertTrue(made.error().colours() > 100, made.error().toString());
        // Eight bits and 150 samples an inch limit it, not the model.
        assertTrue(made.error().meanDeltaE00() < 0.4, made.error().toString());
        double[] spectrum = print.spectrum(new Rgb8(120, 80, 60));
        Lab seen = made.model().lab(SpectralPrint.Scanner.FILTERS.light(spectrum));
        assertTrue(DeltaE.ciede2000(SpectralPrint.lab(spectrum), seen) < 0.6, seen.toString());
    }

    @Test
    void aTargetThatIsElsewhereIsTold() {
        Problem problem = assertThrows(Problem.class, () -> calibrate(PATCH_PIXELS / 2.0));
        assertTrue(problem.getMessage().contains("not where"), problem.getMessage());
    }

    @Test
    void cornersInAnotherOrderAreRefused() throws Exception {
        Files.writeString(
                layout,
                Files.readString(layout)
                        .replace("[[0, 0], [72, 0], [72, 72]", "[[0, 0], [72, 72], [72, 0]"));
        Problem problem = assertThrows(Problem.class, () -> calibrate(0));
        assertEquals(Problem.Kind.INPUT, problem.kind());
        assertTrue(problem.getMessage().contains("clockwise"), problem.getMessage());
    }

    @Test
    void dataOfAnotherTargetAreRefused() throws Exception {
        Files.writeString(data, Files.readString(data).replaceAll("(?m)^([A-L])(\\d)", "Z$1$2"));
        Problem problem = assertThrows(Problem.class, () -> calibrate(0));
        assertTrue(problem.getMessage().contains("target.txt"), problem.getMessage());
        assertFalse(problem.getMessage().contains("\n"));
    }

    /** Zeros in front of numbers, as data files write them and layouts do not. */
    @Test
    void namesWithZerosInFrontAreTheSame() throws Exception {
        int all = calibrate(0).calibration().error().patches();
        Files.writeString(
                data, Files.readString(data).replaceAll("(?m)^([A-L])(\\d)(?=\\s)", "$10$2"));
        Calibrator.Result padded = calibrate(0);
        assertEquals(all, padded.calibration().error().patches());
        assertTrue(missing(padded).isEmpty(), padded.warnings()::toString);
    }

    private static Optional<String> missing(Calibrator.Result made) {
        return made.warnings().stream()
                .filter(w -> w.code() == WarningCode.PATCHES_MISSING)
                .map(Warning::text)
                .findFirst();
    }

    @Test
    void patchesWithoutDataAreNamed() throws Exception {
        int all = calibrate(0).calibration().error().patches();
        Files.writeString(data, Files.readString(data).replaceAll("(?m)^B([13])(?=\\s)", "Z$1"));
        Calibrator.Result made = calibrate(0);
        assertTrue(made.calibration().error().patches() < all, made::toString);
        String text = missing(made).orElseThrow();
        assertEquals("2 of 144 patches of the layout are not in target.txt: B1, B3.", text);
    }

    @Test
    void aLayoutBeyondTheScanIsToldOfTheLayout() throws Exception {
        Files.writeString(
                layout, Files.readString(layout).replace("\"stepXMm\": 6", "\"stepXMm\": 60"));
        Problem problem = assertThrows(Problem.class, () -> calibrate(0));
        assertEquals(Problem.Kind.INPUT, problem.kind());
        assertTrue(
                problem.getMessage().startsWith(String.valueOf(layout.getFileName())),
                problem.getMessage());
        assertTrue(problem.getMessage().contains("lie beyond"), problem.getMessage());
        assertTrue(problem.getMessage().contains(" more. Check"), problem.getMessage());
    }
}
