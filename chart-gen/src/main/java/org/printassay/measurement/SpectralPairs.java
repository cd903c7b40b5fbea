package org.printassay.measurement;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.printassay.problem.Problem;

/**
 * Tables that state the wavelength of each value in a column of its own: SPECTRAL_NM and
 * SPECTRAL_DEC (fractions) or SPECTRAL_PCT (percent), again and again (ISO 28178, from memory).
 */
final class SpectralPairs {
    private static final String WAVELENGTH = "SPECTRAL_NM";
    private static final String NORM = "SPECTRAL_NORM";
    private static final String FRACTION = "SPECTRAL_DEC";
    private static final String PERCENT = "SPECTRAL_PCT";

    private static final Pattern WHOLE = Pattern.compile("(\\d{3})([.,]0*)?");

    private SpectralPairs() {}

    /**
     * The table with wavelengths in the names of its columns; as it is when it has no such pairs.
     *
     * @throws Problem when a row has other wavelengths than the first
     */
    static TextTables.Table named(String file, TextTables.Table table) throws Problem {
        List<Integer> wavelengths = where(table.fields(), WAVELENGTH);
        List<Integer> fractions = where(table.fields(), FRACTION);
        List<Integer> percents = where(table.fields(), PERCENT);
        List<Integer> values = fractions.isEmpty() ? percents : fractions;
        if (values.isEmpty()
                || values.size() != wavelengths.size()
                || !(fractions.isEmpty() || percents.isEmpty())) {
            return table;
        }
        List<String> bands = new ArrayList<>();
        List<TextTables.Row> rows = new ArrayList<>();
        for (TextTables.Row row : table.rows()) {
            List<String> own = new ArrayList<>();
            for (int column : wavelengths) {
                own.add(WAVELENGTH + nanometres(file, row, column));
            }
            bands = bands.isEmpty() ? own : bands;
            for (int i = 0; i < own.size(); i++) {
                if (!own.get(i).equals(bands.get(i))) {
                    throw Problem.input(
                            file + ", line " + row.line(),
                            "wavelength "
                                    + row.cells().get(wavelengths.get(i))
                                    + " nm where the first row has "
                                    + bands.get(i).substring(WAVELENGTH.length())
                                    + ". Export every patch with the same wavelengths.");
                }
            }
            rows.add(new TextTables.Row(row.line(), without(row.cells(), wavelengths)));
        }
        List<String> fields = new ArrayList<>(table.fields());
        for (int i = 0; i < bands.size(); i++) {
            fields.set(values.get(i), bands.get(i));
        }
        Map<String, String> keywords = new HashMap<>(table.keywords());
        keywords.put(fractions.isEmpty() ? PERCENT : FRACTION, fractions.isEmpty() ? "100" : "1");
        return new TextTables.Table(without(fields, wavelengths), rows, keywords);
    }

    /** Which of a table's keywords says to what number its spectral values run; empty: none. */
    static String scaleKeyword(Map<String, String> keywords) {
        return List.of(NORM, PERCENT, FRACTION).stream()
                .filter(keywords::containsKey)
                .findFirst()
                .orElse("");
    }

    private static String nanometres(String file, TextTables.Row row, int column) throws Problem {
        Matcher matcher = WHOLE.matcher(row.cells().get(column));
        if (!matcher.matches()) {
            throw Problem.input(
                    file + ", line " + row.line(),
                    "'"
                            + row.cells().get(column)
                            + "' in column "
                            + WAVELENGTH
                            + " is not a whole wavelength in nm. Correct it or export again.");
        }
        return matcher.group(1);
    }

    private static List<Integer> where(List<String> fields, String name) {
        List<Integer> found = new ArrayList<>();
        for (int i = 0; i < fields.size(); i++) {
            if (fields.get(i).toUpperCase(Locale.ROOT).equals(name)) {
                found.add(i);
            }
        }
        return found;
    }

    private static List<String> without(List<String> all, List<Integer> columns) {
        List<String> left = new ArrayList<>();
        for (int i = 0; i < all.size(); i++) {
            if (!columns.contains(i)) {
                left.add(all.get(i));
            }
        }
        return left;
    }
}
