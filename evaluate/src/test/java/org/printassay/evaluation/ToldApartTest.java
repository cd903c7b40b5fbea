package org.printassay.evaluation;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.printassay.problem.Problem;

class ToldApartTest {
    private static final List<Path> FILES =
            List.of(
                    Path.of("/w/monday/scan.tif"),
                    Path.of("/w/tuesday/scan.tif"),
                    Path.of("/v/tuesday/scan.tif"),
                    Path.of("/w/other.tif"));

    @Test
    void namesCarryAsManyFoldersAsItTakes() {
        ToldApart names = ToldApart.of(FILES);
        assertEquals("monday/scan.tif", names.name(0));
        assertEquals("w/tuesday/scan.tif", names.name(1));
        assertEquals("v/tuesday/scan.tif", names.name(2));
        assertEquals("other.tif", names.name(3));
    }

    @Test
    void problemsAreToldOfTheRightFile() {
        Problem problem = Problem.input("scan.tif, byte 8", "is damaged.");
        assertEquals(
                "monday/scan.tif, byte 8: is damaged.",
                ToldApart.of(FILES).told(problem, 0).getMessage());
        assertEquals(Problem.Kind.INPUT, ToldApart.of(FILES).told(problem, 0).kind());
        Problem other = Problem.input("scan.tif-evaluation", "is a folder.");
        assertEquals(other, ToldApart.of(FILES).told(other, 0), "is another");
    }
}
