package org.printassay.report.paged;

import java.util.List;

/** Lays text into the sequence. No line of a longer paragraph stands alone on a page. */
final class TextWriter {
    /** A paragraph of so few lines stays in one piece. */
    private static final int SHORT = 3;

    private final Sequence sequence;
    private final Flow flow;
    private final Typeface typeface;

    TextWriter(Sequence sequence, Flow flow, Typeface typeface) {
        this.sequence = sequence;
        this.flow = flow;
        this.typeface = typeface;
    }

    /** Text in lines of a width. */
    List<String> wrap(String text, Type type, double width, int most) {
        return typeface.wrap(VisibleText.of(text), type.size(), width, most);
    }

    /** Text in lines of a width, however many. */
    List<String> wrap(String text, Type type, double width) {
        return wrap(text, type, width, Integer.MAX_VALUE - 1);
    }

    /**
     * Lines as pieces.
     *
     * @param first price of turning the page before them
     * @param within price of turning it within them
     * @param before done before the first line is painted, such as opening the element
     * @param after done after the last line
     */
    void add(
            List<String> lines,
            Type type,
            double x,
            double first,
            double within,
            Runnable before,
            Runnable after) {
        int count = lines.size();
        for (int from = 0; from < count; ) {
            boolean two = (from == 0 || count - from <= 2) && count > SHORT;
            int to = count <= SHORT ? count : Math.min(count, from + (two ? 2 : 1));
            List<String> part = lines.subList(from, to);
            boolean begins = from == 0;
            boolean ends = to == count;
            sequence.add(
                    part.size() * type.leading(),
                    begins ? first : within,
                    top -> {
                        if (begins) {
                            before.run();
                        }
                        flow.lines(part, type, x, !ends);
                        if (ends) {
                            after.run();
                        }
                    });
            from = to;
        }
    }
}
