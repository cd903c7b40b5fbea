package org.printassay.metric;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.apache.commons.math3.distribution.FDistribution;
import org.apache.commons.math3.distribution.TDistribution;
import org.printassay.colour.Rgb8;
import org.printassay.reading.Reading;
import org.printassay.reading.ReadingSet;
import org.printassay.sheet.PointMm;

/**
 * How lightness changes over the sheet, from how equal patches at different places differ: a plane
 * through all of them, each group of twins with a lightness of its own. Of a scan it is what is
 * left after evening out.
 *
 * @param acrossPerMetre L* a metre to the right
 * @param downPerMetre L* a metre downwards
 * @param overSheet L* between the lightest and the darkest corner of the area that was read
 * @param uncertainty 95 % half-width of {@code overSheet}
 * @param significant whether it differs from none
 * @param words such as "darker towards the bottom left"
 */
public record Gradient(
        double acrossPerMetre,
        double downPerMetre,
        double overSheet,
        double uncertainty,
        boolean significant,
        String words) {
    private static final int FEWEST_FREEDOM = 10;
    private static final double MM_PER_METRE = 1000;
    private static final double LEAST_SPAN_M = 0.02;

    /** Less than this over a sheet is not worth a direction, L* (common practice, no source). */
    private static final double SHOWS = 0.3;

    /** A patch against the mean of its twins: place in metres, lightness in L*. */
    private record Difference(double x, double y, double deltaL) {}

    /**
     * A gradient, and what its uncertainty rests on.
     *
     * @param standard standard uncertainty of {@link Gradient#overSheet}
     * @param freedom degrees of freedom of it
     */
    record Fit(Gradient gradient, double standard, int freedom) {}

    /** Fits the plane; empty when too few equal patches with places were read on one sheet. */
    static Optional<Fit> of(ReadingSet set) {
        List<List<Reading>> twins = twins(set);
        List<Difference> all = new ArrayList<>();
        double left = Double.POSITIVE_INFINITY;
        double right = Double.NEGATIVE_INFINITY;
        double top = Double.POSITIVE_INFINITY;
        double bottom = Double.NEGATIVE_INFINITY;
        for (List<Reading> group : twins) {
            double x = group.stream().mapToDouble(r -> place(r).x()).average().orElseThrow();
            double y = group.stream().mapToDouble(r -> place(r).y()).average().orElseThrow();
            double l = group.stream().mapToDouble(r -> r.best().l()).average().orElseThrow();
            for (Reading r : group) {
                PointMm at = place(r);
                all.add(
                        new Difference(
                                (at.x() - x) / MM_PER_METRE,
                                (at.y() - y) / MM_PER_METRE,
                                r.best().l() - l));
                left = Math.min(left, at.x() / MM_PER_METRE);
                right = Math.max(right, at.x() / MM_PER_METRE);
                top = Math.min(top, at.y() / MM_PER_METRE);
                bottom = Math.max(bottom, at.y() / MM_PER_METRE);
            }
        }
        int freedom = all.size() - twins.size() - 2;
        if (freedom < FEWEST_FREEDOM
                || right - left < LEAST_SPAN_M
                || bottom - top < LEAST_SPAN_M) {
            return Optional.empty();
        }
        return plane(all, freedom, right - left, bottom - top);
    }

    private static Optional<Fit> plane(
            List<Difference> all, int freedom, double wide, double tall) {
        double xx = 0;
        double xy = 0;
        double yy = 0;
        double xl = 0;
        double yl = 0;
        double ll = 0;
        for (Difference d : all) {
            xx += d.x * d.x;
            xy += d.x * d.y;
            yy += d.y * d.y;
            xl += d.x * d.deltaL;
            yl += d.y * d.deltaL;
            ll += d.deltaL * d.deltaL;
        }
        double determinant = xx * yy - xy * xy;
        if (!(determinant > 1e-9 * xx * yy)) {
            return Optional.empty();
        }
        double across = (xl * yy - yl * xy) / determinant;
        double down = (yl * xx - xl * xy) / determinant;
        double explained = across * xl + down * yl;
        double variance = Math.max(1e-12, (ll - explained) / freedom);
        // Two slopes, against a variance that is itself told by few differences.
        double chance = new FDistribution(null, 2, freedom).inverseCumulativeProbability(0.95);
        boolean significant = explained > 2 * chance * variance;
        double over = Math.abs(across) * wide + Math.abs(down) * tall;
        double signs = Math.signum(across) * Math.signum(down);
        double squares =
                (wide * wide * yy + tall * tall * xx - 2 * signs * wide * tall * xy) / determinant;
        double standard = Math.sqrt(variance * Math.max(0, squares));
        double factor = new TDistribution(null, freedom).inverseCumulativeProbability(0.975);
        Gradient gradient =
                new Gradient(
                        across,
                        down,
                        over,
                        factor * standard,
                        significant,
                        significant
                                ? over < SHOWS
                                        ? "less than would show"
                                        : words(across * wide, down * tall)
                                : "no measurable gradient");
        return Optional.of(new Fit(gradient, standard, freedom));
    }

    /** Clean twins of the first sheet that has any. */
    private static List<List<Reading>> twins(ReadingSet set) {
        Map<Integer, Map<Rgb8, List<Reading>>> sheets = new HashMap<>();
        for (Reading reading : set.readings()) {
            boolean told = reading.lab() != null || reading.labRelative() != null;
            if (told && reading.centre() != null && reading.isSound()) {
                sheets.computeIfAbsent(reading.sheet(), k -> new HashMap<>())
                        .computeIfAbsent(reading.rgb(), k -> new ArrayList<>())
                        .add(reading);
            }
        }
        return sheets.values().stream()
                .map(groups -> groups.values().stream().filter(g -> g.size() > 1).toList())
                .filter(groups -> !groups.isEmpty())
                .findFirst()
                .orElse(List.of());
    }

    private static PointMm place(Reading reading) {
        PointMm at = reading.centre();
        if (at == null) {
            throw new IllegalStateException("reading " + reading.id() + " has no place");
        }
        return at;
    }

    /**
     * Where it gets darker; a side counts when it has at least a third of the whole.
     *
     * @param across L* from the left side to the right one, {@code down} from top to bottom
     */
    static String words(double across, double down) {
        double all = Math.abs(across) + Math.abs(down);
        List<String> sides = new ArrayList<>();
        if (Math.abs(down) > all / 3) {
            sides.add(down < 0 ? "bottom" : "top");
        }
        if (Math.abs(across) > all / 3) {
            sides.add(across < 0 ? "right" : "left");
        }
        return "darker towards the " + String.join(" ", sides);
    }
}
