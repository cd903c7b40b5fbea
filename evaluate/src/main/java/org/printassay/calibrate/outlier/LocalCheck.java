package org.printassay.calibrate.outlier;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.IntFunction;
import org.printassay.calibrate.codes.PatchColour;
import org.printassay.calibrate.light.TwinScales;
import org.printassay.colour.DeltaE;
import org.printassay.colour.Lab;
import org.printassay.colour.Rgb8;
import org.printassay.colour.Xyz;
import org.printassay.reading.ReadingFlag;
import org.printassay.robust.Median;
import org.printassay.sheet.PointMm;

/**
 * Finds the parts of a sheet where patches depart from their twins elsewhere in the same way.
 * Either patches of like tone are all moved alike: a stain, the shadow of a fold. Or the same light
 * is added to all of them, which dark patches tell best: light that leaks in at an edge. No single
 * patch need be far off there, and colours without twins are as wrong as those beside them.
 */
public final class LocalCheck {
    /** How near patches count as beside each other, one standard deviation. */
    private static final double NEAR_MM = 12;

    /** How near in L* they count as alike. */
    private static final double LIKE_L = 15;

    /** Standard deviations of both beyond which nothing counts. */
    private static final double REACH = 2.5;

    /** Fewer patches, by weight, show nothing in common. */
    private static final double FEWEST = 3;

    /** Standard errors. */
    private static final double CUT = 5;

    /** Smaller departures, dE00, are the print's own drift. */
    private static final double LEAST_DELTA_E = 1.5;

    /** Standard error of a median over that of a mean, of normal errors. */
    private static final double OF_MEDIAN = 1.2533;

    /** In the second look patches that are disturbed no longer tell what twins should read. */
    private static final int LOOKS = 2;

    private static final int NUMBERS = 3;

    private final List<PatchColour> colours;
    private final boolean[] doubted;
    private final Lab[] labs;
    private final PointMm[] places;

    /** In CIELAB, distance of each patch from the middle of its twins; empty where it has none. */
    private final double[][] departures;

    /** The same in X, Y and Z, paper 1. */
    private final double[][] lights;

    /** How far twins lie apart by tone, for each coordinate. */
    private final TwinScales[] scales = new TwinScales[NUMBERS];

    private final int[] zones;

    /**
     * A look at all patches.
     *
     * @param doubted those that do not tell what their twins should read, if any others do
     */
    private LocalCheck(List<PatchColour> colours, boolean[] doubted) {
        this.colours = colours;
        this.doubted = doubted;
        this.labs =
                colours.stream()
                        .map(colour -> Lab.of(colour.relative(), Xyz.PCS_WHITE))
                        .toArray(Lab[]::new);
        this.places =
                colours.stream()
                        .map(colour -> colour.patch().area().centre())
                        .toArray(PointMm[]::new);
        this.departures = new double[labs.length][0];
        this.lights = new double[labs.length][0];
        this.zones = new int[labs.length];
        double[][] residuals = new double[NUMBERS][labs.length];
        Map<Rgb8, List<Integer>> groups = new LinkedHashMap<>();
        for (int i = 0; i < labs.length; i++) {
            Rgb8 code = colours.get(i).patch().rgb();
            double reflectance = Math.max(0, colours.get(i).relative().y() / 100);
            zones[i] = TwinScales.zone(reflectance, code.equals(Rgb8.grey(255)));
            for (double[] coordinate : residuals) {
                coordinate[i] = Double.NaN;
            }
            if (tells(colours.get(i))) {
                groups.computeIfAbsent(code, k -> new ArrayList<>()).add(i);
            }
        }
        for (List<Integer> twins : groups.values()) {
            if (twins.size() > 1) {
                depart(twins, departures, i -> numbers(labs[i]));
                depart(twins, lights, i -> light(colours.get(i).relative()));
                fromMean(twins, residuals);
            }
        }
        for (int c = 0; c < NUMBERS; c++) {
            scales[c] = TwinScales.of(residuals[c], zones, 1);
        }
    }

    /** Distances from the mean of twins, standardised for the mean taken out. */
    private void fromMean(List<Integer> twins, double[][] residuals) {
        double left = Math.sqrt(1 - 1.0 / twins.size());
        for (int c = 0; c < NUMBERS; c++) {
            int at = c;
            double mean = twins.stream().mapToDouble(i -> numbers(labs[i])[at]).average().orElse(0);
            for (int i : twins) {
                residuals[c][i] = (numbers(labs[i])[c] - mean) / left;
            }
        }
    }

    /** Dirt within a patch and what a scanner cuts off are its own. */
    private static boolean tells(PatchColour colour) {
        return EnumSet.of(ReadingFlag.UNLIKE_TWINS, ReadingFlag.EDGE).containsAll(colour.flags());
    }

    private static double[] numbers(Lab lab) {
        return new double[] {lab.l(), lab.a(), lab.b()};
    }

    private static double[] light(Xyz relative) {
        Xyz white = Xyz.PCS_WHITE;
        return new double[] {
            relative.x() / white.x(), relative.y() / white.y(), relative.z() / white.z()
        };
    }

    private void depart(List<Integer> twins, double[][] departures, IntFunction<double[]> of) {
        List<Integer> sure = twins.stream().filter(i -> !doubted[i]).toList();
        List<Integer> telling = sure.isEmpty() ? twins : sure;
        double[] middle = new double[NUMBERS];
        for (int c = 0; c < NUMBERS; c++) {
            int at = c;
            middle[c] = Median.of(telling.stream().mapToDouble(i -> of.apply(i)[at]).toArray());
        }
        for (int i : twins) {
            double[] own = of.apply(i);
            departures[i] = new double[NUMBERS];
            for (int c = 0; c < NUMBERS; c++) {
                departures[i][c] = own[c] - middle[c];
            }
        }
    }

    /** The same colours, those in a part that reads otherwise flagged. */
    public static List<PatchColour> flagged(List<PatchColour> colours) {
        boolean[] disturbed = new boolean[colours.size()];
        for (int look = 0; look < LOOKS; look++) {
            LocalCheck check = new LocalCheck(colours, disturbed);
            boolean[] found = new boolean[disturbed.length];
            boolean any = false;
            for (int i = 0; i < found.length; i++) {
                found[i] = check.disturbed(i);
                any |= found[i];
            }
            disturbed = found;
            if (!any) {
                return colours;
            }
        }
        List<PatchColour> all = new ArrayList<>();
        for (int i = 0; i < colours.size(); i++) {
            PatchColour colour = colours.get(i);
            all.add(disturbed[i] ? colour.flagged(ReadingFlag.DISTURBED) : colour);
        }
        return all;
    }

    /** A patch near another, and how near: 1 at the same place. */
    private record Near(int patch, double nearness) {}

    /** A patch with twins near another: its departure, and how much it tells of that. */
    @SuppressWarnings("ArrayRecordComponent") // stays inside this class
    private record Beside(int patch, double[] departure, double weight) {}

    private boolean disturbed(int patch) {
        List<Near> near = near(patch);
        return movedAlike(patch, near) || lit(patch, near);
    }

    /** Whether patches of like tone around a patch are off their twins in the same way. */
    private boolean movedAlike(int patch, List<Near> near) {
        List<Beside> beside = new ArrayList<>();
        for (Near one : near) {
            int k = one.patch();
            double apart = Math.abs(labs[k].l() - labs[patch].l()) / LIKE_L;
            if (apart < REACH) {
                double weight = one.nearness() * Math.exp(-apart * apart / 2);
                beside.add(new Beside(k, departures[k], weight));
            }
        }
        if (alike(beside) < FEWEST) {
            return false;
        }
        double[] moved = middle(beside);
        double most = 0;
        for (int c = 0; c < NUMBERS; c++) {
            double variance = 0;
            double weights = 0;
            for (Beside one : beside) {
                variance += Math.pow(one.weight() * scales[c].zones()[zones[one.patch()]], 2);
                weights += one.weight();
            }
            double error = OF_MEDIAN * Math.sqrt(variance) / weights;
            most = Math.max(most, Math.abs(moved[c]) / error);
        }
        Lab lab = labs[patch];
        Lab without = new Lab(lab.l() - moved[0], lab.a() - moved[1], lab.b() - moved[2]);
        return most > CUT && DeltaE.ciede2000(lab, without) > LEAST_DELTA_E;
    }

    /** Whether the same light is added to all patches around a patch. */
    private boolean lit(int patch, List<Near> near) {
        List<Beside> beside = new ArrayList<>();
        double precision = 0;
        for (Near one : near) {
            int k = one.patch();
            double error =
                    scales[0].zones()[zones[k]] / Lab.slope(colours.get(k).relative().y() / 100);
            double weight = one.nearness() / (error * error);
            beside.add(new Beside(k, lights[k], weight));
            precision += weight;
        }
        if (alike(beside) < FEWEST) {
            return false;
        }
        double[] added = middle(beside);
        double error = OF_MEDIAN / Math.sqrt(precision);
        if (!(Math.abs(added[1]) > CUT * error)) {
            return false;
        }
        Xyz seen = colours.get(patch).relative();
        Xyz white = Xyz.PCS_WHITE;
        Xyz without =
                new Xyz(
                        seen.x() - added[0] * white.x(),
                        seen.y() - added[1] * white.y(),
                        seen.z() - added[2] * white.z());
        return DeltaE.ciede2000(labs[patch], Lab.of(without, white)) > LEAST_DELTA_E;
    }

    /** The patches with twins within reach; a patch is no witness of its own. */
    private List<Near> near(int patch) {
        List<Near> near = new ArrayList<>();
        for (int k = 0; k < labs.length; k++) {
            double x = places[k].x() - places[patch].x();
            double y = places[k].y() - places[patch].y();
            double away = (x * x + y * y) / (NEAR_MM * NEAR_MM);
            if (k != patch && departures[k].length > 0 && away < REACH * REACH) {
                near.add(new Near(k, Math.exp(-away / 2)));
            }
        }
        return near;
    }

    /** How many patches of equal weight would tell as much. */
    private static double alike(List<Beside> beside) {
        double weights = beside.stream().mapToDouble(Beside::weight).sum();
        double squares = beside.stream().mapToDouble(one -> Math.pow(one.weight(), 2)).sum();
        return beside.isEmpty() ? 0 : weights * weights / squares;
    }

    /** Weighted median of each coordinate. */
    private static double[] middle(List<Beside> beside) {
        double half = beside.stream().mapToDouble(Beside::weight).sum() / 2;
        double[] middle = new double[NUMBERS];
        for (int c = 0; c < NUMBERS; c++) {
            int at = c;
            List<Beside> sorted =
                    beside.stream()
                            .sorted(Comparator.comparingDouble(one -> one.departure()[at]))
                            .toList();
            double sum = 0;
            int last = -1;
            while (sum < half) {
                last++;
                sum += sorted.get(last).weight();
            }
            middle[c] = sorted.get(last).departure()[c];
        }
        return middle;
    }
}
