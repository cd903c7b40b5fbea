package org.printassay.demo.file;

import java.io.ByteArrayOutputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.zip.CRC32;
import java.util.zip.Deflater;
import java.util.zip.DeflaterOutputStream;
import org.printassay.demo.flatbed.Exposure;

/** RGB PNG (ISO/IEC 15948), written as a stream; rows filtered by "Sub". */
final class PngFile {
    private static final byte[] SIGNATURE = {(byte) 0x89, 'P', 'N', 'G', 13, 10, 26, 10};
    private static final int CHUNK = 1 << 16;

    private PngFile() {}

    static void write(ScanHeader header, Exposure exposure, OutputStream to) throws IOException {
        DataOutputStream out = new DataOutputStream(to);
        out.write(SIGNATURE);
        ByteArrayOutputStream body = new ByteArrayOutputStream();
        DataOutputStream fields = new DataOutputStream(body);
        fields.writeInt(header.width());
        fields.writeInt(header.height());
        fields.write(new byte[] {(byte) header.bits(), 2, 0, 0, 0});
        chunk(out, "IHDR", body.toByteArray(), body.size());
        byte[] profile = header.profile();
        if (profile != null) {
            body.reset();
            body.write("simulated\0\0".getBytes(StandardCharsets.ISO_8859_1));
            try (DeflaterOutputStream deflated = new DeflaterOutputStream(body)) {
                deflated.write(profile);
            }
            chunk(out, "iCCP", body.toByteArray(), body.size());
        }
        Double sampling = header.samplesPerInch();
        if (sampling != null) {
            body.reset();
            int perMetre = (int) Math.round(sampling / 0.0254);
            fields.writeInt(perMetre);
            fields.writeInt(perMetre);
            fields.write(1);
            chunk(out, "pHYs", body.toByteArray(), body.size());
        }
        Deflater deflater = new Deflater(Deflater.BEST_SPEED);
        // A search for repeats in noise finds none and takes most of the time of a scan.
        deflater.setStrategy(Deflater.HUFFMAN_ONLY);
        try (OutputStream pixels = new DeflaterOutputStream(new DataChunks(out), deflater, CHUNK)) {
            int rowBytes = 3 * header.width() * header.bits() / 8;
            int pixelBytes = 3 * header.bits() / 8;
            byte[] row = new byte[rowBytes + 1];
            row[0] = 1;
            exposure.run(
                    (samples, length) -> {
                        for (int start = 0; start < length; start += rowBytes) {
                            for (int i = 0; i < rowBytes; i++) {
                                int left = i < pixelBytes ? 0 : samples[start + i - pixelBytes];
                                row[i + 1] = (byte) (samples[start + i] - left);
                            }
                            pixels.write(row);
                        }
                    });
        } finally {
            deflater.end();
        }
        chunk(out, "IEND", new byte[0], 0);
        out.flush();
    }

    private static void chunk(DataOutputStream out, String type, byte[] data, int length)
            throws IOException {
        byte[] name = type.getBytes(StandardCharsets.US_ASCII);
        CRC32 crc = new CRC32();
        crc.update(name);
        crc.update(data, 0, length);
        out.writeInt(length);
        out.write(name);
        out.write(data, 0, length);
        out.writeInt((int) crc.getValue());
    }

    /** Packs what is written into IDAT chunks. */
    private static final class DataChunks extends OutputStream {
        private final DataOutputStream out;

        DataChunks(DataOutputStream out) {
            this.out = out;
        }

        @Override
        public void write(int value) throws IOException {
            write(new byte[] {(byte) value}, 0, 1);
        }

        @Override
        public void write(byte[] data, int offset, int length) throws IOException {
            byte[] part =
                    offset == 0
                            ? data
                            : java.util.Arrays.copyOfRange(data, offset, offset + length);
            chunk(out, "IDAT", part, length);
        }
    }
}
