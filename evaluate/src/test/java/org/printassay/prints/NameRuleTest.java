package org.printassay.prints;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.file.Path;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class NameRuleTest {
    @ParameterizedTest
    @CsvSource({
        "baryta-1.tif, baryta, 1",
        "Baryta-2.TIF, baryta, 2",
        "baryta_a.tif, baryta, a",
        "warm matte sheet 2.png, warm matte, sheet 2",
        "baryta-repeat.tif, baryta, repeat",
        "baryta-turned2.tif, baryta, turned2",
        "2026-11-27 baryta 12.tif, 2026-11-27 baryta, 12",
        "baryta.tif, baryta, ''",
        // Counters of scanning programs.
        "scan-1.tif, scan-1, ''",
        "scan0001-2.tif, scan0001-2, ''",
        "baryta-0001.tif, baryta-0001, ''",
        // Names of the papers themselves.
        "paper-a.tif, paper-a, ''",
        "Paper B.tif, paper b, ''",
        "1.tif, 1, ''",
        "-1.tif, -1, ''",
        "matte300.tif, matte300, ''",
    })
    void agreesUpToAMark(String file, String rest, String mark) {
        NameRule rule = NameRule.of(Path.of(file));
        assertEquals(rest, rule.rest());
        assertEquals(mark, rule.mark());
    }
}
