package org.printassay.acceptance;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.nio.file.Path;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.function.DoubleBinaryOperator;
import java.util.stream.Collectors;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.printassay.chart.Chart;
import org.printassay.colour.DeltaE;
import org.printassay.colour.Lab;
import org.printassay.demo.PrintRoom;
import org.printassay.demo.flatbed.Flatbed;
import org.printassay.demo.flatbed.Placing;
import org.printassay.demo.flatbed.ScanFile;
import org.printassay.demo.print.Printing;
import org.printassay.evaluation.Evaluation;
import org.printassay.evaluation.EvaluationRequest;
import org.printassay.evaluation.Evaluator;
import org.printassay.reading.Reading;
import org.printassay.reading.ReadingFlag;
import org.printassay.reading.Warning;
import org.printassay.reading.WarningCode;
import org.printassay.recipe.Recipe;
import org.printassay.sheet.RectMm;

/**
 * Light that leaks in at an edge of the short sheet, which has too few twins to tell it: the black
 * of its markers does. All simulated.
 */
class ShortSheetLeakTest {
    private static final double PER_INCH = 200;
    private static final double BORDER_MM = 5;

    @TempDir static Path dir;

    private static Chart chart;
    private static Path scan;

    @BeforeAll
    static void printAndScan() throws Exception {
        RenderedChart sheet = RenderedChart.of(Recipe.Kind.SHORT, "4x6in", 5);
        chart = sheet.chart();
        Flatbed clear = SimulatedPrint.flatbed();
        Flatbed bed =
                clear.withSamplesPerInch(PER_INCH)
                        .withOptics(clear.optics().withStrayLight(0.02, 0.005))
                        .withPlacing(Placing.STRAIGHT.withBorder(BORDER_MM))
                        .withFile(ScanFile.TIFF16.withFormat(ScanFile.Format.PNG, 8));
        scan = dir.resolve("scan.png");
        PrintRoom.scan(sheet.print(SimulatedPrint.goodPaper(), Printing.EXACT, 11), bed, 11, scan);
    }

    private static Evaluation evaluated(BufferedImage image) throws Exception {
        Path file = dir.resolve("faulty.png");
        ImageIO.write(image, "png", file.toFile());
        return Evaluator.evaluate(EvaluationRequest.of(file)).evaluation();
    }

    private static boolean leaked(Evaluation e) {
        return e.warnings().stream().map(Warning::code).anyMatch(WarningCode.LEAKED_LIGHT::equals);
    }

    private static DoubleBinaryOperator leak(
            String edge, double amount, double depth, boolean straight, BufferedImage image) {
        double perMm = PER_INCH / 25.4;
        return (x, y) -> {
            double away =
                    switch (edge) {
                        case "left" -> x;
                        case "right" -> image.getWidth() / perMm - x;
                        case "top" -> y;
                        default -> image.getHeight() / perMm - y;
                    };
            return amount * (straight ? Math.max(0, 1 - away / depth) : Math.exp(-away / depth));
        };
    }

    @Test
    void aGoodScanIsNotAccused() throws Exception {
        assertFalse(leaked(evaluated(ImageIO.read(scan.toFile()))));
    }

    @ParameterizedTest
    @CsvSource({
        "left, 0.03, 25, false",
        "left, 0.05, 40, true",
        "right, 0.02, 40, true",
        "top, 0.05, 30, false",
        "bottom, 0.04, 40, false"
    })
    void lightAtAnEdgeIsToldAndNoReadingClaimsMore(
            String edge, double amount, double depth, boolean straight) throws Exception {
        BufferedImage image = ImageIO.read(scan.toFile());
        Map<String, Lab> before =
                evaluated(image).patches().stream()
                        .collect(Collectors.toMap(Reading::id, Reading::labRelative));
        AddedLight.to(image, PER_INCH, leak(edge, amount, depth, straight, image));
        Evaluation e = evaluated(image);
        Optional<Warning> told =
                e.warnings().stream().filter(w -> w.code() == WarningCode.LEAKED_LIGHT).findFirst();
        assertTrue(told.isPresent(), e.warnings()::toString);
        String text = told.orElseThrow().text();
        assertTrue(text.contains("at the " + edge + " of the page"), text);
        for (Reading reading : e.patches()) {
            double off =
                    DeltaE.ciede2000(
                            Objects.requireNonNull(before.get(reading.id())),
                            Objects.requireNonNull(reading.labRelative()));
            boolean flagged = reading.flags().contains(ReadingFlag.LIT);
            assertTrue(flagged || off < 2, reading.id() + " off by " + off);
        }
        long lit = e.patches().stream().filter(r -> r.flags().contains(ReadingFlag.LIT)).count();
        assertTrue(3 * lit < 2L * e.patches().size(), lit + " of " + e.patches().size());
    }

    @Test
    void aMarkOverOneMarkerIsNoLight() throws Exception {
        BufferedImage image = ImageIO.read(scan.toFile());
        RectMm area = chart.sheets().get(0).markers().get(4).area();
        double perMm = PER_INCH / 25.4;
        Graphics2D pen = image.createGraphics();
        pen.setColor(new Color(200, 200, 200, 60));
        pen.fillRect(
                (int) ((area.x() + BORDER_MM) * perMm),
                (int) ((area.y() + BORDER_MM) * perMm),
                (int) (area.width() * perMm),
                (int) (area.height() * perMm));
        pen.dispose();
        Evaluation e = evaluated(image);
        assertFalse(leaked(e), e.warnings()::toString);
        assertEquals(
                0, e.patches().stream().filter(r -> r.flags().contains(ReadingFlag.LIT)).count());
        double clean = halfWidthOfBlack(evaluated(ImageIO.read(scan.toFile())));
        assertEquals(clean, halfWidthOfBlack(e), 0.2 * clean);
    }

    private static double halfWidthOfBlack(Evaluation e) {
        return Objects.requireNonNull(e.black()).uncertainty().l();
    }
}
