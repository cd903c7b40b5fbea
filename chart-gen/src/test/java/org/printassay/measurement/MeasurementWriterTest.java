package org.printassay.measurement;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.printassay.colour.DeltaE;
import org.printassay.colour.Lab;
import org.printassay.colour.Rgb8;
import org.printassay.colour.RgbSpace;
import org.printassay.measurement.MeasurementWriter.Row;
import org.printassay.problem.Problem;

class MeasurementWriterTest {
    private static final List<Row> ROWS =
            List.of(
                    row("A1", new Rgb8(255, 255, 255)),
                    row("deep red", new Rgb8(90, 0, 10)),
                    row("say \"black\"", new Rgb8(0, 0, 0)));

    @Test
    void readsBackWhatItWrote() throws Problem {
        Map<String, String> keywords = new LinkedHashMap<>();
        keywords.put("ORIGINATOR", "printassay");
        keywords.put("COLOUR_SPACE", "sRGB");
        String text = MeasurementWriter.write(keywords, ROWS);
        MeasurementFile file =
                MeasurementReader.read("chart.txt", text.getBytes(StandardCharsets.UTF_8));
        assertEquals(3, file.patches().size());
        for (int i = 0; i < 3; i++) {
            MeasuredPatch patch = file.patches().get(i);
            assertEquals(ROWS.get(i).rgb(), patch.rgb());
            Lab lab = RgbSpace.SRGB.toLab(patch.rgb());
            assertEquals(0, DeltaE.cie1976(lab, patch.lab()), 0.01);
        }
        assertEquals("deep red", file.patches().get(1).id());
        assertEquals("say 'black'", file.patches().get(2).id());
        assertEquals("sRGB", file.keywords().get("COLOUR_SPACE"));
        assertTrue(text.contains("KEYWORD\t\"COLOUR_SPACE\"\n"), text);
    }

    @Test
    void sameBytesInEveryLocale() {
        Locale before = Locale.getDefault();
        try {
            Locale.setDefault(Locale.ROOT);
            String root = MeasurementWriter.write(Map.of(), ROWS);
            Locale.setDefault(Locale.forLanguageTag("ar-EG-u-nu-arab"));
            assertEquals(root, MeasurementWriter.write(Map.of(), ROWS));
        } finally {
            Locale.setDefault(before);
        }
    }

    @Test
    void columnsAreAllOrNothing() {
        Row bare = new Row("A2", Rgb8.grey(5), null, null, null);
        assertThrows(
                IllegalArgumentException.class,
                () -> MeasurementWriter.write(Map.of(), List.of(ROWS.get(0), bare)));
        assertTrue(!MeasurementWriter.write(Map.of(), List.of(bare)).contains("LAB_L"));
    }

    private static Row row(String id, Rgb8 rgb) {
        return Row.of(id, rgb, RgbSpace.SRGB.toLab(rgb));
    }
}
