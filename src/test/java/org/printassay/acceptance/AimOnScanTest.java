package org.printassay.acceptance;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.printassay.chart.ChartFile;
import org.printassay.demo.PrintRoom;
import org.printassay.demo.print.Print;
import org.printassay.demo.print.Printing;

/**
 * A scan and a measurement of one print (both simulated) held against a real printer's profile, one
 * of Debian's package texlive-base: what is promised is the profile's, how far the print is from it
 * must be told alike by both.
 */
class AimOnScanTest {
    private static final String PROFILE = "FOGRA39L_coated.icc";

    @TempDir Path dir;

    @Test
    void scanAndMeasurementTellTheSameDistance() throws Exception {
        Path profile = FreeProfile.named(PROFILE);
        Print print = SimulatedPrint.print(SimulatedPrint.goodPaper(), Printing.EXACT, 7);
        Path scan = dir.resolve("scan.tif");
        PrintRoom.scan(print, SimulatedPrint.flatbed().withSamplesPerInch(200), 7, scan);
        Path measured = dir.resolve("measured.txt");
        PrintRoom.measure(print, 7, measured);
        Path chart = dir.resolve("chart.json");
        Files.writeString(chart, ChartFile.write(SimulatedPrint.chart()));
        JsonNode scanned = evaluate("scanned", scan, profile, chart);
        JsonNode read = evaluate("read", measured, profile, chart);
        double distance = read.at("/aim/meanDeltaE00").asDouble();
        // This print was not made for that profile: the distance is real.
        assertTrue(distance > 1, read.at("/aim")::toString);
        assertEquals(distance, scanned.at("/aim/meanDeltaE00").asDouble(), 0.2);
        assertEquals(
                read.at("/tone/rmsDeltaL").asDouble(),
                scanned.at("/tone/rmsDeltaL").asDouble(),
                0.3);
        assertTrue(
                scanned.at("/tone/aim").asText().startsWith("what " + PROFILE + " predicts"),
                scanned.at("/tone/aim")::asText);
    }

    private JsonNode evaluate(String name, Path input, Path profile, Path chart) throws Exception {
        Path out = dir.resolve(name);
        CommandLineRun run =
                CommandLineRun.of(
                        "evaluate",
                        input,
                        "--chart",
                        chart,
                        "--aim",
                        profile,
                        "--tone-aim",
                        "profile",
                        "--out",
                        out);
        assertEquals(0, run.exitCode(), run.err());
        return new ObjectMapper().readTree(out.resolve("evaluation.json").toFile());
    }
}
