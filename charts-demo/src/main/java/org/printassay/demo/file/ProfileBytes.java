package org.printassay.demo.file;

import java.io.ByteArrayOutputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.Map;
import org.printassay.demo.flatbed.Encoding;

/**
 * Matrix profiles of the flatbed's encodings (ISO 15076-1:2010, version 4.3): curves as parametric
 * types, so that they are exact in the dark. The scanner's own encoding is of the input class, the
 * others of the display class.
 */
final class ProfileBytes {
    private static final int HEADER = 128;
    private static final double[] PCS = {0.9642, 1, 0.8249};

    private ProfileBytes() {}

    static byte[] of(Encoding encoding) {
        try {
            return write(encoding);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static byte[] write(Encoding encoding) throws IOException {
        Map<String, byte[]> tags = new LinkedHashMap<>();
        tags.put("desc", text(encoding.profileName()));
        tags.put("cprt", text("No copyright, use freely. Simulated."));
        tags.put("wtpt", xyz(PCS[0], PCS[1], PCS[2]));
        // Bradford matrix from D65, as IEC 61966-2-1 and ISO 15076-1 Annex E; the scanner's is D50.
        if (encoding != Encoding.SCANNER) {
            tags.put("chad", adaptation());
        }
        double[] m = encoding.toXyz();
        String[] names = {"r", "g", "b"};
        for (int i = 0; i < 3; i++) {
            tags.put(names[i] + "XYZ", xyz(m[i], m[3 + i], m[6 + i]));
        }
        byte[] curve = curve(encoding);
        for (String name : names) {
            tags.put(name + "TRC", curve);
        }
        return assemble(encoding, tags);
    }

    private static byte[] assemble(Encoding encoding, Map<String, byte[]> tags) throws IOException {
        ByteArrayOutputStream table = new ByteArrayOutputStream();
        ByteArrayOutputStream data = new ByteArrayOutputStream();
        DataOutputStream tableOut = new DataOutputStream(table);
        tableOut.writeInt(tags.size());
        int start = HEADER + 4 + 12 * tags.size();
        IdentityHashMap<byte[], Integer> placed = new IdentityHashMap<>();
        for (Map.Entry<String, byte[]> tag : tags.entrySet()) {
            byte[] body = tag.getValue();
            Integer at = placed.get(body);
            if (at == null) {
                at = start + data.size();
                placed.put(body, at);
                data.write(body);
                data.write(new byte[-body.length & 3]);
            }
            tableOut.writeBytes(tag.getKey());
            tableOut.writeInt(at);
            tableOut.writeInt(body.length);
        }
        ByteArrayOutputStream all = new ByteArrayOutputStream();
        DataOutputStream out = new DataOutputStream(all);
        out.writeInt(start + data.size());
        out.writeInt(0);
        out.writeInt(0x04300000);
        out.writeBytes(encoding == Encoding.SCANNER ? "scnr" : "mntr");
        out.writeBytes("RGB XYZ ");
        for (int part : new int[] {2026, 1, 1, 0, 0, 0}) {
            out.writeShort(part);
        }
        out.writeBytes("acsp");
        out.write(new byte[28]);
        for (double value : PCS) {
            out.writeInt(fixed(value));
        }
        out.write(new byte[HEADER - out.size()]);
        out.write(table.toByteArray());
        out.write(data.toByteArray());
        return all.toByteArray();
    }

    private static byte[] text(String text) throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        DataOutputStream out = new DataOutputStream(bytes);
        byte[] utf16 = text.getBytes(StandardCharsets.UTF_16BE);
        out.writeBytes("mluc");
        out.writeInt(0);
        out.writeInt(1);
        out.writeInt(12);
        out.writeBytes("enUS");
        out.writeInt(utf16.length);
        out.writeInt(28);
        out.write(utf16);
        return bytes.toByteArray();
    }

    private static byte[] xyz(double... values) throws IOException {
        return numbers("XYZ ", values);
    }

    private static byte[] adaptation() throws IOException {
        return numbers(
                "sf32", 1.047882, 0.022918, -0.050217, 0.029587, 0.990479, -0.017059, -0.009247,
                0.015075, 0.751678);
    }

    private static byte[] curve(Encoding encoding) throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        DataOutputStream out = new DataOutputStream(bytes);
        double[] parameters =
                switch (encoding) {
                    case SRGB -> new double[] {2.4, 1 / 1.055, 0.055 / 1.055, 1 / 12.92, 0.04045};
                    case ADOBE_RGB -> new double[] {563.0 / 256};
                    case SCANNER -> new double[] {461.0 / 256};
                };
        out.writeBytes("para");
        out.writeInt(0);
        out.writeShort(parameters.length == 1 ? 0 : 3);
        out.writeShort(0);
        for (double parameter : parameters) {
            out.writeInt(fixed(parameter));
        }
        return bytes.toByteArray();
    }

    private static byte[] numbers(String type, double... values) throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        DataOutputStream out = new DataOutputStream(bytes);
        out.writeBytes(type);
        out.writeInt(0);
        for (double value : values) {
            out.writeInt(fixed(value));
        }
        return bytes.toByteArray();
    }

    /** s15Fixed16Number. */
    private static int fixed(double value) {
        return (int) Math.round(value * 65536);
    }
}
