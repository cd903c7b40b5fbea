package org.printassay.measurement;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.StringJoiner;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import org.printassay.colour.Lab;
import org.printassay.colour.Rgb8;
import org.printassay.colour.Spectrum;
import org.printassay.colour.Xyz;

/**
 * Writes ISO 28178 text: chart references (codes and aims) and readings. Same input, same bytes in
 * every locale.
 */
public final class MeasurementWriter {
    /** Keywords the standard defines; others are announced by KEYWORD lines. */
    private static final List<String> STANDARD_KEYWORDS =
            List.of(
                    "ORIGINATOR",
                    "DESCRIPTOR",
                    "CREATED",
                    "MANUFACTURER",
                    "INSTRUMENTATION",
                    "MEASUREMENT_SOURCE",
                    "PRINT_CONDITIONS",
                    "SERIAL",
                    "MATERIAL",
                    "PROD_DATE");

    private MeasurementWriter() {}

    /**
     * One patch.
     *
     * @param id its name
     * @param rgb codes
     * @param lab CIELAB, D50, or null
     * @param xyz Y = 100 for the perfect diffuser, or null
     * @param spread standard deviation of L*, a* and b*, or null
     * @param spectrum reflectance, or null
     */
    public record Row(
            String id,
            Rgb8 rgb,
            @Nullable Lab lab,
            @Nullable Xyz xyz,
            @Nullable Lab spread,
            @Nullable Spectrum spectrum) {
        /** A patch without spectrum. */
        public Row(
                String id, Rgb8 rgb, @Nullable Lab lab, @Nullable Xyz xyz, @Nullable Lab spread) {
            this(id, rgb, lab, xyz, spread, null);
        }

        /** A patch with CIELAB and the XYZ that belongs to it. */
        public static Row of(String id, Rgb8 rgb, Lab lab) {
            return new Row(id, rgb, lab, lab.toXyz(Xyz.PCS_WHITE), null);
        }
    }

    /**
     * The text of a file.
     *
     * @param keywords header lines, key to value, in the order wanted; give CREATED here if wanted
     * @param rows patches; a colour that not all of them have is an error
     * @throws IllegalArgumentException when only some rows have LAB, XYZ, spread or spectrum, or
     *     spectra differ in wavelengths
     */
    public static String write(Map<String, String> keywords, List<Row> rows) {
        boolean lab = all(rows, Row::lab);
        boolean xyz = all(rows, Row::xyz);
        boolean spread = all(rows, Row::spread);
        boolean spectral = all(rows, Row::spectrum);
        List<String> fields = new ArrayList<>(List.of("SAMPLE_ID", "RGB_R", "RGB_G", "RGB_B"));
        if (lab) {
            fields.addAll(List.of("LAB_L", "LAB_A", "LAB_B"));
        }
        if (xyz) {
            fields.addAll(List.of("XYZ_X", "XYZ_Y", "XYZ_Z"));
        }
        if (spread) {
            fields.addAll(List.of("STDEV_L", "STDEV_A", "STDEV_B"));
        }
        Spectrum grid = spectral ? Objects.requireNonNull(rows.get(0).spectrum()) : null;
        if (grid != null) {
            for (int i = 0; i < grid.factors().size(); i++) {
                fields.add("SPECTRAL_NM" + (grid.startNm() + i * grid.stepNm()));
            }
        }
        StringBuilder out = new StringBuilder("CGATS.17\n");
        keywords.forEach((key, value) -> keyword(out, key, value));
        out.append("NUMBER_OF_FIELDS\t").append(fields.size()).append('\n');
        out.append("BEGIN_DATA_FORMAT\n").append(String.join("\t", fields));
        out.append("\nEND_DATA_FORMAT\nNUMBER_OF_SETS\t").append(rows.size());
        out.append("\nBEGIN_DATA\n");
        for (Row row : rows) {
            StringJoiner cells = new StringJoiner("\t", "", "\n");
            cells.add(id(row.id()));
            cells.add(String.valueOf(row.rgb().r()));
            cells.add(String.valueOf(row.rgb().g()));
            cells.add(String.valueOf(row.rgb().b()));
            if (row.lab() != null) {
                add(cells, row.lab().l(), row.lab().a(), row.lab().b());
            }
            if (row.xyz() != null) {
                add(cells, row.xyz().x(), row.xyz().y(), row.xyz().z());
            }
            if (row.spread() != null) {
                add(cells, row.spread().l(), row.spread().a(), row.spread().b());
            }
            if (row.spectrum() != null && grid != null) {
                if (!sameGrid(grid, row.spectrum())) {
                    throw new IllegalArgumentException("spectra of different wavelengths");
                }
                for (double factor : row.spectrum().factors()) {
                    cells.add(String.format(Locale.ROOT, "%.6f", factor));
                }
            }
            out.append(cells);
        }
        return out.append("END_DATA\n").toString();
    }

    /** Whether two spectra have the same wavelengths. */
    public static boolean sameGrid(Spectrum one, Spectrum two) {
        return one.startNm() == two.startNm()
                && one.stepNm() == two.stepNm()
                && one.factors().size() == two.factors().size();
    }

    private static void keyword(StringBuilder out, String key, String value) {
        if (!key.matches("[A-Z][A-Z0-9_]*")) {
            throw new IllegalArgumentException("a keyword is made of A-Z, 0-9 and _, got " + key);
        }
        if (!STANDARD_KEYWORDS.contains(key)) {
            out.append("KEYWORD\t\"").append(key).append("\"\n");
        }
        out.append(key).append("\t\"").append(clean(value)).append("\"\n");
    }

    private static String id(String id) {
        String clean = clean(id);
        return clean.matches("[A-Za-z0-9][A-Za-z0-9_.-]*") ? clean : '"' + clean + '"';
    }

    /**
     * No quotes, no controls and nothing that ends lines or turns directions: the format has no
     * escape for them.
     */
    private static String clean(String text) {
        return text.replace('"', '\'')
                .replaceAll("[\\p{Cc}\\u2028\\u2029\\u202A-\\u202E\\u2066-\\u2069]", " ");
    }

    private static void add(StringJoiner cells, double... values) {
        for (double value : values) {
            String text = String.format(Locale.ROOT, "%.4f", value);
            cells.add(text.equals("-0.0000") ? "0.0000" : text);
        }
    }

    private static boolean all(List<Row> rows, Function<Row, @Nullable Object> part) {
        long having = rows.stream().filter(row -> part.apply(row) != null).count();
        if (having != 0 && having != rows.size()) {
            throw new IllegalArgumentException(
                    "only " + having + " of " + rows.size() + " rows have a value the others lack");
        }
        return having > 0;
    }
}
