package org.printassay.chart;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.printassay.colour.Lab;
import org.printassay.colour.RgbSpace;
import org.printassay.measurement.ChartPatches;
import org.printassay.measurement.MeasuredPatch;
import org.printassay.measurement.MeasurementFile;
import org.printassay.measurement.MeasurementReader;
import org.printassay.problem.Problem;
import org.printassay.recipe.Margins;
import org.printassay.recipe.PageSize;
import org.printassay.recipe.Recipe;
import org.printassay.sheet.Artwork;
import org.printassay.sheet.Patch;
import org.printassay.sheet.RectMm;
import org.printassay.sheet.Sheet;

/** The reading order of the short sheet. */
class ReadingOrderTest {
    private static Chart chart(String page, String margins) throws Problem {
        return Charts.create(
                Recipe.of(
                        Recipe.Kind.SHORT,
                        PageSize.parse(page),
                        Margins.parse(margins),
                        RgbSpace.SRGB));
    }

    @Test
    void rowsAreNumberedOnTheSheet() throws Problem {
        Sheet sheet = chart("4x6in", "5").sheets().get(0);
        List<List<Patch>> rows = ReadingOrder.rows(sheet);
        for (int i = 0; i < rows.size(); i++) {
            RectMm first = rows.get(i).get(0).area();
            String number = String.valueOf(i + 1);
            boolean beside = false;
            for (Artwork thing : sheet.artwork()) {
                if (thing instanceof Artwork.Text text && text.text().equals(number)) {
                    beside |=
                            text.anchor().x() < first.x()
                                    && text.anchor().x() > first.x() - 3
                                    && text.anchor().y() > first.y()
                                    && text.anchor().y() < first.bottom();
                }
            }
            assertTrue(beside, "row " + number);
        }
        assertEquals(8, rows.size());
        for (List<Patch> row : rows) {
            row.forEach(patch -> assertTrue(patch.area().width() > 9, patch::toString));
        }
    }

    /** Every mistake of a hand is named, on the rows of this sheet too (dull print, simulated). */
    @Test
    void mistakesOfTheHandAreNamed() throws Problem {
        ChartPatches patches = ReadingOrder.of(chart("4x6in", "5"));
        assertEquals(patches.order().size(), read(patches, patches.rows()).patches().size());
        for (int i = 0; i < patches.rows().size(); i++) {
            List<List<Patch>> missed = new ArrayList<>(patches.rows());
            missed.remove(i);
            refused(patches, missed, "row " + (i + 1) + " was missed");
            List<List<Patch>> backwards = new ArrayList<>(patches.rows());
            List<Patch> row = new ArrayList<>(backwards.get(i));
            Collections.reverse(row);
            backwards.set(i, row);
            refused(patches, backwards, "row " + (i + 1) + " was read from its right end");
        }
        List<Patch> turned = new ArrayList<>(patches.order());
        Collections.reverse(turned);
        refused(patches, List.of(turned), "turned upside down");
    }

    /**
     * A matte print whose dark rows hardly differ and whose colours bend (simulated): a dark row
     * read from its right end would tell wrong shadows, though the rest fits well.
     */
    @Test
    void aDarkRowReadBackwardsIsNamed() throws Problem {
        ChartPatches patches = ReadingOrder.of(chart("4x6in", "5"));
        typed(patches, patches.rows(), ReadingOrderTest::matte);
        for (int i = 0; i < patches.rows().size(); i++) {
            List<List<Patch>> backwards = new ArrayList<>(patches.rows());
            List<Patch> row = new ArrayList<>(backwards.get(i));
            Collections.reverse(row);
            backwards.set(i, row);
            Problem problem =
                    assertThrows(
                            Problem.class,
                            () -> typed(patches, backwards, ReadingOrderTest::matte));
            String words = "row " + (i + 1) + " was read from its right end";
            assertTrue(problem.toString().contains(words), problem::toString);
        }
    }

    /** Too much ink can make black lighter than the levels above it; that is no mistake. */
    @Test
    void toneThatRunsBackwardsIsNoMistakeOfTheHand() throws Problem {
        ChartPatches patches = ReadingOrder.of(chart("4x6in", "5"));
        MeasurementFile file =
                typed(
                        patches,
                        patches.rows(),
                        code -> {
                            Lab lab = matte(code);
                            double more = Math.max(0, 3 - 0.5 * code.l());
                            return new Lab(lab.l() + more, lab.a(), lab.b());
                        });
        assertEquals(patches.order().size(), file.patches().size());
    }

    private static Lab matte(Lab code) {
        double open = Math.max(0, code.l() - 3);
        double dull = code.chroma() > 3 ? 0.5 + 0.2 * Math.sin(code.a() / 9) : 0.6;
        return new Lab(16.7 + 0.815 * open, dull * code.a() + 0.5, dull * code.b() + 3);
    }

    private static MeasurementFile typed(
            ChartPatches chart, List<List<Patch>> rows, UnaryOperator<Lab> print) throws Problem {
        Random random = new Random(4);
        StringBuilder text = new StringBuilder();
        for (List<Patch> row : rows) {
            for (Patch patch : row) {
                Lab lab = print.apply(RgbSpace.SRGB.toLab(patch.rgb()));
                text.append(
                        String.format(
                                Locale.ROOT,
                                "%.2f %.2f %.2f%n",
                                lab.l() + 0.1 * random.nextGaussian(),
                                lab.a() + 0.1 * random.nextGaussian(),
                                lab.b() + 0.1 * random.nextGaussian()));
            }
        }
        byte[] bytes = text.toString().getBytes(StandardCharsets.UTF_8);
        return MeasurementReader.read("typed.txt", bytes, chart);
    }

    /** chart.txt names windows and scan patches too; whoever measures them all is not foreign. */
    @Test
    void everyIdOfTheShortSheetIsKnown() throws Problem {
        Chart chart = chart("A4", "10");
        ChartPatches patches = ReadingOrder.of(chart);
        List<Patch> all = chart.sheets().get(0).patches();
        assertTrue(all.size() > patches.order().size());
        StringBuilder text = new StringBuilder("SAMPLE_ID LAB_L LAB_A LAB_B\n");
        for (Patch patch : all) {
            Lab lab = RgbSpace.SRGB.toLab(patch.rgb());
            text.append(patch.id())
                    .append(
                            String.format(
                                    Locale.ROOT,
                                    " %.2f %.2f %.2f%n",
                                    20 + 0.7 * lab.l(),
                                    0.6 * lab.a(),
                                    0.6 * lab.b()));
        }
        MeasurementFile file =
                MeasurementReader.read(
                        "all.txt", text.toString().getBytes(StandardCharsets.UTF_8), patches);
        assertEquals(all.size(), file.patches().size());
        assertTrue(file.patches().stream().allMatch(MeasuredPatch::placed));
    }

    private static void refused(ChartPatches chart, List<List<Patch>> rows, String words) {
        Problem problem = assertThrows(Problem.class, () -> read(chart, rows));
        assertTrue(problem.toString().contains(words), problem::toString);
    }

    private static MeasurementFile read(ChartPatches chart, List<List<Patch>> rows) throws Problem {
        Random random = new Random(4);
        String typed =
                rows.stream()
                        .flatMap(List::stream)
                        .map(
                                patch -> {
                                    Lab lab = RgbSpace.SRGB.toLab(patch.rgb());
                                    return String.format(
                                            Locale.ROOT,
                                            "%.1f %.1f %.1f",
                                            25 + 0.65 * lab.l() + 0.3 * random.nextGaussian(),
                                            0.6 * lab.a() + 0.3 * random.nextGaussian(),
                                            0.6 * lab.b() - 3 + 0.3 * random.nextGaussian());
                                })
                        .collect(Collectors.joining("\n"));
        return MeasurementReader.read("typed.txt", typed.getBytes(StandardCharsets.UTF_8), chart);
    }
}
