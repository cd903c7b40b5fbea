package org.printassay.scan;

import java.awt.Rectangle;
import java.awt.image.Raster;
import java.io.IOException;
import java.nio.file.Path;
import javax.imageio.IIOException;
import javax.imageio.ImageIO;
import javax.imageio.ImageReadParam;
import javax.imageio.ImageReader;
import javax.imageio.stream.FileImageInputStream;
import javax.imageio.stream.ImageInputStream;
import org.printassay.problem.Problem;

/**
 * A JPEG scan, decoded by the JDK in bands of rows that fit in memory. The decoder starts anew for
 * each band, so a large scan takes longer; scans worth measuring are seldom JPEG.
 */
final class JpegScan implements ScanImage {
    private static final long BAND_BYTES = 64L << 20;

    private final Path file;
    private final ScanInfo info;
    private final boolean mirrored;

    private JpegScan(Path file, ScanInfo info, boolean mirrored) {
        this.file = file;
        this.info = info;
        this.mirrored = mirrored;
    }

    static JpegScan open(Path file, String name) throws Problem {
        try {
            JpegHeader header = JpegHeader.read(file, name);
            ScanInfo info =
                    new ScanInfo(
                            name,
                            "JPEG",
                            header.width(),
                            header.height(),
                            header.channels(),
                            8,
                            header.resolution(),
                            header.profile(),
                            true);
            return new JpegScan(file, info, header.mirrored());
        } catch (IOException e) {
            throw Problem.input(name, "cannot be read (" + e.getMessage() + ").", e);
        }
    }

    @Override
    public ScanInfo info() {
        return info;
    }

    @Override
    public void stream(RowSink sink) throws Problem {
        int channels = info.channels();
        int bandRows =
                (int) Math.max(16, Math.min(info.height(), BAND_BYTES / channels / info.width()));
        ImageReader reader = ImageIO.getImageReadersByFormatName("jpeg").next();
        try (ImageInputStream in = new FileImageInputStream(file.toFile())) {
            boolean[] damaged = new boolean[1];
            reader.addIIOReadWarningListener((source, warning) -> damaged[0] = true);
            char[] row = new char[info.width() * channels];
            int[] values = new int[row.length];
            for (int first = 0; first < info.height(); first += bandRows) {
                int count = Math.min(bandRows, info.height() - first);
                in.seek(0);
                reader.setInput(in, true, true);
                ImageReadParam band = reader.getDefaultReadParam();
                band.setSourceRegion(new Rectangle(0, first, info.width(), count));
                Raster raster = reader.read(0, band).getRaster();
                if (damaged[0] || raster.getNumBands() < channels) {
                    throw Problem.input(
                            info.name(),
                            "the JPEG is damaged or ends early. Copy it again, or scan again.");
                }
                for (int y = 0; y < count; y++) {
                    raster.getPixels(0, y, info.width(), 1, values);
                    for (int i = 0; i < row.length; i++) {
                        row[i] = (char) (values[i] * 257);
                    }
                    if (mirrored) {
                        SampleRows.mirror(row, info.width(), channels);
                    }
                    sink.row(first + y, row);
                }
            }
        } catch (IIOException | RuntimeException e) {
            throw Problem.input(
                    info.name(), "the JPEG is damaged. Copy it again, or scan again.", e);
        } catch (IOException e) {
            throw Problem.input(info.name(), "cannot be read (" + e.getMessage() + ").", e);
        } finally {
            reader.dispose();
        }
    }
}
