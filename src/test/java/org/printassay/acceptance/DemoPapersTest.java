package org.printassay.acceptance;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.Objects;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.printassay.demo.DemoScenario;
import org.printassay.demo.PrintRoom;
import org.printassay.demo.print.Print;
import org.printassay.evaluation.Evaluation;
import org.printassay.evaluation.EvaluationRequest;
import org.printassay.evaluation.Evaluator;

/** The demo shows what it promises: each of its papers can be judged from its scan. */
class DemoPapersTest {
    @TempDir Path dir;

    /** Bluish and bright: outside the range of a scan in sRGB. */
    @Test
    void theCoolPaperIsJudgedAtBothEnds() throws Exception {
        DemoScenario cool = DemoScenario.coolPearl();
        Print print = SimulatedPrint.print(cool.paper(), cool.printing(), cool.seed());
        Path scan = dir.resolve("scan.tif");
        PrintRoom.scan(print, cool.flatbed().withSamplesPerInch(200), cool.seed(), scan);
        Evaluation e = Evaluator.evaluate(EvaluationRequest.of(scan)).evaluation();
        var white = Objects.requireNonNull(Objects.requireNonNull(e.white()).lab());
        assertEquals(cool.paper().white().l(), white.l(), 0.5);
        assertEquals(cool.paper().white().b(), white.b(), 0.5);
        Integer last = Objects.requireNonNull(e.highlights()).best();
        assertTrue(last != null && last >= 247 && last <= 252, "highlights hold up to " + last);
        assertNotNull(e.neutrality());
    }
}
