package org.printassay.colour;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;

/** A resource table of weights every 10 nm: comments, a header line, wavelength first. */
final class WeightTable {
    /** ASTM E308 weights: X, Y, Z. */
    static final WeightTable D50_2_DEGREE = new WeightTable("weights-d50-2deg-10nm.csv");

    /** ISO 5-3 spectral products: visual, status A red green blue, status T red green blue. */
    static final WeightTable DENSITY = new WeightTable("density-products-10nm.csv");

    private final int[] wavelengths;
    private final double[][] weights;

    private WeightTable(String resource) {
        List<String[]> rows = new ArrayList<>();
        for (String line : text(resource).lines().toList()) {
            if (!line.startsWith("#") && !line.startsWith("nm")) {
                rows.add(line.split(",", -1));
            }
        }
        wavelengths = new int[rows.size()];
        weights = new double[rows.size()][];
        for (int i = 0; i < wavelengths.length; i++) {
            String[] cells = rows.get(i);
            wavelengths[i] = Integer.parseInt(cells[0]);
            weights[i] = new double[cells.length - 1];
            for (int c = 1; c < cells.length; c++) {
                weights[i][c - 1] = Double.parseDouble(cells[c]);
            }
        }
    }

    /** Weighted sums of a spectrum, one a column; its end bands stand for what lies beyond them. */
    double[] sums(Spectrum spectrum) {
        double[] sums = new double[weights[0].length];
        for (int i = 0; i < wavelengths.length; i++) {
            double factor = spectrum.atTens(wavelengths[i]);
            for (int c = 0; c < sums.length; c++) {
                sums[c] += weights[i][c] * factor;
            }
        }
        return sums;
    }

    /** Sum of one column: what a perfect diffuser gives. */
    double total(int column) {
        double total = 0;
        for (double[] row : weights) {
            total += row[column];
        }
        return total;
    }

    private static String text(String resource) {
        try (InputStream in = WeightTable.class.getResourceAsStream(resource)) {
            if (in == null) {
                throw new IllegalStateException("resource missing: " + resource);
            }
            return new String(in.readAllBytes(), StandardCharsets.US_ASCII);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
