package org.printassay.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.charset.StandardCharsets;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.printassay.check.Check;
import org.printassay.check.Checker;
import org.printassay.check.ToleranceFile;
import org.printassay.evaluation.Evaluation;
import org.printassay.evaluation.MadePrint;
import org.printassay.json.CheckedJson;

/** The file and the page of simulated checks. */
class CheckPageTest {
    private static Check check(MadePrint after) throws Exception {
        return Checker.check(
                MadePrint.USUAL.evaluation(1), after.evaluation(2), ToleranceFile.named("fine"));
    }

    private static JsonNode json(Check... checks) throws Exception {
        byte[] bytes = CheckJson.write(List.of(checks)).getBytes(StandardCharsets.UTF_8);
        return CheckedJson.parse("check.json", bytes, "check", CheckJson.SCHEMA_VERSION);
    }

    @Test
    void theFileIsValidByItsSchemaAndHoldsTheChanges() throws Exception {
        JsonNode root = json(check(MadePrint.USUAL.withShifts(7, 0)), check(MadePrint.USUAL));
        assertEquals("failed", root.path("outcome").asText());
        assertEquals("fine", root.at("/tolerances/name").asText());
        assertEquals(2, root.path("prints").size());
        JsonNode first = root.path("prints").path(0);
        assertEquals("failed", first.path("outcome").asText());
        assertEquals("within", root.path("prints").path(1).path("outcome").asText());
        double shift = 0;
        for (JsonNode change : first.path("changes")) {
            if (change.path("quantity").asText().equals("shadowShift")) {
                shift = change.path("change").asDouble();
                assertEquals(
                        change.path("halfWidth").asDouble(),
                        first.at("/decision/factor").asDouble()
                                * change.path("standardUncertainty").asDouble(),
                        1e-3);
            }
        }
        assertEquals(7, shift, 1);
        assertEquals(12, first.at("/patches/worst").size());
        assertFalse(first.at("/lines/compared").asBoolean());
    }

    @Test
    void whatIsNotKnownIsNull() throws Exception {
        MadePrint once = MadePrint.USUAL;
        Check check =
                Checker.check(once.readOnce(1), once.readOnce(2), ToleranceFile.named("fine"));
        JsonNode change = json(check).at("/prints/0/changes/0");
        assertTrue(change.path("halfWidth").isNull());
        assertEquals("cannot-tell", change.path("outcome").asText());
    }

    @Test
    void thePageNeedsNoNetworkNoScriptsAndNoColour() throws Exception {
        String page = CheckPage.write(List.of(check(MadePrint.USUAL.withShifts(7, 0))), true);
        assertTrue(page.contains("Content-Security-Policy"));
        assertTrue(
                page.contains("default-src &#39;none&#39;") || page.contains("default-src 'none'"));
        assertFalse(page.contains("<script"));
        assertFalse(page.contains("http://") || page.contains("https://"));
        assertTrue(page.contains("Simulated: no real printer"));
        assertTrue(page.contains("<h1>Failed: made-2.tif</h1>"));
        for (String outcome : List.of("within", "drifted", "cannot tell", "failed")) {
            assertTrue(page.contains(outcome), outcome);
        }
        Set<String> ids = new HashSet<>();
        Matcher matcher = Pattern.compile(" id=\"([^\"]+)\"").matcher(page);
        while (matcher.find()) {
            assertTrue(ids.add(matcher.group(1)), "twice: " + matcher.group(1));
        }
    }

    @Test
    void severalPrintsStandOnOnePage() throws Exception {
        String page =
                CheckPage.write(
                        List.of(check(MadePrint.USUAL), check(MadePrint.USUAL.withShifts(7, 0))),
                        false);
        assertTrue(page.contains("<h1>Failed: 2 prints</h1>"));
        assertFalse(page.contains("Simulated: no real"));
        Set<String> ids = new HashSet<>();
        Matcher matcher = Pattern.compile(" id=\"([^\"]+)\"").matcher(page);
        while (matcher.find()) {
            assertTrue(ids.add(matcher.group(1)), "twice: " + matcher.group(1));
        }
    }

    @Test
    void textFromOutsideIsEscaped() throws Exception {
        Evaluation before = SampleEvaluations.hostile();
        Check check =
                Checker.check(
                        before,
                        MadePrint.withFiles(before, "other-<b>.tif"),
                        ToleranceFile.named("workshop"));
        String page = CheckPage.write(List.of(check), false);
        assertFalse(page.contains("<script"));
        assertFalse(page.contains("<b>"));
        assertTrue(page.contains("&lt;script&gt;"));
        json(check);
    }
}
