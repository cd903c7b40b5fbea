package org.printassay.measurement;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.util.Collections;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.printassay.colour.DeltaE;
import org.printassay.colour.Lab;
import org.printassay.colour.Rgb8;
import org.printassay.colour.RgbSpace;
import org.printassay.colour.Spectrum;
import org.printassay.colour.Xyz;
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

    /** Taken apart by tabs and lines alone, which shares nothing with our reader. */
    @Test
    void otherReadersFindEveryNumber() {
        Spectrum spectrum = new Spectrum(400, 10, Collections.nCopies(31, 0.25));
        Row row =
                new Row(
                        "A1",
                        new Rgb8(1, 2, 3),
                        new Lab(50, -1.5, 2.25),
                        new Xyz(18, 18.4, 15),
                        new Lab(0.1, 0.2, 0.3),
                        spectrum);
        List<String> lines =
                MeasurementWriter.write(Map.of("ORIGINATOR", "tests"), List.of(row, row))
                        .lines()
                        .toList();
        assertEquals("CGATS.17", lines.get(0));
        assertEquals("ORIGINATOR\t\"tests\"", lines.get(1));
        int format = lines.indexOf("BEGIN_DATA_FORMAT");
        String[] fields = lines.get(format + 1).split("\t", -1);
        assertEquals("END_DATA_FORMAT", lines.get(format + 2));
        assertEquals("NUMBER_OF_FIELDS\t" + fields.length, lines.get(format - 1));
        int data = lines.indexOf("BEGIN_DATA");
        assertEquals("NUMBER_OF_SETS\t2", lines.get(data - 1));
        String[] cells = lines.get(data + 1).split("\t", -1);
        assertEquals(fields.length, cells.length);
        Map<String, String> named = new HashMap<>();
        for (int i = 0; i < cells.length; i++) {
            named.put(fields[i], cells[i]);
        }
        assertEquals("A1", named.get("SAMPLE_ID"));
        assertEquals("3", named.get("RGB_B"));
        assertEquals("-1.5000", named.get("LAB_A"));
        assertEquals("18.4000", named.get("XYZ_Y"));
        assertEquals("0.3000", named.get("STDEV_B"));
        assertEquals("0.250000", named.get("SPECTRAL_NM700"));
        assertEquals("END_DATA", lines.get(lines.size() - 1));
        assertEquals(data + 4, lines.size());
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
