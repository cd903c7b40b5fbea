package org.printassay.locate;

import boofcv.struct.image.GrayU8;
import java.util.ArrayList;
import java.util.List;
import org.printassay.layout.SheetLayout;
import org.printassay.sheet.PointMm;

/**
 * Where the modules of the sheet code lie, by its own patterns (ISO/IEC 18004): the three finders
 * in its corners, and the alignment pattern near the fourth. One marker beside the code tells its
 * place to a module or two; a crooked carriage and a pixel at the marker's corners grow by the way.
 */
final class FinderPatterns {
    private static final int MODULES = SheetLayout.CODE_MODULES;

    /** Middles of the finders along a side, modules from the code's top left. */
    private static final double NEAR = 3.5;

    private static final double FAR = MODULES - 3.5;

    /** Half of a finder's side with the light ring around it. */
    private static final int FINDER_HALF = 4;

    /** Middle of the alignment pattern, the same way down and across. */
    private static final double ALIGNMENT = MODULES - 6.5;

    private static final int ALIGNMENT_HALF = 2;

    /** How far patterns are looked for, modules, and the steps. */
    private static final double REACH = 3;

    private static final double REACH_BY_FINDERS = 1.5;
    private static final double COARSE = 0.5;
    private static final double FINE = 0.125;

    /** Correlation with a pattern that is seen (common practice, no source). */
    private static final double SEEN = 0.7;

    private final GrayU8 image;
    private final Homography rough;

    private FinderPatterns(GrayU8 image, Homography rough) {
        this.image = image;
        this.rough = rough;
    }

    /** A place and how well the pattern is seen there. */
    private record Match(PointMm at, double correlation) {}

    /**
     * Modules to pixels of the image, likeliest first.
     *
     * @param rough the same to some modules
     * @return empty where a finder is not seen
     */
    static List<Homography> refine(GrayU8 image, Homography rough) {
        return new FinderPatterns(image, rough).refined();
    }

    private List<Homography> refined() {
        List<PointMm> middles =
                List.of(new PointMm(NEAR, NEAR), new PointMm(FAR, NEAR), new PointMm(NEAR, FAR));
        List<Homography.Pair> pairs = new ArrayList<>();
        for (PointMm middle : middles) {
            Match match = match(rough, middle, FINDER_HALF, REACH);
            if (match.correlation < SEEN) {
                return List.of();
            }
            pairs.add(new Homography.Pair(middle, rough.apply(match.at.x(), match.at.y())));
        }
        PointPx first = pairs.get(0).scan();
        PointPx right = pairs.get(1).scan();
        PointPx below = pairs.get(2).scan();
        pairs.add(
                new Homography.Pair(
                        new PointMm(FAR, FAR),
                        new PointPx(
                                right.x() + below.x() - first.x(),
                                right.y() + below.y() - first.y())));
        Homography affine = Homography.fit(pairs);
        PointMm alignment = new PointMm(ALIGNMENT, ALIGNMENT);
        Match match = match(affine, alignment, ALIGNMENT_HALF, REACH_BY_FINDERS);
        if (match.correlation < SEEN) {
            return List.of(affine);
        }
        pairs.set(3, new Homography.Pair(alignment, affine.apply(match.at.x(), match.at.y())));
        return List.of(Homography.fit(pairs), affine);
    }

    /** The best match of a pattern around where its middle should be. */
    private Match match(Homography map, PointMm middle, int half, double reach) {
        Match coarse = best(map, middle, half, reach, COARSE);
        return best(map, coarse.at, half, COARSE, FINE);
    }

    private Match best(Homography map, PointMm around, int half, double reach, double step) {
        int steps = (int) Math.round(reach / step);
        Match best = new Match(around, Double.NEGATIVE_INFINITY);
        for (int down = -steps; down <= steps; down++) {
            for (int across = -steps; across <= steps; across++) {
                PointMm at = new PointMm(around.x() + across * step, around.y() + down * step);
                double correlation = correlation(map, at, half);
                if (correlation > best.correlation) {
                    best = new Match(at, correlation);
                }
            }
        }
        return best;
    }

    /** Pearson's correlation of the light with rings of dark and light around a place. */
    private double correlation(Homography map, PointMm middle, int half) {
        double n = 0;
        double light = 0;
        double lights = 0;
        double pattern = 0;
        double both = 0;
        for (int row = -half; row <= half; row++) {
            for (int column = -half; column <= half; column++) {
                PointPx at = map.apply(middle.x() + column, middle.y() + row);
                int x = (int) Math.floor(at.x());
                int y = (int) Math.floor(at.y());
                if (!image.isInBounds(x, y)) {
                    return Double.NEGATIVE_INFINITY;
                }
                double value = image.get(x, y);
                double wanted = dark(Math.max(Math.abs(row), Math.abs(column)), half) ? 0 : 1;
                n++;
                light += value;
                lights += value * value;
                pattern += wanted;
                both += value * wanted;
            }
        }
        double spread = (n * lights - light * light) * (n * pattern - pattern * pattern);
        return spread > 0 ? (n * both - light * pattern) / Math.sqrt(spread) : 0;
    }

    /** Finders: dark 3 by 3, a light ring, a dark one, and light around. Alignment: 1, 1, 1. */
    private static boolean dark(int ring, int half) {
        return half == FINDER_HALF ? ring <= 1 || ring == 3 : ring != 1;
    }
}
