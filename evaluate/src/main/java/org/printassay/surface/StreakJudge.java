package org.printassay.surface;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.printassay.colour.Lab;

/**
 * Tells a streak of the scanner from a line of the print where bare paper tells nothing, clipped as
 * it often is. A streak stands in one column of the scan through everything that lies under it; a
 * line of the print stands at one place of the page, in the tints that hold its ink. Where the
 * sheet lies exactly straight both are the same, and nothing is told.
 */
public final class StreakJudge {
    /** Places in one tint are known to so much, standard deviation, at best. */
    private static final double PLACED_MM = 0.04;

    /** Looked for so far around both places, millimetres. */
    private static final double WITHIN_MM = 0.15;

    /** Standard errors that the way of a line must be from the middle between both. */
    private static final double SURE = 3;

    private StreakJudge() {}

    /** The way of a column of the scan over the page. */
    @FunctionalInterface
    public interface ColumnPath {
        /**
         * Where the column stands that goes through a place.
         *
         * @param positionMm of the place, on the axis of the line
         * @param acrossMm of the place, on the other axis
         * @param otherMm where it is asked for, on the other axis
         * @return its place on the axis of the line, page millimetres
         */
        double at(double positionMm, double acrossMm, double otherMm);
    }

    /** Places of a line in one tint: where it stands, and where the column does. */
    private record Place(double foundMm, double columnMm) {}

    /**
     * Whether a line keeps to the scan instead of the page.
     *
     * @param tints with ink along the line's axis, narrow enough for a column to stay at one place
     *     in each
     * @param sigmaMm blur of print and scan together
     * @param line that was found in some of them
     * @return empty when it may be either
     */
    public static Optional<Boolean> isStreak(
            List<TintTrace> tints, double sigmaMm, FoundLine line, ColumnPath path) {
        boolean light = line.contrast() > 0;
        List<LineTrace> traces = tints.stream().map(t -> new LineTrace(t, sigmaMm)).toList();
        LineTrace clearest = null;
        @Nullable LineCandidate there = null;
        for (LineTrace trace : traces) {
            LineCandidate near =
                    line.shows().contains(trace.tint().id())
                            ? trace.near(line.positionMm(), WITHIN_MM, light)
                            : null;
            if (near != null && (there == null || Math.abs(near.z()) > Math.abs(there.z()))) {
                clearest = trace;
                there = near;
            }
        }
        if (clearest == null || there == null) {
            return Optional.empty();
        }
        double at = there.positionMm();
        List<Place> places = new ArrayList<>();
        for (LineTrace trace : traces) {
            double column = path.at(at, clearest.tint().acrossMm(), trace.tint().acrossMm());
            double reach = Math.abs(column - at) / 2 + WITHIN_MM;
            LineCandidate near = trace.near((at + column) / 2, reach, light);
            if (near == null) {
                continue;
            }
            double z = light ? near.z() : -near.z();
            if (z >= LineDetector.TOGETHER) {
                places.add(new Place(near.positionMm(), column));
            } else if (z < LineDetector.SHOWS
                    && trace.wouldShow(
                            least(line, clearest.tint(), trace.tint()), line.widthMm())) {
                // A streak runs through everything.
                return Optional.of(false);
            }
        }
        return byDirection(places);
    }

    /** By how much of the column's way over the page the line's places follow: all, or none. */
    private static Optional<Boolean> byDirection(List<Place> places) {
        double found = places.stream().mapToDouble(Place::foundMm).average().orElse(0);
        double column = places.stream().mapToDouble(Place::columnMm).average().orElse(0);
        double together = 0;
        double squares = 0;
        for (Place place : places) {
            together += (place.foundMm() - found) * (place.columnMm() - column);
            squares += Math.pow(place.columnMm() - column, 2);
        }
        if (squares == 0) {
            return Optional.empty();
        }
        double share = together / squares;
        double misfit = 0;
        for (Place place : places) {
            double fitted = found + share * (place.columnMm() - column);
            misfit += Math.pow(place.foundMm() - fitted, 2);
        }
        double placed =
                places.size() > 2
                        ? Math.max(PLACED_MM, Math.sqrt(misfit / (places.size() - 2)))
                        : PLACED_MM;
        double error = placed / Math.sqrt(squares);
        boolean sure = Math.abs(share - 0.5) > SURE * error;
        return sure ? Optional.of(share > 0.5) : Optional.empty();
    }

    /**
     * The least contrast that a streak would have in another tint: the same where the scanner
     * multiplies light, less in lighter ones where it adds some.
     */
    private static double least(FoundLine line, TintTrace here, TintTrace other) {
        double ratio =
                Lab.luminanceFactor(here.lightness()) / Lab.luminanceFactor(other.lightness());
        return line.contrast() * Math.min(1, ratio);
    }
}
