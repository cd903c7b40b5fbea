package org.printassay.measurement;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.printassay.colour.Lab;
import org.printassay.colour.Rgb8;
import org.printassay.colour.RgbSpace;
import org.printassay.problem.Problem;
import org.printassay.sheet.Patch;
import org.printassay.sheet.RectMm;
import org.printassay.sheet.Section;

/** Matching to an invented chart of six rows of eight patches; readings are simulated. */
class PatchMatcherTest {
    private static final int COLUMNS = 8;
    private static final ChartPatches CHART = chart();

    @Test
    void byNameWhateverTheOrder() throws Problem {
        List<Patch> order = new ArrayList<>(CHART.order());
        Collections.shuffle(order, new Random(1));
        MeasurementFile file =
                read(table("SAMPLE_NAME LAB_L LAB_A LAB_B", order, p -> p.id() + " " + dull(p)));
        assertEquals(order.get(3).id(), file.patches().get(3).id());
        assertEquals(order.get(3).rgb(), file.patches().get(3).rgb());
        assertTrue(file.patches().get(3).placed());
        assertTrue(file.notes().toString().contains("by name: 48."), file.notes()::toString);
    }

    @Test
    void namesInAnotherCaseOrWithPunctuation() throws Problem {
        for (boolean codes : new boolean[] {false, true}) {
            String fields =
                    "SAMPLE_ID " + (codes ? "RGB_R RGB_G RGB_B " : "") + "LAB_L LAB_A LAB_B";
            List<Patch> order = reversed(CHART.order());
            String text =
                    table(
                            fields,
                            order,
                            p ->
                                    p.id().toLowerCase(Locale.ROOT).replace("c", "-c.")
                                            + (codes ? rgb(p) : "")
                                            + " "
                                            + dull(p));
            assertTrue(text.contains("r0-c.1 "), text);
            MeasurementFile file = read(text);
            assertEquals("R5C7", file.patches().get(0).id());
            assertTrue(file.patches().get(0).placed());
            assertTrue(file.notes().toString().contains("by name: 48."), file.notes()::toString);
        }
    }

    /** Names that only case or punctuation tell apart are not guessed. */
    @Test
    void namesThatCouldMeanTwoPatchesAreNotTakenForOne() {
        Set<String> ids = Set.of("A1", "B-11", "B1-1", "C1");
        assertEquals(
                Map.of("a1", "A1", "C1", "C1"),
                PatchNames.known(ids, List.of("a1", "b11", "C1", "c-1", "--", "D1")));
        assertEquals(Map.of(), PatchNames.known(ids, List.of("a1", "a-1")));
    }

    private static String rgb(Patch patch) {
        return " " + patch.rgb().r() + " " + patch.rgb().g() + " " + patch.rgb().b();
    }

    /** Running numbers in SAMPLE_ID, the chart's names in SAMPLE_LOC. */
    @Test
    void namesAreFoundInTheColumnThatHasThem() throws Problem {
        String text =
                table(
                        "SAMPLE_ID SAMPLE_LOC LAB_L LAB_A LAB_B",
                        CHART.order(),
                        p -> CHART.order().indexOf(p) + " " + p.id() + " " + dull(p));
        assertEquals("R0C0", read(text).patches().get(0).id());
    }

    @Test
    void byCodesWhereNamesDiffer() throws Problem {
        String text =
                table(
                        "SAMPLE_ID RGB_R RGB_G RGB_B LAB_L LAB_A LAB_B",
                        CHART.order(),
                        p ->
                                "x"
                                        + CHART.order().indexOf(p)
                                        + " "
                                        + p.rgb().r()
                                        + " "
                                        + p.rgb().g()
                                        + " "
                                        + p.rgb().b()
                                        + " "
                                        + dull(p));
        MeasurementFile file = read(text);
        assertEquals("R0C1", file.patches().get(1).id());
        // The first and the last patch have one code: which is which, codes do not tell.
        assertEquals("x0", file.patches().get(0).id());
        assertFalse(file.patches().get(0).placed());
        assertEquals(CHART.order().get(0).rgb(), file.patches().get(0).rgb());
    }

    @Test
    void otherChartsAreRefused() {
        Problem problem =
                problem(
                        "BEGIN_DATA_FORMAT\nSAMPLE_ID RGB_R RGB_G RGB_B LAB_L LAB_A LAB_B\n"
                                + "END_DATA_FORMAT\nBEGIN_DATA\nq 1 2 3 50 0 0\nEND_DATA");
        assertEquals(Problem.Kind.CHART, problem.kind());
        assertTrue(problem.toString().contains("no patch of chart T"), problem::toString);
    }

    @Test
    void typedListInReadingOrder() throws Problem {
        MeasurementFile file = read(typed(CHART.rows()));
        assertEquals(48, file.patches().size());
        assertEquals("R5C7", file.patches().get(47).id());
        assertTrue(file.patches().get(47).placed());
        assertTrue(file.notes().toString().contains("taken as L* a* b*"), file.notes()::toString);
        String commas = typed(CHART.rows()).replace('.', ',');
        assertEquals(file.patches().get(9).lab(), read(commas).patches().get(9).lab());
        String named =
                CHART.order().stream()
                        .map(p -> p.id() + " " + dull(p))
                        .collect(Collectors.joining("\n"));
        assertEquals(file.patches().get(9).lab(), read(named).patches().get(9).lab());
    }

    @Test
    void ordersThatDoNotFitAreRefusedAndNamed() {
        List<List<Patch>> turned = new ArrayList<>(CHART.rows());
        Collections.reverse(turned);
        turned.replaceAll(row -> reversed(row));
        assertRefused("turned upside down", turned);
        List<List<Patch>> missed = new ArrayList<>(CHART.rows());
        missed.remove(3);
        assertRefused("row 4 was missed", missed);
        List<List<Patch>> twice = new ArrayList<>(CHART.rows());
        twice.add(2, CHART.rows().get(1));
        assertRefused("row 2 was read twice", twice);
        List<List<Patch>> backwards = new ArrayList<>(CHART.rows());
        backwards.replaceAll(row -> reversed(row));
        assertRefused("every row was read from its right end", backwards);
        List<List<Patch>> upwards = new ArrayList<>(CHART.rows());
        Collections.reverse(upwards);
        assertRefused("from the bottom row up", upwards);
        List<List<Patch>> swapped = new ArrayList<>(CHART.rows());
        Collections.swap(swapped, 1, 2);
        assertRefused("rows 2 and 3 were read in the other order", swapped);
        List<List<Patch>> oneBack = new ArrayList<>(CHART.rows());
        oneBack.set(4, reversed(oneBack.get(4)));
        assertRefused("row 5 was read from its right end", oneBack);
        for (int first = 0; first < 2; first++) {
            List<List<Patch>> toAndFro = new ArrayList<>(CHART.rows());
            for (int i = 1 - first; i < toAndFro.size(); i += 2) {
                toAndFro.set(i, reversed(toAndFro.get(i)));
            }
            assertRefused("to and fro: rows " + (first == 0 ? "2, 4" : "1, 3"), toAndFro);
        }
        List<Patch> mixed = new ArrayList<>(CHART.order());
        Collections.shuffle(mixed, new Random(5));
        assertRefused("do not fit the chart's reading order", List.of(mixed));
        List<Patch> short3 = CHART.order().subList(0, 45);
        assertRefused("45 readings, but the chart has 48 patches in 6 rows", List.of(short3));
    }

    /** The number of readings is right, but one row stands in the place of another. */
    @Test
    void aRowReadTwiceInsteadOfItsNeighbourIsRefused() throws Problem {
        Random noise = new Random(11);
        for (int i = 0; i < CHART.rows().size(); i++) {
            for (int other : new int[] {i - 1, i + 1}) {
                if (other >= 0 && other < CHART.rows().size()) {
                    List<List<Patch>> rows = new ArrayList<>(CHART.rows());
                    rows.set(i, rows.get(other));
                    String words =
                            "row "
                                    + (i + 1)
                                    + " was missed and row "
                                    + (other + 1)
                                    + " read twice. Measure row "
                                    + (i + 1);
                    Problem problem = problem(noisy(rows, noise));
                    assertTrue(problem.toString().contains(words), problem::toString);
                }
            }
        }
        // Rows far apart changed places: no row was read twice, and none is said to be.
        List<List<Patch>> swapped = new ArrayList<>(CHART.rows());
        Collections.swap(swapped, 0, 4);
        Problem problem = problem(noisy(swapped, noise));
        assertFalse(problem.toString().contains("read twice"), problem::toString);
        for (int k = 0; k < 50; k++) {
            assertEquals(48, read(noisy(CHART.rows(), noise)).patches().size());
        }
    }

    /** The number of readings is right, but one patch is missing and the last stands twice. */
    @Test
    void aPatchLeftOutAndTheLastReadTwiceIsRefused() {
        Random noise = new Random(12);
        for (int missed = 0; missed < 40; missed++) {
            List<Patch> order = new ArrayList<>(CHART.order());
            order.remove(missed);
            order.add(order.get(order.size() - 1));
            Problem problem = problem(noisy(List.of(order), noise));
            assertEquals(Problem.Kind.INPUT, problem.kind());
            assertTrue(
                    problem.toString().contains("left out at or before the first of them"),
                    problem::toString);
        }
    }

    /** Readings of a dull paper with an instrument's noise (simulated). */
    private static String noisy(List<List<Patch>> rows, Random noise) {
        StringBuilder text = new StringBuilder();
        for (Patch patch : rows.stream().flatMap(List::stream).toList()) {
            String separator = "";
            for (String value : dull(patch).split(" ", -1)) {
                double read = Double.parseDouble(value) + 0.3 * noise.nextGaussian();
                text.append(separator).append(String.format(Locale.ROOT, "%.2f", read));
                separator = " ";
            }
            text.append('\n');
        }
        return text.toString();
    }

    /** Papers' windows and the like are left out of the reading order, not of the chart. */
    @Test
    void patchesForScansAloneAreKnownByName() throws Problem {
        List<Patch> all = new ArrayList<>(CHART.order());
        Patch window = new Patch("P101", Section.PAPER, Rgb8.grey(255), new RectMm(90, 0, 3, 3));
        all.add(window);
        ChartPatches chart = new ChartPatches("T", RgbSpace.SRGB, CHART.rows(), all);
        String text = table("SAMPLE_NAME LAB_L LAB_A LAB_B", all, p -> p.id() + " " + dull(p));
        MeasurementFile file = read(text, chart);
        assertEquals("P101", file.patches().get(48).id());
        assertTrue(file.patches().get(48).placed());
        assertTrue(file.notes().toString().contains("by name: 49."), file.notes()::toString);
    }

    @Test
    void aReadingOfTheBareTileIsPassedOver() throws Problem {
        String text =
                table("SAMPLE_NAME LAB_L LAB_A LAB_B", CHART.order(), p -> p.id() + " " + dull(p));
        MeasurementFile file = read(text.replace("END_DATA\n", "whitetile 95 0 0\nEND_DATA\n"));
        assertEquals(48, file.patches().size());
        assertTrue(
                file.notes().toString().contains("by name: 48; not of this chart: 1."),
                file.notes()::toString);
    }

    @Test
    void typedListWithCommasBetweenNumbers() throws Problem {
        MeasurementFile file = read(typed(CHART.rows()));
        for (String commas : new String[] {", ", ","}) {
            String named =
                    CHART.order().stream()
                            .map(p -> (p.id() + " " + dull(p)).replace(" ", commas))
                            .collect(Collectors.joining("\n", "# typed, by hand\n", ""));
            assertEquals(file.patches().get(9).lab(), read(named).patches().get(9).lab());
        }
        String spaced = typed(CHART.rows()).replace(" ", ", ");
        assertEquals(file.patches().get(9).lab(), read(spaced).patches().get(9).lab());
        String headed =
                "Nr L* a* b*\n"
                        + CHART.order().stream()
                                .map(p -> p.id() + " " + dull(p))
                                .collect(Collectors.joining("\n"));
        assertEquals(file.patches().get(9).lab(), read(headed).patches().get(9).lab());
    }

    /** A dark part of a chart alone, whose lightest code is 100 (made up). */
    @Test
    void codesUpTo100AreTheChartsAndNotPercent() throws Problem {
        List<Patch> dark = new ArrayList<>();
        for (int i = 0; i <= 10; i++) {
            dark.add(
                    new Patch(
                            "D" + i,
                            Section.NEUTRAL_RAMP,
                            Rgb8.grey(10 * i),
                            new RectMm(10 * i, 0, 10, 10)));
        }
        ChartPatches chart = new ChartPatches("T", RgbSpace.SRGB, List.of(dark));
        String text =
                table(
                        "SAMPLE_ID RGB_R RGB_G RGB_B LAB_L LAB_A LAB_B",
                        dark,
                        p -> p.id() + (" " + p.rgb().r()).repeat(3) + " " + dull(p));
        MeasurementFile file = read(text, chart);
        assertEquals(Rgb8.grey(100), file.patches().get(10).rgb());
        assertTrue(file.patches().get(10).placed());
    }

    /** A program that fills in names by itself does not make a missed row right. */
    @Test
    void namesThatContradictTheColoursAreRefused() {
        List<Patch> order = CHART.order();
        List<Patch> turned = reversed(order);
        Problem problem =
                problem(
                        table(
                                "SAMPLE_ID LAB_L LAB_A LAB_B",
                                order,
                                p -> p.id() + " " + dull(turned.get(order.indexOf(p)))));
        assertTrue(problem.toString().contains("turned upside down"), problem::toString);
        assertTrue(problem.toString().contains("names say otherwise"), problem::toString);
    }

    private static void assertRefused(String words, List<List<Patch>> rows) {
        Problem problem = problem(typed(rows));
        assertTrue(problem.toString().contains(words), problem::toString);
        assertEquals(Problem.Kind.INPUT, problem.kind());
    }

    private static Problem problem(String text) {
        return assertThrows(Problem.class, () -> read(text));
    }

    private static MeasurementFile read(String text) throws Problem {
        return MeasurementReader.read("typed.txt", text.getBytes(StandardCharsets.UTF_8), CHART);
    }

    private static MeasurementFile read(String text, ChartPatches chart) throws Problem {
        return MeasurementReader.read("typed.txt", text.getBytes(StandardCharsets.UTF_8), chart);
    }

    private static String typed(List<List<Patch>> rows) {
        return rows.stream()
                .flatMap(List::stream)
                .map(PatchMatcherTest::dull)
                .collect(Collectors.joining("\n"));
    }

    private static String table(String fields, List<Patch> order, Function<Patch, String> row) {
        return "BEGIN_DATA_FORMAT\n"
                + fields
                + "\nEND_DATA_FORMAT\nBEGIN_DATA\n"
                + order.stream().map(row).collect(Collectors.joining("\n"))
                + "\nEND_DATA\n";
    }

    /** What a dull paper makes of a patch (simulated). */
    private static String dull(Patch patch) {
        Lab lab = RgbSpace.SRGB.toLab(patch.rgb());
        double l = 22 + 0.7 * lab.l() + 0.0008 * lab.l() * (100 - lab.l());
        return String.format(Locale.ROOT, "%.2f %.2f %.2f", l, 0.6 * lab.a(), 0.6 * lab.b() - 2);
    }

    private static <T> List<T> reversed(List<T> list) {
        List<T> back = new ArrayList<>(list);
        Collections.reverse(back);
        return back;
    }

    private static ChartPatches chart() {
        Random random = new Random(7);
        List<List<Patch>> rows = new ArrayList<>();
        for (int r = 0; r < 6; r++) {
            List<Patch> row = new ArrayList<>();
            for (int c = 0; c < COLUMNS; c++) {
                boolean end = r + c == 0 || (r == 5 && c == COLUMNS - 1);
                Rgb8 rgb =
                        end
                                ? new Rgb8(255, 255, 255)
                                : new Rgb8(
                                        random.nextInt(256),
                                        random.nextInt(256),
                                        random.nextInt(256));
                row.add(
                        new Patch(
                                "R" + r + "C" + c,
                                Section.CUBE,
                                rgb,
                                new RectMm(10 * c, 10 * r, 10, 10)));
            }
            rows.add(row);
        }
        return new ChartPatches("T", RgbSpace.SRGB, rows);
    }
}
