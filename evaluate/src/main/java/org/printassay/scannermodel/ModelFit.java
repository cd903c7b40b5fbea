package org.printassay.scannermodel;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import org.printassay.colour.DeltaE;
import org.printassay.colour.Lab;
import org.printassay.colour.LinearRgb;
import org.printassay.colour.Xyz;

/**
 * Makes a {@link ScannerModel} from patches that were scanned and measured, and says how far it is
 * off: every colour is predicted once by a polynomial and a rest made anew without it. Which order,
 * and how smooth the rest is (three numbers in all), are chosen once, by that same error.
 *
 * @param model the model
 * @param error leave-one-out error
 * @param colours the training colours with what each was off by when it was left out
 */
public record ModelFit(ScannerModel model, LeaveOneOut error, List<FittedColour> colours) {
    /** Fewer colours than this do not determine a scanner. */
    public static final int FEWEST_COLOURS = 24;

    /** A third order needs more patches than this (design; Finlayson and others 2015, 4). */
    private static final int ENOUGH_FOR_THIRD_ORDER = 100;

    /** Fewer colours than this show no smooth rest. */
    private static final int ENOUGH_FOR_SMOOTH_REST = 60;

    /** More than these make a model slow, and no better. */
    public static final int MOST_COLOURS = 1500;

    /** How smooth the rest is shows in as many as these. */
    private static final int MOST_TO_CHOOSE_BY = 300;

    /** What is more complicated has to be better by this share. */
    private static final double WORTH_IT = 0.97;

    public ModelFit {
        colours = List.copyOf(colours);
    }

    /**
     * Fits.
     *
     * @throws IllegalArgumentException with fewer than {@link #FEWEST_COLOURS} colours or more than
     *     {@link #MOST_COLOURS}
     */
    public static ModelFit of(List<TrainingPatch> patches) {
        List<TrainingColour> colours = TrainingColour.of(patches);
        if (colours.size() < FEWEST_COLOURS || colours.size() > MOST_COLOURS) {
            throw new IllegalArgumentException(
                    FEWEST_COLOURS + " to " + MOST_COLOURS + " colours, got " + colours.size());
        }
        Trial best = trial(colours, 2);
        if (patches.size() > ENOUGH_FOR_THIRD_ORDER) {
            Trial third = trial(colours, 3);
            best = third.error < WORTH_IT * best.error ? third : best;
        }
        return finished(colours, best);
    }

    /** A polynomial, those without each colour, and the best rest to go with it, or none. */
    private record Trial(
            RootPolynomial all,
            List<RootPolynomial> without,
            double range,
            double noise,
            double error) {
        boolean smoothed() {
            return range > 0;
        }
    }

    private static Trial trial(List<TrainingColour> colours, int order) {
        RootPolynomial all = RootPolynomialFit.fit(colours, order);
        List<RootPolynomial> without = RootPolynomialFit.withoutEach(colours, all);
        double plain = 0;
        for (int i = 0; i < colours.size(); i++) {
            Lab measured = colours.get(i).lab();
            plain += DeltaE.ciede2000(measured, seen(without.get(i), colours.get(i)));
        }
        plain /= colours.size();
        Trial polynomial = new Trial(all, without, 0, 0, plain);
        if (colours.size() < ENOUGH_FOR_SMOOTH_REST) {
            return polynomial;
        }
        int step = (colours.size() + MOST_TO_CHOOSE_BY - 1) / MOST_TO_CHOOSE_BY;
        List<TrainingColour> some = new ArrayList<>();
        for (int i = 0; i < colours.size(); i += step) {
            some.add(colours.get(i));
        }
        int noises = SmoothResidual.NOISES.size();
        Trial[] tried = new Trial[SmoothResidual.RANGES.size() * noises];
        Arrays.parallelSetAll(
                tried,
                t -> {
                    double range = SmoothResidual.RANGES.get(t / noises);
                    double noise = SmoothResidual.NOISES.get(t % noises);
                    return new Trial(all, without, range, noise, error(some, all, range, noise));
                });
        double least = WORTH_IT * plain;
        Trial best = polynomial;
        for (Trial one : tried) {
            if (one.error < least) {
                least = one.error;
                best = one;
            }
        }
        return best;
    }

    /** Mean dE00 with a rest made without each colour, the polynomial of all. */
    private static double error(
            List<TrainingColour> colours, RootPolynomial all, double range, double noise) {
        List<Lab> seen = colours.stream().map(colour -> seen(all, colour)).toList();
        List<Lab> off =
                SmoothResidual.withoutEach(
                        seen, (i, k) -> minus(colours.get(k).lab(), seen.get(k)), range, noise);
        double sum = 0;
        for (int i = 0; i < colours.size(); i++) {
            Lab measured = colours.get(i).lab();
            sum += DeltaE.ciede2000(measured, minus(measured, off.get(i)));
        }
        return sum / colours.size();
    }

    private static ModelFit finished(List<TrainingColour> colours, Trial trial) {
        List<Lab> measured = colours.stream().map(TrainingColour::lab).toList();
        List<Lab> seen = colours.stream().map(colour -> seen(trial.all, colour)).toList();
        SmoothResidual rest = null;
        // What the rest made without each colour adds to it.
        List<Lab> added = new ArrayList<>(Collections.nCopies(colours.size(), new Lab(0, 0, 0)));
        if (trial.smoothed()) {
            rest = SmoothResidual.fit(seen, measured, trial.range, trial.noise);
            SmoothResidual.Over over =
                    (i, k) -> minus(measured.get(k), seen(trial.without.get(i), colours.get(k)));
            List<Lab> off = SmoothResidual.withoutEach(seen, over, trial.range, trial.noise);
            for (int i = 0; i < colours.size(); i++) {
                added.set(i, minus(over.at(i, i), off.get(i)));
            }
        }
        List<Lab> wanted = new ArrayList<>();
        List<Lab> predicted = new ArrayList<>();
        List<FittedColour> fitted = new ArrayList<>();
        for (int i = 0; i < colours.size(); i++) {
            TrainingColour colour = colours.get(i);
            for (TrainingPatch patch : colour.patches()) {
                wanted.add(patch.lab());
                predicted.add(plus(seen(trial.without.get(i), patch.light()), added.get(i)));
            }
            Lab left = plus(seen(trial.without.get(i), colour), added.get(i));
            fitted.add(
                    new FittedColour(
                            colour.name(),
                            colour.neutral(),
                            colour.light(),
                            colour.lab(),
                            minus(left, colour.lab()),
                            colour.patches().size()));
        }
        ScannerModel model = new ScannerModel(trial.all, rest);
        double noise = InstrumentNoise.meanSquare(colours, model);
        return new ModelFit(
                model, LeaveOneOut.of(wanted, predicted, colours.size(), noise), fitted);
    }

    private static Lab seen(RootPolynomial polynomial, TrainingColour colour) {
        return seen(polynomial, colour.light());
    }

    private static Lab seen(RootPolynomial polynomial, LinearRgb light) {
        return Lab.of(polynomial.at(light), Xyz.PCS_WHITE);
    }

    private static Lab minus(Lab one, Lab two) {
        return new Lab(one.l() - two.l(), one.a() - two.a(), one.b() - two.b());
    }

    private static Lab plus(Lab one, Lab two) {
        return new Lab(one.l() + two.l(), one.a() + two.a(), one.b() + two.b());
    }
}
