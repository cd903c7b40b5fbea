package org.printassay.demo;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import org.printassay.chart.Chart;
import org.printassay.colour.RgbSpace;
import org.printassay.demo.file.MeasurementText;
import org.printassay.demo.file.ScanWriter;
import org.printassay.demo.file.TruthFile;
import org.printassay.demo.flatbed.Flatbed;
import org.printassay.demo.paper.PaperModel;
import org.printassay.demo.print.Print;
import org.printassay.demo.print.Printing;
import org.printassay.demo.print.RenderedSheet;
import org.printassay.problem.Problem;
import org.printassay.sheet.Sheet;

/**
 * The simulated print room: prints a real PDF on a described paper, scans the print with a
 * described flatbed, measures it. Everything follows from the seeds; same seeds, same bytes.
 */
public final class PrintRoom {
    /** One reading of the simulated instrument repeats to this, L*, a* and b* each. */
    public static final double INSTRUMENT_NOISE = 0.05;

    private PrintRoom() {}

    /** Renders a page for printing: once for any number of prints. */
    public static RenderedSheet render(Path pdf, int page) throws Problem {
        try {
            return RenderedSheet.of(
                    Files.readAllBytes(pdf), page, RenderedSheet.USUAL_DOTS_PER_INCH);
        } catch (IOException e) {
            throw Problem.input(String.valueOf(pdf.getFileName()), "cannot be read.", e);
        }
    }

    /**
     * Prints a sheet of a chart.
     *
     * @param rendered the sheet's page of the chart's PDF
     * @param sheet sheet number from 1
     * @param seed decides spread, grain and drift of this one print
     */
    public static Print print(
            RenderedSheet rendered,
            Chart chart,
            int sheet,
            PaperModel paper,
            Printing printing,
            long seed)
            throws Problem {
        for (Sheet candidate : chart.sheets()) {
            if (candidate.number() == sheet) {
                return Print.of(rendered, chart.space(), candidate, paper, printing, seed);
            }
        }
        throw Problem.usage("The chart has no sheet " + sheet + ".");
    }

    /** Prints any page in sRGB, without knowing what is on it. */
    public static Print printPage(
            RenderedSheet rendered, PaperModel paper, Printing printing, long seed) {
        return Print.ofPage(rendered, RgbSpace.SRGB, paper, printing, seed);
    }

    /**
     * Scans a print.
     *
     * @param seed decides noise, dirt and the carriage's phase of this one scan
     * @param to scan file, written in the flatbed's format whatever its ending
     */
    public static void scan(Print print, Flatbed flatbed, long seed, Path to) throws Problem {
        ScanWriter.write(print, flatbed, seed, to);
    }

    /** Measures a print with the simulated instrument; ISO 28178 text. */
    public static void measure(Print print, long seed, Path to) throws Problem {
        MeasurementText.write(print, INSTRUMENT_NOISE, seed, to);
    }

    /**
     * The whole job: prints one sheet, scans and measures it, into a folder that is made when
     * missing: the scan, {@code measurement.txt} and {@code truth.json}.
     *
     * @param scanName name of the scan file without its ending
     * @return the scan file
     */
    public static Path job(
            RenderedSheet rendered,
            Chart chart,
            int sheet,
            PaperModel paper,
            Printing printing,
            Flatbed flatbed,
            long seed,
            Path folder,
            String scanName)
            throws Problem {
        try {
            Files.createDirectories(folder);
        } catch (IOException e) {
            throw Problem.output(String.valueOf(folder.getFileName()), "cannot be made.");
        }
        Print print = print(rendered, chart, sheet, paper, printing, seed);
        Path scan = folder.resolve(scanName + ScanWriter.ending(flatbed.file().format()));
        scan(print, flatbed, seed + 1, scan);
        measure(print, seed + 2, folder.resolve("measurement.txt"));
        Map<String, Flatbed> scans = new LinkedHashMap<>();
        scans.put(String.valueOf(scan.getFileName()), flatbed);
        TruthFile.write(print, scans, folder.resolve("truth.json"));
        return scan;
    }
}
