package org.printassay.evaluation;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.printassay.chart.Chart;
import org.printassay.chart.ChartFile;
import org.printassay.chart.ChartReference;
import org.printassay.chart.Charts;
import org.printassay.chart.ReadingOrder;
import org.printassay.colour.Density;
import org.printassay.colour.Lab;
import org.printassay.colour.Rgb8;
import org.printassay.colour.RgbSpace;
import org.printassay.measurement.MeasurementReader;
import org.printassay.metric.Budget;
import org.printassay.metric.Derived;
import org.printassay.problem.Problem;
import org.printassay.reading.Trust;
import org.printassay.reading.WarningCode;
import org.printassay.recipe.Margins;
import org.printassay.recipe.PageSize;
import org.printassay.recipe.Recipe;
import org.printassay.report.EvaluationJson;
import org.printassay.report.ReadingsText;
import org.printassay.sheet.Patch;

class MeasurementEvaluationTest {
    @TempDir Path dir;

    @Test
    void aCalibrationIsForScansOnly() throws Exception {
        Path file = Files.writeString(dir.resolve("readings.txt"), "CGATS.17\n");
        Problem problem =
                assertThrows(
                        Problem.class,
                        () ->
                                Evaluator.evaluate(
                                        new EvaluationRequest(
                                                List.of(file),
                                                Optional.empty(),
                                                Optional.empty(),
                                                PrintDetails.UNKNOWN,
                                                EvaluationRequest.JUST_VISIBLE,
                                                RgbSpace.SRGB,
                                                Optional.of(dir.resolve("calibration.json")))));
        assertEquals(Problem.Kind.USAGE, problem.kind());
    }

    @Test
    void aScannersProfileBesideAMeasurementIsNotPassedOver() throws Exception {
        Path file = Files.writeString(dir.resolve("readings.txt"), "CGATS.17\n");
        Problem problem =
                assertThrows(
                        Problem.class,
                        () ->
                                Evaluator.evaluate(
                                        new EvaluationRequest(
                                                List.of(file),
                                                Optional.empty(),
                                                Optional.of(dir.resolve("scanner.icc")),
                                                PrintDetails.UNKNOWN,
                                                EvaluationRequest.JUST_VISIBLE,
                                                RgbSpace.SRGB)));
        assertEquals(Problem.Kind.USAGE, problem.kind());
    }

    /** A picture of a format that is not read must not be told what a measurement needs. */
    @Test
    void picturesThatAreNotReadAreNotTakenForMeasurements() throws Exception {
        Path picture =
                Files.write(
                        dir.resolve("scan.heic"),
                        "\0\0\0\30ftypheic\0\0\0\0mif1heic".getBytes(StandardCharsets.ISO_8859_1));
        refusedAsPicture(picture, "is a HEIC picture, which is not read. Save the scan as TIFF");
        refusedAsPicture(Files.write(dir.resolve("empty.tif"), new byte[0]), "is empty");
    }

    private static void refusedAsPicture(Path file, String words) {
        Problem problem =
                assertThrows(Problem.class, () -> Evaluator.evaluate(EvaluationRequest.of(file)));
        assertEquals(Problem.Kind.INPUT, problem.kind());
        assertTrue(problem.getMessage().contains(words), problem.getMessage());
    }

    @Test
    void aMeasurementInUtf16IsReadAsBefore() throws Exception {
        Path sample =
                Path.of(
                        Objects.requireNonNull(
                                        getClass()
                                                .getResource(
                                                        "/published/cgats-rgb-spectral-sample.txt"))
                                .toURI());
        for (Charset charset : List.of(StandardCharsets.UTF_16, StandardCharsets.UTF_16LE)) {
            Path wide =
                    Files.write(
                            dir.resolve(charset + ".txt"),
                            Files.readString(sample).getBytes(charset));
            assertEquals(
                    24,
                    Evaluator.evaluate(EvaluationRequest.of(wide)).evaluation().patches().size(),
                    charset + ", with a mark or without");
        }
    }

    private static List<String> codes(Evaluation evaluation) {
        List<String> codes = new ArrayList<>();
        evaluation.warnings().forEach(w -> codes.add(w.code().key()));
        return codes;
    }

    /**
     * 24 patches of a real RGB print, measured with a 45/0 instrument (published sample, source in
     * the file's header): evaluates as far as its patches allow and says what is missing.
     */
    @Test
    void thePublishedRgbSampleEvaluatesAsFarAsItsPatchesAllow() throws Exception {
        Path file =
                Path.of(
                        Objects.requireNonNull(
                                        getClass()
                                                .getResource(
                                                        "/published/cgats-rgb-spectral-sample.txt"))
                                .toURI());
        Evaluation e = Evaluator.evaluate(EvaluationRequest.of(file)).evaluation();
        assertEquals(Trust.INSTRUMENT, e.trust());
        assertEquals(24, e.patches().size());
        // The instrument's own CIELAB of code 255 and code 0; recomputed from spectra within 0.15.
        var white = Objects.requireNonNull(Objects.requireNonNull(e.white()).lab());
        assertEquals(94.71, white.l(), 0.15);
        assertEquals(-0.72, white.a(), 0.15);
        assertEquals(-0.91, white.b(), 0.15);
        assertEquals(
                17.64, Objects.requireNonNull(Objects.requireNonNull(e.black()).lab()).l(), 0.15);
        assertNull(e.shadows());
        assertNull(e.highlights());
        List<String> codes = codes(e);
        for (String missing :
                List.of("shadows-not-judged", "highlights-not-judged", "no-repeats")) {
            assertTrue(codes.contains(missing), missing);
        }
    }

    /** INSTRUMENTATION of the text form (ISO 28178) names what measured. */
    @Test
    void theInstrumentThatAFileNamesIsKept() throws Exception {
        Path sample =
                Path.of(
                        Objects.requireNonNull(
                                        getClass()
                                                .getResource(
                                                        "/published/cgats-rgb-spectral-sample.txt"))
                                .toURI());
        String text = Files.readString(sample);
        Path named =
                Files.writeString(
                        dir.resolve("named.txt"),
                        text.replace("CREATED\t", "INSTRUMENTATION\t\"Instrument  A\"\nCREATED\t"));
        Evaluation e = Evaluator.evaluate(EvaluationRequest.of(named)).evaluation();
        assertEquals("Instrument A", Objects.requireNonNull(e.measurement()).instrument());
        Evaluation back = EvaluationJson.parse("evaluation.json", EvaluationJson.write(e));
        assertEquals("Instrument A", Objects.requireNonNull(back.measurement()).instrument());
        Evaluation untold = Evaluator.evaluate(EvaluationRequest.of(sample)).evaluation();
        assertNull(Objects.requireNonNull(untold.measurement()).instrument());
    }

    /** It holds aims: a likely slip, for the file looks like a measurement. */
    @Test
    void aChartsOwnReferenceIsNoMeasurement() throws Exception {
        Chart chart =
                Charts.create(Recipe.paper(PageSize.parse("A4"), Margins.all(10), RgbSpace.SRGB));
        Path text = Files.writeString(dir.resolve("chart.txt"), ChartReference.write(chart));
        Problem problem =
                assertThrows(Problem.class, () -> Evaluator.evaluate(EvaluationRequest.of(text)));
        assertEquals(Problem.Kind.INPUT, problem.kind());
        assertTrue(problem.getMessage().contains("own reference file"), problem.getMessage());
    }

    /** Instruments' programs copy its keywords; a measurement under them is one all the same. */
    @Test
    void aMeasurementUnderTheKeywordsOfTheReferenceIsRead() throws Exception {
        Path text =
                Files.writeString(
                        dir.resolve("measured.txt"),
                        """
                        CGATS.17
                        CHART_ID "AAAAAA"
                        RGB_ENCODING "%s"
                        NUMBER_OF_FIELDS 7
                        BEGIN_DATA_FORMAT
                        SAMPLE_ID RGB_R RGB_G RGB_B LAB_L LAB_A LAB_B
                        END_DATA_FORMAT
                        NUMBER_OF_SETS 2
                        BEGIN_DATA
                        A1 0 0 0 12.1 0.3 0.2
                        A2 255 255 255 96.2 0.1 -1.0
                        END_DATA
                        """
                                .formatted(RgbSpace.SRGB.title()));
        assertEquals(
                2, Evaluator.evaluate(EvaluationRequest.of(text)).evaluation().patches().size());
    }

    /** The colours that codes stand for: a perfect print of a chart has no fault. */
    @Test
    void aPerfectPrintEvaluatesToItsAim() throws Exception {
        Chart chart =
                Charts.create(Recipe.paper(PageSize.parse("A4"), Margins.all(10), RgbSpace.SRGB));
        Path text =
                Files.writeString(
                        dir.resolve("perfect.txt"),
                        ChartReference.write(chart).replace("RGB_ENCODING", "ENCODING_WAS"));
        Path json = Files.writeString(dir.resolve("chart.json"), ChartFile.write(chart));
        EvaluationRequest request =
                new EvaluationRequest(
                        List.of(text),
                        Optional.of(json),
                        Optional.empty(),
                        PrintDetails.UNKNOWN,
                        EvaluationRequest.JUST_VISIBLE,
                        RgbSpace.SRGB);
        Evaluation e = Evaluator.evaluate(request).evaluation();
        assertEquals(chart.id(), e.chartId());
        assertEquals(0, Objects.requireNonNull(e.tone()).rmsDeltaL(), 0.02);
        var shadows = Objects.requireNonNull(e.shadows());
        assertEquals(2, shadows.best(), "an ideal print shows level 2 at 0.5 L*");
        assertNotNull(e.colours());
        assertFalse(e.fromScan());
    }

    @Test
    void scansAndMeasurementsAreNotMixed() throws Exception {
        Path text = Files.writeString(dir.resolve("a.txt"), "CGATS.17\n");
        Path scan =
                Files.write(
                        dir.resolve("b.png"),
                        new byte[] {(byte) 137, 80, 78, 71, 13, 10, 26, 10, 0, 0, 0, 0});
        Problem problem =
                assertThrows(
                        Problem.class, () -> Evaluator.evaluate(EvaluationRequest.of(text, scan)));
        assertEquals(Problem.Kind.USAGE, problem.kind());
    }

    private String sample() throws Exception {
        return new String(
                Objects.requireNonNull(
                                getClass()
                                        .getResourceAsStream(
                                                "/published/cgats-rgb-spectral-sample.txt"))
                        .readAllBytes(),
                StandardCharsets.UTF_8);
    }

    private Path under(String condition, String backing) throws Exception {
        return Files.writeString(
                dir.resolve(condition + backing + ".txt"),
                "MEASUREMENT_CONDITION\t\""
                        + condition
                        + "\"\n"
                        + (backing.isEmpty() ? "" : "SAMPLE_BACKING\t\"" + backing + "\"\n")
                        + sample());
    }

    /** Black behind a sheet makes paper bluer or yellower, which is no brightener. */
    @Test
    void theBrightenerIsNotTakenAcrossBackings() throws Exception {
        Path white = under("M1", "White");
        Path black = under("M2", "Black");
        MeasurementSummary m =
                Objects.requireNonNull(
                        Evaluator.evaluate(EvaluationRequest.of(white, black))
                                .evaluation()
                                .measurement());
        assertNull(m.brightener());
        assertTrue(
                m.notes().stream()
                        .anyMatch(n -> n.contains("M1 with backing white, M2 with backing black")),
                m.notes()::toString);
        MeasurementSummary unsaid =
                Objects.requireNonNull(
                        Evaluator.evaluate(EvaluationRequest.of(under("M1", ""), black))
                                .evaluation()
                                .measurement());
        assertNull(unsaid.brightener());
        // The pair of one backing among three sets.
        MeasurementSummary three =
                Objects.requireNonNull(
                        Evaluator.evaluate(EvaluationRequest.of(white, black, under("M2", "White")))
                                .evaluation()
                                .measurement());
        assertEquals(0, Objects.requireNonNull(three.brightener()), 1e-9);
    }

    /** One black has one visual density: in the headline, among the full colours, in its patch. */
    @Test
    void theDensityOfBlackIsThatOfItsSpectrumEverywhere() throws Exception {
        // Black that reflects red: its luminance and its ISO 5-3 density differ (simulated).
        List<String> rows = new ArrayList<>();
        for (String row : sample().lines().toList()) {
            String[] cells = row.split("\t");
            if (cells.length > 30 && row.contains("\t0\t0\t0\t")) {
                int changed = 0;
                for (int i = cells.length - 12; i < cells.length; i++) {
                    if (cells[i].matches("0\\.[0-9]{5,}")) {
                        cells[i] = "0.2";
                        changed++;
                    }
                }
                assertTrue(changed > 4, "bands of long wavelengths");
                row = String.join("\t", cells);
            }
            rows.add(row);
        }
        Path file = Files.write(dir.resolve("reddish.txt"), rows);
        Evaluation e = Evaluator.evaluate(EvaluationRequest.of(file)).evaluation();
        double headline = Objects.requireNonNull(Objects.requireNonNull(e.black()).density());
        double solid =
                Objects.requireNonNull(e.measurement()).solids().stream()
                        .filter(s -> s.name().equals("black"))
                        .findFirst()
                        .orElseThrow()
                        .visual();
        assertEquals(solid, headline, 1e-9);
        double patch =
                e.patches().stream()
                        .filter(r -> r.rgb().equals(Rgb8.grey(0)))
                        .mapToDouble(r -> Objects.requireNonNull(r.density()))
                        .findFirst()
                        .orElseThrow();
        assertEquals(patch, headline, 1e-9);
        double ofLightness = Density.ofLightness(Objects.requireNonNull(e.black().lab()).l());
        assertTrue(Math.abs(ofLightness - headline) > 0.005, "the two differ: " + ofLightness);
        Budget budget =
                e.uncertainty().stream()
                        .filter(b -> b.figure().equals("black.density"))
                        .findFirst()
                        .orElseThrow();
        assertEquals(headline, budget.value(), 1e-9);
        Evaluation back = EvaluationJson.parse("e", EvaluationJson.write(e));
        assertEquals(
                headline,
                Objects.requireNonNull(Objects.requireNonNull(back.black()).density()),
                5e-4);
    }

    /** Condition, backing and figures of spectra; M1 and M2 of one print give the OBA index. */
    @Test
    void conditionsAndFiguresOfSpectra() throws Exception {
        String text =
                new String(
                        Objects.requireNonNull(
                                        getClass()
                                                .getResourceAsStream(
                                                        "/published/cgats-rgb-spectral-sample.txt"))
                                .readAllBytes(),
                        StandardCharsets.UTF_8);
        String m1 = "MEASUREMENT_CONDITION\t\"M1\"\nSAMPLE_BACKING\t\"White\"\n" + text;
        // Ultraviolet cut away: less blue (simulated).
        String m2 =
                m1.replace("\"M1\"", "\"M2\"")
                        .replace("\t0.8845099\t0.8943043\t", "\t0.8645099\t0.8843043\t");
        Path one = Files.writeString(dir.resolve("m1.txt"), m1);
        Path two = Files.writeString(dir.resolve("m2.txt"), m2);
        Evaluation e = Evaluator.evaluate(EvaluationRequest.of(two, one)).evaluation();
        MeasurementSummary m = Objects.requireNonNull(e.measurement());
        assertEquals("M1", m.condition());
        assertEquals("white", m.backing());
        assertEquals(1, m.repeats());
        // By hand with E308 Table 5: Z falls by 0.02 * 12.309 + 0.01 * 14.647, Y by 0.006.
        assertEquals(0.34, Objects.requireNonNull(m.brightener()), 0.01);
        assertEquals(8, m.solids().size());
        MeasurementSummary.Solid yellow =
                m.solids().stream().filter(s -> s.name().equals("yellow")).findFirst().get();
        assertEquals(new Rgb8(255, 255, 0), yellow.rgb());
        assertTrue(yellow.statusA().blue() > 1 && yellow.statusA().red() < 0.15);
        Derived derived = Objects.requireNonNull(Derived.of(e.white(), e.black(), e.paperLight()));
        // Y of the file's own L*: 94.71 and 17.64 are 87.0 and 2.43 %, 5.16 stops apart.
        assertEquals(5.16, derived.contrastStops(), 0.03);
        assertTrue(derived.stopsWithFlare() < 4.8);
        assertTrue(derived.paperWords().startsWith("slightly cool under D50"));
        Evaluation back = EvaluationJson.parse("e", EvaluationJson.write(e));
        assertEquals(EvaluationJson.write(e), EvaluationJson.write(back));
        // What is written can be read again without losing how it was measured.
        byte[] readings = ReadingsText.write(e).getBytes(StandardCharsets.UTF_8);
        assertEquals(
                "M1, backing white",
                MeasurementReader.read("readings.txt", readings).conditions().words());
        assertEquals(m.solids().size(), Objects.requireNonNull(back.measurement()).solids().size());
    }

    @Test
    void repeatsOfOneConditionAreAveragedAndOthersRefused() throws Exception {
        String rows =
                """
                BEGIN_DATA_FORMAT
                SAMPLE_ID RGB_R RGB_G RGB_B LAB_L LAB_A LAB_B
                END_DATA_FORMAT
                BEGIN_DATA
                w 255 255 255 95 0 0
                k 0 0 0 10 0 0
                END_DATA
                """;
        Path one = Files.writeString(dir.resolve("one.txt"), rows);
        Path two = Files.writeString(dir.resolve("two.txt"), rows.replace(" 95 ", " 96 "));
        Evaluation e = Evaluator.evaluate(EvaluationRequest.of(one, two)).evaluation();
        assertEquals(95.5, Objects.requireNonNull(e.patches().get(0).lab()).l(), 0.01);
        assertEquals(0.5, Objects.requireNonNull(e.patches().get(0).standardError()).l(), 1e-9);
        assertEquals(2, e.files().size());
        assertEquals(2, Objects.requireNonNull(e.measurement()).repeats());
        Path m0 = Files.writeString(dir.resolve("m0.txt"), "CONDITION \"M0\"\n" + rows);
        Problem problem =
                assertThrows(
                        Problem.class, () -> Evaluator.evaluate(EvaluationRequest.of(one, m0)));
        assertEquals(Problem.Kind.INPUT, problem.kind());
        assertTrue(problem.toString().contains("never mixed"), problem::toString);
    }

    private static final String ROWS =
            """
            BEGIN_DATA_FORMAT
            SAMPLE_ID RGB_R RGB_G RGB_B LAB_L LAB_A LAB_B
            END_DATA_FORMAT
            BEGIN_DATA
            w 255 255 255 95 0 0
            k 0 0 0 10 0 0
            END_DATA
            """;

    private Problem refused(Path... files) {
        return assertThrows(Problem.class, () -> Evaluator.evaluate(EvaluationRequest.of(files)));
    }

    /** By hand: variances 0.5 of paper and 0.02 of black, pooled 0.26, of a mean of two 0.13. */
    @Test
    void repeatsEnterTheUncertaintyWhereThereAreNoTwins() throws Exception {
        Path one = Files.writeString(dir.resolve("one.txt"), ROWS);
        Path two =
                Files.writeString(
                        dir.resolve("two.txt"),
                        ROWS.replace(" 95 ", " 96 ").replace(" 10 ", " 10.2 "));
        Evaluation e = Evaluator.evaluate(EvaluationRequest.of(one, two)).evaluation();
        Budget white =
                e.uncertainty().stream()
                        .filter(b -> b.figure().equals("white.lab.l"))
                        .findFirst()
                        .orElseThrow();
        Budget.Part random = white.parts().get(0);
        assertEquals(Budget.Kind.RANDOM, random.kind());
        assertEquals(Math.sqrt(0.13), random.standard(), 1e-9);
        assertEquals(2, random.freedom());
        assertTrue(
                e.warnings().stream()
                        .anyMatch(
                                w ->
                                        w.code() == WarningCode.NO_REPEATS
                                                && w.text().contains("how well the instrument")),
                e.warnings()::toString);
    }

    @Test
    void oneMeasurementNamedTwiceIsNoRepeat() throws Exception {
        Path one = Files.writeString(dir.resolve("one.txt"), ROWS);
        Path copy = Files.writeString(dir.resolve("copy.txt"), ROWS);
        Problem problem = refused(one, copy);
        assertEquals(Problem.Kind.USAGE, problem.kind());
        assertTrue(problem.toString().contains("same measurement"), problem::toString);
    }

    @Test
    void paperThatReadsAsBlackIsRefused() throws Exception {
        Problem problem =
                refused(Files.writeString(dir.resolve("one.txt"), ROWS.replace(" 95 ", " 0 ")));
        assertEquals(Problem.Kind.INPUT, problem.kind());
        assertTrue(problem.toString().contains("code 255 reads as black"), problem::toString);
    }

    /** A scan's own readings come back with the trust of the scan, never as an instrument's. */
    @Test
    void readingsOfAScanAreNoInstruments() throws Exception {
        for (Trust trust : Trust.values()) {
            String text = "MEASUREMENT_SOURCE \"" + trust.key() + "\"\n" + ROWS;
            Path file = Files.writeString(dir.resolve(trust.key() + ".txt"), text);
            if (trust.absolute()) {
                Evaluation read = Evaluator.evaluate(EvaluationRequest.of(file)).evaluation();
                assertEquals(trust, read.trust());
            } else {
                Problem problem = refused(file);
                assertEquals(Problem.Kind.INPUT, problem.kind());
                assertTrue(problem.toString().contains("from a scan"), problem::toString);
            }
            if (trust != Trust.INSTRUMENT) {
                Problem problem =
                        assertThrows(
                                Problem.class, () -> InstrumentFiles.read(file, Optional.empty()));
                assertTrue(problem.toString().contains("from a scan"), problem::toString);
            }
        }
        String header = "ORIGINATOR \"printassay\"\nDESCRIPTOR \"Readings (profiled scan)\"\n";
        Path other = Files.writeString(dir.resolve("other.txt"), header + ROWS);
        assertEquals(
                Trust.PROFILED_SCAN,
                Evaluator.evaluate(EvaluationRequest.of(other)).evaluation().trust());
    }

    /** L* a* b* typed in reading order, without names or codes (simulated: the chart's own aim). */
    @Test
    void valuesTypedInReadingOrder() throws Exception {
        Chart chart =
                Charts.create(Recipe.paper(PageSize.parse("A4"), Margins.all(10), RgbSpace.SRGB));
        Path json = Files.writeString(dir.resolve("chart.json"), ChartFile.write(chart));
        StringBuilder typed = new StringBuilder();
        for (Patch patch : ReadingOrder.of(chart).order()) {
            Lab lab = RgbSpace.SRGB.toLab(patch.rgb());
            typed.append(String.format(Locale.ROOT, "%.2f %.2f %.2f%n", lab.l(), lab.a(), lab.b()));
        }
        Path text = Files.writeString(dir.resolve("typed.txt"), typed);
        EvaluationRequest request =
                new EvaluationRequest(
                        List.of(text),
                        Optional.of(json),
                        Optional.empty(),
                        PrintDetails.UNKNOWN,
                        EvaluationRequest.JUST_VISIBLE,
                        RgbSpace.SRGB);
        Evaluation e = Evaluator.evaluate(request).evaluation();
        assertEquals(ReadingOrder.of(chart).order().size(), e.patches().size());
        assertNotNull(e.patches().get(0).centre());
        assertEquals(0, Objects.requireNonNull(e.tone()).rmsDeltaL(), 0.02);
    }
}
