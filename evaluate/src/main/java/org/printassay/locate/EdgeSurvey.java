package org.printassay.locate;

import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.printassay.robust.Median;
import org.printassay.sheet.PointMm;
import org.printassay.sheet.RectMm;
import org.printassay.sheet.Sheet;

/**
 * Measures where the edges of patches really are, by the half-way crossing of profiles in linear
 * light: there blur, which is symmetric, moves nothing.
 */
final class EdgeSurvey {
    /** Profiles reach this far to both sides of an edge. */
    private static final double REACH_MM = 1.3;

    /** Beyond this from the edge the two sides are taken to be flat. */
    private static final double FLAT_FROM_MM = 0.85;

    private static final double STEP_MM = 0.1;
    private static final int HALF = (int) Math.round(REACH_MM / STEP_MM);

    /** Points along an edge that are averaged over, and the part of the edge they cover. */
    private static final int ALONG = 9;

    private static final double PART = 0.6;

    /**
     * A step smaller than this in linear light, or than this share of the lighter side, is none.
     */
    private static final double LEAST_STEP = 0.04;

    private static final double LEAST_SHARE = 0.15;

    private final LocatingImage image;
    private final Placement placement;

    private EdgeSurvey(LocatingImage image, Placement placement) {
        this.image = image;
        this.placement = placement;
    }

    /**
     * One edge.
     *
     * @param patch number of its patch on the sheet
     * @param at where the placement has its middle, scan pixels
     * @param normalX outward direction in the scan, length 1
     * @param normalY the same, downwards
     * @param offPx how far outward the edge really is, scan pixels
     * @param outwardInk 1 when the inside is darker, -1 when the outside is: ink spreads
     * @param weight contrast, 0 to 1
     */
    record Edge(
            int patch,
            PointPx at,
            double normalX,
            double normalY,
            double offPx,
            int outwardInk,
            double weight) {}

    static List<Edge> edges(LocatingImage image, Sheet sheet, Placement placement) {
        EdgeSurvey survey = new EdgeSurvey(image, placement);
        return IntStream.range(0, sheet.patches().size())
                .parallel()
                .boxed()
                .flatMap(patch -> survey.around(patch, sheet.patches().get(patch).area()).stream())
                .toList();
    }

    private List<Edge> around(int patch, RectMm area) {
        double x = area.centre().x();
        double y = area.centre().y();
        return Stream.of(
                        measure(patch, new PointMm(area.right(), y), 1, 0, area.height()),
                        measure(patch, new PointMm(area.x(), y), -1, 0, area.height()),
                        measure(patch, new PointMm(x, area.bottom()), 0, 1, area.width()),
                        measure(patch, new PointMm(x, area.y()), 0, -1, area.width()))
                .flatMap(Optional::stream)
                .toList();
    }

    /** The edge through a point of the page with an outward direction; empty where none is seen. */
    private Optional<Edge> measure(int patch, PointMm middle, int nx, int ny, double length) {
        PointPx at = placement.toScan(middle);
        PointPx out = placement.toScan(new PointMm(middle.x() + nx, middle.y() + ny));
        PointPx side = placement.toScan(new PointMm(middle.x() - ny, middle.y() + nx));
        double ox = out.x() - at.x();
        double oy = out.y() - at.y();
        double sx = side.x() - at.x();
        double sy = side.y() - at.y();
        double[] profile = {};
        double best = 0;
        double inside = 0;
        double outside = 0;
        for (double[] one : profiles(at, new double[] {ox, oy, sx, sy}, length)) {
            double before = flat(one, -1);
            double after = flat(one, 1);
            if (Math.abs(after - before) > best) {
                best = Math.abs(after - before);
                profile = one;
                inside = before;
                outside = after;
            }
        }
        if (profile.length == 0) {
            return Optional.empty();
        }
        if (best < LEAST_STEP || best < LEAST_SHARE * Math.max(inside, outside)) {
            return Optional.empty();
        }
        double crossing = crossing(profile, (inside + outside) / 2, outside > inside);
        if (Double.isNaN(crossing)) {
            return Optional.empty();
        }
        double perMm = Math.hypot(ox, oy);
        return Optional.of(
                new Edge(
                        patch,
                        at,
                        ox / perMm,
                        oy / perMm,
                        crossing * perMm,
                        inside < outside ? 1 : -1,
                        Math.min(1, best)));
    }

    /**
     * Mean light across an edge, from inside to outside, of each channel; empty where the scan does
     * not reach.
     */
    private double[][] profiles(PointPx at, double[] axes, double length) {
        double[][] profiles = new double[3][2 * HALF + 1];
        for (int k = 0; k < ALONG; k++) {
            double along = ((k + 0.5) / ALONG - 0.5) * PART * length;
            for (int i = -HALF; i <= HALF; i++) {
                double across = i * STEP_MM;
                double scanX = at.x() + across * axes[0] + along * axes[2];
                double scanY = at.y() + across * axes[1] + along * axes[3];
                double x = scanX / image.factor() - 0.5;
                double y = scanY / image.factor() - 0.5;
                int column = (int) Math.floor(x);
                int row = (int) Math.floor(y);
                if (column < 0
                        || row < 0
                        || column + 1 >= image.width()
                        || row + 1 >= image.height()) {
                    return new double[0][];
                }
                for (int c = 0; c < profiles.length; c++) {
                    profiles[c][i + HALF] += light(c, column, row, x - column, y - row) / ALONG;
                }
            }
        }
        return profiles;
    }

    /** Light beyond the centre of a pixel by shares of a pixel, straight lines between centres. */
    private double light(int channel, int column, int row, double fx, double fy) {
        return (1 - fy)
                        * ((1 - fx) * image.light(channel, column, row)
                                + fx * image.light(channel, column + 1, row))
                + fy
                        * ((1 - fx) * image.light(channel, column, row + 1)
                                + fx * image.light(channel, column + 1, row + 1));
    }

    /** Median light of the flat part inside (-1) or outside (1). */
    private static double flat(double[] profile, int side) {
        int from = (int) Math.round(FLAT_FROM_MM / STEP_MM);
        double[] part = new double[HALF - from + 1];
        for (int i = 0; i < part.length; i++) {
            part[i] = profile[HALF + side * (from + i)];
        }
        return Median.upper(part);
    }

    /** The one place where a profile passes a level, millimetres outward; NaN when not just one. */
    private static double crossing(double[] profile, double level, boolean rising) {
        double found = Double.NaN;
        for (int i = 1; i < profile.length; i++) {
            boolean before = profile[i - 1] < level;
            boolean after = profile[i] < level;
            if (before == after) {
                continue;
            }
            if (!Double.isNaN(found) || after == rising) {
                return Double.NaN;
            }
            double part = (level - profile[i - 1]) / (profile[i] - profile[i - 1]);
            found = (i - 1 - HALF + part) * STEP_MM;
        }
        return found;
    }
}
