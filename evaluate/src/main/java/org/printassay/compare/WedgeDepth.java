package org.printassay.compare;

import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.printassay.colour.Rgb8;

/**
 * How much nearer to black (or to paper) the outermost levels of a wedge have come between two
 * prints, on average: tells blocking shadows and merging highlights of any shape, where {@link
 * WedgeShift} tells by how much a wedge moved that kept its shape.
 *
 * @param deltaL mean distance from the anchor, second print less first, L*; below 0 when levels
 *     have come nearer
 * @param standard standard uncertainty of it; null when neither print has twins
 * @param tested levels that were used
 */
public record WedgeDepth(double deltaL, @Nullable Double standard, int tested) {
    /** Levels from the anchor that are looked at: those a wedge has one by one. */
    private static final int REACH = 24;

    private static final int FEWEST = 6;

    /** Of shadows; empty when there are too few levels that both have. */
    public static Optional<WedgeDepth> ofShadows(Side one, Side other) {
        return between(one, other, 0);
    }

    /** Of highlights; empty when there are too few levels that both have. */
    public static Optional<WedgeDepth> ofHighlights(Side one, Side other) {
        return between(one, other, 255);
    }

    private static Optional<WedgeDepth> between(Side one, Side other, int anchor) {
        boolean relative = !one.absolute() || !other.absolute();
        CodeMeans first = CodeMeans.of(one.prints(), relative);
        CodeMeans second = CodeMeans.of(other.prints(), relative);
        Rgb8 at = Rgb8.grey(anchor);
        if (first.count(at) == 0 || second.count(at) == 0) {
            return Optional.empty();
        }
        double sum = 0;
        double shares = 0;
        double distances = 0;
        int tested = 0;
        for (int out = 1; out <= REACH; out++) {
            Rgb8 code = Rgb8.grey(Math.abs(anchor - out));
            if (first.count(code) > 0 && second.count(code) > 0) {
                double before = first.mean(code).l() - first.mean(at).l();
                double after = second.mean(code).l() - second.mean(at).l();
                distances += Math.abs(before);
                sum += anchor == 0 ? after - before : before - after;
                shares += 1.0 / first.count(code) + 1.0 / second.count(code);
                tested++;
            }
        }
        if (tested < FEWEST) {
            return Optional.empty();
        }
        double noise = WedgeShift.noise(first, second, anchor);
        double anchors = 1.0 / first.count(at) + 1.0 / second.count(at);
        double random =
                WedgeShift.sizeOf(noise) * Math.sqrt(anchors + shares / ((double) tested * tested));
        double away = distances / tested;
        double standard =
                Math.hypot(random, WedgeShift.light(one, other, anchor, first.mean(at).l(), away));
        return Optional.of(
                new WedgeDepth(
                        sum / tested,
                        Double.isNaN(noise) ? null : Double.valueOf(standard),
                        tested));
    }
}
