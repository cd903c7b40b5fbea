package org.printassay.demo.file;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import org.printassay.demo.flatbed.Exposure;
import org.printassay.demo.flatbed.Flatbed;
import org.printassay.demo.flatbed.ScanFile;
import org.printassay.demo.print.Print;
import org.printassay.problem.Problem;

/** Makes a scan and writes it, row by row. */
public final class ScanWriter {
    private static final double WRONG_SAMPLING = 72;

    private ScanWriter() {}

    /**
     * Scans a print into a file.
     *
     * @param seed decides noise, dirt and the carriage's phase
     * @param to the file; overwritten
     * @throws Problem when the file cannot be written
     */
    public static void write(Print print, Flatbed flatbed, long seed, Path to) throws Problem {
        Exposure exposure = new Exposure(print, flatbed, seed);
        ScanHeader header =
                new ScanHeader(
                        exposure.frame().width(),
                        exposure.frame().height(),
                        flatbed.file().bits(),
                        declared(flatbed),
                        flatbed.file().profile()
                                ? ProfileBytes.of(flatbed.sensor().encoding())
                                : null);
        try (OutputStream out = new BufferedOutputStream(Files.newOutputStream(to), 1 << 16)) {
            switch (flatbed.file().format()) {
                case TIFF -> TiffFile.write(header, exposure, out);
                case PNG -> PngFile.write(header, exposure, out);
                case JPEG -> JpegFile.write(header, exposure, flatbed.file().jpegQuality(), out);
            }
        } catch (IOException e) {
            throw Problem.output(
                    String.valueOf(to.getFileName()),
                    String.format(
                            Locale.ROOT,
                            "cannot be written (%s). Check the folder and the free space.",
                            e.getMessage()));
        }
    }

    private static @org.jspecify.annotations.Nullable Double declared(Flatbed flatbed) {
        return switch (flatbed.file().resolution()) {
            case RIGHT -> flatbed.samplesPerInch();
            case WRONG -> WRONG_SAMPLING;
            case ABSENT -> null;
        };
    }

    /** File name ending of a format, with the dot. */
    public static String ending(ScanFile.Format format) {
        return switch (format) {
            case TIFF -> ".tif";
            case PNG -> ".png";
            case JPEG -> ".jpg";
        };
    }
}
