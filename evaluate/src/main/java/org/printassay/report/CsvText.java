package org.printassay.report;

/** Text from outside as a cell of CSV (RFC 4180). */
public final class CsvText {
    private CsvText() {}

    /** The cell; what a spreadsheet would take for a formula gets an apostrophe in front. */
    public static String cell(String text) {
        return ReadingsCsv.text(text);
    }
}
