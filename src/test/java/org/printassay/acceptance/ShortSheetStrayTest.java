package org.printassay.acceptance;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.printassay.colour.DeltaE;
import org.printassay.colour.Lab;
import org.printassay.colour.Rgb8;
import org.printassay.demo.PrintRoom;
import org.printassay.demo.flatbed.Flatbed;
import org.printassay.demo.paper.PaperModel;
import org.printassay.demo.paper.Tone;
import org.printassay.demo.print.Printing;
import org.printassay.recipe.Recipe;

/**
 * The short sheet has too few twins to estimate stray light from. Scanned with the stray light of
 * an ordinary flatbed (all simulated), its levels must not be told surer than they are.
 */
class ShortSheetStrayTest {
    private static final int SEEDS = 2;

    /** What is written is rounded. */
    private static final double ROUNDED = 0.001;

    @TempDir Path dir;

    @Test
    void levelIntervalsHoldTheTruth() throws Exception {
        RenderedChart sheet = RenderedChart.of(Recipe.Kind.SHORT, "A4", 10);
        List<String> outside = new ArrayList<>();
        int steps = 0;
        int unsure = 0;
        // Each print has its own spread: prints that share it would be one witness.
        long print = 40;
        for (int seed = 0; seed < SEEDS; seed++) {
            for (PaperModel paper : papers()) {
                Path scan = dir.resolve(paper.name() + "-" + seed + ".tif");
                PrintRoom.scan(
                        sheet.print(paper, Printing.EXACT, ++print),
                        flatbed(0.02 + 0.01 * seed),
                        print,
                        scan);
                JsonNode told = evaluate(scan);
                for (JsonNode step : told.at("/shadows/steps")) {
                    int level = step.get("level").asInt();
                    double truth = lightness(paper, level) - lightness(paper, 0);
                    steps++;
                    check(outside, scan, step, truth);
                }
                for (JsonNode step : told.at("/highlights/steps")) {
                    int level = step.get("level").asInt();
                    double truth = lightness(paper, 255) - lightness(paper, level);
                    steps++;
                    check(outside, scan, step, truth);
                }
                for (JsonNode patch : told.at("/patches")) {
                    JsonNode lab = patch.get("lab");
                    Lab read =
                            new Lab(
                                    lab.get("l").asDouble(),
                                    lab.get("a").asDouble(),
                                    lab.get("b").asDouble());
                    JsonNode code = patch.get("rgb");
                    Rgb8 rgb =
                            new Rgb8(code.get(0).asInt(), code.get(1).asInt(), code.get(2).asInt());
                    double off = DeltaE.ciede2000(paper.colourOf(rgb), read);
                    assertTrue(off < 2 || !patch.get("flags").isEmpty(), patch + " off by " + off);
                    unsure += patch.get("flags").toString().contains("unsure") ? 1 : 0;
                }
                assertEquals(0, told.at("/shadows/reversalLevels").size(), scan::toString);
                assertEquals(0, told.at("/tone/reversalLevels").size(), scan::toString);
                assertEquals(0, told.at("/tone/irregularities").size(), scan::toString);
                assertFalse(told.at("/findings").toString().contains("darker than level 0"));
                assertFalse(told.at("/warnings").toString().contains("unlike-twins"));
            }
        }
        assertTrue(unsure > 0, "the dark patches are not sure");
        assertTrue(steps >= 28 * SEEDS * papers().size(), steps + " steps");
        assertTrue(outside.size() <= 0.05 * steps, outside.size() + " of " + steps + outside);
    }

    private static void check(List<String> outside, Path scan, JsonNode step, double truth) {
        double low = step.get("low").asDouble() - ROUNDED;
        double high = step.get("high").asDouble() + ROUNDED;
        if (truth < low || truth > high) {
            outside.add(scan.getFileName() + " " + step.get("level") + ": " + truth + " " + step);
        }
    }

    private static double lightness(PaperModel paper, int level) {
        return paper.colourOf(Rgb8.grey(level)).l();
    }

    private static List<PaperModel> papers() {
        return List.of(
                PaperModel.faultless("glossy", new Lab(95, 0, 1), new Lab(3, 0, 0))
                        .withSurface(SimulatedPrint.GOOD_SURFACE),
                PaperModel.faultless("lustre", new Lab(96, 0, -3), new Lab(9, 0.3, 0))
                        .withTone(Tone.AIM.withBlocked(5, 4, true))
                        .withSurface(SimulatedPrint.GOOD_SURFACE),
                PaperModel.faultless("matte", new Lab(94, 0, 4), new Lab(19, 0, 0.5))
                        .withTone(Tone.AIM.withBlocked(12, 6, true))
                        .withSurface(SimulatedPrint.GOOD_SURFACE));
    }

    private static Flatbed flatbed(double returned) {
        Flatbed clear = SimulatedPrint.flatbed();
        return clear.withSamplesPerInch(200)
                .withOptics(clear.optics().withStrayLight(returned, 0.01));
    }

    private JsonNode evaluate(Path scan) throws Exception {
        Path out = dir.resolve(scan.getFileName() + ".ev");
        CommandLineRun run = CommandLineRun.of("evaluate", scan, "--out", out);
        assertEquals(0, run.exitCode(), run.err());
        return new ObjectMapper().readTree(out.resolve("evaluation.json").toFile());
    }
}
