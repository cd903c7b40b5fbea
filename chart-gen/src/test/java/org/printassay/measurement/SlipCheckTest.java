package org.printassay.measurement;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.printassay.chart.Charts;
import org.printassay.chart.ReadingOrder;
import org.printassay.colour.Lab;
import org.printassay.colour.RgbSpace;
import org.printassay.problem.Problem;
import org.printassay.recipe.Margins;
import org.printassay.recipe.PageSize;
import org.printassay.recipe.Recipe;

/**
 * Lists of readings of whole charts on made-up papers (simulated): tone that bends and waves, dull
 * and turned hues, noise of 0.05 to 0.55. Whether one patch was left out and another read twice.
 */
class SlipCheckTest {
    private static final int PAPERS = 6;

    @Test
    void aPatchLeftOutAndTheLastReadTwiceShows() throws Problem {
        Random random = new Random(3);
        for (Recipe.Kind kind : List.of(Recipe.Kind.PAPER, Recipe.Kind.PRINTER)) {
            List<Lab> expected = expected(kind);
            int last = expected.size() - 1;
            for (int k = 0; k < PAPERS; k++) {
                Paper paper = Paper.of(random);
                List<Lab> read = paper.read(expected, random);
                assertEquals(Optional.empty(), SlipCheck.of(expected, read), kind + " as it is");
                int missed = random.nextInt(last - 40);
                read.remove(missed);
                read.add(paper.read(expected.get(last), random));
                SlipCheck.Slip slip = SlipCheck.of(expected, read).orElseThrow();
                assertEquals(1, slip.off(), kind + " " + missed);
                // In a ramp neighbours are too like to tell.
                assertTrue(Math.abs(slip.from() - missed) < 32, slip + " " + missed);
            }
        }
    }

    /** Saturated colours and shadows that print alike are no patch read twice. */
    @Test
    void aPrintThatClipsIsNotTakenForASlip() throws Problem {
        Random random = new Random(5);
        for (Recipe.Kind kind :
                List.of(Recipe.Kind.PAPER, Recipe.Kind.PRINTER, Recipe.Kind.SHORT)) {
            List<Lab> expected = expected(kind);
            for (int k = 0; k < PAPERS; k++) {
                List<Lab> read = new ArrayList<>();
                for (Lab lab : Paper.of(random).read(expected, random)) {
                    double reached = Math.min(1, 40 / Math.max(1, lab.chroma()));
                    read.add(
                            new Lab(
                                    Math.max(25 + 0.1 * random.nextGaussian(), lab.l()),
                                    reached * lab.a(),
                                    reached * lab.b()));
                }
                assertEquals(Optional.empty(), SlipCheck.of(expected, read), kind + " " + k);
            }
        }
    }

    /** The other way round: an early patch twice, a later one not at all. */
    @Test
    void aPatchReadTwiceAndALaterOneLeftOutShows() throws Problem {
        Random random = new Random(4);
        List<Lab> expected = expected(Recipe.Kind.PRINTER);
        for (int k = 0; k < PAPERS; k++) {
            Paper paper = Paper.of(random);
            List<Lab> read = paper.read(expected, random);
            int twice = random.nextInt(expected.size() - 30);
            read.add(twice, paper.read(expected.get(twice), random));
            read.remove(twice + 25);
            assertEquals(-1, SlipCheck.of(expected, read).orElseThrow().off(), "" + twice);
        }
    }

    private static List<Lab> expected(Recipe.Kind kind) throws Problem {
        ChartPatches chart =
                ReadingOrder.of(
                        Charts.create(
                                Recipe.of(
                                        kind,
                                        PageSize.parse("A4"),
                                        Margins.all(10),
                                        RgbSpace.SRGB)));
        return chart.order().stream().map(chart::expected).toList();
    }

    private record Paper(double black, double bend, double wave, double turn, double noise) {
        static Paper of(Random random) {
            return new Paper(
                    3 + 22 * random.nextDouble(),
                    0.0016 * random.nextGaussian(),
                    2 * random.nextDouble(),
                    6 * random.nextDouble(),
                    0.05 + 0.5 * random.nextDouble());
        }

        List<Lab> read(List<Lab> expected, Random random) {
            List<Lab> read = new ArrayList<>();
            expected.forEach(lab -> read.add(read(lab, random)));
            return read;
        }

        Lab read(Lab lab, Random random) {
            double l = lab.l();
            double tone =
                    black + (95 - black) / 100 * l + bend * l * (100 - l) + wave * Math.sin(l / 9);
            double hue = Math.atan2(lab.b(), lab.a());
            double chroma = lab.chroma() * (0.6 + 0.25 * Math.sin(hue + turn));
            chroma /= 1 + chroma / 180;
            hue += 0.25 * Math.sin(hue + 2 * turn);
            return new Lab(
                    Math.max(0.5, tone + 0.1 * chroma * Math.cos(2 * hue) + off(random)),
                    chroma * Math.cos(hue) + 1 + off(random),
                    chroma * Math.sin(hue) - 3 * l / 100 + off(random));
        }

        private double off(Random random) {
            return noise * random.nextGaussian();
        }
    }
}
