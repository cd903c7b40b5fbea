package org.printassay.acceptance;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.printassay.chart.Chart;
import org.printassay.chart.ChartFile;
import org.printassay.colour.Lab;
import org.printassay.demo.PrintRoom;
import org.printassay.demo.print.Print;
import org.printassay.demo.print.Printing;
import org.printassay.measurement.MeasuredPatch;
import org.printassay.measurement.MeasurementReader;

/** The short sheet, printed, scanned and measured by hand (all simulated). */
class ShortSheetJobTest {
    @TempDir Path dir;

    @Test
    void scanAndTypedValuesAgree() throws Exception {
        Path made = dir.resolve("chart");
        CommandLineRun chart =
                CommandLineRun.of("chart", "--recipe", "short", "--page", "4x6in", "--out", made);
        assertEquals(0, chart.exitCode(), chart.err());
        Chart design = ChartFile.read(made.resolve("chart.json"));
        Print print = RenderedChart.of(design).print(SimulatedPrint.goodPaper(), Printing.EXACT, 7);
        Path scan = dir.resolve("scan.tif");
        PrintRoom.scan(print, SimulatedPrint.flatbed(), 7, scan);
        JsonNode scanned = evaluate("scanned", scan);
        assertEquals(96.5, scanned.at("/white/lab/l").asDouble(), 0.4);
        assertEquals(5, scanned.at("/black/lab/l").asDouble(), 0.8);
        assertTrue(scanned.at("/tone/rmsDeltaL").asDouble() < 1, scanned.at("/tone")::toString);

        // What was written as CxF3 is read again as a measurement.
        JsonNode again = evaluate("again", dir.resolve("scanned").resolve("readings.cxf"));
        assertEquals(
                scanned.at("/white/lab/l").asDouble(), again.at("/white/lab/l").asDouble(), 1e-3);

        // An instrument's values, typed after the names of the reading order.
        Path measured = dir.resolve("measured.txt");
        PrintRoom.measure(print, 7, measured);
        Map<String, Lab> values = new HashMap<>();
        for (MeasuredPatch patch : MeasurementReader.read(measured).patches()) {
            values.put(patch.id(), patch.lab());
        }
        List<String> order = Files.readAllLines(made.resolve("reading-order.txt"));
        StringBuilder named = new StringBuilder();
        StringBuilder bare = new StringBuilder();
        for (String line : order) {
            Lab lab = values.get(line);
            String typed =
                    lab == null
                            ? ""
                            : String.format(
                                    Locale.ROOT, " %.2f %.2f %.2f", lab.l(), lab.a(), lab.b());
            named.append(line).append(typed).append('\n');
            bare.append(lab == null ? "" : typed.strip() + "\n");
        }
        Path names = Files.writeString(dir.resolve("names.txt"), named);
        Path list = Files.writeString(dir.resolve("list.txt"), bare);
        Path file = made.resolve("chart.json");
        JsonNode byName = evaluate("named", names, "--chart", file);
        JsonNode byOrder = evaluate("bare", list, "--chart", file);
        assertEquals(byName.at("/tone").toString(), byOrder.at("/tone").toString());
        assertEquals("instrument", byOrder.at("/source/trust").asText());
        assertEquals(
                byOrder.at("/white/lab/l").asDouble(), scanned.at("/white/lab/l").asDouble(), 0.5);

        // A row left out: refused, and the row named.
        List<String> lines = bare.toString().lines().toList();
        Path missed = Files.write(dir.resolve("missed.txt"), lines.subList(7, lines.size()));
        CommandLineRun run =
                CommandLineRun.of(
                        "evaluate", missed, "--chart", file, "--out", dir.resolve("none"));
        assertEquals(3, run.exitCode(), run.err());
        assertTrue(run.err().contains("row 1 was missed"), run.err());
    }

    private JsonNode evaluate(String name, Object... what) throws Exception {
        Object[] all = new Object[what.length + 3];
        all[0] = "evaluate";
        System.arraycopy(what, 0, all, 1, what.length);
        all[what.length + 1] = "--out";
        Path out = dir.resolve(name);
        all[what.length + 2] = out;
        CommandLineRun run = CommandLineRun.of(all);
        assertEquals(0, run.exitCode(), run.err());
        return new ObjectMapper().readTree(out.resolve("evaluation.json").toFile());
    }
}
