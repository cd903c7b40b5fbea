package org.printassay.evaluation;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
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
import org.printassay.problem.Problem;
import org.printassay.promise.PrintRoute;
import org.printassay.promise.PrinterProfile;
import org.printassay.promise.Promise;
import org.printassay.promise.RouteKind;
import org.printassay.promise.SimulatedPrinter;
import org.printassay.reading.WarningCode;
import org.printassay.report.EvaluationJson;
import org.printassay.report.ReportPage;

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
        StringBuilder text = new StringBuilder("CGATS.17\nNUMBER_OF_FIELDS 7\nBEGIN_DATA_FORMAT\n");
        text.append("SAMPLE_ID RGB_R RGB_G RGB_B LAB_L LAB_A LAB_B\nEND_DATA_FORMAT\n");
        StringBuilder rows = new StringBuilder();
        int n = 0;
        for (int[] code : codes()) {
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
                            lab.a(),
                            lab.b()));
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
                        new Evaluation(
                                null,
                                List.of(),
                                null,
                                PrintDetails.UNKNOWN,
                                true,
                                e.trust(),
                                e.spaceKey(),
                                List.of(),
                                List.of(),
                                null,
                                null,
                                e.patches().subList(0, 5),
                                null,
                                null,
                                null,
                                null,
                                null,
                                null,
                                null,
                                List.of(),
                                List.of()),
                        PrinterProfile.read(profile, "printer.icc"),
                        PrintRoute.USUAL);
        assertNull(few.promise());
        assertEquals(WarningCode.AIM_NOT_JUDGED, few.warnings().get(0).code());
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
