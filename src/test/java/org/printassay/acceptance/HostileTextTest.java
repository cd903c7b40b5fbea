package org.printassay.acceptance;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.printassay.colour.Lab;
import org.printassay.colour.Rgb8;
import org.printassay.colour.RgbSpace;
import org.printassay.measurement.MeasurementFile;
import org.printassay.measurement.MeasurementReader;
import org.w3c.dom.Document;

/**
 * Names that try to be markup, formulas, controls or directions stay names in every file for
 * programs; for the pages see {@link BrowserPagesTest}, for the PDF {@link ReportPdfTest}.
 */
class HostileTextTest {
    /**
     * What a spreadsheet takes for a formula: common practice (the OWASP page on CSV injection),
     * from memory.
     */
    private static final List<String> FORMULAS =
            List.of("=cmd()", "+1", "-1", "@x", "\uff1d1", "\uff0b1", "\uff0d1", "\uff20x");

    @TempDir Path dir;

    @Test
    void namesAreKeptWholeInJson() throws Exception {
        Path results = EvaluatedSheet.hostile();
        JsonNode e = new ObjectMapper().readTree(results.resolve("evaluation.json").toFile());
        for (String key : List.of("paper", "printer", "route")) {
            assertEquals(EvaluatedSheet.HOSTILE, e.get(key).asText(), key);
        }
        // Names of files are also shown on terminals: what turns directions is replaced in them.
        assertEquals(
                EvaluatedSheet.HOSTILE_FILE.replace('\u202e', '?'),
                e.at("/source/files/0/name").asText());
    }

    @Test
    void theTextFileIsReadBackAndHoldsOneLineAName() throws Exception {
        Path results = EvaluatedSheet.hostile();
        MeasurementFile back = MeasurementReader.read(results.resolve("readings.txt"));
        assertTrue(back.patches().size() > 500, back.patches().size() + " patches");
        String text = EvaluatedSheet.text(results, "readings.txt");
        String line =
                text.lines().filter(one -> one.startsWith("MATERIAL")).findFirst().orElseThrow();
        assertTrue(line.matches("MATERIAL\t\"[^\"]*\""), line);
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            assertFalse(Character.isISOControl(c) && c != '\n' && c != '\t', "control at " + i);
            assertFalse(c == '\u202e', "direction at " + i);
        }
    }

    @Test
    void theXmlIsWellFormed() throws Exception {
        Path file = measured(FORMULAS).resolve("readings.cxf");
        DocumentBuilderFactory parsers = DocumentBuilderFactory.newInstance();
        parsers.setNamespaceAware(true);
        Document xml = parsers.newDocumentBuilder().parse(file.toFile());
        assertNotNull(xml.getElementsByTagNameNS("*", "Object").item(0));
    }

    @Test
    void namesOfPatchesAreNoFormulasAndNumbersAreUnharmed() throws Exception {
        List<List<String>> rows = cells(EvaluatedSheet.text(measured(FORMULAS), "readings.csv"));
        List<String> heads = rows.get(0);
        int a = heads.indexOf("a* (D50)");
        boolean negative = false;
        for (List<String> row : rows.subList(1, rows.size())) {
            assertEquals(heads.size(), row.size(), "" + row);
            assertFalse(FORMULAS.contains(row.get(0)), row.get(0));
            negative |= Double.parseDouble(row.get(a)) < 0;
        }
        assertTrue(negative, "a negative number is a number");
        List<String> names = rows.stream().map(row -> row.get(0)).toList();
        for (String formula : FORMULAS) {
            assertTrue(names.contains("'" + formula), formula);
        }
    }

    @Test
    void aLongNameInHalvesOfCharactersIsWritten() throws Exception {
        Path out = dir.resolve("halves");
        CommandLineRun run =
                CommandLineRun.of(
                        "evaluate",
                        file(List.of("A1")),
                        "--paper",
                        "half \ud83d of a character, " + "word".repeat(20_000),
                        "--out",
                        out);
        assertEquals(0, run.exitCode(), run.err());
        assertTrue(Files.size(out.resolve("report.pdf")) > 1000);
        new ObjectMapper().readTree(out.resolve("evaluation.json").toFile());
    }

    /** The folder of results for a measured print whose first patches have these names. */
    private Path measured(List<String> names) throws Exception {
        Path out = dir.resolve("measured");
        CommandLineRun run = CommandLineRun.of("evaluate", file(names), "--out", out);
        assertEquals(0, run.exitCode(), run.err());
        return out;
    }

    private Path file(List<String> names) throws Exception {
        StringBuilder text = new StringBuilder("CGATS.17\nBEGIN_DATA_FORMAT\n");
        text.append("SAMPLE_ID RGB_R RGB_G RGB_B LAB_L LAB_A LAB_B\nEND_DATA_FORMAT\nBEGIN_DATA\n");
        for (int i = 0; i < 52; i++) {
            Rgb8 grey = Rgb8.grey(5 * i);
            Lab lab = RgbSpace.SRGB.toLab(grey);
            String name = i < names.size() ? names.get(i) : "P" + i;
            text.append('"').append(name).append("\" ");
            text.append(grey.r()).append(' ').append(grey.g()).append(' ').append(grey.b());
            text.append(' ').append(10 + 0.85 * lab.l()).append(" -0.4 1.2\n");
        }
        return Files.writeString(dir.resolve("measured.txt"), text.append("END_DATA\n"));
    }

    /** RFC 4180. */
    private static List<List<String>> cells(String csv) {
        List<List<String>> rows = new ArrayList<>();
        List<String> row = new ArrayList<>();
        StringBuilder cell = new StringBuilder();
        boolean quoted = false;
        for (int i = 0; i < csv.length(); i++) {
            char c = csv.charAt(i);
            if (c == '"') {
                boolean twice = quoted && i + 1 < csv.length() && csv.charAt(i + 1) == '"';
                if (twice) {
                    cell.append(c);
                    i++;
                } else {
                    quoted = !quoted;
                }
            } else if (!quoted && (c == ',' || c == '\n')) {
                row.add(cell.toString().replace("\r", ""));
                cell.setLength(0);
                if (c == '\n') {
                    rows.add(row);
                    row = new ArrayList<>();
                }
            } else {
                cell.append(c);
            }
        }
        return rows;
    }
}
