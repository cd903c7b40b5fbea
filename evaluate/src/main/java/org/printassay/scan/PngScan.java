package org.printassay.scan;

import java.io.EOFException;
import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.channels.FileChannel;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Optional;
import java.util.zip.CRC32;
import java.util.zip.InflaterInputStream;
import java.util.zip.ZipException;
import org.printassay.problem.Problem;

/** A PNG scan (ISO/IEC 15948), streamed; interlaced ones are put together in memory. */
final class PngScan implements ScanImage {
    private static final long LARGEST_INTERLACED = 256L << 20;
    private static final int[][] PASSES = {
        {0, 0, 8, 8},
        {4, 0, 8, 8},
        {0, 4, 4, 8},
        {2, 0, 4, 4},
        {0, 2, 2, 4},
        {1, 0, 2, 2},
        {0, 1, 1, 2}
    };

    private final Path file;
    private final ScanInfo info;
    private final PngHeader header;

    private PngScan(Path file, ScanInfo info, PngHeader header) {
        this.file = file;
        this.info = info;
        this.header = header;
    }

    static PngScan open(Path file, String name) throws Problem {
        try (FileChannel channel = FileChannel.open(file, StandardOpenOption.READ)) {
            PngHeader header = PngHeader.read(channel, name);
            ScanInfo info =
                    new ScanInfo(
                            name,
                            "PNG",
                            header.width(),
                            header.height(),
                            header.channels(),
                            header.bits(),
                            header.resolution(),
                            Optional.ofNullable(header.profile()).map(PngHeader.Blob::bytes),
                            false,
                            Optional.empty(),
                            header.gamma());
            return new PngScan(file, info, header);
        } catch (IOException e) {
            throw ScanFiles.unreadable(name, e);
        }
    }

    @Override
    public ScanInfo info() {
        return info;
    }

    @Override
    public void stream(RowSink sink) throws Problem {
        try (FileChannel channel = FileChannel.open(file, StandardOpenOption.READ);
                InputStream data =
                        new InflaterInputStream(
                                new PngData(channel, header.dataOffset(), info.name()))) {
            if (header.interlaced()) {
                streamInterlaced(data, sink);
            } else {
                PngRows rows = new PngRows(data, header, header.width());
                char[] row = new char[header.width() * header.channels()];
                for (int y = 0; y < header.height(); y++) {
                    rows.next(row, 0, header.channels(), y);
                    sink.row(y, row);
                }
            }
        } catch (EOFException e) {
            throw ScanFiles.endsEarly(info.name(), "its image data are not complete");
        } catch (ZipException e) {
            throw Problem.input(
                    info.name(), "its compressed data are damaged. Copy or scan it again.", e);
        } catch (IOException e) {
            throw ScanFiles.unreadable(info.name(), e);
        }
    }

    private void streamInterlaced(InputStream data, RowSink sink) throws IOException, Problem {
        int channels = header.channels();
        long samples = (long) header.width() * header.height() * channels;
        if (2 * samples > LARGEST_INTERLACED) {
            throw Problem.input(
                    info.name(),
                    "is interlaced and too large for that. Save it without interlacing.");
        }
        char[] image = new char[(int) samples];
        for (int[] pass : PASSES) {
            int wide = (header.width() - pass[0] + pass[2] - 1) / pass[2];
            int high = (header.height() - pass[1] + pass[3] - 1) / pass[3];
            if (wide <= 0 || high <= 0) {
                continue;
            }
            PngRows rows = new PngRows(data, header, wide);
            for (int y = 0; y < high; y++) {
                int at = ((pass[1] + y * pass[3]) * header.width() + pass[0]) * channels;
                rows.next(image, at, pass[2] * channels, y);
            }
        }
        char[] row = new char[header.width() * channels];
        for (int y = 0; y < header.height(); y++) {
            System.arraycopy(image, y * row.length, row, 0, row.length);
            sink.row(y, row);
        }
    }

    /** The data of all IDAT chunks as one stream, each chunk's check sum held against its bytes. */
    static final class PngData extends InputStream {
        private static final int IDAT = 0x49444154;

        private final InputStream in;
        private final String name;
        private final CRC32 crc = new CRC32();
        private int left;
        private boolean ended;

        PngData(FileChannel channel, long offset, String name) throws IOException {
            this.in = new FileRange(channel, offset, channel.size() - offset);
            this.name = name;
            begin();
        }

        private void begin() throws IOException {
            byte[] head = in.readNBytes(8);
            if (head.length < 8) {
                throw new EOFException("in " + name);
            }
            ByteBuffer buffer = ByteBuffer.wrap(head).order(ByteOrder.BIG_ENDIAN);
            left = buffer.getInt();
            ended = buffer.getInt() != IDAT || left < 0;
            crc.reset();
            crc.update(head, 4, 4);
        }

        @Override
        public int read() throws IOException {
            byte[] one = new byte[1];
            return read(one, 0, 1) < 0 ? -1 : one[0] & 0xff;
        }

        @Override
        public int read(byte[] into, int offset, int length) throws IOException {
            while (left == 0 && !ended) {
                byte[] sum = in.readNBytes(4);
                if (sum.length < 4) {
                    throw new EOFException("in " + name);
                }
                if (ByteBuffer.wrap(sum).getInt() != (int) crc.getValue()) {
                    throw new ZipException("check sum of a chunk is wrong");
                }
                begin();
            }
            if (ended) {
                return -1;
            }
            int got = in.read(into, offset, Math.min(length, left));
            if (got < 0) {
                throw new EOFException("in " + name);
            }
            crc.update(into, offset, got);
            left -= got;
            return got;
        }
    }
}
