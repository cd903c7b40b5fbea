package org.printassay.cli;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import org.printassay.chart.Chart;
import org.printassay.chart.ChartFile;
import org.printassay.chart.ChartReference;
import org.printassay.chart.ReadingOrder;
import org.printassay.guide.HowToPage;
import org.printassay.pdf.ChartPdf;
import org.printassay.problem.Problem;
import org.printassay.raster.SheetPreview;
import org.printassay.raster.SheetTiff;
import org.printassay.sheet.Sheet;

/** The files that a chart comes as. */
final class ChartSet {
    /** Prints of one chart that may be made at once. */
    static final int MOST_PRINTS = 99;

    private static final String FILE = "chart.json";
    private static final String PDF = "chart.pdf";
    private static final String REFERENCE = "chart.txt";
    private static final String ORDER = "reading-order.txt";
    private static final String HOW_TO = "how-to-print-and-scan.html";

    private ChartSet() {}

    /** The folder of one of several prints. */
    static Path print(Path folder, int print) {
        return folder.resolve("print-" + print);
    }

    /** The chart files in a folder and in those of its prints. */
    static List<Path> chartFiles(Path folder) {
        List<Path> there = new ArrayList<>(List.of(folder.resolve(FILE)));
        for (int print = 1; print <= MOST_PRINTS; print++) {
            there.add(print(folder, print).resolve(FILE));
        }
        there.removeIf(file -> !Files.isRegularFile(file));
        return there;
    }

    /**
     * The files of other charts in a folder and in those of its prints, as far as the chart files
     * there tell them: files of other names are somebody's own. Those of the same chart stay,
     * however many prints are made now.
     */
    static List<Path> others(Path folder, Chart chart) {
        List<Path> files = new ArrayList<>();
        for (Path file : chartFiles(folder)) {
            try {
                Chart there = ChartFile.read(file);
                if (!there.id().equals(chart.id())) {
                    names(there).forEach(name -> files.add(file.resolveSibling(name)));
                }
            } catch (Problem e) {
                // Not a chart file of ours: nothing tells what belongs to it.
            }
        }
        files.removeIf(file -> !Files.isRegularFile(file));
        return files;
    }

    private static List<String> names(Chart chart) {
        List<String> names = new ArrayList<>(List.of(FILE, PDF, REFERENCE, ORDER, HOW_TO));
        for (Sheet sheet : chart.sheets()) {
            names.add(tiff(sheet));
            names.add(preview(sheet));
        }
        return names;
    }

    private static String tiff(Sheet sheet) {
        return "chart-" + sheet.number() + ".tif";
    }

    private static String preview(Sheet sheet) {
        return "preview-" + sheet.number() + ".png";
    }

    /**
     * Writes {@code chart.pdf}, a TIFF for each sheet, {@code chart.json}, {@code chart.txt} and
     * {@code how-to-print-and-scan.html}.
     *
     * @param dpi samples an inch of the TIFFs
     * @param route how the print is to be made, kept in the chart file
     * @param previews whether a picture of each sheet is written besides, {@code preview-1.png}
     */
    static void write(Chart chart, int dpi, boolean previews, Optional<String> route, Path folder)
            throws IOException {
        // Drawing the TIFFs takes as long as all else together.
        CompletableFuture<Void> tiffs =
                CompletableFuture.runAsync(
                        () -> {
                            try {
                                writeTiffs(chart, dpi, folder);
                            } catch (IOException e) {
                                throw new UncheckedIOException(e);
                            }
                        });
        try {
            writeOthers(chart, previews, route, folder);
        } finally {
            join(tiffs);
        }
    }

    private static void join(CompletableFuture<Void> tiffs) throws IOException {
        try {
            tiffs.join();
        } catch (CompletionException e) {
            if (e.getCause() instanceof UncheckedIOException failed) {
                throw failed.getCause();
            }
            throw e;
        }
    }

    private static void writeTiffs(Chart chart, int dpi, Path folder) throws IOException {
        for (Sheet sheet : chart.sheets()) {
            try (OutputStream out = open(folder.resolve(tiff(sheet)))) {
                SheetTiff.write(sheet, chart.space(), dpi, out);
            }
        }
    }

    private static void writeOthers(
            Chart chart, boolean previews, Optional<String> route, Path folder) throws IOException {
        try (OutputStream out = open(folder.resolve(PDF))) {
            ChartPdf.write(chart, out);
        }
        for (Sheet sheet : previews ? chart.sheets() : List.<Sheet>of()) {
            try (OutputStream out = open(folder.resolve(preview(sheet)))) {
                SheetPreview.write(chart, sheet, out);
            }
        }
        Files.writeString(folder.resolve(FILE), ChartFile.write(chart, route));
        Files.writeString(folder.resolve(REFERENCE), ChartReference.write(chart));
        Files.writeString(folder.resolve(ORDER), ReadingOrder.write(chart));
        Files.writeString(folder.resolve(HOW_TO), HowToPage.of(chart));
    }

    private static OutputStream open(Path file) throws IOException {
        return new BufferedOutputStream(Files.newOutputStream(file), 1 << 16);
    }
}
