package org.printassay.report;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.printassay.evaluation.Evaluation;

/** Everything that is written for one evaluation. */
public final class Reports {
    private Reports() {}

    /**
     * Writes {@code evaluation.json}, {@code report.html}, {@code readings.csv} and {@code
     * readings.txt} (ISO 28178) into a folder, replacing files of these names.
     *
     * @param scans small pictures of what was scanned; empty for measurement files
     * @param simulated whether the print is not real, to be said on the page
     * @param dir made when missing
     * @throws IOException when something cannot be written
     */
    public static void writeAll(
            Evaluation evaluation, List<ScanPreview> scans, boolean simulated, Path dir)
            throws IOException {
        Files.createDirectories(dir);
        write(dir, "evaluation.json", EvaluationJson.write(evaluation));
        write(dir, "report.html", ReportPage.write(evaluation, scans, simulated));
        write(dir, "readings.csv", ReadingsCsv.write(evaluation));
        write(dir, "readings.txt", ReadingsText.write(evaluation));
    }

    /**
     * Writes {@code readings.cxf} (CxF3, ISO 17972-1) where there are absolute colours.
     *
     * @param created when the print was scanned or measured
     * @throws IOException when it cannot be written
     */
    public static void writeCxf(Evaluation evaluation, Instant created, Path dir)
            throws IOException {
        Optional<String> text = ReadingsCxf.write(evaluation, created);
        if (text.isPresent()) {
            write(dir, "readings.cxf", text.get());
        }
    }

    private static void write(Path dir, String name, String text) throws IOException {
        Files.writeString(dir.resolve(name), text, StandardCharsets.UTF_8);
    }
}
