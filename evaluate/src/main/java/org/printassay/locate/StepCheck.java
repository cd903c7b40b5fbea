package org.printassay.locate;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import org.printassay.colour.Rgb8;
import org.printassay.colour.RgbSpace;
import org.printassay.robust.Median;
import org.printassay.sheet.Patch;
import org.printassay.sheet.PointMm;
import org.printassay.sheet.RectMm;
import org.printassay.sheet.Sheet;

/**
 * Whether patches really are where a placement has them: between neighbours of very different tone
 * the scan must show the step, the right way round, within a millimetre of its place. Knows nothing
 * of markers, so that it finds out when they mislead.
 */
final class StepCheck {
    /** Neighbours differ at least so much in the file, L*, and the lighter one is no shadow. */
    private static final double CLEAR_STEP = 15;

    private static final double NO_SHADOW = 45;

    /** Light on both sides is taken this far from the edge; most of the step lies within. */
    private static final double NEAR_MM = 0.8;

    private static final double FAR_MM = 1.9;
    private static final double LEAST_SIDE_MM = 5;

    /** A step is one when the sides differ by this share of the lighter. */
    private static final double SEEN = 0.05;

    private static final double SHARE_NEAR = 0.5;

    /** The neighbourhood of a patch: two rows of patches, and how many steps tell about it. */
    private static final double AROUND_MM = 12;

    private static final int FEWEST_AROUND = 3;

    /** Greys are compared in groups of so many codes; further off than this, codes, is another. */
    private static final int GREYS = 16;

    private static final double OTHER_GREY = 50;

    private final LocatingImage image;
    private final Placement placement;

    private StepCheck(LocatingImage image, Placement placement) {
        this.image = image;
        this.placement = placement;
    }

    /**
     * What came out.
     *
     * @param tested steps that lie in the scan
     * @param agreeing those that the scan shows where they should be
     * @param unlike patches in whose neighbourhood most steps are not as they should be, that touch
     *     such patches while most steps of their own are not, greys that stand alone and are far
     *     from others of their code, or such as touch one of these and look like it: covered, or
     *     misplaced
     */
    record Result(int tested, int agreeing, List<Patch> unlike) {
        double share() {
            return tested == 0 ? 1 : (double) agreeing / tested;
        }
    }

    /** A step that was looked at, and whose it is. */
    private record Looked(PointMm at, List<Patch> of, boolean agrees) {}

    /**
     * A step that should be seen.
     *
     * @param of the two patches
     * @param at middle of the edge
     * @param downwards whether the edge lies across, the second patch below the first
     * @param length of the edge, millimetres
     * @param lighterFirst whether the first patch is the lighter one
     */
    private record Step(
            List<Patch> of, PointMm at, boolean downwards, double length, boolean lighterFirst) {}

    static Result of(LocatingImage image, Sheet sheet, RgbSpace space, Placement placement) {
        StepCheck check = new StepCheck(image, placement);
        List<Looked> all = new ArrayList<>();
        for (Step step : steps(sheet, space)) {
            double[] light = check.light(step);
            if (light.length > 0) {
                all.add(new Looked(step.at, step.of, agrees(light, step.lighterFirst)));
            }
        }
        int tested = all.size();
        int agreeing = (int) all.stream().filter(Looked::agrees).count();
        List<Looked> withGreys = new ArrayList<>(all);
        check.greys(sheet, withGreys);
        List<Patch> unlike = new ArrayList<>();
        for (Patch patch : sheet.patches()) {
            PointMm at = patch.area().centre();
            if (isUnlike(at, all) || isUnlike(at, withGreys)) {
                unlike.add(patch);
            }
        }
        List<Patch> suspects = addBorder(sheet, withGreys, unlike);
        SameCover.addTo(unlike, suspects, sheet.patches(), image, placement);
        return new Result(tested, agreeing, unlike);
    }

    /**
     * At the border of what is covered, and in corners of the sheet, most steps around a patch may
     * be right though it is covered itself: there its own steps tell. A patch that has only the one
     * towards what is covered goes too, for nothing speaks for it; so does a grey that stands alone
     * and is far from others of its code.
     *
     * @param unlike gets more patches
     * @return others whose own steps are wrong
     */
    private static List<Patch> addBorder(Sheet sheet, List<Looked> all, List<Patch> unlike) {
        Map<Patch, Integer> balance = new HashMap<>();
        Set<Patch> stepped = new HashSet<>();
        for (Looked step : all) {
            for (Patch patch : step.of) {
                balance.merge(patch, step.agrees ? 1 : -1, Integer::sum);
            }
            if (step.of.size() > 1) {
                stepped.addAll(step.of);
            }
        }
        List<Patch> suspects = new ArrayList<>();
        for (Patch patch : sheet.patches()) {
            if (balance.getOrDefault(patch, 0) < 0 && !unlike.contains(patch)) {
                (stepped.contains(patch) ? suspects : unlike).add(patch);
            }
        }
        boolean more = true;
        while (more) {
            List<Patch> touching =
                    suspects.stream().filter(suspect -> touchesOne(suspect, unlike)).toList();
            unlike.addAll(touching);
            suspects.removeAll(touching);
            more = !touching.isEmpty();
        }
        return suspects;
    }

    private static boolean touchesOne(Patch patch, List<Patch> others) {
        return others.stream().anyMatch(o -> o.area().isNear(patch.area(), SameCover.TOUCHING_MM));
    }

    /** Greys, of which a sheet has many, must be about as light as others of their code. */
    private void greys(Sheet sheet, List<Looked> all) {
        Map<Integer, List<Double>> byCode = new TreeMap<>();
        Map<Patch, Double> codes = new LinkedHashMap<>();
        for (Patch patch : sheet.patches()) {
            Rgb8 rgb = patch.rgb();
            double light = light(patch.area().centre());
            if (rgb.r() == rgb.g() && rgb.g() == rgb.b() && !Double.isNaN(light)) {
                double code = 255 * RgbSpace.SRGB.encode(light);
                codes.put(patch, code);
                byCode.computeIfAbsent(rgb.g() / GREYS, k -> new ArrayList<>()).add(code);
            }
        }
        Map<Integer, Double> usual = new TreeMap<>();
        byCode.forEach(
                (grey, alike) ->
                        usual.put(
                                grey,
                                Median.upper(alike.stream().mapToDouble(one -> one).toArray())));
        codes.forEach(
                (patch, code) -> {
                    double alike = usual.getOrDefault(patch.rgb().g() / GREYS, Double.NaN);
                    boolean agrees = Math.abs(code - alike) < OTHER_GREY;
                    all.add(new Looked(patch.area().centre(), List.of(patch), agrees));
                });
    }

    private static boolean isUnlike(PointMm at, List<Looked> steps) {
        int near = 0;
        int against = 0;
        for (Looked step : steps) {
            double x = step.at.x() - at.x();
            double y = step.at.y() - at.y();
            if (x * x + y * y < AROUND_MM * AROUND_MM) {
                near++;
                against += step.agrees ? 0 : 1;
            }
        }
        return near >= FEWEST_AROUND && 2 * against > near;
    }

    private static List<Step> steps(Sheet sheet, RgbSpace space) {
        List<Step> steps = new ArrayList<>();
        List<Patch> large = new ArrayList<>();
        for (Patch patch : sheet.patches()) {
            if (shortSide(patch.area()) >= LEAST_SIDE_MM) {
                large.add(patch);
            }
        }
        for (Patch one : large) {
            RectMm a = one.area();
            for (Patch other : large) {
                RectMm b = other.area();
                boolean beside = same(a.right(), b.x()) && same(a.y(), b.y());
                boolean below = same(a.bottom(), b.y()) && same(a.x(), b.x());
                if (!(beside && same(a.height(), b.height()))
                        && !(below && same(a.width(), b.width()))) {
                    continue;
                }
                double lighter = step(one, other, space);
                if (lighter != 0) {
                    PointMm at =
                            beside
                                    ? new PointMm(a.right(), a.centre().y())
                                    : new PointMm(a.centre().x(), a.bottom());
                    double length = beside ? a.height() : a.width();
                    steps.add(new Step(List.of(one, other), at, below, length, lighter > 0));
                }
            }
        }
        return steps;
    }

    private static double shortSide(RectMm area) {
        return Math.min(area.width(), area.height());
    }

    private static boolean same(double a, double b) {
        return Math.abs(a - b) < 0.05;
    }

    /** Positive when the first is clearly lighter, negative when darker, 0 when neither is sure. */
    private static double step(Patch one, Patch other, RgbSpace space) {
        int green = one.rgb().g() - other.rgb().g();
        if (green == 0) {
            return 0;
        }
        double a = space.toLab(one.rgb()).l();
        double b = space.toLab(other.rgb()).l();
        boolean clear = Math.abs(a - b) >= CLEAR_STEP && Math.max(a, b) >= NO_SHADOW;
        return clear && Math.signum(a - b) == Math.signum(green) ? a - b : 0;
    }

    /** Light far and near before the edge, near and far after it; empty outside the scan. */
    private double[] light(Step step) {
        double[] places = {-FAR_MM, -NEAR_MM, NEAR_MM, FAR_MM};
        double[] light = new double[places.length];
        for (int i = 0; i < places.length; i++) {
            for (int k = -2; k <= 2; k++) {
                double along = 0.12 * k * step.length;
                PointMm page =
                        step.downwards
                                ? new PointMm(step.at.x() + along, step.at.y() + places[i])
                                : new PointMm(step.at.x() + places[i], step.at.y() + along);
                double one = light(page);
                if (Double.isNaN(one)) {
                    return new double[0];
                }
                light[i] += one / 5;
            }
        }
        return light;
    }

    /** Green light at a place of the page; NaN outside the scan. */
    private double light(PointMm page) {
        PointPx at = placement.toScan(page);
        int x = (int) Math.floor(at.x() / image.factor());
        int y = (int) Math.floor(at.y() / image.factor());
        boolean inside = x >= 0 && y >= 0 && x < image.width() && y < image.height();
        return inside ? image.light(1, x, y) : Double.NaN;
    }

    private static boolean agrees(double[] light, boolean lighterFirst) {
        int sign = lighterFirst ? 1 : -1;
        double far = sign * (light[0] - light[3]);
        double near = sign * (light[1] - light[2]);
        return far > SEEN * Math.max(light[0], light[3]) && near > SHARE_NEAR * far;
    }
}
