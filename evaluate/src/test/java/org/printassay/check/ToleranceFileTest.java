package org.printassay.check;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.printassay.problem.Problem;

class ToleranceFileTest {
    @TempDir Path folder;

    @Test
    void oursHoldEveryQuantityAndClaimNoStandard() throws Exception {
        for (String name : ToleranceFile.OURS) {
            ToleranceSet set = ToleranceFile.named(name);
            assertEquals(name, set.name());
            assertEquals(Quantity.values().length, set.quantities().size());
            assertTrue(set.about().contains("no source"));
            assertTrue(set.about().contains("no claim of conformance"));
        }
        ToleranceSet fine = ToleranceFile.named("fine");
        ToleranceSet workshop = ToleranceFile.named("workshop");
        for (Quantity quantity : Quantity.values()) {
            assertTrue(
                    fine.of(quantity).orElseThrow().limitFrom(100)
                            < workshop.of(quantity).orElseThrow().limitFrom(100));
        }
    }

    @Test
    void whatIsShownCanBeEditedAndRead() throws Exception {
        Path file = folder.resolve("mine.json");
        String text = ToleranceFile.text("fine").replace("\"limit\": 1.5", "\"limit\": 2.5");
        Files.writeString(file, text);
        ToleranceSet mine = ToleranceFile.named(file.toString());
        assertEquals(2.5, mine.of(Quantity.BLACK_L).orElseThrow().limit());
    }

    @Test
    void aFileMayHoldOneQuantityAlone() throws Exception {
        Path file = folder.resolve("one.json");
        Files.writeString(
                file,
                """
                {"schema": "printassay/tolerances/1", "name": "mine", "falseAlarmPercent": 0.5,
                 "quantities": {"gamutVolume": {"limitPercent": 5}}}
                """);
        ToleranceSet set = ToleranceFile.read(file);
        assertEquals(0.005, set.falseAlarms(), 1e-12);
        assertEquals(25, set.of(Quantity.GAMUT_VOLUME).orElseThrow().limitFrom(500), 1e-9);
        assertNull(set.lineContrast());
        assertNull(set.bandOverThreshold());
    }

    @Test
    void anUnknownQuantityIsNamedWithTheNearestKnown() throws Exception {
        assertTrue(
                refusal("\"limit\": 1}, \"gamutvolum\": {\"limit\": 1}").contains("gamutVolume"));
        assertTrue(refusal("\"limt\": 1}").contains("\"limit\""));
    }

    @Test
    void limitsMustBeLimits() throws Exception {
        assertTrue(refusal("\"limit\": 0}").contains("limit"));
        assertTrue(refusal("\"limit\": -1}").contains("limit"));
        assertTrue(refusal("\"spread\": 1}").startsWith("bad.json"));
        assertTrue(refusal("\"limit\": \"much\"}").contains("limit"));
    }

    /** With nothing to look at, prints would seem to have nothing in common. */
    @Test
    void aSetNeedsAQuantity() throws Exception {
        Path file =
                Files.writeString(
                        folder.resolve("none.json"),
                        "{\"schema\": \"printassay/tolerances/1\", \"name\": \"none\","
                                + " \"falseAlarmPercent\": 1, \"quantities\": {}}");
        Problem problem = assertThrows(Problem.class, () -> ToleranceFile.read(file));
        assertEquals(Problem.Kind.INPUT, problem.kind());
        assertTrue(problem.getMessage().contains("quantities"), problem.getMessage());
        assertEquals(1, problem.getMessage().lines().count());
    }

    private String refusal(String inside) throws Exception {
        Path file = folder.resolve("bad.json");
        Files.writeString(
                file,
                "{\"schema\": \"printassay/tolerances/1\", \"name\": \"bad\","
                        + " \"falseAlarmPercent\": 1, \"quantities\": {\"blackL\": {"
                        + inside
                        + "}}");
        Problem problem = assertThrows(Problem.class, () -> ToleranceFile.read(file));
        assertEquals(Problem.Kind.INPUT, problem.kind());
        assertEquals(1, problem.getMessage().lines().count());
        return problem.getMessage();
    }

    @Test
    void aWrongNameIsWrongUse() {
        Problem problem = assertThrows(Problem.class, () -> ToleranceFile.named("coarse"));
        assertEquals(Problem.Kind.USAGE, problem.kind());
        assertTrue(problem.getMessage().contains("fine, workshop or a file"));
    }
}
