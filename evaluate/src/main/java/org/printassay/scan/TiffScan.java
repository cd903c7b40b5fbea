package org.printassay.scan;

import java.awt.Rectangle;
import java.io.EOFException;
import java.io.IOException;
import java.io.InputStream;
import java.nio.channels.FileChannel;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.zip.InflaterInputStream;
import java.util.zip.ZipException;
import org.printassay.problem.Problem;

/**
 * A TIFF 6.0 or BigTIFF scan, streamed. Strips are decoded as streams, row by row, so that a scan
 * that is one giant strip needs no more memory than one cut into many.
 */
final class TiffScan implements ScanImage {
    /**
     * A tile and a band of tiles that are held together, bytes. Each is one array, and such arrays
     * must fit into the old generation of the heap beside all else: two thirds of the 640 MB that
     * the program is started with.
     */
    private static final long LARGEST_PIECES = 320L << 20;

    /** Largest JPEG piece as it is coded, bytes; a few copies of it are held. */
    private static final long LARGEST_JPEG = 96L << 20;

    /** Tables and frame of a JPEG piece stand before its image data, within so many bytes. */
    private static final long LONGEST_JPEG_HEAD = 1 << 20;

    /** Rows of a JPEG strip are decoded in bands of about this many bytes. */
    private static final long BAND_BYTES = 64L << 20;

    private final Path file;
    private final ScanInfo info;
    private final TiffFormat format;

    private TiffScan(Path file, ScanInfo info, TiffFormat format) {
        this.file = file;
        this.info = info;
        this.format = format;
    }

    static TiffScan open(Path file, String name) throws Problem {
        try (FileChannel channel = FileChannel.open(file, StandardOpenOption.READ)) {
            TiffDirectory directory = TiffDirectory.onlyPage(channel, name);
            TiffFormat format = TiffFormat.of(directory, name, channel.size());
            ScanInfo info =
                    new ScanInfo(
                            name,
                            "TIFF",
                            format.width(),
                            format.height(),
                            format.channels(),
                            format.bits(),
                            TiffFormat.resolution(directory),
                            directory.blob(TiffDirectory.ICC_PROFILE, 64 << 20),
                            format.compression() == TiffFormat.Compression.JPEG,
                            coding(channel, name, format));
            return new TiffScan(file, info, format);
        } catch (IOException e) {
            throw ScanFiles.unreadable(name, e);
        }
    }

    /** How coarsely the first JPEG piece is coded; the others share its tables or are like it. */
    private static Optional<LossyCoding> coding(FileChannel channel, String name, TiffFormat format)
            throws IOException {
        if (format.compression() != TiffFormat.Compression.JPEG) {
            return Optional.empty();
        }
        long offset = format.offsets().at(0);
        long length = Math.min(LONGEST_JPEG_HEAD, format.lengths().at(0));
        if (offset < 0 || length < 0 || offset > channel.size()) {
            return Optional.empty();
        }
        byte[] head = new FileRange(channel, offset, length).readAllBytes();
        try {
            byte[] jpeg = JpegPieces.withTables(format.jpegTables(), head, format.jpegTransform());
            // Planes of their own are coded each by itself.
            return JpegFrame.of(name, jpeg)
                    .coding(OptionalInt.of(format.jpegTransform()))
                    .map(c -> c.withRgb(c.ofRgb() || format.planes() == 3));
        } catch (Problem e) {
            return Optional.empty(); // told when it is read
        }
    }

    @Override
    public ScanInfo info() {
        return info;
    }

    @Override
    public void stream(RowSink sink) throws Problem {
        RowSink target = sink;
        if (format.mirrored()) {
            target = new Mirrored(sink);
        }
        try (FileChannel channel = FileChannel.open(file, StandardOpenOption.READ)) {
            if (format.tiled()) {
                streamTiles(channel, target);
            } else {
                streamStrips(channel, target);
            }
        } catch (EOFException e) {
            throw ScanFiles.endsEarly(info.name(), "its image data are not complete");
        } catch (ZipException e) {
            throw Problem.input(
                    info.name(),
                    "its compressed data are damaged. Copy the file again, or scan again.",
                    e);
        } catch (IOException e) {
            throw ScanFiles.unreadable(info.name(), e);
        }
    }

    private void streamStrips(FileChannel channel, RowSink sink) throws IOException, Problem {
        int channels = format.channels();
        int planes = format.planes();
        int perStrip = format.pieceHeight();
        int strips = format.piecesDown();
        char[] row = new char[format.width() * channels];
        SampleRows rows = format.sampleRows(format.width());
        byte[] packed = new byte[rows.rowBytes()];
        char[] opaque = new char[format.alphaApart() ? format.width() : 0];
        for (int strip = 0; strip < strips; strip++) {
            int first = strip * perStrip;
            int count = Math.min(perStrip, format.height() - first);
            if (format.compression() == TiffFormat.Compression.JPEG) {
                streamJpegStrip(channel, strip, count, sink);
                continue;
            }
            InputStream[] streams = new InputStream[format.alphaApart() ? planes + 1 : planes];
            for (int i = 0; i < streams.length; i++) {
                int plane = i < planes ? i : format.alpha();
                streams[i] = decoded(channel, plane * strips + strip);
            }
            for (int y = 0; y < count; y++) {
                if (format.compression() == TiffFormat.Compression.NONE && !sink.wants(first + y)) {
                    passOver(streams, packed.length, first + y);
                    continue;
                }
                for (int plane = 0; plane < planes; plane++) {
                    demand(streams[plane], packed, packed.length, first + y);
                    rows.unpack(packed, 0, row, plane, format.width(), channels);
                }
                if (format.alphaApart()) {
                    demand(streams[planes], packed, packed.length, first + y);
                    rows.unpack(packed, 0, opaque, 0, format.width(), 1);
                    SampleRows.divide(row, opaque, channels, format.bits());
                }
                sink.row(first + y, row);
            }
            for (InputStream stream : streams) {
                stream.close();
            }
        }
    }

    /** Planes of a strip in step, each in bands of rows, so that one giant strip fits in memory. */
    private void streamJpegStrip(FileChannel channel, int strip, int count, RowSink sink)
            throws IOException, Problem {
        int channels = format.channels();
        SampleRows rows = format.sampleRows(format.width());
        char[] row = new char[format.width() * channels];
        byte[][] coded = new byte[format.planes()][];
        for (int plane = 0; plane < coded.length; plane++) {
            coded[plane] = jpeg(channel, plane * format.piecesDown() + strip);
        }
        long rowBytes = (long) rows.rowBytes() * coded.length;
        int bandRows = (int) Math.max(16, Math.min(count, BAND_BYTES / rowBytes));
        byte[][] pixels = new byte[coded.length][];
        for (int from = 0; from < count; from += bandRows) {
            Rectangle band =
                    new Rectangle(0, from, format.width(), Math.min(bandRows, count - from));
            for (int plane = 0; plane < coded.length; plane++) {
                pixels[plane] = decodeJpeg(coded[plane], band);
            }
            for (int y = 0; y < band.height; y++) {
                for (int plane = 0; plane < coded.length; plane++) {
                    int at = y * rows.rowBytes();
                    rows.unpack(pixels[plane], at, row, plane, format.width(), channels);
                }
                sink.row(strip * format.pieceHeight() + from + y, row);
            }
        }
    }

    private void streamTiles(FileChannel channel, RowSink sink) throws IOException, Problem {
        int channels = format.channels();
        int across = format.piecesAcross();
        int down = format.piecesDown();
        int tileWidth = format.pieceWidth();
        int tileHeight = format.pieceHeight();
        SampleRows rows = format.sampleRows(tileWidth);
        long tileBytes = (long) rows.rowBytes() * tileHeight;
        long bandPixels = (long) format.width() * Math.min(tileHeight, format.height());
        long bandSamples = bandPixels * (format.alphaApart() ? channels + 1 : channels);
        boolean jpeg = format.compression() == TiffFormat.Compression.JPEG;
        // A JPEG is decoded into a picture of the decoder's own, and copied.
        long held = (jpeg ? 2 : 1) * tileBytes + Character.BYTES * bandSamples;
        if (held > LARGEST_PIECES) {
            throw Problem.input(
                    info.name(), "its tiles are too large. Save the scan anew, in strips.");
        }
        byte[] tile = new byte[jpeg ? 0 : (int) tileBytes];
        char[] band = new char[(int) bandPixels * channels];
        char[] opaque = new char[format.alphaApart() ? (int) bandPixels : 0];
        char[] row = new char[format.width() * channels];
        char[] opaqueRow = new char[format.alphaApart() ? format.width() : 0];
        for (int ty = 0; ty < down; ty++) {
            int first = ty * tileHeight;
            int count = Math.min(tileHeight, format.height() - first);
            int planes = format.planes();
            for (int i = 0; i < (format.alphaApart() ? planes + 1 : planes); i++) {
                boolean colour = i < planes;
                int plane = colour ? i : format.alpha();
                for (int tx = 0; tx < across; tx++) {
                    int piece = (plane * down + ty) * across + tx;
                    byte[] pixels = tile;
                    if (jpeg) {
                        pixels =
                                decodeJpeg(
                                        jpeg(channel, piece), new Rectangle(tileWidth, tileHeight));
                    } else {
                        try (InputStream in = decoded(channel, piece)) {
                            demand(in, tile, tile.length, first);
                        }
                    }
                    int left = tx * tileWidth;
                    int wide = Math.min(tileWidth, format.width() - left);
                    for (int y = 0; y < count; y++) {
                        int pixel = y * format.width() + left;
                        int from = y * rows.rowBytes();
                        if (colour) {
                            rows.unpack(
                                    pixels, from, band, pixel * channels + plane, wide, channels);
                        } else {
                            rows.unpack(pixels, from, opaque, pixel, wide, 1);
                        }
                    }
                }
            }
            for (int y = 0; y < count; y++) {
                System.arraycopy(band, y * row.length, row, 0, row.length);
                if (format.alphaApart()) {
                    System.arraycopy(opaque, y * opaqueRow.length, opaqueRow, 0, opaqueRow.length);
                    SampleRows.divide(row, opaqueRow, channels, format.bits());
                }
                sink.row(first + y, row);
            }
        }
    }

    /** A piece unpacked; close it soon, for Deflate holds memory outside the heap. */
    private InputStream decoded(FileChannel channel, int piece) throws IOException, Problem {
        InputStream raw = range(channel, piece);
        return switch (format.compression()) {
            case NONE -> raw;
            case LZW -> new LzwStream(raw);
            case DEFLATE -> new InflaterInputStream(raw);
            case PACK_BITS -> new PackBitsStream(raw);
            case JPEG -> throw new IllegalStateException("JPEG pieces are decoded whole");
        };
    }

    private FileRange range(FileChannel channel, int piece) throws IOException, Problem {
        long offset = format.offsets().at(piece);
        long length = format.lengths().at(piece);
        if (offset < 0 || length < 0 || offset > channel.size()) {
            throw ScanFiles.endsEarly(
                    info.name(), "its piece " + piece + " should start at byte " + offset);
        }
        return new FileRange(channel, offset, Math.min(length, channel.size() - offset));
    }

    /** A piece as a JPEG stream that stands alone. */
    private byte[] jpeg(FileChannel channel, int piece) throws IOException, Problem {
        if (format.lengths().at(piece) > LARGEST_JPEG) {
            throw Problem.input(
                    info.name(),
                    "its JPEG pieces are too large. Save the scan with another compression.");
        }
        byte[] data = range(channel, piece).readAllBytes();
        return JpegPieces.withTables(format.jpegTables(), data, format.jpegTransform());
    }

    private byte[] decodeJpeg(byte[] jpeg, Rectangle part) throws IOException, Problem {
        return JpegPieces.decode(info.name(), jpeg, part, format.stored());
    }

    /** Mirrors rows on their way to a sink. */
    private final class Mirrored implements RowSink {
        private final RowSink sink;

        Mirrored(RowSink sink) {
            this.sink = sink;
        }

        @Override
        public void row(int y, char[] samples) {
            SampleRows.mirror(samples, info.width(), info.channels());
            sink.row(y, samples);
        }

        @Override
        public boolean wants(int y) {
            return sink.wants(y);
        }
    }

    private static void passOver(InputStream[] streams, int length, int row) throws IOException {
        for (InputStream stream : streams) {
            if (stream.skip(length) < length) {
                throw new EOFException("row " + row + " is not complete");
            }
        }
    }

    private static void demand(InputStream in, byte[] into, int length, int row)
            throws IOException {
        int done = 0;
        while (done < length) {
            int got = in.read(into, done, length - done);
            if (got < 0) {
                throw new EOFException("row " + row + " is not complete");
            }
            done += got;
        }
    }
}
