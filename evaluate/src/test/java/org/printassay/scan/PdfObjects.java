package org.printassay.scan;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.Locale;

/** Numbered objects of a PDF, written by hand (ISO 32000-1, 7.5). */
final class PdfObjects {
    private final ByteArrayOutputStream out = new ByteArrayOutputStream();
    private final StringBuilder table = new StringBuilder("0000000000 65535 f \n");
    private int count = 1;

    PdfObjects() {
        text("%PDF-1.7\n");
    }

    private void text(String text) {
        out.writeBytes(text.getBytes(StandardCharsets.ISO_8859_1));
    }

    void add(String dictionary) {
        begin();
        text(dictionary + "\nendobj\n");
    }

    void add(String dictionary, byte[] stream) {
        begin();
        text(dictionary + " /Length " + stream.length + ">>\nstream\n");
        out.writeBytes(stream);
        text("\nendstream\nendobj\n");
    }

    private void begin() {
        table.append(String.format(Locale.ROOT, "%010d 00000 n \n", out.size()));
        text(count++ + " 0 obj\n");
    }

    void write(OutputStream to) throws IOException {
        int start = out.size();
        text("xref\n0 " + count + "\n" + table);
        text("trailer\n<</Size " + count + " /Root 1 0 R>>\nstartxref\n" + start + "\n%%EOF\n");
        out.writeTo(to);
    }
}
