package org.printassay.chart;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.junit.jupiter.api.Test;
import org.printassay.problem.Problem;
import org.printassay.sheet.Patch;

/** Read here by the rules of ISO 28178 alone: a field list, then one row a patch. */
class ChartReferenceTest {
    @Test
    void listsEveryPatchOnceWithItsCodes() throws Problem {
        Chart chart = PaperSheetFitTest.chart("A4", "25");
        List<String> lines = ChartReference.write(chart).lines().toList();
        List<String> fields =
                List.of(lines.get(lines.indexOf("BEGIN_DATA_FORMAT") + 1).split("\\s+", -1));
        List<String> rows =
                lines.subList(lines.indexOf("BEGIN_DATA") + 1, lines.indexOf("END_DATA"));
        Map<String, Patch> patches = new HashMap<>();
        chart.sheets().forEach(s -> s.patches().forEach(p -> patches.put(p.id(), p)));
        assertEquals(patches.size(), rows.size());
        assertTrue(
                lines.stream().anyMatch(line -> line.matches("NUMBER_OF_SETS\\s+" + rows.size())));
        for (String row : rows) {
            String[] cells = row.split("\\s+", -1);
            assertEquals(fields.size(), cells.length);
            Patch patch =
                    Objects.requireNonNull(patches.remove(cells[fields.indexOf("SAMPLE_ID")]), row);
            assertEquals(patch.rgb().r(), Integer.parseInt(cells[fields.indexOf("RGB_R")]));
            assertEquals(patch.rgb().g(), Integer.parseInt(cells[fields.indexOf("RGB_G")]));
            assertEquals(patch.rgb().b(), Integer.parseInt(cells[fields.indexOf("RGB_B")]));
        }
    }

    /** The published CIELAB of the skin-like tones stands beside their codes. */
    @Test
    void aimIsTheColourOfTheEncoding() throws Problem, IOException {
        List<String> lines =
                ChartReference.write(PaperSheetFitTest.chart("A4", "12")).lines().toList();
        List<String> fields =
                List.of(lines.get(lines.indexOf("BEGIN_DATA_FORMAT") + 1).split("\\s+", -1));
        int checked = 0;
        try (BufferedReader published =
                new BufferedReader(
                        new InputStreamReader(
                                Objects.requireNonNull(
                                        getClass().getResourceAsStream("/published/skin-like.csv")),
                                StandardCharsets.UTF_8))) {
            for (String tone : published.lines().filter(t -> t.startsWith("S")).toList()) {
                String[] wanted = tone.split(",", -1);
                for (String line : lines) {
                    String[] cells = line.split("\\s+", -1);
                    if (cells[0].equals(wanted[0] + "A")) {
                        // sRGB codes are whole numbers: within 0.6 of the tone they stand for.
                        for (int i = 0; i < 3; i++) {
                            String field = List.of("LAB_L", "LAB_A", "LAB_B").get(i);
                            double got = Double.parseDouble(cells[fields.indexOf(field)]);
                            assertEquals(Double.parseDouble(wanted[1 + i]), got, 0.6);
                        }
                        checked++;
                    }
                }
            }
        }
        assertEquals(11, checked);
    }
}
