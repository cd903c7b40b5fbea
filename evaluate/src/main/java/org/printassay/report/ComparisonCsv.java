package org.printassay.report;

import java.util.StringJoiner;
import org.jspecify.annotations.Nullable;
import org.printassay.compare.Comparison;
import org.printassay.compare.Difference;
import org.printassay.compare.Judged;
import org.printassay.compare.Pair;
import org.printassay.json.JsonNumbers;

/**
 * All differences of a comparison as CSV (RFC 4180), UTF-8, decimal points; one line for each
 * figure of each two sides. Names that a spreadsheet would take for a formula get an apostrophe in
 * front.
 */
public final class ComparisonCsv {
    private static final String HEADER =
            "topic,figure,key,unit,first,second,prints of first,prints of second,value of first,"
                    + "value of second,difference (second - first),95 % from,95 % to,verdict,basis";

    private static final int DECIMALS = 4;

    private ComparisonCsv() {}

    /** The text of the file; lines end as RFC 4180 asks. */
    public static String write(Comparison c) {
        StringBuilder out = new StringBuilder(HEADER).append("\r\n");
        for (Pair pair : c.pairs().all()) {
            for (Judged judged : pair.figures()) {
                out.append(row(c, pair, judged)).append("\r\n");
            }
        }
        return out.toString();
    }

    private static String row(Comparison c, Pair pair, Judged judged) {
        Difference d = judged.difference();
        Double half = d.halfWidth();
        StringJoiner cells = new StringJoiner(",");
        cells.add(d.figure().topic().label());
        cells.add(ReadingsCsv.text(d.figure().label()));
        cells.add(d.figure().key());
        cells.add(d.figure().unit());
        cells.add(ReadingsCsv.text(c.sides().get(pair.one()).name()));
        cells.add(ReadingsCsv.text(c.sides().get(pair.other()).name()));
        cells.add(String.valueOf(c.sides().get(pair.one()).values(d.figure()).size()));
        cells.add(String.valueOf(c.sides().get(pair.other()).values(d.figure()).size()));
        cells.add(number(d.one()));
        cells.add(number(d.other()));
        cells.add(number(d.value()));
        cells.add(number(half == null ? null : d.value() - half));
        cells.add(number(half == null ? null : d.value() + half));
        cells.add(judged.verdict().key());
        return cells.add(d.basis().key()).toString();
    }

    private static String number(@Nullable Double value) {
        return value == null ? "" : JsonNumbers.decimal(value, DECIMALS).asText();
    }
}
