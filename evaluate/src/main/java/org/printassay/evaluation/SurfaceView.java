package org.printassay.evaluation;

import java.util.List;
import java.util.Optional;
import org.printassay.calibrate.codes.ScanPart;
import org.printassay.locate.Placement;
import org.printassay.locate.PointPx;
import org.printassay.sheet.PointMm;
import org.printassay.sheet.RectMm;
import org.printassay.surface.Along;
import org.printassay.surface.FoundBand;
import org.printassay.surface.FoundLine;
import org.printassay.surface.LineDetector;
import org.printassay.surface.StreakJudge;
import org.printassay.surface.TintTrace;

/**
 * What one scan shows along both axes, and how it lies in the scanner.
 *
 * @param part the scan
 * @param traces light along its tints and bare margins, lightness known
 * @param sigmaMm blur of print and scan together, as a Gaussian
 * @param lines in tints with ink
 * @param streaks on bare paper
 * @param bands in tints with ink
 */
record SurfaceView(
        ScanPart part,
        List<TintTrace> traces,
        double sigmaMm,
        List<FoundLine> lines,
        List<FoundLine> streaks,
        List<FoundBand> bands) {
    /** A column of the scan may cross a tint at places that lie apart so far, and still show. */
    private static final double MOST_SMEAR_MM = 0.3;

    int sheet() {
        return part.samples().located().sheet().number();
    }

    private Placement placement() {
        return part.samples().located().placement();
    }

    /** The tints of these ids that it looks at along an axis. */
    List<TintTrace> tints(Along along, List<String> ids) {
        return traces.stream().filter(t -> t.along() == along && ids.contains(t.id())).toList();
    }

    /** By how much the sheet lies turned against another scan, degrees. */
    double turnedAgainst(SurfaceView other) {
        double turned = placement().rotationDegrees() - other.placement().rotationDegrees();
        double apart = Math.abs(turned) % 360;
        return Math.min(apart, 360 - apart);
    }

    private ScanColumns columns() {
        return new ScanColumns(placement());
    }

    /** Whether what varies along an axis runs along the scan's columns, as streaks do. */
    boolean alongColumns(Along along) {
        return columns().upright(along);
    }

    /**
     * Whether bare paper shows a line too. A streak keeps to the pixels of the scan, not to a sheet
     * that lies a little turned, so places are compared in the scan.
     */
    boolean hasStreak(FoundLine line) {
        return streaks.stream().anyMatch(streak -> isSameStreak(streak, line));
    }

    /** Whether two lines are of one kind and in one column (or row) of the scan. */
    boolean isSameStreak(FoundLine one, FoundLine other) {
        if (one.along() != other.along() || one.contrast() > 0 != other.contrast() > 0) {
            return false;
        }
        for (TintTrace a : tints(one.along(), one.shows())) {
            for (TintTrace b : tints(other.along(), other.shows())) {
                double apart =
                        inScan(one.along(), one.positionMm(), a.acrossMm())
                                - inScan(other.along(), other.positionMm(), b.acrossMm());
                if (Math.abs(apart) <= SurfaceJudge.SAME_MM * placement().samplesPerMm()) {
                    return true;
                }
            }
        }
        return false;
    }

    /**
     * Whether the place of a line stands in one column of both scans, so that a streak of the
     * scanner would be there twice as well.
     */
    boolean isInSameColumn(SurfaceView other, FoundLine line) {
        Along along = line.along();
        if (!alongColumns(along) || !other.alongColumns(along)) {
            return false;
        }
        for (TintTrace tint : tints(along, line.shows())) {
            double here = inScan(along, line.positionMm(), tint.acrossMm());
            double there = other.inScan(along, line.positionMm(), tint.acrossMm());
            double apart =
                    here / placement().samplesPerMm() - there / other.placement().samplesPerMm();
            if (Math.abs(apart) <= SurfaceJudge.SAME_MM) {
                return true;
            }
        }
        return false;
    }

    /** Column or row of the scan, whichever a line keeps to, of a place. */
    private double inScan(Along along, double positionMm, double acrossMm) {
        return columns().inScan(along, positionMm, acrossMm);
    }

    /**
     * Where a line runs through a stretch of the scan that it crosses.
     *
     * @param from pixel at one end of the stretch, column or row, on the other axis
     * @param to pixel at the other end
     * @return least and largest column, or row, that it keeps to
     */
    double[] run(FoundLine line, boolean streak, double from, double to) {
        Along along = line.along();
        double here = inScan(along, line.positionMm(), 0);
        double[] run = new double[2];
        double[] ends = {from, to};
        for (int k = 0; k < 2; k++) {
            // The place moves little across the stretch, so one step finds it.
            PointPx at =
                    alongColumns(along) ? new PointPx(here, ends[k]) : new PointPx(ends[k], here);
            PointMm page = placement().toPage(at);
            double across = along == Along.X ? page.y() : page.x();
            run[k] = streak ? streakAt(line) : inScan(along, line.positionMm(), across);
        }
        return new double[] {Math.min(run[0], run[1]), Math.max(run[0], run[1])};
    }

    /** Column or row that a streak keeps to, by the first tint that shows it. */
    private double streakAt(FoundLine streak) {
        double across =
                tints(streak.along(), streak.shows()).stream()
                        .mapToDouble(TintTrace::acrossMm)
                        .findFirst()
                        .orElse(0);
        return inScan(streak.along(), streak.positionMm(), across);
    }

    /** Where the column of the scan goes that a place of the page stands in. */
    private double alongColumn(Along along, double positionMm, double acrossMm, double otherMm) {
        return columns().through(along, positionMm, acrossMm, otherMm);
    }

    /** Whether a line keeps to the scan instead of the page; empty when it may be either. */
    Optional<Boolean> isStreak(FoundLine line) {
        Along along = line.along();
        List<TintTrace> narrow =
                traces.stream()
                        .filter(t -> t.along() == along && !t.bare())
                        .filter(t -> smear(t, line.positionMm()) <= MOST_SMEAR_MM)
                        .toList();
        return StreakJudge.isStreak(
                narrow,
                sigmaMm,
                line,
                (position, across, other) -> alongColumn(along, position, across, other));
    }

    /** How far a column's place changes from one side of a tint to the other. */
    private double smear(TintTrace tint, double positionMm) {
        Along along = tint.along();
        return part.samples().located().sheet().patches().stream()
                .filter(patch -> patch.id().equals(tint.id()))
                .mapToDouble(
                        patch -> {
                            RectMm area = patch.area();
                            double from = along == Along.X ? area.y() : area.x();
                            double to = along == Along.X ? area.bottom() : area.right();
                            return Math.abs(alongColumn(along, positionMm, from, to) - positionMm);
                        })
                .max()
                .orElse(0);
    }

    private List<TintTrace> barePaper(Along along) {
        return traces.stream().filter(t -> t.along() == along && t.bare()).toList();
    }

    /**
     * Whether bare paper shows a line in the column of the scan that it stands in, as it does where
     * it is the scanner's; empty where there is none, or it is too short or clipped to tell.
     */
    Optional<Boolean> paperShows(FoundLine line) {
        Along along = line.along();
        double across =
                tints(along, line.shows()).stream()
                        .mapToDouble(TintTrace::acrossMm)
                        .findFirst()
                        .orElse(0);
        boolean has = false;
        boolean lacks = false;
        for (TintTrace paper : barePaper(along)) {
            double there = alongColumn(along, line.positionMm(), across, paper.acrossMm());
            Optional<Boolean> shows =
                    LineDetector.runsThrough(paper, sigmaMm, line, there, SurfaceJudge.SAME_MM);
            has |= shows.orElse(false);
            lacks |= !shows.orElse(true);
        }
        // A hair on one margin is no streak: where margins contradict each other, neither tells.
        return has == lacks ? Optional.empty() : Optional.of(has);
    }

    /** Whether bare paper shows the scanner's bands along an axis: there is some, unclipped. */
    boolean paperWouldShowBands(Along along) {
        return barePaper(along).stream().anyMatch(paper -> !paper.clipped());
    }
}
