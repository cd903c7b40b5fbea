package org.printassay.report;

import gg.jte.Content;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.printassay.evaluation.Finding;

/**
 * What the page of a comparison shows, ready to be written.
 *
 * @param style style sheet and policy
 * @param simulated whether to say that nothing real was printed
 * @param title in words
 * @param lead what is compared, in a sentence
 * @param cautions what must be known before any figure
 * @param findings most consequential first
 * @param sides in order
 * @param common what is the same on all sides; may be empty
 * @param inShort rankings in one line each
 * @param questions rankings, the one that was asked for first
 * @param allLead what stands above the table of figures
 * @param topics the table of figures
 * @param two whether there are two sides only, so that differences are drawn
 * @param tone tone of each against its aim; null where it was not judged
 * @param gamut gamuts over each other; null where they were not judged
 * @param keys what lines over each other mean; empty where they are not over each other
 * @param method how differences were judged, in sentences
 * @param identity number that comparisons of other prints do not have
 */
public record ComparisonView(
        PageStyle style,
        boolean simulated,
        String title,
        String lead,
        List<String> cautions,
        List<Finding> findings,
        List<Column> sides,
        String common,
        List<String> inShort,
        List<Asked> questions,
        String allLead,
        List<Topic> topics,
        boolean two,
        @Nullable Plot tone,
        @Nullable Plot gamut,
        List<Key> keys,
        List<String> method,
        long identity) {
    /**
     * One side.
     *
     * @param number what it is called in plots and tables
     * @param name in full
     * @param shortName the same where that is clear
     * @param href relative address of its report; null when there is none
     * @param about printer, route, prints, how colour was obtained
     * @param strip its levels; null where no neutrals were judged
     * @param against whether the others are shown against it
     */
    public record Column(
            int number,
            String name,
            String shortName,
            @Nullable String href,
            String about,
            @Nullable Plot strip,
            boolean against) {}

    /**
     * One ranking.
     *
     * @param rule how places are given, in words
     * @param heads names of the figures that decide
     * @param none said instead of places where there are none; empty else
     */
    public record Asked(
            String key,
            String label,
            String rule,
            List<String> heads,
            List<Placed> places,
            String none) {}

    /**
     * One side in a ranking.
     *
     * @param place with "=" where it is shared
     * @param values of the figures that decide, in order
     */
    public record Placed(String place, int number, String name, List<String> values, String why) {}

    /** Figures that tell of one thing. */
    public record Topic(String label, List<Row> rows) {}

    /** One figure of every side. */
    public record Row(String label, List<Cell> cells, @Nullable Content bar) {}

    /**
     * A figure of one side.
     *
     * @param number of the side
     * @param value its mean, or that it was not judged
     * @param difference against the chosen side with its interval; empty for that side itself
     * @param verdict what may be said of the difference
     * @param differs whether it holds
     */
    public record Cell(
            int number, String value, String difference, String verdict, boolean differs) {}

    /** A line of plots. */
    public record Key(Content sample, int number, String name) {}
}
