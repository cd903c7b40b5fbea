package org.printassay.locate;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.printassay.colour.Rgb8;
import org.printassay.colour.RgbSpace;
import org.printassay.robust.Median;
import org.printassay.sheet.Patch;
import org.printassay.sheet.PointMm;
import org.printassay.sheet.RectMm;
import org.printassay.sheet.Sheet;

/**
 * Whether a scan can be of the chart that it is said to be of. Whatever a printer makes of codes,
 * patches of one code look alike wherever they stand, and those of nearly the same code nearly so;
 * under the codes of another chart they do not. What covers a sheet spoils patches side by side and
 * is left aside; another chart's order spoils them here and there all over the sheet.
 */
final class CodeOrder {
    /** Codes no further apart than this are nearly the same; so many of them tell how one looks. */
    private static final int NEAR = 16;

    private static final int MOST_ALIKE = 5;

    /**
     * A patch further from what its like look like than this share of how far any two patches lie
     * apart looks otherwise (no source).
     */
    private static final double OTHERWISE = 0.25;

    /** The neighbourhood of a patch: two rows of patches. */
    private static final double AROUND_MM = 12;

    /**
     * Most patches that look otherwise where most of their neighbours do not, as a share. In
     * simulated prints a right chart with a third of it covered shows up to 0.04, another of the
     * same places 0.12 and more (no source).
     */
    private static final double MOST_ODD = 0.08;

    /** So much of what was compared must lie outside of neighbourhoods that look otherwise. */
    private static final double LEAST_LEFT = Locator.LEAST_PATCHES;

    /** Fewer patches tell nothing. */
    private static final int FEWEST = 30;

    private CodeOrder() {}

    /**
     * How a patch looks.
     *
     * @param codes red, green and blue of the scan, 0-255, evenly spaced to the eye
     */
    @SuppressWarnings("ArrayRecordComponent") // numbers on their way, never compared
    record Look(Patch patch, double[] codes) {
        double off(double[] other) {
            double squares = 0;
            for (int c = 0; c < 3; c++) {
                squares += (codes[c] - other[c]) * (codes[c] - other[c]);
            }
            return Math.sqrt(squares / 3);
        }

        boolean isAround(Look other) {
            PointMm here = patch.area().centre();
            PointMm there = other.patch.area().centre();
            return Math.hypot(here.x() - there.x(), here.y() - there.y()) < AROUND_MM;
        }
    }

    /** A patch with others of its code or nearly its code, and whether it looks like them. */
    private record Compared(Look look, boolean odd) {}

    /**
     * What came out.
     *
     * @param compared patches with others of their code, or nearly their code
     * @param left those of them in whose neighbourhood most look as they should
     * @param odd those of {@code left} that do not
     */
    record Result(int compared, int left, int odd) {
        boolean isOtherChart() {
            return compared >= FEWEST && (left < LEAST_LEFT * compared || odd > MOST_ODD * left);
        }
    }

    /**
     * Compares patches with those of their code.
     *
     * @param covered patches that are known not to be seen
     */
    static Result of(LocatingImage image, Sheet sheet, Placement placement, List<Patch> covered) {
        List<Look> looks = new ArrayList<>();
        for (Patch patch : sheet.patches()) {
            if (!covered.contains(patch)) {
                look(image, placement, patch).ifPresent(looks::add);
            }
        }
        return of(looks);
    }

    static Result of(List<Look> looks) {
        double limit = OTHERWISE * usuallyApart(looks);
        List<Compared> all = compared(looks, limit);
        // What covers a sheet misleads about how codes look: once more without it.
        List<Look> seen = new ArrayList<>();
        for (Compared one : all) {
            if (isAmidMostlyAlike(one, all)) {
                seen.add(one.look);
            }
        }
        List<Compared> again = compared(seen, limit);
        int left = 0;
        int odd = 0;
        for (Compared one : again) {
            if (isAmidMostlyAlike(one, again)) {
                left++;
                odd += one.odd ? 1 : 0;
            }
        }
        return new Result(all.size(), left, odd);
    }

    private static boolean isAmidMostlyAlike(Compared one, List<Compared> all) {
        int balance = 0;
        for (Compared other : all) {
            if (one.look.isAround(other.look)) {
                balance += other.odd ? -1 : 1;
            }
        }
        return balance >= 0;
    }

    private static List<Compared> compared(List<Look> looks, double limit) {
        List<Compared> compared = new ArrayList<>();
        for (Look look : looks) {
            List<Look> alike =
                    looks.stream()
                            .filter(
                                    other ->
                                            !other.patch.equals(look.patch)
                                                    && apart(look, other) <= NEAR)
                            .sorted(Comparator.comparingInt(other -> apart(look, other)))
                            .limit(MOST_ALIKE)
                            .toList();
            if (!alike.isEmpty()) {
                compared.add(new Compared(look, look.off(middle(alike)) > limit));
            }
        }
        return compared;
    }

    /** How far two patches' codes lie apart, in the channel where they do most. */
    private static int apart(Look one, Look other) {
        Rgb8 a = one.patch.rgb();
        Rgb8 b = other.patch.rgb();
        return Math.max(
                Math.abs(a.r() - b.r()),
                Math.max(Math.abs(a.g() - b.g()), Math.abs(a.b() - b.b())));
    }

    private static double[] middle(List<Look> looks) {
        double[] middle = new double[3];
        for (int c = 0; c < 3; c++) {
            int channel = c;
            middle[c] = Median.of(looks.stream().mapToDouble(l -> l.codes[channel]).toArray());
        }
        return middle;
    }

    /** How far two patches of different codes lie apart. */
    private static double usuallyApart(List<Look> looks) {
        List<Double> apart = new ArrayList<>();
        for (int i = 0; i < looks.size(); i++) {
            for (Look other : looks.subList(0, i)) {
                if (!other.patch.rgb().equals(looks.get(i).patch.rgb())) {
                    apart.add(other.off(looks.get(i).codes));
                }
            }
        }
        return apart.isEmpty() ? 0 : Median.of(apart.stream().mapToDouble(d -> d).toArray());
    }

    /** The middle part of a patch; empty outside the scan. */
    private static Optional<Look> look(LocatingImage image, Placement placement, Patch patch) {
        RectMm area = patch.area();
        double[] light = new double[3];
        for (int down = -2; down <= 2; down++) {
            for (int across = -2; across <= 2; across++) {
                PointPx at =
                        placement.toScan(
                                new PointMm(
                                        area.centre().x() + 0.12 * across * area.width(),
                                        area.centre().y() + 0.12 * down * area.height()));
                int x = (int) Math.floor(at.x() / image.factor());
                int y = (int) Math.floor(at.y() / image.factor());
                if (x < 0 || y < 0 || x >= image.width() || y >= image.height()) {
                    return Optional.empty();
                }
                for (int c = 0; c < 3; c++) {
                    light[c] += image.light(c, x, y) / 25;
                }
            }
        }
        double[] codes = new double[3];
        for (int c = 0; c < 3; c++) {
            codes[c] = 255 * RgbSpace.SRGB.encode(light[c]);
        }
        return Optional.of(new Look(patch, codes));
    }
}
