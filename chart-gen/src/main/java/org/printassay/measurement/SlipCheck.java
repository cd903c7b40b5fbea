package org.printassay.measurement;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.printassay.colour.DeltaE;
import org.printassay.colour.Lab;

/**
 * Whether in a list of the right length one patch was left out and another read twice, so that all
 * between stand one place off.
 *
 * <p>How the print renders colours is learnt from the list itself: L*, a* and b* as polynomials of
 * the colours that the codes stand for, doubtful readings weighing little. Then every place is
 * asked whether its reading fits its own patch or the neighbour better. Only neighbours of clearly
 * other colour have a say, so that an odd tone is not taken for a slip, and two readings in a row
 * must be alike where one patch is said to have been read twice.
 */
final class SlipCheck {
    /** Patches that are read one place off without being seen are too few to tell. */
    private static final int SHORTEST = 3;

    /** Readings for each coefficient of the polynomials, at least. */
    private static final int READINGS_FOR_ONE = 3;

    /** Neighbours nearer than this, colour difference of CIE 1976, have no say. */
    private static final double CLEAR = 10;

    /** Two readings of one patch are nearer than this, colour difference of CIE 1976. */
    private static final double SAME = 2;

    /** No print is foretold better than this, colour difference of CIE 1976. */
    private static final double FORETOLD = 1;

    /** Gain in log likelihood that leaves no doubt (common practice, no source). */
    private static final double SURE = 25;

    /** Degrees of freedom of the distribution of residuals (Student), which has long tails. */
    private static final double TAILS = 4;

    /** Median of chi squared with three degrees of freedom. */
    private static final double MEDIAN_OF_THREE = 2.366;

    private static final int ROUNDS = 3;

    /** Keeps the equations solvable where a chart has colours of one kind only. */
    private static final double RIDGE = 1e-3;

    private final List<Lab> expected;
    private final List<Lab> read;
    private final double[][] features;

    private SlipCheck(List<Lab> expected, List<Lab> read) {
        this.expected = expected;
        this.read = read;
        features = expected.stream().map(SlipCheck::features).toArray(double[][]::new);
    }

    /**
     * A slip.
     *
     * @param from first reading that is off, counted from 0
     * @param to last reading that is off
     * @param off readings are of the patch before (-1) or after (1) that of the reading order
     * @param gain in log likelihood
     */
    record Slip(int from, int to, int off, double gain) {}

    /**
     * The slip that the readings show, if any, cut to the readings that tell it; as many readings
     * as patches.
     *
     * @param expected what the codes stand for, in reading order
     */
    static Optional<Slip> of(List<Lab> expected, List<Lab> read) {
        if (read.size() < READINGS_FOR_ONE * features(new Lab(0, 0, 0)).length) {
            return Optional.empty();
        }
        SlipCheck check = new SlipCheck(expected, read);
        Slip best = check.best();
        return best == null || best.gain < SURE ? Optional.empty() : Optional.of(check.told(best));
    }

    private Slip told(Slip slip) {
        int from = slip.from;
        int to = slip.to;
        while (from < to && !tells(from, slip.off)) {
            from++;
        }
        while (to > from && !tells(to, slip.off)) {
            to--;
        }
        return new Slip(from, to, slip.off, slip.gain);
    }

    /** The best slip found from three first guesses: none, all off forwards, all off backwards. */
    private @Nullable Slip best() {
        double straight = misfit(fit(null), null);
        Slip best = null;
        int last = read.size() - 1;
        Slip[] starts = {null, new Slip(0, last - 1, 1, 0), new Slip(1, last, -1, 0)};
        for (Slip start : starts) {
            Slip slip = start;
            for (int round = 0; round < ROUNDS; round++) {
                slip = likeliest(fit(slip));
                if (slip == null) {
                    break;
                }
                double gain = straight - misfit(fit(slip), slip);
                if (best == null || gain > best.gain) {
                    best = new Slip(slip.from, slip.to, slip.off, gain);
                }
            }
        }
        return best;
    }

    private static int patch(int place, @Nullable Slip slip) {
        return slip != null && place >= slip.from && place <= slip.to ? place + slip.off : place;
    }

    /** Whether a place tells its patch from a neighbour. */
    private boolean tells(int place, int off) {
        int other = place + off;
        return other >= 0
                && other < expected.size()
                && DeltaE.cie1976(expected.get(place), expected.get(other)) > CLEAR;
    }

    /** Negative log likelihood of all readings, where patches stand as a slip says. */
    private double misfit(Fit fit, @Nullable Slip slip) {
        double sum = 0;
        for (int place = 0; place < read.size(); place++) {
            sum += fit.loss(read.get(place), features[patch(place, slip)]);
        }
        return sum + 3 * read.size() * Math.log(fit.scale);
    }

    private @Nullable Slip likeliest(Fit fit) {
        Slip best = null;
        for (int off = -1; off <= 1; off += 2) {
            double[] gained = new double[read.size() + 1];
            for (int place = 0; place < read.size(); place++) {
                double gain = 0;
                if (tells(place, off)) {
                    Lab colour = read.get(place);
                    gain =
                            fit.loss(colour, features[place])
                                    - fit.loss(colour, features[place + off]);
                }
                gained[place + 1] = gained[place] + gain;
            }
            for (int from = off > 0 ? 0 : 1; from < read.size(); from++) {
                if (off < 0 && !alike(from - 1)) {
                    continue;
                }
                int furthest = off > 0 ? read.size() - 2 : read.size() - 1;
                for (int to = from + SHORTEST - 1; to <= furthest; to++) {
                    double gain = gained[to + 1] - gained[from];
                    if ((off < 0 || alike(to)) && (best == null || gain > best.gain)) {
                        best = new Slip(from, to, off, gain);
                    }
                }
            }
        }
        return best;
    }

    /** Whether a reading and the next may be of one patch. */
    private boolean alike(int place) {
        return DeltaE.cie1976(read.get(place), read.get(place + 1)) < SAME;
    }

    /**
     * How a print renders colours.
     *
     * @param coefficients one row a feature, of L*, a* and b*
     * @param scale of what it is off by, CIELAB
     */
    @SuppressWarnings("ArrayRecordComponent") // numbers on their way, never compared
    private record Fit(double[][] coefficients, double scale) {
        double squares(Lab read, double[] features) {
            double[] colour = {read.l(), read.a(), read.b()};
            double sum = 0;
            for (int c = 0; c < 3; c++) {
                double off = colour[c];
                for (int i = 0; i < features.length; i++) {
                    off -= coefficients[i][c] * features[i];
                }
                sum += off * off;
            }
            return sum;
        }

        double loss(Lab read, double[] features) {
            return (TAILS + 3) / 2 * Math.log1p(squares(read, features) / (TAILS * scale * scale));
        }
    }

    private static double[] features(Lab lab) {
        double l = lab.l() / 50 - 1;
        double a = lab.a() / 50;
        double b = lab.b() / 50;
        return new double[] {1, l, a, b, l * l, l * a, l * b, a * a, a * b, b * b, l * l * l};
    }

    /** By least squares, again and again with less weight for what fits badly. */
    private Fit fit(@Nullable Slip slip) {
        double[] weights = new double[read.size()];
        Arrays.fill(weights, 1);
        Fit fit = new Fit(new double[0][], 1);
        for (int round = 0; round < ROUNDS; round++) {
            fit = new Fit(solved(slip, weights), 1);
            double[] squares = new double[read.size()];
            for (int place = 0; place < squares.length; place++) {
                squares[place] = fit.squares(read.get(place), features[patch(place, slip)]);
            }
            double[] sorted = squares.clone();
            Arrays.sort(sorted);
            double scale = Math.sqrt(sorted[sorted.length / 2] / MEDIAN_OF_THREE);
            fit = new Fit(fit.coefficients, Math.max(FORETOLD, scale));
            for (int place = 0; place < squares.length; place++) {
                weights[place] = 1 / (1 + squares[place] / (TAILS * fit.scale * fit.scale));
            }
        }
        return fit;
    }

    /** Normal equations by Gaussian elimination; a little ridge keeps them solvable. */
    private double[][] solved(@Nullable Slip slip, double[] weights) {
        int n = features[0].length;
        double[][] rows = new double[n][n + 3];
        for (int place = 0; place < read.size(); place++) {
            double[] x = features[patch(place, slip)];
            Lab lab = read.get(place);
            for (int i = 0; i < n; i++) {
                double weighed = weights[place] * x[i];
                for (int k = 0; k < n; k++) {
                    rows[i][k] += weighed * x[k];
                }
                rows[i][n] += weighed * lab.l();
                rows[i][n + 1] += weighed * lab.a();
                rows[i][n + 2] += weighed * lab.b();
            }
        }
        for (int i = 0; i < n; i++) {
            rows[i][i] += RIDGE;
        }
        for (int i = 0; i < n; i++) {
            for (int k = i + 1; k < n; k++) {
                double share = rows[k][i] / rows[i][i];
                for (int j = i; j < n + 3; j++) {
                    rows[k][j] -= share * rows[i][j];
                }
            }
        }
        double[][] found = new double[n][3];
        for (int i = n - 1; i >= 0; i--) {
            for (int c = 0; c < 3; c++) {
                double sum = rows[i][n + c];
                for (int k = i + 1; k < n; k++) {
                    sum -= rows[i][k] * found[k][c];
                }
                found[i][c] = sum / rows[i][i];
            }
        }
        return found;
    }
}
