package org.printassay.acceptance;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import java.util.function.Function;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledIfSystemProperty;
import org.junit.jupiter.api.io.TempDir;
import org.printassay.check.Change;
import org.printassay.check.Check;
import org.printassay.check.Checker;
import org.printassay.check.Outcome;
import org.printassay.check.Quantity;
import org.printassay.check.ToleranceFile;
import org.printassay.check.ToleranceSet;
import org.printassay.colour.Lab;
import org.printassay.demo.PrintRoom;
import org.printassay.demo.flatbed.Dirt;
import org.printassay.demo.flatbed.Flatbed;
import org.printassay.demo.flatbed.Light;
import org.printassay.demo.flatbed.Optics;
import org.printassay.demo.flatbed.Placing;
import org.printassay.demo.paper.PaperModel;
import org.printassay.demo.paper.Tone;
import org.printassay.demo.print.Print;
import org.printassay.demo.print.Printing;
import org.printassay.evaluation.Evaluation;
import org.printassay.evaluation.EvaluationRequest;
import org.printassay.evaluation.Evaluator;

/**
 * Whole simulated scans of unchanged and of changed reprints, each laid anew on an ordinary
 * flatbed. Long: {@code -DcheckScans=20}.
 */
@EnabledIfSystemProperty(named = "checkScans", matches = "\\d+")
class CheckTrialsTest {
    private static final int SCANS = Integer.getInteger("checkScans", 0);
    private static final int SAMPLES_PER_INCH = 200;

    /** About two levels around level 28, by the slope of the simulated tone there. */
    private static final List<Tone.Bump> DARKER_SHADOWS = List.of(new Tone.Bump(28, 20, -1.2));

    @TempDir Path folder;

    private static PaperModel paper() {
        PaperModel good = SimulatedPrint.goodPaper();
        return new PaperModel(
                good.name(),
                new Lab(95.5, 0.4, 1.5),
                new Lab(14, 0.2, 0.4),
                good.tone().withBlocked(6, 14, true),
                good.cast(),
                good.chromaByHue(),
                good.surface());
    }

    /** Unchanged, but for what printers wander by: black and gradation. */
    private static PaperModel wandering(PaperModel paper, Random random) {
        Lab black = paper.black();
        return new PaperModel(
                paper.name(),
                paper.white(),
                new Lab(black.l() + 0.12 * random.nextGaussian(), black.a(), black.b()),
                paper.tone().withGamma(paper.tone().gamma() * (1 + 0.003 * random.nextGaussian())),
                paper.cast(),
                paper.chromaByHue(),
                paper.surface());
    }

    private Evaluation scanned(PaperModel paper, long seed) throws Exception {
        Random random = new Random(seed);
        Print print = SimulatedPrint.print(wandering(paper, random), Printing.EXACT, 100 + seed);
        Flatbed flatbed =
                SimulatedPrint.flatbed()
                        .withSamplesPerInch(SAMPLES_PER_INCH)
                        .withPlacing(
                                Placing.STRAIGHT
                                        .withDegrees(2 * random.nextDouble() - 1)
                                        .withOffset(random.nextDouble(), random.nextDouble()))
                        .withOptics(Optics.CLEAR.withBlur(40).withStrayLight(0.02, 0.01))
                        .withLight(new Light(0.03, Light.Shape.SLOPE, 0))
                        .withDirt(Dirt.NONE);
        Path scan = folder.resolve("scan-" + seed + ".tif");
        PrintRoom.scan(print, flatbed, seed, scan);
        try {
            return Evaluator.evaluate(EvaluationRequest.of(scan)).evaluation();
        } finally {
            Files.delete(scan);
        }
    }

    private Map<Outcome, Integer> trials(
            String name, Function<PaperModel, PaperModel> change, int first, int scans)
            throws Exception {
        ToleranceSet fine = ToleranceFile.named("fine");
        Evaluation baseline = scanned(paper(), first);
        Map<Outcome, Integer> outcomes = new EnumMap<>(Outcome.class);
        Map<Quantity, Double> largest = new EnumMap<>(Quantity.class);
        Map<Quantity, Double> stated = new EnumMap<>(Quantity.class);
        for (int i = 1; i <= scans; i++) {
            Check check = Checker.check(baseline, scanned(change.apply(paper()), first + i), fine);
            outcomes.merge(check.outcome(), 1, Integer::sum);
            for (Change c : check.changes()) {
                largest.merge(c.quantity(), Math.abs(c.change()), Math::max);
                Double half = c.halfWidth();
                stated.merge(c.quantity(), half == null ? Double.NaN : half, Math::max);
            }
        }
        System.out.println(name + ": " + outcomes);
        largest.forEach(
                (quantity, most) ->
                        System.out.println(
                                String.format(
                                        Locale.ROOT,
                                        "  %s: largest change %.3f, largest U %.3f",
                                        quantity.key(),
                                        most,
                                        stated.get(quantity))));
        return outcomes;
    }

    @Test
    void unchangedReprintsAreWithinAndMovedWedgesAreSeen() throws Exception {
        assertEquals(Map.of(Outcome.WITHIN, SCANS), trials("unchanged", p -> p, 1000, SCANS));
        int moved = Math.max(1, SCANS / 2);
        Map<Outcome, Integer> wedges =
                trials(
                        "shadows about two levels darker as a whole",
                        p -> p.withTone(p.tone().withBumps(DARKER_SHADOWS)),
                        2000,
                        moved);
        assertEquals(0, wedges.getOrDefault(Outcome.WITHIN, 0));
        Map<Outcome, Integer> tone =
                trials(
                        "darker by a mean of about 1 dE00",
                        p -> p.withTone(p.tone().withGamma(1.06)),
                        3000,
                        moved);
        assertEquals(0, tone.getOrDefault(Outcome.WITHIN, 0));
    }
}
