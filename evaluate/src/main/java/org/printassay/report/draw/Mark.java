package org.printassay.report.draw;

import java.util.List;
import org.jspecify.annotations.Nullable;

/** One thing to draw; coordinates to the right and down. */
public sealed interface Mark {
    /** A straight line. */
    record Line(double x1, double y1, double x2, double y2, Ink ink) implements Mark {}

    /** Joined lines; closed ones are filled when the ink fills. */
    record Path(List<Point> points, boolean closed, Ink ink) implements Mark {
        public Path {
            points = List.copyOf(points);
        }
    }

    /**
     * A rectangle.
     *
     * @param fill {@code #rrggbb}, for colours that were measured; null to use the ink
     */
    record Box(double x, double y, double width, double height, Ink ink, @Nullable String fill)
            implements Mark {}

    /** A circle; {@code fill} as for boxes. */
    record Disc(double x, double y, double radius, Ink ink, @Nullable String fill)
            implements Mark {}

    /** A line of text, its baseline at y. */
    record Label(double x, double y, Anchor anchor, Ink ink, String text) implements Mark {}

    /** Which part of a text stands at its point. */
    enum Anchor {
        /** Its beginning. */
        START,
        /** Its middle. */
        MIDDLE,
        /** Its end. */
        END
    }

    /** A place in a drawing. */
    record Point(double x, double y) {}
}
