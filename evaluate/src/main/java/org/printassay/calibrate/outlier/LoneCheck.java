package org.printassay.calibrate.outlier;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.CholeskyDecomposition;
import org.apache.commons.math3.linear.QRDecomposition;
import org.apache.commons.math3.linear.RealVector;
import org.jspecify.annotations.Nullable;
import org.printassay.calibrate.codes.PatchColour;
import org.printassay.colour.DeltaE;
import org.printassay.colour.Lab;
import org.printassay.colour.Rgb8;
import org.printassay.colour.RgbSpace;
import org.printassay.colour.Xyz;
import org.printassay.reading.ReadingFlag;
import org.printassay.robust.Median;

/**
 * Finds patches without twins on their sheet that are far from what codes near theirs lead one to
 * expect: something lies over the whole patch, evenly, or the print has a fault there. Colour is
 * foretold by kriging: a trend that is linear in the file's own CIELAB, and of what is left the
 * nearest codes weighed by a Matern 3/2 covariance (N. Cressie, "Statistics for Spatial Data",
 * 1993, 3.2 and 3.4; M. Stein, "Interpolation of Spatial Data", 1999, 2.7). How far a print usually
 * is from it tells its own kinks from a mark.
 */
public final class LoneCheck {
    /**
     * How far off, in multiples of what is usual on this print. Routes of sRGB and Adobe RGB
     * through the free press profiles of {@code LoneCheckTest}, whose gamuts clip, stay below it.
     */
    private static final double CUT = 10;

    /** Smaller departures, dE00, are left to what is said of lone colours at large. */
    private static final double LEAST_DELTA_E = 4;

    /**
     * L* of the file below which colours are not judged: where shadows block, they turn sharply.
     */
    static final double DARKEST = 20;

    /** Fewer without twins do not tell what is usual. */
    private static final int ENOUGH_COLOURS = 40;

    private static final int ENOUGH_GREYS = 20;

    /** Nor do they where fewer than this share of them are free from doubt. */
    private static final double FREE = 0.75;

    /** Where more than this share is far off it is no marks but how the print is. */
    private static final double MOST = 0.2;

    /** The nearest codes that foretell one. */
    private static final int NEAREST = 32;

    /** Length of the covariance, in codes. */
    private static final double LENGTH = 200;

    /** What varies from patch to patch, over the variance of what the trend leaves. */
    private static final double NUGGET = 1e-3;

    private static final int NUMBERS = 3;

    private final List<PatchColour> colours;
    private final RgbSpace space;
    private final List<Known> known = new ArrayList<>();
    private final List<Rgb8> doubtedGreys = new ArrayList<>();
    private final List<Rgb8> doubtedColours = new ArrayList<>();
    private final double[][] left;

    /**
     * What one code became.
     *
     * @param lone number of its patch when it has only one and is judged; else -1
     */
    private record Known(Rgb8 code, Lab lab, int lone) {}

    /**
     * A patch against what was foretold.
     *
     * @param near codes that foretell it
     * @param distance in CIELAB
     * @param scaled the same over what the covariance lets one expect, up to a factor
     */
    @SuppressWarnings("ArrayRecordComponent") // stays inside this class
    private record Departure(int number, int[] near, Lab foretold, double distance, double scaled) {
        boolean rests(int code) {
            return Arrays.stream(near).anyMatch(one -> one == code);
        }
    }

    private LoneCheck(List<PatchColour> colours, RgbSpace space) {
        this.colours = colours;
        this.space = space;
        Map<Rgb8, List<Integer>> groups = new LinkedHashMap<>();
        for (int i = 0; i < colours.size(); i++) {
            groups.computeIfAbsent(colours.get(i).patch().rgb(), k -> new ArrayList<>()).add(i);
        }
        groups.forEach(this::add);
        this.left = withoutTrend();
    }

    private void add(Rgb8 code, List<Integer> twins) {
        boolean judged =
                twins.size() == 1 && (code.isNeutral() || space.toLab(code).l() >= DARKEST);
        List<Integer> free = twins.stream().filter(i -> colours.get(i).flags().isEmpty()).toList();
        if (!free.isEmpty()) {
            known.add(new Known(code, mean(free), judged ? free.get(0) : -1));
        } else if (judged) {
            (code.isNeutral() ? doubtedGreys : doubtedColours).add(code);
        }
    }

    /**
     * The same colours, those out of line flagged.
     *
     * @param space of the codes
     */
    public static List<PatchColour> flagged(List<PatchColour> colours, RgbSpace space) {
        LoneCheck check = new LoneCheck(colours, space);
        Set<Integer> far = new TreeSet<>();
        if (check.left.length > 0) {
            far.addAll(check.outOfLine(false, ENOUGH_COLOURS, check.doubtedColours.size()));
            far.addAll(check.outOfLine(true, ENOUGH_GREYS, check.doubtedGreys.size()));
        }
        List<PatchColour> all = new ArrayList<>(colours);
        for (int i : far) {
            all.set(i, colours.get(i).flagged(ReadingFlag.OUT_OF_LINE));
        }
        return all;
    }

    private Lab mean(List<Integer> twins) {
        return Lab.mean(
                twins.stream().map(i -> Lab.of(colours.get(i).relative(), Xyz.PCS_WHITE)).toList());
    }

    private static double[] numbers(Lab lab) {
        return new double[] {lab.l(), lab.a(), lab.b()};
    }

    /** What least squares on the file's own colours leave; empty where too little is known. */
    private double[][] withoutTrend() {
        int n = known.size();
        if (n <= NEAREST) {
            return new double[0][];
        }
        double[][] terms = new double[n][];
        double[][] left = new double[n][NUMBERS];
        for (int i = 0; i < n; i++) {
            Lab file = space.toLab(known.get(i).code());
            terms[i] = new double[] {1, file.l(), file.a(), file.b()};
        }
        QRDecomposition trend = new QRDecomposition(new Array2DRowRealMatrix(terms, false), 1e-9);
        if (!trend.getSolver().isNonSingular()) {
            return new double[0][];
        }
        for (int c = 0; c < NUMBERS; c++) {
            double[] values = new double[n];
            for (int i = 0; i < n; i++) {
                values[i] = numbers(known.get(i).lab())[c];
            }
            RealVector fit = trend.getSolver().solve(new ArrayRealVector(values, false));
            for (int i = 0; i < n; i++) {
                left[i][c] = values[i] - fit.dotProduct(new ArrayRealVector(terms[i], false));
            }
        }
        return left;
    }

    /**
     * Takes the patch that is farthest off away until the rest are in line, then puts back those
     * that only another one drew away. Greys, which lie close, and colours are two populations.
     */
    private Set<Integer> outOfLine(boolean greys, int enough, int doubted) {
        List<Integer> lone = new ArrayList<>();
        for (int i = 0; i < known.size(); i++) {
            if (known.get(i).lone() >= 0 && known.get(i).code().isNeutral() == greys) {
                lone.add(i);
            }
        }
        if (lone.size() < Math.max(enough, FREE * (lone.size() + doubted))) {
            return Set.of();
        }
        boolean[] out = new boolean[known.size()];
        Map<Integer, Departure> departures = new LinkedHashMap<>();
        lone.forEach(i -> departures.put(i, departure(i, out)));
        Set<Integer> taken = new TreeSet<>();
        double limit = CUT * median(departures.values());
        for (Departure worst = worst(departures, limit);
                worst != null;
                worst = worst(departures, limit)) {
            int number = worst.number();
            taken.add(number);
            if (taken.size() > MOST * lone.size()) {
                return Set.of();
            }
            out[number] = true;
            departures.remove(number);
            departures.replaceAll((i, d) -> d.rests(number) ? departure(i, out) : d);
            limit = CUT * median(departures.values());
        }
        Set<Integer> patches = new TreeSet<>();
        for (int i : taken) {
            if (far(departure(i, out), limit)) {
                patches.add(known.get(i).lone());
            }
        }
        return patches;
    }

    private @Nullable Departure worst(Map<Integer, Departure> departures, double limit) {
        return departures.values().stream()
                .filter(departure -> far(departure, limit))
                .max(Comparator.comparingDouble(Departure::distance))
                .orElse(null);
    }

    private boolean far(Departure departure, double limit) {
        Lab lab = known.get(departure.number()).lab();
        return departure.scaled() > limit
                && DeltaE.ciede2000(lab, departure.foretold()) > LEAST_DELTA_E;
    }

    private static double median(Collection<Departure> departures) {
        return Median.of(departures.stream().mapToDouble(Departure::scaled).toArray());
    }

    private Departure departure(int i, boolean[] out) {
        int[] near = nearest(i, out);
        double[][] together = new double[near.length][near.length];
        double[] own = new double[near.length];
        for (int j = 0; j < near.length; j++) {
            for (int k = 0; k < near.length; k++) {
                together[j][k] = covariance(near[j], near[k]) + (j == k ? NUGGET : 0);
            }
            own[j] = covariance(i, near[j]);
        }
        RealVector weights =
                new CholeskyDecomposition(new Array2DRowRealMatrix(together, false))
                        .getSolver()
                        .solve(new ArrayRealVector(own));
        double[] off = left[i].clone();
        double variance = 1 + NUGGET;
        for (int j = 0; j < near.length; j++) {
            variance -= weights.getEntry(j) * own[j];
            for (int c = 0; c < NUMBERS; c++) {
                off[c] -= weights.getEntry(j) * left[near[j]][c];
            }
        }
        double distance = Math.hypot(off[0], Math.hypot(off[1], off[2]));
        Lab lab = known.get(i).lab();
        return new Departure(
                i,
                near,
                new Lab(lab.l() - off[0], lab.a() - off[1], lab.b() - off[2]),
                distance,
                distance / Math.sqrt(variance));
    }

    private int[] nearest(int i, boolean[] out) {
        Integer[] others = new Integer[known.size()];
        double[] squares = new double[others.length];
        int n = 0;
        for (int k = 0; k < squares.length; k++) {
            squares[k] = square(i, k);
            if (k != i && !out[k]) {
                others[n++] = k;
            }
        }
        Arrays.sort(others, 0, n, Comparator.comparingDouble(k -> squares[k]));
        int[] near = new int[Math.min(NEAREST, n)];
        for (int k = 0; k < near.length; k++) {
            near[k] = others[k];
        }
        return near;
    }

    private double square(int i, int k) {
        Rgb8 one = known.get(i).code();
        Rgb8 other = known.get(k).code();
        double r = one.r() - other.r();
        double g = one.g() - other.g();
        double b = one.b() - other.b();
        return r * r + g * g + b * b;
    }

    private double covariance(int i, int k) {
        double along = Math.sqrt(3 * square(i, k)) / LENGTH;
        return (1 + along) * Math.exp(-along);
    }
}
