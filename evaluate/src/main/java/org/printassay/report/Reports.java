package org.printassay.report;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.FutureTask;
import org.jspecify.annotations.Nullable;
import org.printassay.evaluation.Evaluation;
import org.printassay.report.paged.PageFormat;

/** Everything that is written for one evaluation. */
public final class Reports {
    private static final String JSON = "evaluation.json";
    private static final String CXF = "readings.cxf";

    /** Files that hold the same figures for programs. */
    static final List<String> FOR_SCRIPTS = List.of(JSON, "readings.csv", "readings.txt");

    private Reports() {}

    /**
     * Files that an earlier evaluation wrote into a folder, and a later one may not write; none
     * where the folder holds no evaluation, or what stands there was not made by this program.
     *
     * @throws IOException when one of them cannot be read
     */
    public static List<Path> earlier(Path folder) throws IOException {
        Path cxf = folder.resolve(CXF);
        boolean there = Files.exists(folder.resolve(JSON)) && Files.isRegularFile(cxf);
        return there && ReadingsCxf.isOurs(cxf) ? List.of(cxf) : List.of();
    }

    /**
     * Writes {@code evaluation.json}, {@code report.html}, {@code report.pdf}, {@code readings.csv}
     * and {@code readings.txt} (ISO 28178) into a folder, replacing files of these names; the pages
     * of the PDF are like the chart's.
     *
     * @param scans small pictures of what was scanned; empty for measurement files
     * @param simulated whether the print is not real, to be said on the page
     * @param dir made when missing
     * @throws IOException when something cannot be written
     */
    public static void writeAll(
            Evaluation evaluation, List<ScanPreview> scans, boolean simulated, Path dir)
            throws IOException {
        writeAll(evaluation, scans, simulated, pagesLike(evaluation), dir);
    }

    /** Pages for the PDF when nobody says: Letter where the chart's is in inches, else A4. */
    public static PageFormat pagesLike(Evaluation evaluation) {
        return ReportPages.like(evaluation);
    }

    /**
     * As {@link #writeAll(Evaluation, List, boolean, Path)}, on given pages.
     *
     * @param pages that the PDF is laid out for
     */
    public static void writeAll(
            Evaluation evaluation,
            List<ScanPreview> scans,
            boolean simulated,
            PageFormat pages,
            Path dir)
            throws IOException {
        Files.createDirectories(dir);
        ReportView view = ReportPage.view(evaluation, scans, simulated);
        FutureTask<@Nullable Void> pdf = new FutureTask<>(() -> writePdf(view, pages, dir));
        Thread beside = new Thread(pdf, "report.pdf");
        beside.start();
        try {
            write(dir, JSON, EvaluationJson.write(evaluation));
            write(dir, "report.html", ReportPage.write(view));
            write(dir, "readings.csv", ReadingsCsv.write(evaluation));
            write(dir, "readings.txt", ReadingsText.write(evaluation));
        } finally {
            finish(pdf);
        }
    }

    private static @Nullable Void writePdf(ReportView view, PageFormat pages, Path dir)
            throws IOException {
        try (OutputStream out =
                new BufferedOutputStream(Files.newOutputStream(dir.resolve("report.pdf")))) {
            ReportPdf.write(view, pages, out);
        }
        return null;
    }

    /** Waits for what is written beside; its failure is ours. */
    private static void finish(FutureTask<@Nullable Void> task) throws IOException {
        boolean interrupted = false;
        while (true) {
            try {
                task.get();
                break;
            } catch (InterruptedException e) {
                interrupted = true;
            } catch (ExecutionException e) {
                if (e.getCause() instanceof IOException cause) {
                    throw cause;
                }
                throw new IllegalStateException(e.getCause());
            } finally {
                if (interrupted && task.isDone()) {
                    Thread.currentThread().interrupt();
                }
            }
        }
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
            write(dir, CXF, text.get());
        }
    }

    private static void write(Path dir, String name, String text) throws IOException {
        // Not writeString: it refuses the lone halves of characters that JSON files may hold.
        Files.write(dir.resolve(name), text.getBytes(StandardCharsets.UTF_8));
    }
}
