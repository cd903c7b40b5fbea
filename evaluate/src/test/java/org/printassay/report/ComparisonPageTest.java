package org.printassay.report;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.printassay.compare.Comparison;
import org.printassay.compare.Figure;
import org.printassay.compare.KnownSpread;
import org.printassay.compare.NamedPrint;
import org.printassay.compare.PrintSpread;
import org.printassay.compare.Question;
import org.printassay.compare.Ranking;
import org.printassay.evaluation.Evaluation;
import org.printassay.evaluation.PrintDetails;
import org.printassay.evaluation.SourceFile;
import org.printassay.json.CheckedJson;
import org.printassay.problem.Problem;
import org.printassay.reading.Trust;
import org.printassay.report.paged.PageFormat;

/** What a comparison is written as, from simulated evaluations made by hand. */
class ComparisonPageTest {
    private static final String HOSTILE = "=cmd()|'<script>alert(1)</script>\"&\u202e";

    @TempDir Path folder;

    /** The same simulated print under another name, from another file, measured. */
    static NamedPrint print(Evaluation e, String paper, int file) {
        return new NamedPrint(
                "print-" + file,
                e.toBuilder()
                        .details(new PrintDetails(paper, "Simulated printer", "a route", 24.0))
                        .trust(Trust.PROFILED_SCAN)
                        .files(List.of(new SourceFile("scan.tif", String.format("%064x", file))))
                        .calibration(null)
                        .measurement(null)
                        .promise(null)
                        .build());
    }

    static Comparison comparison(int sides, int printsEach) throws Problem {
        List<Evaluation> kinds =
                List.of(
                        SampleEvaluations.matt(),
                        SampleEvaluations.gloss(),
                        SampleEvaluations.satin());
        List<NamedPrint> prints = new ArrayList<>();
        for (int i = 0; i < sides * printsEach; i++) {
            int side = i / printsEach;
            String name = "Simulated paper " + (char) ('A' + side) + ", made by hand";
            prints.add(print(kinds.get(side % kinds.size()), name, i));
        }
        return Comparison.of(prints, KnownSpread.NONE, "");
    }

    static String page(int sides) {
        try {
            Comparison comparison = comparison(sides, 1);
            String first = comparison.sides().get(0).name();
            return ComparisonPage.write(
                    comparison,
                    new ComparisonPage.Showing(
                            Optional.empty(), Map.of(first, "a/report.html"), true));
        } catch (Problem e) {
            throw new IllegalStateException(e);
        }
    }

    @Test
    void theQuestionThatWasAskedComesFirst() throws Exception {
        Comparison c = comparison(3, 1);
        String usual = ComparisonPage.write(c, ComparisonPage.Showing.USUAL);
        assertTrue(usual.indexOf("q-dark-pictures") < usual.indexOf("q-skin"));
        String skin =
                ComparisonPage.write(
                        c, new ComparisonPage.Showing(Optional.of(Question.SKIN), Map.of(), false));
        assertTrue(skin.indexOf("q-skin") < skin.indexOf("q-dark-pictures"));
        for (Question question : Question.values()) {
            assertTrue(skin.contains("q-" + question.key()), question.key());
        }
    }

    @Test
    void onlyRepeatsMakeItAComparisonOfPapers() throws Exception {
        String one = ComparisonPage.write(comparison(2, 1), ComparisonPage.Showing.USUAL);
        assertTrue(one.contains("<h1>Two prints side by side</h1>"));
        assertFalse(one.contains("these papers"), "says more than two prints can");
        String several = ComparisonPage.write(comparison(2, 2), ComparisonPage.Showing.USUAL);
        assertTrue(several.contains("<h1>Two papers side by side</h1>"));
    }

    @Test
    void sixPapersHaveAPlotEach() {
        String page = page(6);
        for (char paper = 'A'; paper <= 'F'; paper++) {
            assertTrue(page.contains((paper - 'A' + 1) + "  Simulated paper " + paper), page);
        }
        assertTrue(page.contains("Strong line: the one named above it"));
        assertFalse(page(3).contains("Strong line"), "three are drawn over each other");
    }

    @Test
    void namesDoNoHarm() throws Exception {
        Comparison c =
                Comparison.of(
                        List.of(
                                print(SampleEvaluations.matt(), HOSTILE, 1),
                                print(SampleEvaluations.gloss(), "B", 2)),
                        KnownSpread.NONE,
                        "");
        String page = ComparisonPage.write(c, ComparisonPage.Showing.USUAL);
        assertFalse(page.contains("<script"), "markup from a name");
        assertFalse(page.contains("\u202e"), "text turned around");
        for (String line : ComparisonCsv.write(c).split("\r\n", -1)) {
            for (String cell : line.split(",", -1)) {
                assertFalse(cell.startsWith("="), "a formula: " + line);
            }
        }
        CheckedJson.parse(
                "comparison.json",
                ComparisonJson.write(c).getBytes(StandardCharsets.UTF_8),
                "comparison",
                1);
    }

    @Test
    void theFileIsValidAndHoldsEveryDifference() throws Exception {
        Comparison c = comparison(3, 2);
        String text = ComparisonJson.write(c);
        assertEquals(text, ComparisonJson.write(c));
        JsonNode root =
                CheckedJson.parse(
                        "comparison.json",
                        text.getBytes(StandardCharsets.UTF_8),
                        "comparison",
                        ComparisonJson.SCHEMA_VERSION);
        assertEquals(3, root.path("pairs").size());
        JsonNode first = root.path("pairs").get(0).path("differences").get(0);
        double difference = first.path("difference").asDouble();
        assertEquals(
                first.path("other").asDouble() - first.path("one").asDouble(), difference, 2e-4);
        assertEquals(
                difference,
                (first.path("low").asDouble() + first.path("high").asDouble()) / 2,
                2e-4);
    }

    @Test
    void whoSharesAPlaceIsNotCalledAlikeWhereTwoDiffer() throws Exception {
        Comparison c = comparison(3, 1);
        Ranking chain =
                new Ranking(
                        Question.SKIN,
                        List.of(),
                        List.of(),
                        List.of(
                                new Ranking.Place(1, 0, null),
                                new Ranking.Place(1, 1, null),
                                new Ranking.Place(1, 2, null)),
                        List.of(new Ranking.Told(0, 2, Figure.SKIN_MEAN)));
        String places = ComparisonWords.places(c, chain);
        assertTrue(
                places.endsWith("in one place, though Simulated paper A before Simulated paper C."),
                places);
        assertFalse(places.contains("alike"), places);
        assertEquals(
                "behind Simulated paper A by skin tones off their aim",
                ComparisonRanks.of(c, chain).places().get(2).why());
    }

    @Test
    void theSpreadOfRepeatsCanBeGivenToAnotherComparison() throws Exception {
        Path file = folder.resolve("comparison.json");
        Files.writeString(file, ComparisonJson.write(comparison(2, 3)));
        PrintSpread spread = ComparisonSpread.read(file).spread();
        assertEquals(4, spread.freedom(Figure.BLACK_L).orElseThrow());
        Comparison seen = comparison(2, 3);
        Comparison given =
                Comparison.of(
                        seen.sides().stream()
                                .flatMap(s -> s.prints().stream())
                                .map(e -> new NamedPrint("x", e))
                                .toList(),
                        new KnownSpread(
                                new PrintSpread(
                                        Map.of(Figure.BLACK_L, 5.0), Map.of(Figure.BLACK_L, 9)),
                                "here",
                                List.of()),
                        "");
        Files.writeString(file, ComparisonJson.write(given));
        assertEquals(
                spread,
                ComparisonSpread.read(file).spread(),
                "what was given is not handed on as seen");
        assertEquals(6, ComparisonSpread.read(file).repeats().size());
        assertEquals("srgb", ComparisonSpread.read(file).manner().space());
        Files.writeString(file, ComparisonJson.write(comparison(2, 1)));
        Problem none = assertThrows(Problem.class, () -> ComparisonSpread.read(file));
        assertEquals(Problem.Kind.INPUT, none.kind());
    }

    /** Read back by PDFBox: names, findings and the lines of the table are there as text. */
    @Test
    void thePagesHoldTheSameWords() throws Exception {
        Comparison c = comparison(6, 1);
        ComparisonReports.writeAll(c, ComparisonPage.Showing.USUAL, PageFormat.LETTER, folder);
        try (PDDocument pdf = Loader.loadPDF(folder.resolve("comparison.pdf").toFile())) {
            String text = new PDFTextStripper().getText(pdf).replaceAll("\\s+", " ");
            assertTrue(text.contains("Six prints side by side"), text);
            for (char paper = 'A'; paper <= 'F'; paper++) {
                assertTrue(text.contains("Simulated paper " + paper), text);
            }
            assertTrue(text.contains("For black and white"), text);
            assertTrue(text.contains("Gamut volume"), text);
            assertEquals(612, pdf.getPage(0).getMediaBox().getWidth(), 0.1);
        }
        byte[] first = Files.readAllBytes(folder.resolve("comparison.pdf"));
        ComparisonReports.writeAll(c, ComparisonPage.Showing.USUAL, PageFormat.LETTER, folder);
        assertArrayEquals(first, Files.readAllBytes(folder.resolve("comparison.pdf")));
    }

    @Test
    void theTableHoldsALineForEachFigureOfEachTwo() throws Exception {
        Comparison c = comparison(3, 1);
        int figures = c.pairs().all().stream().mapToInt(p -> p.figures().size()).sum();
        String[] lines = ComparisonCsv.write(c).split("\r\n", -1);
        assertEquals(figures + 2, lines.length, "head, figures, nothing after the last line");
        int commas = lines[0].replaceAll("[^,]", "").length();
        for (int i = 1; i <= figures; i++) {
            String bare = lines[i].replaceAll("\"[^\"]*\"", "");
            assertEquals(commas, bare.replaceAll("[^,]", "").length(), lines[i]);
        }
    }
}
