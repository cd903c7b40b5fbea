package org.printassay.layout;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import org.printassay.colour.Lab;
import org.printassay.colour.Rgb8;
import org.printassay.colour.RgbSpace;
import org.printassay.colour.Xyz;
import org.printassay.sheet.Section;

/**
 * The eleven skin-like tones; where they come from is told in the head of {@code skin-like.csv}.
 */
final class SkinTones {
    private SkinTones() {}

    /** How many tones. */
    static int count() {
        return rows().size();
    }

    /** Every tone twice, in the nearest codes of the encoding. */
    static List<Ink> twinned(RgbSpace space) {
        List<Ink> inks = new ArrayList<>();
        for (String[] row : rows()) {
            Lab lab =
                    new Lab(
                            Double.parseDouble(row[1]),
                            Double.parseDouble(row[2]),
                            Double.parseDouble(row[3]));
            Rgb8 rgb =
                    space == RgbSpace.SRGB
                            ? new Rgb8(
                                    Integer.parseInt(row[4]),
                                    Integer.parseInt(row[5]),
                                    Integer.parseInt(row[6]))
                            : codes(space, lab);
            inks.add(new Ink(row[0] + "A", Section.SKIN, rgb));
            inks.add(new Ink(row[0] + "B", Section.SKIN, rgb));
        }
        return inks;
    }

    /** The nearest codes of a colour inside the encoding's gamut. */
    private static Rgb8 codes(RgbSpace space, Lab lab) {
        Xyz xyz = lab.toXyz(Xyz.PCS_WHITE);
        double[] linear = solve(space.matrix(), xyz.x() / 100, xyz.y() / 100, xyz.z() / 100);
        int[] code = new int[3];
        for (int i = 0; i < 3; i++) {
            double inside = Math.min(1, Math.max(0, linear[i]));
            code[i] = (int) Math.round(255 * space.encode(inside));
        }
        return new Rgb8(code[0], code[1], code[2]);
    }

    /** Cramer's rule: linear RGB of XYZ. */
    private static double[] solve(double[] m, double x, double y, double z) {
        double det = det(m[0], m[1], m[2], m[3], m[4], m[5], m[6], m[7], m[8]);
        return new double[] {
            det(x, m[1], m[2], y, m[4], m[5], z, m[7], m[8]) / det,
            det(m[0], x, m[2], m[3], y, m[5], m[6], z, m[8]) / det,
            det(m[0], m[1], x, m[3], m[4], y, m[6], m[7], z) / det
        };
    }

    private static double det(
            double a,
            double b,
            double c,
            double d,
            double e,
            double f,
            double g,
            double h,
            double i) {
        return a * (e * i - f * h) - b * (d * i - f * g) + c * (d * h - e * g);
    }

    private static List<String[]> rows() {
        try (InputStream in = SkinTones.class.getResourceAsStream("skin-like.csv")) {
            if (in == null) {
                throw new IllegalStateException("skin-like.csv is missing from the library");
            }
            BufferedReader lines =
                    new BufferedReader(new InputStreamReader(in, StandardCharsets.UTF_8));
            return lines.lines()
                    .filter(line -> line.startsWith("S"))
                    .map(line -> line.split(",", -1))
                    .toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
