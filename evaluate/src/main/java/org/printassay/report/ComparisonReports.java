package org.printassay.report;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.printassay.compare.Comparison;
import org.printassay.report.paged.PageFormat;

/** Everything that is written for one comparison. */
public final class ComparisonReports {
    private ComparisonReports() {}

    /** Pages for the PDF when nobody says: as for the first print. */
    public static PageFormat pagesLike(Comparison comparison) {
        return Reports.pagesLike(comparison.sides().get(0).prints().get(0));
    }

    /**
     * Writes {@code comparison.json}, {@code comparison.html}, {@code comparison.pdf} and {@code
     * comparison.csv} into a folder, replacing files of these names.
     *
     * @param pages that the PDF is laid out for
     * @param dir made when missing
     * @throws IOException when something cannot be written
     */
    public static void writeAll(
            Comparison comparison, ComparisonPage.Showing showing, PageFormat pages, Path dir)
            throws IOException {
        Files.createDirectories(dir);
        ComparisonView view = ComparisonPage.view(comparison, showing);
        write(dir, "comparison.json", ComparisonJson.write(comparison));
        write(dir, "comparison.html", ComparisonPage.write(view));
        write(dir, "comparison.csv", ComparisonCsv.write(comparison));
        try (OutputStream out =
                new BufferedOutputStream(Files.newOutputStream(dir.resolve("comparison.pdf")))) {
            ComparisonPdf.write(view, pages, out);
        }
    }

    private static void write(Path dir, String name, String text) throws IOException {
        // Not writeString: it refuses the lone halves of characters that JSON files may hold.
        Files.write(dir.resolve(name), text.getBytes(StandardCharsets.UTF_8));
    }
}
