package org.printassay.acceptance;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.image.BufferedImage;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.function.IntUnaryOperator;
import java.util.stream.Collectors;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.printassay.colour.DeltaE;
import org.printassay.colour.Lab;
import org.printassay.colour.Rgb8;
import org.printassay.demo.PrintRoom;
import org.printassay.demo.flatbed.Flatbed;
import org.printassay.demo.flatbed.Placing;
import org.printassay.demo.flatbed.ScanFile;
import org.printassay.demo.print.Printing;
import org.printassay.evaluation.Evaluation;
import org.printassay.evaluation.EvaluationRequest;
import org.printassay.evaluation.Evaluator;
import org.printassay.locate.Placement;
import org.printassay.locate.PointPx;
import org.printassay.reading.Reading;
import org.printassay.reading.ReadingFlag;
import org.printassay.reading.WarningCode;
import org.printassay.sheet.Patch;
import org.printassay.sheet.PointMm;
import org.printassay.sheet.RectMm;

/**
 * A mark that lies over a whole patch, evenly, shows by the patch's twins alone, or where it has
 * none by the colours around; light from outside by the twins of all that it reaches. Simulated.
 */
class MarkedPatchTest {
    private static final double PER_INCH = 200;

    /** A weak stain: codes by this much lower, 2 to 3 L*. */
    private static final double STAIN = 0.96;

    /** Light from outside at the left edge of the scan; paper in white light is 1. */
    private static final double LEAK = 0.02;

    @TempDir Path dir;

    private Path scan() throws Exception {
        Flatbed bed =
                SimulatedPrint.flatbed()
                        .withSamplesPerInch(PER_INCH)
                        .withPlacing(Placing.STRAIGHT)
                        .withFile(ScanFile.TIFF16.withFormat(ScanFile.Format.PNG, 8));
        Path file = dir.resolve("scan.png");
        PrintRoom.scan(
                SimulatedPrint.print(SimulatedPrint.goodPaper(), Printing.EXACT, 5), bed, 5, file);
        return file;
    }

    private static Set<String> unlike(Evaluation e) {
        return flagged(e, ReadingFlag.UNLIKE_TWINS);
    }

    private static Set<String> flagged(Evaluation e, ReadingFlag flag) {
        return e.patches().stream()
                .filter(reading -> reading.flags().contains(flag))
                .map(Reading::id)
                .collect(Collectors.toSet());
    }

    /** Codes by this share of their own. */
    private static IntUnaryOperator times(double share) {
        return code -> (int) Math.round(code * share);
    }

    private static void stain(BufferedImage image, Placement placement, Patch patch) {
        cover(image, placement, patch, times(STAIN));
    }

    private static void cover(
            BufferedImage image, Placement placement, Patch patch, IntUnaryOperator codes) {
        RectMm area = patch.area();
        PointPx from = placement.toScan(new PointMm(area.x() - 0.2, area.y() - 0.2));
        PointPx to = placement.toScan(new PointMm(area.right() + 0.2, area.bottom() + 0.2));
        for (int y = (int) from.y(); y <= to.y(); y++) {
            for (int x = (int) from.x(); x <= to.x(); x++) {
                int rgb = image.getRGB(x, y);
                int stained = 0xff;
                for (int shift = 16; shift >= 0; shift -= 8) {
                    stained = stained << 8 | codes.applyAsInt((rgb >> shift) & 255);
                }
                image.setRGB(x, y, stained);
            }
        }
    }

    @Test
    void aStainOverAWholePatchIsToldByItsTwins() throws Exception {
        Path scan = scan();
        Evaluator.Result good = Evaluator.evaluate(EvaluationRequest.of(scan));
        assertEquals(Set.of(), unlike(good.evaluation()));
        assertFalse(codes(good.evaluation()).contains(WarningCode.UNLIKE_TWINS));
        Map<Rgb8, List<Patch>> twins =
                SimulatedPrint.chart().sheets().get(0).patches().stream()
                        .collect(Collectors.groupingBy(Patch::rgb));
        List<Patch> two =
                twins.values().stream()
                        .filter(all -> all.size() == 2 && all.get(0).rgb().g() > 120)
                        .findFirst()
                        .orElseThrow();
        List<Patch> many =
                twins.entrySet().stream()
                        .filter(e -> e.getValue().size() > 2 && e.getKey().isNeutral())
                        .filter(e -> e.getKey().g() > 100 && e.getKey().g() < 240)
                        .map(Map.Entry::getValue)
                        .findFirst()
                        .orElseThrow();
        BufferedImage image = ImageIO.read(scan.toFile());
        Placement placement = good.scans().get(0).located().placement();
        stain(image, placement, two.get(0));
        stain(image, placement, many.get(1));
        Evaluation e = evaluated(image, "stained.png");
        // Of two nobody knows which is right; of several the odd one is told.
        Set<String> expected =
                new HashSet<>(Arrays.asList(two.get(0).id(), two.get(1).id(), many.get(1).id()));
        assertEquals(expected, unlike(e));
        assertTrue(codes(e).contains(WarningCode.UNLIKE_TWINS), e.warnings().toString());
    }

    @Test
    void aMarkOverAColourWithoutTwinsIsToldByTheColoursAround() throws Exception {
        Path scan = scan();
        Evaluator.Result good = Evaluator.evaluate(EvaluationRequest.of(scan));
        assertEquals(Set.of(), flagged(good.evaluation(), ReadingFlag.OUT_OF_LINE));
        Patch lone =
                SimulatedPrint.chart().sheets().get(0).patches().stream()
                        .filter(patch -> patch.rgb().equals(new Rgb8(255, 128, 64)))
                        .findFirst()
                        .orElseThrow();
        BufferedImage image = ImageIO.read(scan.toFile());
        cover(image, good.scans().get(0).located().placement(), lone, code -> 40 + code / 8);
        Evaluation e = evaluated(image, "covered.png");
        assertEquals(Set.of(lone.id()), flagged(e, ReadingFlag.OUT_OF_LINE));
        assertTrue(codes(e).contains(WarningCode.OUT_OF_LINE), e.warnings().toString());
    }

    @Test
    void lightFromOutsideIsToldAndTakenOff() throws Exception {
        Path scan = scan();
        Evaluation good = Evaluator.evaluate(EvaluationRequest.of(scan)).evaluation();
        assertFalse(codes(good).contains(WarningCode.LEAKED_LIGHT));
        BufferedImage image = ImageIO.read(scan.toFile());
        AddedLight.to(image, PER_INCH, (x, y) -> LEAK / (1 + Math.pow(x / 30, 4)));
        Evaluation e = evaluated(image, "lit.png");
        assertTrue(codes(e).contains(WarningCode.LEAKED_LIGHT), e.warnings().toString());
        assertTrue(flagged(e, ReadingFlag.LIT).size() > 10, "flagged");
        // The picture has no profile any more: colours relative to paper are compared.
        Map<String, Lab> before =
                good.patches().stream()
                        .collect(Collectors.toMap(Reading::id, Reading::labRelative));
        for (Reading reading : e.patches()) {
            double off =
                    DeltaE.ciede2000(
                            Objects.requireNonNull(before.get(reading.id())),
                            Objects.requireNonNull(reading.labRelative()));
            assertTrue(!reading.flags().isEmpty() || off < 2, reading.id() + " off by " + off);
        }
    }

    private Evaluation evaluated(BufferedImage image, String name) throws Exception {
        Path file = dir.resolve(name);
        ImageIO.write(image, "png", file.toFile());
        return Evaluator.evaluate(EvaluationRequest.of(file)).evaluation();
    }

    private static Set<WarningCode> codes(Evaluation e) {
        return e.warnings().stream().map(w -> w.code()).collect(Collectors.toSet());
    }
}
