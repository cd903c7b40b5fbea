package org.printassay.surface;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * Finds thin lines across tints: matched filters of several widths over the profile of each tint,
 * each response against its own robust spread (median absolute deviation), then tints together. A
 * line must cross most of a tint, which dust and hairs do not.
 *
 * <p>Thresholds: a response of {@value #ALONE} robust standard deviations in one tint, or {@value
 * #TOGETHER} in two at the same place. Profiles have some ten thousand independent places a sheet,
 * so that normal noise passes on fewer than one sheet in a thousand; the rest is for grain that is
 * not normal.
 */
public final class LineDetector {
    static final double ALONE = 6.5;
    static final double TOGETHER = 5;

    /** A tint shows a line that another tint has placed from here on. */
    static final double SHOWS = 3.5;

    /** Share of its contrast that the same line has at least elsewhere. */
    private static final double AS_STRONG = 0.4;

    /** Fainter than this, dR/R, a line is none. */
    private static final double LEAST_CONTRAST = 0.02;

    /** Lines of several tints nearer than this are one. */
    private static final double SAME_MM = 0.2;

    /** With more lines than this a sheet is not lined but patterned; the strongest are told. */
    private static final int MOST = 200;

    private LineDetector() {}

    private record Seen(LineTrace trace, LineCandidate line) {}

    /**
     * Finds lines along one axis.
     *
     * @param tints tints that were traced along that axis, bare paper among them where there is any
     * @param sigmaMm blur of print and scan together, as the standard deviation of a Gaussian
     * @return by position
     */
    public static List<FoundLine> find(List<TintTrace> tints, double sigmaMm) {
        List<LineTrace> traces = new ArrayList<>();
        List<Seen> seen = new ArrayList<>();
        for (TintTrace tint : tints) {
            LineTrace trace = new LineTrace(tint, sigmaMm);
            traces.add(trace);
            trace.candidates(TOGETHER).forEach(line -> seen.add(new Seen(trace, line)));
        }
        seen.sort(Comparator.comparingDouble((Seen s) -> Math.abs(s.line().z())).reversed());
        List<FoundLine> found = new ArrayList<>();
        while (!seen.isEmpty() && found.size() < MOST) {
            Seen first = seen.get(0);
            List<Seen> same = new ArrayList<>();
            for (Seen other : seen) {
                if (isSame(first, other)) {
                    same.add(other);
                }
            }
            seen.removeAll(same);
            if (Math.abs(first.line().z()) >= ALONE || same.size() > 1) {
                FoundLine line = line(first, same, traces);
                if (Math.abs(line.contrast()) >= LEAST_CONTRAST) {
                    found.add(line);
                }
            }
        }
        found.sort(Comparator.comparingDouble(FoundLine::positionMm));
        return found;
    }

    private static boolean isSame(Seen first, Seen other) {
        double within = Math.max(SAME_MM, first.line().widthMm());
        return Math.abs(first.line().positionMm() - other.line().positionMm()) <= within
                && first.line().contrast() > 0 == other.line().contrast() > 0;
    }

    /** Whether a tint would show a line clearly, if it were there as elsewhere. */
    private static boolean tells(LineTrace trace, LineCandidate line, double z) {
        return Math.abs(line.contrast()) >= z * trace.noise(line.widthMm());
    }

    /**
     * Whether tints show a line that was found in another scan of the same sheet.
     *
     * @param tints where it was found, as the other scan shows them
     * @param sigmaMm blur of the other scan
     * @param withinMm how well two scans agree on places
     * @return empty when it may be there too faintly to be told
     */
    public static Optional<Boolean> shows(
            List<TintTrace> tints, double sigmaMm, FoundLine line, double withinMm) {
        boolean absent = false;
        boolean light = line.contrast() > 0;
        for (TintTrace tint : tints) {
            LineTrace trace = new LineTrace(tint, sigmaMm);
            LineCandidate near = trace.near(line.positionMm(), withinMm, light);
            if (near == null) {
                continue;
            }
            if (Math.abs(near.z()) >= SHOWS && near.contrast() > 0 == light) {
                return Optional.of(true);
            }
            absent |= trace.wouldShow(line.contrast(), line.widthMm());
        }
        return absent ? Optional.of(false) : Optional.empty();
    }

    /**
     * Whether a line that others show runs through this tint too, nearly as strong.
     *
     * @param tint along the line's axis, bare paper for example
     * @param sigmaMm blur of the scan
     * @param atMm where it would be
     * @param withinMm how well that is known
     * @return empty when it may be there too faintly to be told, or the tint is clipped
     */
    public static Optional<Boolean> runsThrough(
            TintTrace tint, double sigmaMm, FoundLine line, double atMm, double withinMm) {
        LineTrace trace = new LineTrace(tint, sigmaMm);
        boolean light = line.contrast() > 0;
        LineCandidate near = trace.near(atMm, withinMm, light);
        if (near == null) {
            return Optional.empty();
        }
        if (Math.abs(near.z()) >= SHOWS && near.contrast() / line.contrast() >= AS_STRONG) {
            return Optional.of(true);
        }
        return trace.wouldShow(line.contrast(), line.widthMm())
                ? Optional.of(false)
                : Optional.empty();
    }

    private static FoundLine line(Seen first, List<Seen> same, List<LineTrace> traces) {
        boolean light = first.line().contrast() > 0;
        double weights = 0;
        double position = 0;
        for (Seen one : same) {
            double weight = one.line().z() * one.line().z();
            weights += weight;
            position += weight * one.line().positionMm();
        }
        List<String> shows = new ArrayList<>();
        List<String> lacks = new ArrayList<>();
        boolean onPaper = false;
        List<LineShape.View> views = new ArrayList<>();
        views.add(new LineShape.View(first.trace(), first.line().positionMm()));
        for (LineTrace trace : traces) {
            LineCandidate here =
                    same.stream()
                            .filter(one -> one.trace() == trace)
                            .map(Seen::line)
                            .findFirst()
                            .orElse(null);
            LineCandidate near = trace.near(first.line().positionMm(), SAME_MM / 2, light);
            boolean shown =
                    here != null
                            || (near != null
                                    && Math.abs(near.z()) >= SHOWS
                                    && near.contrast() > 0 == light);
            onPaper |= shown && trace.tint().bare();
            if (shown) {
                shows.add(trace.tint().id());
                // Near the end of a tint filters do not reach, and its own place is what there is.
                LineCandidate seen = near != null ? near : here;
                if (seen != null && trace != first.trace()) {
                    views.add(new LineShape.View(trace, seen.positionMm()));
                }
            } else if (near != null && tells(trace, first.line(), TOGETHER)) {
                lacks.add(trace.tint().id());
            }
        }
        LineShape shape = LineShape.fit(views);
        return new FoundLine(
                first.trace().tint().along(),
                position / weights,
                shape.widthMm(),
                shape.contrast(),
                Math.abs(first.line().z()),
                shows,
                lacks,
                onPaper,
                first.trace().tint().lightness());
    }
}
