package org.printassay.recipe;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.printassay.problem.Problem;

class PageSizeTest {
    /** ISO 216 (A sizes, whole mm) and sizes in inches of exactly 25.4 mm. */
    @ParameterizedTest
    @CsvSource({
        "A6,105,148",
        "a5,148,210",
        "A4,210,297",
        "A3,297,420",
        "A2,420,594",
        "letter,215.9,279.4",
        "Legal,215.9,355.6",
        "TABLOID,279.4,431.8",
        "4x6in,101.6,152.4",
        "4x6,101.6,152.4",
        "5x7in,127,177.8",
        "8x10in,203.2,254",
        "13x19in,330.2,482.6",
        "200x300mm,200,300",
        "8.5 x 11 in,215.9,279.4",
        "12x16in,304.8,406.4"
    })
    void namesAndSizes(String text, double width, double height) throws Problem {
        PageSize page = PageSize.parse(text);
        assertEquals(width, page.widthMm());
        assertEquals(height, page.heightMm());
        assertEquals(page, PageSize.parse(page.name()), "its own name reads back");
    }

    @Test
    void sameSidesAreTheSamePage() throws Problem {
        assertEquals(PageSize.parse("A4"), PageSize.parse("210x297mm"));
        assertEquals("Letter", PageSize.parse("8.5x11in").name());
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                "A7",
                "210x297",
                "210mm",
                "0x0mm",
                "49x300mm",
                "99999x1mm",
                "2001x300mm",
                "-210x297mm",
                "1e9x1e9mm",
                "NaNxNaNmm",
                "A4\u001b[31m\nx"
            })
    void whatIsNotAPageIsRefusedInOneLine(String text) {
        Problem problem = assertThrows(Problem.class, () -> PageSize.parse(text));
        assertEquals(Problem.Kind.USAGE, problem.kind());
        assertTrue(
                String.valueOf(problem.getMessage()).matches("[\\x20-\\x7e]+"),
                "no control characters reach the terminal");
    }

    @Test
    void marginsTakeOneOrFourValues() throws Problem {
        assertEquals(Margins.all(12), Margins.parse("12"));
        assertEquals(new Margins(12, 13, 35, 14.5), Margins.parse("12, 13,35,14.5"));
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "12,12", "1,2,3,4,5", "x", "2", "-3", "NaN", "501", "1e999"})
    void marginsOutOfRangeAreRefused(String text) {
        Problem problem = assertThrows(Problem.class, () -> Margins.parse(text));
        assertEquals(Problem.Kind.USAGE, problem.kind());
    }
}
