package org.printassay.scan;

import java.awt.Rectangle;
import java.awt.image.Raster;
import java.io.IOException;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.OptionalInt;
import java.util.Set;
import javax.imageio.IIOException;
import javax.imageio.ImageIO;
import javax.imageio.ImageReadParam;
import javax.imageio.ImageReader;
import javax.imageio.stream.FileImageInputStream;
import javax.imageio.stream.ImageInputStream;
import javax.imageio.stream.ImageInputStreamImpl;
import org.printassay.problem.Problem;

/**
 * A JPEG scan, decoded by the JDK in bands of rows that fit in memory. The decoder starts anew for
 * each band, so a large scan takes longer; scans worth measuring are seldom JPEG.
 */
final class JpegScan implements ScanImage {
    private static final long BAND_BYTES = 64L << 20;

    private final Path file;
    private final ScanInfo info;
    private final JpegHeader header;
    private final OptionalInt transform;

    private JpegScan(Path file, ScanInfo info, JpegHeader header, OptionalInt transform) {
        this.file = file;
        this.info = info;
        this.header = header;
        this.transform = transform;
    }

    static JpegScan open(Path file, String name) throws Problem {
        return open(file, name, OptionalInt.empty());
    }

    /**
     * As {@link #open(Path, String)}, of a JPEG in another file.
     *
     * @param transform the colour transform that that file says was made: 1 YCbCr, 0 none
     */
    static JpegScan open(Path file, String name, OptionalInt transform) throws Problem {
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
                            true,
                            header.codedAs(transform));
            return new JpegScan(file, info, header, header.unsaidTransform(transform));
        } catch (IOException e) {
            throw ScanFiles.unreadable(name, e);
        }
    }

    /**
     * The file as the decoder must see it. Its profile is hidden, for the decoder would convert the
     * codes from it to sRGB: the markers read as ones of no meaning (APP15). A segment that says
     * the colour transform is put in front where the file says none, for the decoder would guess.
     */
    private static final class ForDecoder extends ImageInputStreamImpl {
        private static final int UNUSED_MARKER = 0xef;

        private final FileImageInputStream in;
        private final Set<Long> hidden = new HashSet<>();

        /** Stands for the first bytes of the file, SOI. */
        private final byte[] start;

        ForDecoder(Path file, JpegHeader header, OptionalInt transform) throws IOException {
            this.in = new FileImageInputStream(file.toFile());
            this.start = JpegPieces.start(transform);
            int before = start.length - JpegPieces.SOI_BYTES;
            header.profileMarkers().forEach(marker -> hidden.add(marker + before));
            if (transform.isPresent()) {
                header.jfifMarkers().forEach(marker -> hidden.add(marker + before));
            }
        }

        private void seekIn() throws IOException {
            bitOffset = 0;
            in.seek(streamPos - start.length + JpegPieces.SOI_BYTES);
        }

        @Override
        public int read() throws IOException {
            if (streamPos < start.length) {
                bitOffset = 0;
                return start[(int) streamPos++] & 0xff;
            }
            seekIn();
            int value = in.read();
            if (value >= 0) {
                value = hidden.contains(streamPos) ? UNUSED_MARKER : value;
                streamPos++;
            }
            return value;
        }

        @Override
        public int read(byte[] to, int from, int length) throws IOException {
            if (streamPos < start.length) {
                bitOffset = 0;
                int count = (int) Math.min(length, start.length - streamPos);
                System.arraycopy(start, (int) streamPos, to, from, count);
                streamPos += count;
                return count;
            }
            seekIn();
            int count = in.read(to, from, length);
            for (long marker : hidden) {
                if (marker >= streamPos && marker < streamPos + count) {
                    to[from + (int) (marker - streamPos)] = (byte) UNUSED_MARKER;
                }
            }
            streamPos += Math.max(count, 0);
            return count;
        }

        @Override
        public long length() {
            return in.length() + start.length - JpegPieces.SOI_BYTES;
        }

        @Override
        public void close() throws IOException {
            super.close();
            in.close();
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
        try (ImageInputStream in = new ForDecoder(file, header, transform)) {
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
                    if (header.mirrored()) {
                        SampleRows.mirror(row, info.width(), channels);
                    }
                    sink.row(first + y, row);
                }
            }
        } catch (IIOException | RuntimeException e) {
            throw Problem.input(
                    info.name(), "the JPEG is damaged. Copy it again, or scan again.", e);
        } catch (IOException e) {
            throw ScanFiles.unreadable(info.name(), e);
        } finally {
            reader.dispose();
        }
    }
}
