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
import java.util.Set;
import java.util.stream.Collectors;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
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

/** A mark that lies over a whole patch, evenly, shows by the patch's twins alone. Simulated. */
class MarkedPatchTest {
    private static final double PER_INCH = 200;

    /** A weak stain: codes by this much lower, 2 to 3 L*. */
    private static final double STAIN = 0.96;

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
        return e.patches().stream()
                .filter(reading -> reading.flags().contains(ReadingFlag.UNLIKE_TWINS))
                .map(Reading::id)
                .collect(Collectors.toSet());
    }

    private static void stain(BufferedImage image, Placement placement, Patch patch) {
        RectMm area = patch.area();
        PointPx from = placement.toScan(new PointMm(area.x() - 0.2, area.y() - 0.2));
        PointPx to = placement.toScan(new PointMm(area.right() + 0.2, area.bottom() + 0.2));
        for (int y = (int) from.y(); y <= to.y(); y++) {
            for (int x = (int) from.x(); x <= to.x(); x++) {
                int rgb = image.getRGB(x, y);
                int stained = 0xff;
                for (int shift = 16; shift >= 0; shift -= 8) {
                    stained = stained << 8 | (int) Math.round(((rgb >> shift) & 255) * STAIN);
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
        Path stained = dir.resolve("stained.png");
        ImageIO.write(image, "png", stained.toFile());
        Evaluation e = Evaluator.evaluate(EvaluationRequest.of(stained)).evaluation();
        // Of two nobody knows which is right; of several the odd one is told.
        Set<String> expected =
                new HashSet<>(Arrays.asList(two.get(0).id(), two.get(1).id(), many.get(1).id()));
        assertEquals(expected, unlike(e));
        assertTrue(codes(e).contains(WarningCode.UNLIKE_TWINS), e.warnings().toString());
    }

    private static Set<WarningCode> codes(Evaluation e) {
        return e.warnings().stream().map(w -> w.code()).collect(Collectors.toSet());
    }
}
