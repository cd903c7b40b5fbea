package org.printassay.compare;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.QRDecomposition;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.SingularMatrixException;
import org.jspecify.annotations.Nullable;
import org.printassay.colour.Lab;
import org.printassay.colour.Rgb8;
import org.printassay.evaluation.Evaluation;
import org.printassay.metric.Tone;

/**
 * The largest local change of the tone curve between two prints: how far a grey, or a few greys in
 * a row, moved beside what all other greys' changes let one expect there. Whatever changes smoothly
 * (gradation, black, the scanner's light) is left out; a knee, a bump or a step is not.
 *
 * <p>What is expected comes from least squares over the other greys: a polynomial of third degree
 * in L* of the file, and the change that another black makes, which falls as the square of L* + 16
 * (ISO/CIE 11664-4). Its error and that of the greys themselves are carried through exactly. The
 * departure of most standard errors is taken; who judges it must count how many were looked at.
 *
 * @param level in the middle of the greys that moved
 * @param deltaL by how much they moved beside the others, second print less first, L*
 * @param standard standard uncertainty of it, from reading; null when neither print has twins
 * @param freedom degrees of freedom of that
 * @param looks how many departures it is the largest of
 */
public record ToneBend(
        int level, double deltaL, @Nullable Double standard, int freedom, int looks) {
    /** Greys in a row that are looked at together. */
    private static final int LONGEST = 3;

    private static final int TERMS = 5;

    /** Greys beside those that are looked at; fewer tell nothing of what is smooth. */
    private static final int FEWEST = 2 * TERMS;

    private static final double CUBE_ROOT = 16;

    /** Twins as near as this to a grey tell how well it was read, L*. */
    private static final double AROUND = 20;

    /**
     * One grey of both prints.
     *
     * @param variance of its change, from reading; NaN when nothing tells it
     * @param freedom degrees of freedom of that
     */
    private record Grey(
            int level, double fileL, double before, double change, double variance, int freedom) {}

    /** Compares; empty when there are too few greys that both have. */
    public static Optional<ToneBend> between(Side one, Side other) {
        boolean relative = !one.absolute() || !other.absolute();
        CodeMeans first = CodeMeans.of(one.prints(), relative);
        CodeMeans second = CodeMeans.of(other.prints(), relative);
        List<Grey> greys = greys(one, other, first, second);
        if (greys.size() < FEWEST + LONGEST) {
            return Optional.empty();
        }
        ToneBend largest = null;
        double most = -1;
        int looks = 0;
        for (int run = 1; run <= LONGEST; run++) {
            for (int from = 0; from + run <= greys.size(); from++) {
                Departure d = departure(greys, from, run);
                if (d == null) {
                    continue;
                }
                looks++;
                double size = Math.abs(d.deltaL) / (Double.isNaN(d.standard) ? 1 : d.standard);
                if (size > most) {
                    most = size;
                    largest = d.bend(greys.get(from + run / 2));
                }
            }
        }
        int all = looks;
        return Optional.ofNullable(largest).map(bend -> bend.ofLooks(all));
    }

    private ToneBend ofLooks(int all) {
        return new ToneBend(level, deltaL, standard, freedom, all);
    }

    /** Tone of the first print where it was judged. */
    private static @Nullable Tone tone(Side side) {
        return side.prints().stream()
                .map(Evaluation::tone)
                .filter(Objects::nonNull)
                .findFirst()
                .orElse(null);
    }

    /** The greys that tone is judged by in both prints. */
    private static List<Grey> greys(Side one, Side other, CodeMeans first, CodeMeans second) {
        Tone before = tone(one);
        Tone after = tone(other);
        List<Grey> greys = new ArrayList<>();
        if (before == null || after == null) {
            return greys;
        }
        for (Tone.Point point : before.points()) {
            Rgb8 code = Rgb8.grey(point.level());
            boolean inOther = after.points().stream().anyMatch(p -> p.level() == point.level());
            if (inOther && first.count(code) > 0 && second.count(code) > 0) {
                greys.add(grey(point, first, second));
            }
        }
        return greys;
    }

    private static Grey grey(Tone.Point point, CodeMeans first, CodeMeans second) {
        Rgb8 code = Rgb8.grey(point.level());
        double l = first.mean(code).l();
        double one = first.deviation(Lab::l, l - AROUND, l + AROUND);
        double other = second.deviation(Lab::l, l - AROUND, l + AROUND);
        // Where one print has no twins, it is taken to be read as well as the other.
        double noise = WedgeShift.sizeOf(Double.isNaN(one) ? other : one);
        double noiseOfOther = WedgeShift.sizeOf(Double.isNaN(other) ? one : other);
        boolean known = !Double.isNaN(one) || !Double.isNaN(other);
        return new Grey(
                point.level(),
                point.fileL(),
                l,
                second.mean(code).l() - l,
                known
                        ? noise * noise / first.count(code)
                                + noiseOfOther * noiseOfOther / second.count(code)
                        : Double.NaN,
                first.freedom(l - AROUND, l + AROUND) + second.freedom(l - AROUND, l + AROUND));
    }

    /**
     * How far greys moved beside the others.
     *
     * @param standard standard uncertainty of it; NaN when nothing tells it
     */
    private record Departure(double deltaL, double standard) {
        ToneBend bend(Grey middle) {
            return new ToneBend(
                    middle.level,
                    deltaL,
                    Double.isNaN(standard) ? null : Double.valueOf(standard),
                    Math.max(1, middle.freedom),
                    1);
        }
    }

    private static @Nullable Departure departure(List<Grey> greys, int from, int run) {
        int others = greys.size() - run;
        RealMatrix design = new Array2DRowRealMatrix(others, TERMS);
        double[] wanted = new double[TERMS];
        List<Grey> rest = new ArrayList<>();
        for (int i = 0; i < greys.size(); i++) {
            double[] terms = terms(greys.get(i), greys.get(0).before);
            if (i >= from && i < from + run) {
                for (int k = 0; k < TERMS; k++) {
                    wanted[k] += terms[k] / run;
                }
            } else {
                design.setRow(rest.size(), terms);
                rest.add(greys.get(i));
            }
        }
        try {
            // How much each of the others counts in what is expected.
            double[] weights =
                    design.multiply(
                                    new QRDecomposition(design.transpose().multiply(design))
                                            .getSolver()
                                            .getInverse())
                            .operate(wanted);
            double delta = 0;
            double variance = 0;
            for (Grey own : greys.subList(from, from + run)) {
                delta += own.change / run;
                variance += own.variance / ((double) run * run);
            }
            for (int i = 0; i < others; i++) {
                delta -= weights[i] * rest.get(i).change;
                variance += weights[i] * weights[i] * rest.get(i).variance;
            }
            return new Departure(delta, Math.sqrt(variance));
        } catch (SingularMatrixException e) {
            return null;
        }
    }

    private static double[] terms(Grey grey, double blackL) {
        double x = grey.fileL / 50 - 1;
        double black = Math.pow((blackL + CUBE_ROOT) / (grey.before + CUBE_ROOT), 2);
        return new double[] {1, x, x * x, x * x * x, black};
    }
}
