package org.printassay.locate;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.printassay.colour.Rgb8;
import org.printassay.colour.RgbSpace;
import org.printassay.robust.Median;
import org.printassay.sheet.Patch;
import org.printassay.sheet.PointMm;
import org.printassay.sheet.RectMm;

/**
 * What covers some patches, or shows where a part of the sheet is missing, lies under more than the
 * steps tell of: a patch that touches one of these and looks just like it, though the file has the
 * two far apart, is covered by the same thing. So is one that stands alone and looks like one near.
 */
final class SameCover {
    /** Codes, as sRGB would encode the light, within which two patches look the same. */
    private static final double SAME = 4;

    /**
     * Under what is not flat itself they may differ by so many times its own spread, up to this.
     */
    private static final double SPREADS = 5;

    private static final double MOST_SAME = 20;

    /** Codes by which they differ in the file in some channel. */
    private static final int DIFFERENT = 50;

    /** Patches that touch are so near, at corners too. */
    static final double TOUCHING_MM = 0.5;

    /** A patch that touches none has its nearest ones within this (from the paper sheet's plan). */
    private static final double ALONE_MM = 40;

    /** So many places along each side of a patch's middle are looked at. */
    private static final int PLACES = 5;

    private static final double MIDDLE = 0.6;
    private static final int CHANNELS = 3;

    private final List<Patch> patches;
    private final LocatingImage image;
    private final Placement placement;
    private final Map<Patch, Optional<Seen>> seen = new HashMap<>();
    private final Map<Patch, Double> reaches = new HashMap<>();

    private SameCover(List<Patch> patches, LocatingImage image, Placement placement) {
        this.patches = patches;
        this.image = image;
        this.placement = placement;
    }

    /**
     * What the middle of a patch looks like, codes of sRGB.
     *
     * @param spread median distance from that, of the channel where it is largest
     */
    private record Seen(double r, double g, double b, double spread) {
        boolean isLike(Seen other) {
            double same = Math.max(SAME, Math.min(MOST_SAME, SPREADS * spreadOfBoth(other)));
            return Math.abs(r - other.r) <= same
                    && Math.abs(g - other.g) <= same
                    && Math.abs(b - other.b) <= same;
        }

        /** A print is flat: where both are not, it is the grain of what covers them. */
        private double spreadOfBoth(Seen other) {
            return Math.min(spread, other.spread);
        }
    }

    /**
     * Adds what is covered by the same things.
     *
     * @param covered those known to be; gets more
     * @param suspects those whose steps are wrong: one that touches a patch and looks just like it,
     *     though they are far apart in the file, is covered without others that are
     * @param patches all of the sheet
     */
    static void addTo(
            List<Patch> covered,
            List<Patch> suspects,
            List<Patch> patches,
            LocatingImage image,
            Placement placement) {
        SameCover cover = new SameCover(patches, image, placement);
        for (Patch one : suspects) {
            if (patches.stream().anyMatch(other -> cover.isUnder(one, other))) {
                covered.add(one);
            }
        }
        List<Patch> left = new ArrayList<>(patches);
        left.removeAll(covered);
        List<Patch> border = List.copyOf(covered);
        while (!border.isEmpty()) {
            List<Patch> known = border;
            border =
                    left.stream()
                            .filter(one -> known.stream().anyMatch(k -> cover.isUnder(one, k)))
                            .toList();
            covered.addAll(border);
            left.removeAll(border);
        }
    }

    private boolean isUnder(Patch patch, Patch covered) {
        return patch.area().isNear(covered.area(), reach(patch))
                && differ(patch.rgb(), covered.rgb())
                && seen(patch).flatMap(a -> seen(covered).map(a::isLike)).orElse(false);
    }

    private double reach(Patch patch) {
        return reaches.computeIfAbsent(
                patch,
                one ->
                        patches.stream()
                                        .filter(o -> o.area().isNear(one.area(), TOUCHING_MM))
                                        .allMatch(one::equals)
                                ? ALONE_MM
                                : TOUCHING_MM);
    }

    private static boolean differ(Rgb8 one, Rgb8 other) {
        return Math.abs(one.r() - other.r()) >= DIFFERENT
                || Math.abs(one.g() - other.g()) >= DIFFERENT
                || Math.abs(one.b() - other.b()) >= DIFFERENT;
    }

    private Optional<Seen> seen(Patch patch) {
        return seen.computeIfAbsent(patch, this::look);
    }

    /** Empty where it does not lie in the scan. */
    private Optional<Seen> look(Patch patch) {
        RectMm area = patch.area();
        double[][] codes = new double[CHANNELS][PLACES * PLACES];
        for (int i = 0; i < PLACES * PLACES; i++) {
            int column = i % PLACES;
            int row = i / PLACES;
            double across = MIDDLE * (column / (PLACES - 1.0) - 0.5);
            double down = MIDDLE * (row / (PLACES - 1.0) - 0.5);
            PointPx at =
                    placement.toScan(
                            new PointMm(
                                    area.centre().x() + across * area.width(),
                                    area.centre().y() + down * area.height()));
            int x = (int) Math.floor(at.x() / image.factor());
            int y = (int) Math.floor(at.y() / image.factor());
            if (x < 0 || y < 0 || x >= image.width() || y >= image.height()) {
                return Optional.empty();
            }
            for (int c = 0; c < CHANNELS; c++) {
                codes[c][i] = 255 * RgbSpace.SRGB.encode(image.light(c, x, y));
            }
        }
        double[] middle = Arrays.stream(codes).mapToDouble(Median::of).toArray();
        double spread = 0;
        for (int c = 0; c < CHANNELS; c++) {
            double here = middle[c];
            double[] off = Arrays.stream(codes[c]).map(one -> Math.abs(one - here)).toArray();
            spread = Math.max(spread, Median.of(off));
        }
        return Optional.of(new Seen(middle[0], middle[1], middle[2], spread));
    }
}
