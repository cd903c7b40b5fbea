package org.printassay.report;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.printassay.check.Check;
import org.printassay.report.paged.PageFormat;

/** Everything that is written for one check. */
public final class CheckReports {
    /** File for scripts. */
    public static final String JSON = "check.json";

    /** The page. */
    public static final String PAGE = "check.html";

    private CheckReports() {}

    /** Pages for the PDF when nobody says: as for the print that was checked. */
    public static PageFormat pagesLike(Check check) {
        return Reports.pagesLike(check.print());
    }

    /**
     * Writes {@code check.json}, {@code check.html} and {@code check.pdf} into a folder, replacing
     * files of these names.
     *
     * @param simulated whether the prints are not real, to be said on the page
     * @param pages that the PDF is laid out for
     * @param dir made when missing
     * @throws IOException when something cannot be written
     */
    public static void writeAll(Check check, boolean simulated, PageFormat pages, Path dir)
            throws IOException {
        Files.createDirectories(dir);
        CheckView view = CheckPage.view(check, simulated);
        write(dir, JSON, CheckJson.write(check));
        write(dir, PAGE, CheckPage.write(view));
        try (OutputStream out =
                new BufferedOutputStream(Files.newOutputStream(dir.resolve("check.pdf")))) {
            CheckPdf.write(view, pages, out);
        }
    }

    private static void write(Path dir, String name, String text) throws IOException {
        // Not writeString: it refuses the lone halves of characters that JSON files may hold.
        Files.write(dir.resolve(name), text.getBytes(StandardCharsets.UTF_8));
    }
}
