package org.printassay.report;

import java.util.List;

/**
 * What the page of many prints shows.
 *
 * @param style style sheet and policy
 * @param read in words, how many prints were evaluated
 * @param prints those that were evaluated
 * @param failed those that could not be
 * @param skipped files that were passed over
 */
public record SummaryView(
        PageStyle style, String read, List<Print> prints, List<Left> failed, List<Left> skipped) {
    public SummaryView {
        prints = List.copyOf(prints);
        failed = List.copyOf(failed);
        skipped = List.copyOf(skipped);
    }

    /**
     * One print in one line.
     *
     * @param name what it is called
     * @param href relative address of its report
     * @param about paper, printer, files and what else is to be known
     * @param white paper white, in words
     * @param black deepest black
     * @param shadows level from which shadows are open
     * @param highlights level up to which highlights hold
     * @param greys how neutral they are
     * @param tone how far it is from its aim
     * @param trust how far to trust colours
     */
    public record Print(
            String name,
            String href,
            String about,
            String white,
            String black,
            String shadows,
            String highlights,
            String greys,
            String tone,
            String trust) {}

    /**
     * Something without a result.
     *
     * @param name what
     * @param why not
     */
    public record Left(String name, String why) {}
}
