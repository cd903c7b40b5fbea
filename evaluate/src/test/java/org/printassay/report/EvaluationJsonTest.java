package org.printassay.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.printassay.evaluation.Evaluation;
import org.printassay.problem.Problem;
import org.printassay.reading.WarningCode;

class EvaluationJsonTest {
    /** Keys that scripts rely on, from the design's list of files. */
    private static final List<String> PROMISED =
            List.of(
                    "chart/id chart/sheet chart/print paper printer route source/kind source/trust",
                    "source/files placements white/lab white/density black/lab black/density",
                    "patches tone/aim tone/rmsDeltaL tone/maxDeltaL tone/maxAtLevel tone/monotonic",
                    "shadows/threshold shadows/blockedThrough shadows/firstSeparated",
                    "shadows/firstVisible shadows/interval shadows/visibleSteps",
                    "highlights/threshold highlights/mergedFrom highlights/lastSeparated",
                    "highlights/lastVisible highlights/interval highlights/visibleSteps",
                    "neutrality/meanDeltaCh neutrality/maxDeltaCh neutrality/cast/a",
                    "neutrality/cast/b neutrality/cast/words colours/meanDeltaE00",
                    "colours/gamutVolume evenness/maxDeltaE00 lines bands strayLight/fraction",
                    "strayLight/standardError strayLight/returned strayLight/widthMm",
                    "strayLight/corrected warnings findings schema");

    static Stream<Evaluation> all() {
        return Stream.of(
                SampleEvaluations.matt(),
                SampleEvaluations.gloss(),
                SampleEvaluations.satin(),
                SampleEvaluations.plain(),
                SampleEvaluations.empty(),
                SampleEvaluations.hostile());
    }

    @ParameterizedTest
    @MethodSource("all")
    void whatIsReadIsWrittenAgainTheSame(Evaluation evaluation) throws Problem {
        String text = EvaluationJson.write(evaluation);
        Evaluation back = EvaluationJson.parse("evaluation.json", text);
        assertEquals(text, EvaluationJson.write(back));
        assertEquals(evaluation.details(), back.details());
        assertEquals(evaluation.findings(), back.findings());
        assertEquals(evaluation.warnings(), back.warnings());
        assertEquals(evaluation.sheets(), back.sheets());
        assertEquals(evaluation.patches().size(), back.patches().size());
    }

    /** What read a print is kept, and files written before it was kept can still be read. */
    @Test
    void whatReadAPrintIsKeptAndMayBeMissing() throws Exception {
        Evaluation e =
                SampleEvaluations.readBy(
                        SampleEvaluations.matt(), "Scanner A", "matt", "ab".repeat(32));
        String text = EvaluationJson.write(e);
        Evaluation back = EvaluationJson.parse("evaluation.json", text);
        assertEquals("Scanner A", back.details().scanner());
        assertEquals("matt", back.details().family());
        assertEquals("ab".repeat(32), back.placements().get(0).profile());
        ObjectNode old = (ObjectNode) new ObjectMapper().readTree(text);
        old.remove("family");
        ((ObjectNode) old.path("source")).remove("scanner");
        old.path("placements").forEach(p -> ((ObjectNode) p).remove("profile"));
        Evaluation before = EvaluationJson.parse("evaluation.json", old.toString());
        assertNull(before.details().scanner());
        assertNull(before.placements().get(0).profile());
    }

    @ParameterizedTest
    @MethodSource("all")
    void everyPromisedKeyIsThere(Evaluation evaluation) throws Exception {
        JsonNode root = new ObjectMapper().readTree(EvaluationJson.write(evaluation));
        for (String line : PROMISED) {
            for (String path : line.split(" ", -1)) {
                assertFalse(root.at("/" + path).isMissingNode(), path);
            }
        }
    }

    @Test
    void whatWasNotJudgedIsNull() throws Exception {
        JsonNode root =
                new ObjectMapper().readTree(EvaluationJson.write(SampleEvaluations.empty()));
        for (String path : List.of("chart/id", "white/lab", "tone/rmsDeltaL", "shadows/interval")) {
            assertTrue(root.at("/" + path).isNull(), path);
        }
        JsonNode plain =
                new ObjectMapper().readTree(EvaluationJson.write(SampleEvaluations.plain()));
        for (String path : List.of("white/lab", "white/density", "black/lab", "patches/0/lab")) {
            assertTrue(plain.at("/" + path).isNull(), path);
        }
        assertTrue(plain.at("/patches/0/labRelative/l").isNumber());
    }

    @Test
    void sheetIsANumberForOneAndAListForSeveral() throws Exception {
        ObjectMapper mapper = new ObjectMapper();
        JsonNode one = mapper.readTree(EvaluationJson.write(SampleEvaluations.matt()));
        JsonNode two = mapper.readTree(EvaluationJson.write(SampleEvaluations.hostile()));
        assertEquals(1, one.at("/chart/sheet").asInt());
        assertEquals("[1,2]", two.at("/chart/sheet").toString());
    }

    @Test
    void anotherVersionIsRefusedInOneLine() {
        String text =
                EvaluationJson.write(SampleEvaluations.matt())
                        .replace("printassay/evaluation/1", "printassay/evaluation/2");
        Problem problem = assertThrows(Problem.class, () -> EvaluationJson.parse("old.json", text));
        assertTrue(problem.getMessage().startsWith("old.json: "), problem.getMessage());
        assertEquals(1, problem.getMessage().lines().count());
    }

    @Test
    void aWrongValueIsRefusedWithItsPlace() {
        String text =
                EvaluationJson.write(SampleEvaluations.matt())
                        .replace("\"print\": 1", "\"print\": \"one\"");
        Problem problem = assertThrows(Problem.class, () -> EvaluationJson.parse("a.json", text));
        assertTrue(problem.getMessage().contains("/chart/print"), problem.getMessage());
    }

    @Test
    void theSchemaKnowsEveryWarning() throws Exception {
        try (var in =
                EvaluationJson.class.getResourceAsStream(
                        "/org/printassay/json/evaluation-1.schema.json")) {
            JsonNode schema = new ObjectMapper().readTree(in);
            String codes = schema.at("/properties/warnings/items/properties/code/enum").toString();
            for (WarningCode code : WarningCode.values()) {
                assertTrue(codes.contains('"' + code.key() + '"'), code.key());
            }
        }
    }

    /** Values put in each other's places, odd numbers and cuts: refused in one line, or read. */
    @Test
    void damagedFilesAreRefusedInOneLineOrRead() throws Exception {
        String good = EvaluationJson.write(SampleEvaluations.matt());
        String[] odd = {"null", "-1", "1e400", "[]", "{}", "\"x\"", "9".repeat(60), "true", ""};
        Random random = new Random(11);
        int refused = 0;
        for (int round = 0; round < 400; round++) {
            // Most of the text is patches; two thirds of the damage goes to what stands before.
            int reach = random.nextInt(3) == 0 ? good.length() : Math.min(good.length(), 20_000);
            int start = good.indexOf(':', random.nextInt(reach)) + 1;
            int end = start;
            while (end < good.length() && ",\n}]".indexOf(good.charAt(end)) < 0) {
                end++;
            }
            String damaged =
                    random.nextInt(10) == 0
                            ? good.substring(0, start)
                            : good.substring(0, start)
                                    + odd[random.nextInt(odd.length)]
                                    + good.substring(end);
            try {
                EvaluationJson.write(EvaluationJson.parse("e.json", damaged));
            } catch (Problem e) {
                String message = String.valueOf(e.getMessage());
                assertTrue(message.startsWith("e.json") && message.lines().count() == 1, message);
                refused++;
            }
        }
        assertTrue(refused > 200, "refused " + refused);
    }
}
