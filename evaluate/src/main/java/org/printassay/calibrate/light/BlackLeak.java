package org.printassay.calibrate.light;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.CholeskyDecomposition;
import org.apache.commons.math3.linear.DecompositionSolver;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.RealVector;

/**
 * Light that leaks in along the edges of a sheet with too few twins to look for it by them: told by
 * the markers, which are printed in one black all around the sheet, and by what twins there are. It
 * is told where it makes what was read much likelier than stray light, drift of the print and its
 * spread do as they ordinarily are (Bayes factors of linear models with normal priors; R. Kass and
 * A. Raftery, "Bayes Factors", Journal of the American Statistical Association 90, 1995), whichever
 * single witness is left out: a mark over one marker is no light.
 *
 * <p>Less ink at an edge looks the same in black. So what is found is in doubt.
 */
final class BlackLeak {
    /** Fewer places do not tell where light falls. */
    private static final int FEWEST = 6;

    /** Light at the edge where any leaks in, standard deviation, paper 1 (no source). */
    private static final double AMOUNT = 0.03;

    /** How often light leaks in at a scan (common practice, no source). */
    private static final double LEAKS = 0.02;

    /** How sure it must be, by all witnesses and when any single one is left out. */
    private static final double SURE = 0.95;

    private static final double WITHOUT_ONE = 0.5;

    /** It matters from this many L* in the darkest witness, as where twins tell. */
    private static final double LEAST_L = 2;

    /** Exponents beyond are as good as certain. */
    private static final double HUGE = 300;

    /** As many edges as a sheet has. */
    private static final int ROUNDS = 4;

    private final BlackWitnesses witnesses;
    private final List<LeakedLight.Beam> shapes = new ArrayList<>();

    private BlackLeak(BlackWitnesses witnesses) {
        this.witnesses = witnesses;
        for (LeakedLight.Edge edge : LeakedLight.Edge.values()) {
            for (double depth : LeakSearch.DEPTHS_MM) {
                for (double power : LeakSearch.POWERS) {
                    shapes.add(new LeakedLight.Beam(edge, depth, power, LeakSearch.NO_LIGHT));
                }
            }
        }
    }

    /**
     * Light that leaks in. Amounts are by channel, paper 1.
     *
     * @param told what surely makes black lighter at edges, though it may be the print
     * @param perhaps what else may be there: how sure it is, whichever witness errs, and its shape
     */
    record Found(List<LeakedLight.Beam> told, Optional<Perhaps> perhaps) {
        private static final Found NOTHING = new Found(List.of(), Optional.empty());
    }

    /**
     * Light that may be there.
     *
     * @param probability that it is
     * @param beam the likeliest shape
     */
    record Perhaps(double probability, LeakedLight.Beam beam) {}

    static Found found(BlackWitnesses witnesses) {
        return witnesses.count() < FEWEST ? Found.NOTHING : new BlackLeak(witnesses).found();
    }

    private Found found() {
        int[] all = IntStream.range(0, witnesses.count()).toArray();
        List<LeakedLight.Beam> told = new ArrayList<>();
        Optional<Likeliest> next = likeliest(all, told);
        while (told.size() < ROUNDS && next.isPresent() && surely(next.get(), told)) {
            told.add(next.get().beam);
            next = likeliest(all, told);
        }
        List<LeakedLight.Beam> both = new ArrayList<>(told);
        next.ifPresent(one -> both.add(one.beam));
        List<LeakedLight.Beam> toldAlone = withAmounts(told);
        List<LeakedLight.Beam> withNext = withAmounts(both);
        return new Found(
                toldAlone,
                next.map(one -> new Perhaps(leastSure(one, told), withNext.get(told.size()))));
    }

    private boolean surely(Likeliest light, List<LeakedLight.Beam> told) {
        if (light.probability < SURE || witnesses.inDarkest(light.amount) < LEAST_L) {
            return false;
        }
        return leastSure(light, told) > WITHOUT_ONE;
    }

    /** How sure light is by the witnesses that speak least for it: all but one, or all. */
    private double leastSure(Likeliest light, List<LeakedLight.Beam> told) {
        int n = witnesses.count();
        return IntStream.range(0, n)
                .mapToObj(out -> IntStream.range(0, n).filter(k -> k != out).toArray())
                .map(rest -> likeliest(rest, told))
                .mapToDouble(without -> without.map(one -> one.probability).orElse(0.0))
                .reduce(light.probability, Math::min);
    }

    /**
     * The likeliest shape.
     *
     * @param probability that light of any shape is there
     * @param amount at the witness that it reaches most, paper 1
     */
    private record Likeliest(double probability, LeakedLight.Beam beam, double amount) {}

    /**
     * Light of one more shape; empty where none makes anything lighter.
     *
     * @param which witnesses are heard
     * @param told beams of any amount that are there
     */
    private Optional<Likeliest> likeliest(int[] which, List<LeakedLight.Beam> told) {
        RealMatrix covariance = witnesses.covariance();
        for (LeakedLight.Beam beam : told) {
            RealVector by = new ArrayRealVector(witnesses.reached(beam), false);
            covariance = covariance.add(by.outerProduct(by).scalarMultiply(AMOUNT * AMOUNT));
        }
        DecompositionSolver solver =
                new CholeskyDecomposition(covariance.getSubMatrix(which, which)).getSolver();
        RealVector read = part(witnesses.light(), which);
        double odds = 0;
        double most = Double.NEGATIVE_INFINITY;
        LeakedLight.Beam best = null;
        double amount = 0;
        for (LeakedLight.Beam beam : shapes) {
            RealVector by = part(witnesses.reached(beam), which);
            RealVector weighed = solver.solve(by);
            double precision = 1 / (AMOUNT * AMOUNT) + weighed.dotProduct(by);
            double likeliest = weighed.dotProduct(read) / precision;
            if (likeliest <= 0) {
                continue; // light is only added
            }
            double logFactor =
                    likeliest * likeliest * precision / 2 - Math.log(AMOUNT * Math.sqrt(precision));
            double factor = Math.exp(Math.min(HUGE, logFactor));
            odds += factor / shapes.size() * LEAKS / (1 - LEAKS);
            if (logFactor > most) {
                most = logFactor;
                best = beam;
                amount = likeliest * by.getMaxValue();
            }
        }
        return best == null
                ? Optional.empty()
                : Optional.of(new Likeliest(odds / (1 + odds), best, amount));
    }

    private static RealVector part(double[] values, int[] which) {
        double[] part = new double[which.length];
        for (int k = 0; k < part.length; k++) {
            part[k] = values[which[k]];
        }
        return new ArrayRealVector(part, false);
    }

    /** All beams together, each channel by itself. */
    private List<LeakedLight.Beam> withAmounts(List<LeakedLight.Beam> beams) {
        if (beams.isEmpty()) {
            return beams;
        }
        int n = witnesses.count();
        RealMatrix by = new Array2DRowRealMatrix(n, beams.size());
        for (int b = 0; b < beams.size(); b++) {
            by.setColumn(b, witnesses.reached(beams.get(b)));
        }
        DecompositionSolver solver = new CholeskyDecomposition(witnesses.covariance()).getSolver();
        RealMatrix weighed = by.transpose().multiply(solver.getInverse());
        RealMatrix precision = weighed.multiply(by);
        for (int b = 0; b < beams.size(); b++) {
            precision.addToEntry(b, b, 1 / (AMOUNT * AMOUNT));
        }
        RealMatrix even = precision.add(precision.transpose()).scalarMultiply(0.5);
        DecompositionSolver amounts = new CholeskyDecomposition(even).getSolver();
        double[][] found = new double[beams.size()][LightRemoval.CHANNELS];
        for (int c = 0; c < LightRemoval.CHANNELS; c++) {
            double[] read = witnesses.light(Math.min(c, witnesses.channels() - 1));
            double[] of = amounts.solve(weighed.operate(new ArrayRealVector(read))).toArray();
            for (int b = 0; b < of.length; b++) {
                found[b][c] = Math.max(0, of[b]);
            }
        }
        return IntStream.range(0, found.length)
                .mapToObj(b -> beams.get(b).withAmounts(found[b]))
                .toList();
    }
}
