package org.printassay.logbook;

import java.util.ArrayList;
import java.util.List;
import org.printassay.evaluation.PrintDetails;

/**
 * Prints that belong together over time: one printer, paper and route. Names that were not said are
 * empty. Names are the same as {@link PrintDetails#key} says.
 */
public record Series(String printer, String paper, String route) {
    public Series {
        printer = PrintDetails.plain(printer);
        paper = PrintDetails.plain(paper);
        route = PrintDetails.plain(route);
    }

    /** Of what the user says about a print. */
    public static Series of(PrintDetails details) {
        return new Series(
                PrintDetails.plain(details.printer()),
                PrintDetails.plain(details.paper()),
                PrintDetails.plain(details.route()));
    }

    /** The same for every way of writing the names. */
    Series key() {
        return new Series(
                PrintDetails.key(printer), PrintDetails.key(paper), PrintDetails.key(route));
    }

    /** The names that were said, with a dot between them. */
    public String shown() {
        List<String> names = new ArrayList<>(List.of(printer, paper, route));
        names.removeIf(String::isEmpty);
        return names.isEmpty() ? "nothing said about the print" : String.join(" \u00b7 ", names);
    }

    /** Each name with what it names. */
    String labelled() {
        return said("printer", printer) + ", " + said("paper", paper) + ", " + said("route", route);
    }

    private static String said(String what, String name) {
        return what + " " + (name.isEmpty() ? "not said" : name);
    }
}
