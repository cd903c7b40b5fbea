package org.printassay.cli;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
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
import org.printassay.raster.SheetPreview;
import org.printassay.raster.SheetTiff;
import org.printassay.sheet.Sheet;

/** The files that a chart comes as. */
final class ChartSet {
    private ChartSet() {}

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
            try (OutputStream out = open(folder.resolve("chart-" + sheet.number() + ".tif"))) {
                SheetTiff.write(sheet, chart.space(), dpi, out);
            }
        }
    }

    private static void writeOthers(
            Chart chart, boolean previews, Optional<String> route, Path folder) throws IOException {
        try (OutputStream out = open(folder.resolve("chart.pdf"))) {
            ChartPdf.write(chart, out);
        }
        for (Sheet sheet : previews ? chart.sheets() : List.<Sheet>of()) {
            try (OutputStream out = open(folder.resolve("preview-" + sheet.number() + ".png"))) {
                SheetPreview.write(chart, sheet, out);
            }
        }
        Files.writeString(folder.resolve("chart.json"), ChartFile.write(chart, route));
        Files.writeString(folder.resolve("chart.txt"), ChartReference.write(chart));
        Files.writeString(folder.resolve("reading-order.txt"), ReadingOrder.write(chart));
        Files.writeString(folder.resolve("how-to-print-and-scan.html"), HowToPage.of(chart));
    }

    private static OutputStream open(Path file) throws IOException {
        return new BufferedOutputStream(Files.newOutputStream(file), 1 << 16);
    }
}
