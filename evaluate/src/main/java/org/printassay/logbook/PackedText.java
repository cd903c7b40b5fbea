package org.printassay.logbook;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.zip.Deflater;
import java.util.zip.GZIPInputStream;
import java.util.zip.GZIPOutputStream;
import org.printassay.json.CheckedJson;

/**
 * The text of an evaluation as it is kept: gzip, about a tenth of its size.
 *
 * @param sha256 of the text, hexadecimal
 * @param bytes packed; not copied
 */
@SuppressWarnings("ArrayRecordComponent") // Handed to the database and forgotten.
record PackedText(String sha256, byte[] bytes) {
    static PackedText of(String text) {
        byte[] plain = text.getBytes(StandardCharsets.UTF_8);
        ByteArrayOutputStream out = new ByteArrayOutputStream(plain.length / 6 + 100);
        try (GZIPOutputStream zip = new QuickZip(out)) {
            zip.write(plain);
        } catch (IOException e) {
            throw new IllegalStateException("memory cannot be written", e);
        }
        return new PackedText(sha256(plain), out.toByteArray());
    }

    /**
     * The text.
     *
     * @throws IOException when the bytes are damaged, or not what was packed
     */
    String text() throws IOException {
        int largest = (int) CheckedJson.LARGEST_BYTES;
        try (GZIPInputStream in = new GZIPInputStream(new ByteArrayInputStream(bytes))) {
            byte[] plain = in.readNBytes(largest + 1);
            if (plain.length > largest || !sha256(plain).equals(sha256)) {
                throw new IOException("not the text that was kept");
            }
            return new String(plain, StandardCharsets.UTF_8);
        }
    }

    /** Packs a little less tightly, in a third of the time. */
    private static final class QuickZip extends GZIPOutputStream {
        QuickZip(OutputStream out) throws IOException {
            super(out);
            def.setLevel(Deflater.BEST_SPEED);
        }
    }

    static String sha256(String text) {
        return sha256(text.getBytes(StandardCharsets.UTF_8));
    }

    static String sha256(byte[] bytes) {
        try {
            return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java has SHA-256", e);
        }
    }
}
