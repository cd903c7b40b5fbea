package org.printassay.metric;

import java.util.List;
import java.util.Set;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;
import org.printassay.colour.Lab;
import org.printassay.colour.ToneZone;

/**
 * Levels of one range of tones and how their mean cast hangs on what was read: on each level by its
 * share, and against it on the paper's own colour, which is taken off every level by as much as it
 * shines through there.
 */
final class CastZone {
    private static final int PAPER = 255;

    private final List<LevelData> curve;
    private final LevelData paper;
    private final List<Double> weights;
    private final List<Double> fades;

    /**
     * A zone.
     *
     * @param shares of each level in the whole curve
     * @param fades of each level: 1 on bare paper, 0 in the black
     * @param zones that the file's codes lie in
     */
    CastZone(
            List<LevelData> curve,
            LevelData paper,
            List<Double> shares,
            List<Double> fades,
            Set<ToneZone> zones) {
        this.curve = curve;
        this.paper = paper;
        this.fades = fades;
        List<Double> inside =
                IntStream.range(0, curve.size())
                        .mapToObj(
                                i ->
                                        zones.contains(ToneZone.of(curve.get(i).fileL()))
                                                ? shares.get(i)
                                                : 0.0)
                        .toList();
        double total = inside.stream().mapToDouble(share -> share).sum();
        this.weights = inside.stream().map(share -> total == 0 ? 0 : share / total).toList();
    }

    /** Mean over the zone of a value that each level has; 0 of no levels. */
    double mean(List<Double> values) {
        return IntStream.range(0, values.size())
                .mapToDouble(i -> weights.get(i) * values.get(i))
                .sum();
    }

    /** Standard error of the mean cast by the scatter of greys, in that of one patch. */
    double scatterOfGreys() {
        double squares = 0;
        for (int i = 0; i < curve.size(); i++) {
            if (curve.get(i).level() != PAPER) {
                squares += weights.get(i) * weights.get(i) / curve.get(i).count();
            }
        }
        return Math.sqrt(squares);
    }

    /**
     * The same by the scatter of bare paper, in that of one patch of it: it is taken off all greys,
     * so that its few patches may weigh more than all of them (ISO/IEC Guide 98-3, 5.1.2).
     */
    double scatterOfPaper() {
        double moved = mean(fades);
        for (int i = 0; i < curve.size(); i++) {
            moved -= curve.get(i).level() == PAPER ? weights.get(i) : 0;
        }
        return Math.abs(moved) / Math.sqrt(paper.count());
    }

    /** Standard error of the mean cast by causes that move readings together. */
    double shared(ToDoubleFunction<Lab> value) {
        double squares = 0;
        for (int cause = 0; cause < paper.shared().size(); cause++) {
            double ofPaper = value.applyAsDouble(paper.shared().get(cause));
            double sum = 0;
            for (int i = 0; i < curve.size(); i++) {
                double shift = value.applyAsDouble(curve.get(i).shared().get(cause));
                sum += weights.get(i) * (shift - fades.get(i) * ofPaper);
            }
            squares += sum * sum;
        }
        return Math.sqrt(squares);
    }

    /** Greys near each other are off alike: what the calibration is off does not average. */
    double calibration(ToDoubleFunction<Lab> value) {
        double squares = 0;
        for (int i = 0; i < curve.size(); i++) {
            Lab error = curve.get(i).calibration();
            if (error != null) {
                squares += weights.get(i) * Math.pow(value.applyAsDouble(error), 2);
            }
        }
        return Math.sqrt(squares);
    }
}
