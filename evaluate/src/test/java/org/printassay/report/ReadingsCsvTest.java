package org.printassay.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;

class ReadingsCsvTest {
    @Test
    void everyLineHasAsManyCellsAsTheHeader() {
        List<String> lines = ReadingsCsv.write(SampleEvaluations.matt()).lines().toList();
        assertEquals(1 + SampleEvaluations.matt().patches().size(), lines.size());
        int cells = lines.get(0).split(",", -1).length;
        lines.forEach(line -> assertEquals(cells, line.split(",", -1).length, line));
    }

    @Test
    void aFormulaIsNotLeftToASpreadsheet() {
        String csv = ReadingsCsv.write(SampleEvaluations.hostile());
        assertTrue(csv.contains("\r\n'=cmd(),"), csv.substring(0, 600));
        for (String text : List.of("=1+1", "+1", "-1", "@x", "\tx", "\r=1", " =1", "\uff1d1")) {
            assertFalse(ReadingsCsv.text(text).startsWith(text), text);
        }
        assertEquals("\"a,\"\"b\"", ReadingsCsv.text("a,\"b"));
        assertEquals("A12", ReadingsCsv.text("A12"));
        assertEquals("a b", ReadingsCsv.text("a\nb"));
    }
}
