package org.printassay.colour;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;

/** A resource table of numbers: comments, a header line that begins with nm, rows. */
final class NumberTable {
    private NumberTable() {}

    /** All rows, wavelength first. */
    static double[][] rows(String resource) {
        return text(resource)
                .lines()
                .filter(line -> !line.startsWith("#") && !line.startsWith("nm"))
                .map(
                        line ->
                                Arrays.stream(line.split(",", -1))
                                        .mapToDouble(Double::parseDouble)
                                        .toArray())
                .toArray(double[][]::new);
    }

    private static String text(String resource) {
        try (InputStream in = NumberTable.class.getResourceAsStream(resource)) {
            if (in == null) {
                throw new IllegalStateException("resource missing: " + resource);
            }
            return new String(in.readAllBytes(), StandardCharsets.US_ASCII);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
