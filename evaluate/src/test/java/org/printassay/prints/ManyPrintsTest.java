package org.printassay.prints;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Test;
import org.printassay.evaluation.PrintDetails;
import org.printassay.evaluation.Progress;
import org.printassay.problem.Problem;

class ManyPrintsTest {
    private static OnePrint print(String name) {
        return new OnePrint(name, List.of(Path.of(name + ".tif")), PrintDetails.UNKNOWN);
    }

    @Test
    void oneThatFailsDoesNotStopTheOthers() {
        List<OnePrint> prints = List.of(print("a"), print("b"), print("c"), print("d"), print("e"));
        List<PrintOutcome<String>> outcomes =
                ManyPrints.run(
                        prints,
                        (print, progress) -> {
                            switch (print.name()) {
                                case "b" -> throw Problem.chart("b.tif", "no chart.");
                                case "c" -> throw new IllegalStateException("a bug");
                                case "d" -> throw Problem.usage("not both.");
                                default -> {
                                    return print.name().toUpperCase(java.util.Locale.ROOT);
                                }
                            }
                        },
                        Progress.NONE);
        assertEquals(
                List.of(0, 4, 70, 3, 0), outcomes.stream().map(PrintOutcome::exitCode).toList());
        assertEquals("A", outcomes.get(0).result());
        assertEquals("E", outcomes.get(4).result());
    }

    /** Beside others there may be too little memory; alone there is enough. */
    @Test
    void whatLacksMemoryIsTriedOnceMoreAlone() {
        AtomicInteger tries = new AtomicInteger();
        List<PrintOutcome<String>> outcomes =
                ManyPrints.run(
                        List.of(print("large"), print("small")),
                        (print, progress) -> {
                            if (print.name().equals("large") && tries.incrementAndGet() == 1) {
                                throw new OutOfMemoryError("as a test has it");
                            }
                            return print.name();
                        },
                        Progress.NONE);
        assertEquals(2, tries.get());
        assertEquals(
                List.of("large", "small"), outcomes.stream().map(PrintOutcome::result).toList());
    }

    @Test
    void whatNeverHasEnoughMemoryIsAnInputThatCannotBeUsed() {
        List<PrintOutcome<String>> outcomes =
                ManyPrints.run(
                        List.of(print("huge")),
                        (print, progress) -> {
                            throw new IllegalStateException(new OutOfMemoryError("beside"));
                        },
                        Progress.NONE);
        assertEquals(3, outcomes.get(0).exitCode());
    }

    /** Names alone said that they belong together; the readings say otherwise. */
    @Test
    void filesOfSeveralPrintsAreReadApart() {
        List<OnePrint> apart = List.of(print("x-1"), print("x-2"));
        OnePrint guessed =
                new OnePrint(
                        "x",
                        List.of(Path.of("x-1.tif"), Path.of("x-2.tif")),
                        PrintDetails.UNKNOWN,
                        apart);
        List<PrintOutcome<String>> outcomes =
                ManyPrints.run(
                        List.of(guessed),
                        (print, progress) -> {
                            if (print.files().size() > 1) {
                                throw Problem.chart("x-2.tif", "another print than x-1.tif.");
                            }
                            return print.name();
                        },
                        Progress.NONE);
        assertEquals(List.of("x-1", "x-2"), outcomes.stream().map(PrintOutcome::result).toList());
        assertTrue(outcomes.get(0).note().contains("print of its own"), outcomes.toString());
    }

    /** Parts of a sheet that are too few together are no prints of their own either. */
    @Test
    void wherePartsAreNoPrintsTheirJointProblemIsTold() {
        OnePrint guessed =
                new OnePrint(
                        "x",
                        List.of(Path.of("x-1.tif"), Path.of("x-2.tif")),
                        PrintDetails.UNKNOWN,
                        List.of(print("x-1"), print("x-2")));
        List<PrintOutcome<String>> outcomes =
                ManyPrints.run(
                        List.of(guessed),
                        (print, progress) -> {
                            throw Problem.chart(print.name(), "too little of the sheet.");
                        },
                        Progress.NONE);
        assertEquals(1, outcomes.size());
        assertEquals("x", outcomes.get(0).print().name());
    }

    @Test
    void progressRisesToTheEnd() {
        List<Double> told = new ArrayList<>();
        ManyPrints.run(
                List.of(print("a"), print("b"), print("c")),
                (print, progress) -> {
                    progress.reached(0.4);
                    progress.reached(0.9);
                    return print.name();
                },
                told::add);
        for (int i = 1; i < told.size(); i++) {
            assertTrue(told.get(i) >= told.get(i - 1), told.toString());
        }
        assertEquals(1, told.get(told.size() - 1), 1e-9);
    }
}
