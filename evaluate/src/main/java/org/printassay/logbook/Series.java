package org.printassay.logbook;

import java.text.Normalizer;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.printassay.evaluation.PrintDetails;

/**
 * Prints that belong together over time: one printer, paper and route. Names that were not said are
 * empty. Spaces at the ends, doubled spaces and control characters do not count, and letters are
 * the same however they are composed (Unicode normalisation form C).
 */
public record Series(String printer, String paper, String route) {
    public Series {
        printer = name(printer);
        paper = name(paper);
        route = name(route);
    }

    /** Of what the user says about a print. */
    public static Series of(PrintDetails details) {
        return new Series(said(details.printer()), said(details.paper()), said(details.route()));
    }

    private static String said(@Nullable String text) {
        return text == null ? "" : text;
    }

    /** A name as it is kept and compared. */
    static String name(String text) {
        String plain = text.replaceAll("[\\p{Cc}\\p{Cs}\\s]+", " ").strip();
        return Normalizer.normalize(plain, Normalizer.Form.NFC);
    }

    /** The names that were said, with a dot between them. */
    public String shown() {
        List<String> names = new ArrayList<>(List.of(printer, paper, route));
        names.removeIf(String::isEmpty);
        return names.isEmpty() ? "nothing said about the print" : String.join(" \u00b7 ", names);
    }
}
