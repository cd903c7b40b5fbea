package org.printassay.evaluation;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.IntUnaryOperator;
import java.util.function.UnaryOperator;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.printassay.colour.Lab;
import org.printassay.colour.RgbSpace;
import org.printassay.colour.icc.IccProfile;
import org.printassay.colour.icc.IccTransform;
import org.printassay.colour.icc.Intent;
import org.printassay.colour.icc.RgbProfiles;
import org.printassay.metric.Budget;
import org.printassay.problem.Problem;
import org.printassay.promise.PrintRoute;
import org.printassay.promise.PrinterProfile;
import org.printassay.promise.Promise;
import org.printassay.promise.RouteKind;
import org.printassay.promise.SimulatedPrinter;
import org.printassay.reading.Trust;
import org.printassay.reading.WarningCode;
import org.printassay.report.EvaluationJson;
import org.printassay.report.ReportPage;
import org.printassay.report.Reports;

/** Measured simulated prints and a printer's profile, through the whole evaluation. */
class PromiseEvaluationTest {
    @TempDir Path folder = Path.of("");

    private final SimulatedPrinter printer = SimulatedPrinter.glossy();
    private Path profile = Path.of("");

    @BeforeEach
    void writeProfile() throws Exception {
        profile = Files.write(folder.resolve("printer.icc"), printer.profile());
    }

    private Evaluation evaluate(UnaryOperator<double[]> route) throws Exception {
        return evaluate(route, codes(), true);
    }

    private Evaluation evaluate(UnaryOperator<double[]> route, List<int[]> codes, boolean colour)
            throws Exception {
        StringBuilder text = new StringBuilder("CGATS.17\nNUMBER_OF_FIELDS 7\nBEGIN_DATA_FORMAT\n");
        text.append("SAMPLE_ID RGB_R RGB_G RGB_B LAB_L LAB_A LAB_B\nEND_DATA_FORMAT\n");
        StringBuilder rows = new StringBuilder();
        int n = 0;
        for (int[] code : codes) {
            double[] device = {code[0] / 255.0, code[1] / 255.0, code[2] / 255.0};
            Lab lab = printer.print(route.apply(device));
            rows.append(
                    String.format(
                            Locale.ROOT,
                            "S%d %d %d %d %.3f %.3f %.3f%n",
                            ++n,
                            code[0],
                            code[1],
                            code[2],
                            lab.l(),
                            colour ? lab.a() : 0,
                            colour ? lab.b() : 0));
        }
        text.append("NUMBER_OF_SETS ").append(n).append("\nBEGIN_DATA\n");
        text.append(rows).append("END_DATA\n");
        Path file = Files.writeString(folder.resolve("readings.txt"), text);
        return Evaluator.evaluate(request(file, profile)).evaluation();
    }

    private static List<int[]> codes() {
        List<int[]> codes = new ArrayList<>();
        for (int level = 0; level <= 255; level += 15) {
            codes.add(new int[] {level, level, level});
        }
        for (int i = 0; i < 64; i++) {
            codes.add(new int[] {85 * (i / 16), 85 * (i / 4 % 4), 80 * (i % 4)});
        }
        return codes;
    }

    private static EvaluationRequest request(Path file, Path profile) {
        return new EvaluationRequest(
                List.of(file),
                Optional.empty(),
                Optional.empty(),
                PrintDetails.UNKNOWN,
                EvaluationRequest.JUST_VISIBLE,
                RgbSpace.SRGB,
                Optional.empty(),
                Optional.empty(),
                Optional.of(new EvaluationRequest.Aim(profile, PrintRoute.USUAL)));
    }

    @Test
    void aPrintThatKeepsItsPromiseIsSaidTo() throws Exception {
        IccTransform right =
                IccTransform.between(
                        IccProfile.parse(RgbProfiles.of(RgbSpace.SRGB)),
                        IccProfile.parse(printer.profile()),
                        Intent.RELATIVE,
                        true);
        Evaluation e = evaluate(right::convert);
        Promise promise = there(e.promise());
        assertNull(promise.mistake());
        assertTrue(promise.meanDeltaE00() < 0.5, "mean " + promise.meanDeltaE00());
        assertTrue(
                e.findings().stream().anyMatch(f -> f.text().contains("keeps what its profile")));
        String json = EvaluationJson.write(e);
        assertEquals(aim(json), aim(EvaluationJson.write(EvaluationJson.parse("own", json))));
    }

    /** A mean hides a part: mid-tones that print 4 L* darker, all else as promised. */
    @Test
    void aPartThatIsOffIsToldThoughTheMeanIsSmall() throws Exception {
        IntUnaryOperator everywhere = level -> 0;
        assertTrue(route(darker(everywhere)).text().startsWith("The print keeps"));
        Finding mid = route(darker(l -> l > 33 && l < 67 ? 4 : 0));
        assertTrue(mid.text().startsWith("On the whole"), mid.text());
        assertTrue(mid.text().contains("but mid-tones are "), mid.text());
        assertTrue(mid.text().contains("L* too dark"), mid.text());
        Finding dark = route(darker(l -> l < 33 ? 5 : 0));
        assertTrue(dark.text().contains("dark colours"), dark.text());
    }

    /** Few colours that are far off show in the 95th percentile alone (made-up figures). */
    @Test
    void fewColoursThatAreFarOffAreTold() {
        Budget sure =
                new Budget(
                        "aim.meanDeltaE00",
                        "dE00",
                        1.4,
                        List.of(new Budget.Part(Budget.Kind.SYSTEMATIC, 0.05, null)));
        for (double p95 : new double[] {3.9, 4.3}) {
            Promise promise =
                    new Promise(
                            "p.icc",
                            "0",
                            "",
                            PrintRoute.USUAL,
                            List.of(),
                            20,
                            1.4,
                            p95,
                            11,
                            "A1",
                            2.0,
                            null);
            Optional<PromiseZone> part = Optional.of(new PromiseZone("dark colours", 1.9, 3));
            String text = PromiseFinding.finding(promise, part, Trust.INSTRUMENT, sure).text();
            assertEquals(p95 < 4, text.startsWith("The print keeps"), text);
            assertEquals(
                    p95 > 4,
                    text.endsWith("or more, most of all dark colours (3.0 L* too light)."),
                    text);
        }
    }

    private static Finding route(Evaluation e) {
        return e.findings().stream()
                .filter(f -> f.topic().equals("route"))
                .findFirst()
                .orElseThrow();
    }

    /**
     * The right route, but for L* by how much of it is taken off.
     *
     * @param less L* to take off, by L*
     */
    private Evaluation darker(IntUnaryOperator less) throws Exception {
        IccTransform right =
                IccTransform.between(
                        IccProfile.parse(RgbProfiles.of(RgbSpace.SRGB)),
                        IccProfile.parse(printer.profile()),
                        Intent.RELATIVE,
                        true);
        evaluate(right::convert);
        List<String> rows = new ArrayList<>();
        for (String row : Files.readAllLines(folder.resolve("readings.txt"))) {
            String[] cells = row.split(" ");
            if (row.startsWith("S") && cells.length == 7 && row.matches("S[0-9].*")) {
                double l = Double.parseDouble(cells[4]);
                cells[4] = String.valueOf(l - less.applyAsInt((int) l));
            }
            rows.add(String.join(" ", cells));
        }
        Path file = Files.write(folder.resolve("darker.txt"), rows);
        return Evaluator.evaluate(request(file, profile)).evaluation();
    }

    /** The absolute intent ignores it, whatever is said. */
    @Test
    void blackPointCompensationIsNotClaimedOfTheAbsoluteIntent() throws Exception {
        Promise usual = there(evaluate(device -> device).promise());
        for (Intent intent : Intent.values()) {
            Promise promise =
                    new Promise(
                            usual.profile(),
                            usual.sha256(),
                            usual.description(),
                            new PrintRoute(intent, true),
                            usual.patches(),
                            usual.judged(),
                            usual.meanDeltaE00(),
                            usual.p95DeltaE00(),
                            usual.maxDeltaE00(),
                            usual.worst(),
                            usual.promisedFit(),
                            usual.mistake());
            Evaluation e = evaluate(device -> device).toBuilder().promise(promise).build();
            String json = EvaluationJson.write(e);
            assertTrue(
                    json.contains("\"blackPointCompensation\": " + (intent != Intent.ABSOLUTE)),
                    intent::toString);
            assertEquals(aim(json), aim(EvaluationJson.write(EvaluationJson.parse("own", json))));
        }
    }

    @Test
    void unconvertedCodesComeFirst() throws Exception {
        Evaluation e = evaluate(device -> device);
        Promise promise = there(e.promise());
        Promise.Mistake mistake = promise.mistake();
        assertNotNull(mistake);
        assertEquals(RouteKind.UNMANAGED, mistake.kind());
        Finding first = e.findings().get(0);
        assertEquals("route", first.topic());
        assertTrue(first.text().contains("no colour management had been at work"), first.text());
        assertTrue(e.findings().size() <= 7);
        String json = EvaluationJson.write(e);
        assertTrue(json.contains("\"kind\": \"unmanaged\""), json.substring(0, 3000));
        assertEquals(aim(json), aim(EvaluationJson.write(EvaluationJson.parse("own", json))));
        String page = ReportPage.write(e, List.of(), true);
        assertTrue(page.contains("Against the printer"), "section");
        assertTrue(page.contains("dE00"), "figures");
    }

    @Test
    void withoutColourNothingIsCompared() throws Exception {
        Evaluation e = evaluate(device -> device);
        Evaluation few =
                PromiseFinding.beside(
                        Evaluation.builder(e.trust(), e.spaceKey())
                                .fromScan(true)
                                .patches(e.patches().subList(0, 5))
                                .build(),
                        PrinterProfile.read(profile, "printer.icc"),
                        PrintRoute.USUAL);
        assertNull(few.promise());
        assertEquals(WarningCode.AIM_NOT_JUDGED, few.warnings().get(0).code());
    }

    /** A grey scan has no a* and b*: zeros that would look like a broken route. */
    @Test
    void lightnessAloneIsNotComparedWithAProfile() throws Exception {
        Evaluation e = evaluate(device -> device, codes(), false);
        assertNull(e.promise());
        assertTrue(
                e.warnings().stream()
                        .anyMatch(
                                w ->
                                        w.code() == WarningCode.AIM_NOT_JUDGED
                                                && w.text().contains("only lightness")),
                e.warnings()::toString);
        assertTrue(e.findings().stream().noneMatch(f -> f.topic().equals("route")));
        Reports.writeCxf(e, Instant.EPOCH, folder);
        assertFalse(Files.exists(folder.resolve("readings.cxf")));
    }

    @Test
    void withoutCode255TheRouteIsNotJudged() throws Exception {
        List<int[]> codes = codes();
        codes.removeIf(code -> code[0] == 255 && code[1] == 255 && code[2] == 255);
        Evaluation e = evaluate(device -> device, codes, true);
        assertNull(there(e.promise()).promisedFit());
        assertTrue(
                e.findings().get(0).text().contains("code 255 was not read"),
                e.findings()::toString);
        String json = EvaluationJson.write(e);
        assertEquals(aim(json), aim(EvaluationJson.write(EvaluationJson.parse("own", json))));
        assertTrue(ReportPage.write(e, List.of(), true).contains("not judged"));
    }

    /**
     * Between the limit and the limit with its uncertainty nothing can be told (made-up figures).
     */
    @Test
    void aMeanNearTheLimitIsNotCalledFar() {
        Budget half =
                new Budget(
                        "aim.meanDeltaE00",
                        "dE00",
                        3,
                        List.of(new Budget.Part(Budget.Kind.SYSTEMATIC, 0.5 / 1.96, null)));
        for (double mean : new double[] {2.9, 3.4, 3.6}) {
            Promise promise =
                    new Promise(
                            "p.icc",
                            "0",
                            "",
                            PrintRoute.USUAL,
                            List.of(),
                            20,
                            mean,
                            5,
                            6,
                            "A1",
                            2.0,
                            null);
            String text =
                    PromiseFinding.finding(promise, Optional.empty(), Trust.PROFILED_SCAN, half)
                            .text();
            String wanted = mean < 3 ? "keeps" : mean < 3.5 ? "cannot be told" : "is far from";
            assertTrue(text.contains(wanted), text);
        }
    }

    @Test
    void uncertaintyOfTheMeanIsThatOfTheTrust() throws Exception {
        Evaluation e = evaluate(device -> device);
        Budget budget = PromiseBudget.of(e, there(e.promise()));
        assertEquals(there(e.promise()).meanDeltaE00(), budget.value(), 1e-9);
        // 0.3 each in L*, a* and b* cannot move a mean by more than their root sum of squares.
        assertTrue(budget.halfWidth() > 0 && budget.halfWidth() < 0.3 * Math.sqrt(3) * 1.5);
    }

    /** A profile whose white lacks blue cannot be used, and says so. */
    @Test
    void aProfileWhoseWhiteHasAZeroIsRefused() throws Exception {
        byte[] bytes = printer.profile();
        ByteBuffer buffer = ByteBuffer.wrap(bytes);
        for (int i = 0; i < buffer.getInt(128); i++) {
            int entry = 132 + 12 * i;
            if (new String(bytes, entry, 4, StandardCharsets.US_ASCII).equals("wtpt")) {
                buffer.putInt(buffer.getInt(entry + 4) + 16, 0);
            }
        }
        Files.write(profile, bytes);
        Problem problem = assertThrows(Problem.class, () -> evaluate(device -> device));
        assertEquals(Problem.Kind.INPUT, problem.kind());
    }

    @Test
    void aWrongProfileIsToldBeforeTheWork() throws Exception {
        Path screen = Files.write(folder.resolve("screen.icc"), RgbProfiles.of(RgbSpace.SRGB));
        Problem e =
                assertThrows(
                        Problem.class,
                        () -> Evaluator.evaluate(request(folder.resolve("none.txt"), screen)));
        assertTrue(String.valueOf(e.getMessage()).startsWith("screen.icc: not a printer's"));
    }

    /** The part of the file that is ours here. */
    private static String aim(String json) {
        return json.substring(json.indexOf("\"aim\""), json.indexOf("\"warnings\""));
    }

    private static Promise there(@Nullable Promise promise) {
        assertNotNull(promise);
        return promise;
    }
}
