package org.printassay.demo.file;

import java.io.DataOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import org.printassay.demo.flatbed.Exposure;

/** Uncompressed big-endian RGB TIFF (TIFF 6.0, 1992): directory first, then strips of 64 rows. */
final class TiffFile {
    private static final int ROWS_PER_STRIP = 64;
    private static final int ASCII = 2;
    private static final int SHORT = 3;
    private static final int LONG = 4;
    private static final int RATIONAL = 5;
    private static final int UNDEFINED = 7;

    private TiffFile() {}

    @SuppressWarnings("ArrayRecordComponent") // Stays inside this class.
    private record Entry(int tag, int type, int count, byte[] data) {}

    static void write(ScanHeader header, Exposure exposure, OutputStream to) throws IOException {
        if (header.pixelBytes() > 0xF000_0000L) {
            throw new IOException("a scan of more than 4 GB does not fit a TIFF");
        }
        DataOutputStream out = new DataOutputStream(to);
        List<Entry> entries = entries(header, 0);
        int start = 8 + directorySize(entries);
        entries = entries(header, start);
        out.writeBytes("MM");
        out.writeShort(42);
        out.writeInt(8);
        out.writeShort(entries.size());
        int spill = 8 + 2 + 12 * entries.size() + 4;
        for (Entry entry : entries) {
            out.writeShort(entry.tag);
            out.writeShort(entry.type);
            out.writeInt(entry.count);
            if (entry.data.length <= 4) {
                out.write(entry.data);
                out.write(new byte[4 - entry.data.length]);
            } else {
                out.writeInt(spill);
                spill += even(entry.data.length);
            }
        }
        out.writeInt(0);
        for (Entry entry : entries) {
            if (entry.data.length > 4) {
                out.write(entry.data);
                out.write(new byte[entry.data.length & 1]);
            }
        }
        exposure.run((samples, length) -> out.write(samples, 0, length));
        out.flush();
    }

    private static List<Entry> entries(ScanHeader header, int start) {
        long rowBytes = 3L * header.width() * header.bits() / 8;
        int strips = (header.height() + ROWS_PER_STRIP - 1) / ROWS_PER_STRIP;
        int[] offsets = new int[strips];
        int[] counts = new int[strips];
        for (int i = 0; i < strips; i++) {
            int rows = Math.min(ROWS_PER_STRIP, header.height() - i * ROWS_PER_STRIP);
            offsets[i] = (int) (start + (long) i * ROWS_PER_STRIP * rowBytes);
            counts[i] = (int) (rows * rowBytes);
        }
        List<Entry> entries = new ArrayList<>();
        entries.add(longs(256, header.width()));
        entries.add(longs(257, header.height()));
        entries.add(shorts(258, header.bits(), header.bits(), header.bits()));
        entries.add(shorts(259, 1));
        entries.add(shorts(262, 2));
        entries.add(longs(273, offsets));
        entries.add(shorts(277, 3));
        entries.add(longs(278, ROWS_PER_STRIP));
        entries.add(longs(279, counts));
        Double sampling = header.samplesPerInch();
        if (sampling != null) {
            int scaled = (int) Math.round(sampling * 1000);
            entries.add(new Entry(282, RATIONAL, 1, bytes(scaled, 1000)));
            entries.add(new Entry(283, RATIONAL, 1, bytes(scaled, 1000)));
        }
        entries.add(shorts(284, 1));
        if (sampling != null) {
            entries.add(shorts(296, 2));
        }
        byte[] software = "printassay, simulated print room\0".getBytes(StandardCharsets.US_ASCII);
        entries.add(new Entry(305, ASCII, software.length, software));
        byte[] profile = header.profile();
        if (profile != null) {
            entries.add(new Entry(34675, UNDEFINED, profile.length, profile));
        }
        return entries;
    }

    private static int directorySize(List<Entry> entries) {
        int size = 2 + 12 * entries.size() + 4;
        for (Entry entry : entries) {
            size += entry.data.length > 4 ? even(entry.data.length) : 0;
        }
        return size;
    }

    private static int even(int length) {
        return length + (length & 1);
    }

    private static Entry longs(int tag, int... values) {
        return new Entry(tag, LONG, values.length, bytes(values));
    }

    private static Entry shorts(int tag, int... values) {
        byte[] data = new byte[2 * values.length];
        for (int i = 0; i < values.length; i++) {
            data[2 * i] = (byte) (values[i] >> 8);
            data[2 * i + 1] = (byte) values[i];
        }
        return new Entry(tag, SHORT, values.length, data);
    }

    private static byte[] bytes(int... values) {
        byte[] data = new byte[4 * values.length];
        for (int i = 0; i < data.length; i++) {
            data[i] = (byte) (values[i / 4] >> (24 - 8 * (i % 4)));
        }
        return data;
    }
}
