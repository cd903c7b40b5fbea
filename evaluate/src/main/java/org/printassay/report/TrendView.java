package org.printassay.report;

import java.util.List;

/**
 * What the page of a trend shows.
 *
 * @param style style sheet and policy
 * @param title printer, paper and route
 * @param about how many prints, from when to when, how they were read
 * @param changed figures whose newest print says that something changed
 * @param notes what a reader must know
 * @param figures in order
 * @param method how limits were made
 * @param chance how often chance alone says something
 */
public record TrendView(
        PageStyle style,
        String title,
        String about,
        List<Line> changed,
        List<String> notes,
        List<Figure> figures,
        String method,
        String chance) {
    /** A figure's name and what it says. */
    public record Line(String label, String text) {}

    /**
     * One figure.
     *
     * @param id unique in the page
     * @param changes the last ones, in words
     */
    public record Figure(String id, String label, String state, List<String> changes, Html plot) {}
}
