package org.printassay.check;

import org.jspecify.annotations.Nullable;
import org.printassay.evaluation.PrintBand;
import org.printassay.evaluation.PrintLine;
import org.printassay.evaluation.SurfaceCause;
import org.printassay.surface.FoundLine;

/**
 * What follows from lines and bands that are new, or stronger than in the baseline.
 *
 * <p>A line's width and contrast are told badly where it is narrower than the blur, their product
 * well; so growth of a line is the strength that was added, spread over the line's width. What lies
 * within three standard uncertainties of reading both prints is no growth that could be told; lines
 * and bands have no share in the false alarms of {@link DecisionRule}.
 */
final class SurfaceGrowth {
    private static final double SURE = 3;

    /**
     * A line's strength is read to this many times 1/z, and no better than this share: scatter of
     * simulated tints read again (see the tests), rounded up.
     */
    private static final double OF_NOISE = 2;

    private static final double LINE_SHARE = 0.05;

    /** A band's modulation, in units of what is just visible, and as a share; likewise. */
    private static final double BAND_LEAST = 0.25;

    private static final double BAND_SHARE = 0.05;

    private final ToleranceSet tolerances;

    SurfaceGrowth(ToleranceSet tolerances) {
        this.tolerances = tolerances;
    }

    Outcome added(PrintLine line) {
        return outcome(
                Math.abs(line.line().seenContrast()), 0, tolerances.lineContrast(), line.cause());
    }

    Outcome added(PrintBand band) {
        return outcome(
                band.band().overThreshold(), 0, tolerances.bandOverThreshold(), band.cause());
    }

    Outcome grown(PrintLine before, PrintLine after) {
        FoundLine line = after.line();
        double width = Math.max(line.widthMm(), Double.MIN_NORMAL);
        double u = SURE * Math.hypot(standard(before.line()), standard(line)) / width;
        double growth = (line.strength() - before.line().strength()) / width;
        return outcome(growth, u, tolerances.lineContrast(), both(before.cause(), after.cause()));
    }

    Outcome grown(PrintBand before, PrintBand after) {
        double one = before.band().overThreshold();
        double other = after.band().overThreshold();
        double u = SURE * Math.hypot(ofBand(one), ofBand(other));
        return outcome(
                other - one,
                u,
                tolerances.bandOverThreshold(),
                both(before.cause(), after.cause()));
    }

    private static double standard(FoundLine line) {
        return line.strength() * Math.hypot(OF_NOISE / Math.max(1, line.z()), LINE_SHARE);
    }

    private static double ofBand(double over) {
        return Math.hypot(BAND_LEAST, BAND_SHARE * over);
    }

    private static SurfaceCause both(SurfaceCause before, SurfaceCause after) {
        return before == after ? after : SurfaceCause.UNDECIDED;
    }

    /**
     * What may be the scanner's neither fails a print nor says that it drifted: beyond the limit it
     * cannot be told, below it is inside in either case.
     *
     * @param u growth up to which there may be none
     */
    private static Outcome outcome(
            double growth, double u, @Nullable Double limit, SurfaceCause cause) {
        if (growth <= u) {
            return Outcome.WITHIN;
        }
        boolean print = cause == SurfaceCause.PRINT;
        if (limit != null && growth >= limit) {
            return print ? Outcome.FAILED : Outcome.CANNOT_TELL;
        }
        return print ? Outcome.DRIFTED : Outcome.WITHIN;
    }
}
