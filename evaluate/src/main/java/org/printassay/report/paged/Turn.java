package org.printassay.report.paged;

/**
 * What it costs to turn the page at a place, in the measure of {@link PageBreaks}: a page of which
 * a tenth stays empty costs 1, of which two tenths 4.
 */
final class Turn {
    /** Between parts. */
    static final double FREE = 0;

    /** Between items of a list, or figures that stand for themselves. */
    static final double ITEM = 0.5;

    /** Between rows of a table that is longer than a page, or before a further paragraph. */
    static final double ROW = 1;

    /** Within a paragraph. */
    static final double LINE = 2;

    /** Between a drawing and the figures that go with it. */
    static final double FIGURES = 30;

    /** Only where nothing else is possible. */
    static final double NEVER = 100_000;

    private Turn() {}
}
