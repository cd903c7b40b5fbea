package org.printassay.report;

import java.util.List;
import java.util.StringJoiner;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.printassay.colour.Lab;
import org.printassay.evaluation.Evaluation;
import org.printassay.json.JsonNumbers;
import org.printassay.reading.LabError;
import org.printassay.reading.Reading;

/**
 * Readings as CSV (RFC 4180), UTF-8, decimal points. Text that a spreadsheet would take for a
 * formula gets an apostrophe in front.
 */
public final class ReadingsCsv {
    private static final String HEADER =
            "id,section,sheet,x (mm),y (mm),R (0-255),G (0-255),B (0-255),L* (D50),a* (D50),"
                    + "b* (D50),L* (relative to paper),a* (relative to paper),"
                    + "b* (relative to paper),standard error L*,standard error a*,"
                    + "standard error b*,visual density (ISO 5-3),flags,colour from";

    /** Signs that begin formulas, also the wide ones of East Asian keyboards. */
    private static final String FORMULA = "=+-@\uff1d\uff0b\uff0d\uff20";

    private static final Pattern CONTROLS =
            Pattern.compile("[\\p{Cc}\\u2028\\u2029\\u202A-\\u202E\\u2066-\\u2069]");

    private ReadingsCsv() {}

    /** The text of the file; lines end as RFC 4180 asks. */
    public static String write(Evaluation evaluation) {
        StringBuilder out = new StringBuilder(HEADER).append("\r\n");
        for (Reading r : evaluation.patches()) {
            out.append(row(r, evaluation.trust().key())).append("\r\n");
        }
        return out.toString();
    }

    private static String row(Reading r, String trust) {
        StringJoiner cells = new StringJoiner(",");
        cells.add(text(r.id()));
        cells.add(r.section().map(s -> s.key()).orElse(""));
        cells.add(String.valueOf(r.sheet()));
        cells.add(number(r.centre() == null ? null : r.centre().x(), 2));
        cells.add(number(r.centre() == null ? null : r.centre().y(), 2));
        cells.add(String.valueOf(r.rgb().r()));
        cells.add(String.valueOf(r.rgb().g()));
        cells.add(String.valueOf(r.rgb().b()));
        add(cells, r.lab());
        add(cells, r.labRelative());
        LabError error = r.standardError();
        cells.add(number(error == null ? null : error.l(), 4));
        cells.add(number(error == null ? null : error.a(), 4));
        cells.add(number(error == null ? null : error.b(), 4));
        cells.add(number(r.density(), 3));
        List<String> flags = r.flags().stream().sorted().map(f -> f.key()).toList();
        cells.add(flags.stream().collect(Collectors.joining(" ")));
        return cells.add(trust).toString();
    }

    private static void add(StringJoiner cells, @Nullable Lab lab) {
        cells.add(number(lab == null ? null : lab.l(), 3));
        cells.add(number(lab == null ? null : lab.a(), 3));
        cells.add(number(lab == null ? null : lab.b(), 3));
    }

    private static String number(@Nullable Double value, int decimals) {
        return value == null ? "" : JsonNumbers.decimal(value, decimals).asText();
    }

    /**
     * One cell of text from outside: controls become spaces, and what a spreadsheet would take for
     * a formula gets an apostrophe (common practice: the OWASP page on CSV injection).
     */
    static String text(String text) {
        String clean = CONTROLS.matcher(text).replaceAll(" ");
        String seen = clean.strip();
        if (!seen.isEmpty() && FORMULA.indexOf(seen.charAt(0)) >= 0) {
            clean = "'" + clean;
        }
        boolean quote = clean.indexOf(',') >= 0 || clean.indexOf('"') >= 0;
        return quote ? '"' + clean.replace("\"", "\"\"") + '"' : clean;
    }
}
