package org.printassay.promise;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.printassay.colour.DeltaE;
import org.printassay.colour.Lab;
import org.printassay.colour.Rgb8;
import org.printassay.colour.RgbSpace;
import org.printassay.colour.icc.IccException;
import org.printassay.problem.Problem;
import org.printassay.reading.Reading;

/**
 * Compares a print with its profile's promise. A mistake is named only where the evidence is clear:
 * it must predict other colours than the promise, explain the print much better, do so for most
 * patches and not for a few, and do so better than the other mistakes. The limits are common
 * practice, no source; the tests show what they tell apart.
 */
public final class PromiseJudge {
    /** Of the errors this share is kept, so that spoilt patches decide nothing. */
    private static final double KEPT = 0.9;

    /** Mean dE00 between two predictions below which a print cannot tell them apart. */
    private static final double APART = 2;

    /** A mistake must bring the errors down to this share of the promise's. */
    private static final double MUCH_BETTER = 0.6;

    /** And by at least this much, dE00: more than a scan's own errors. */
    private static final double BETTER_BY = 1;

    /** It must leave no more than this: else nothing explains the print. */
    private static final double EXPLAINED = 5;

    /** Share of telling patches that must be nearer to the mistake's prediction. */
    private static final double MOST = 0.75;

    /** A patch tells when the predictions differ by this, dE00. */
    private static final double TELLING = 2;

    private static final int FEWEST_TELLING = 15;

    /** Other kinds of mistake must leave errors larger than the best's by this factor. */
    private static final double AMBIGUOUS = 1.3;

    private static final int FEWEST_PATCHES = 10;

    private PromiseJudge() {}

    /**
     * Judges readings with absolute colour.
     *
     * @return empty when fewer than ten patches can be judged
     * @throws Problem input, when the profile turns out to be damaged
     */
    public static Optional<Promise> judge(
            List<Reading> readings, RgbSpace space, PrinterProfile printer, PrintRoute route)
            throws Problem {
        try {
            return judge(
                    readings,
                    printer,
                    route,
                    Candidates.promised(printer.profile(), space, route),
                    Candidates.mistakes(printer.profile(), space, route));
        } catch (IccException e) {
            throw Problem.input(printer.name(), String.valueOf(e.getMessage()), e);
        }
    }

    private static Optional<Promise> judge(
            List<Reading> readings,
            PrinterProfile printer,
            PrintRoute route,
            Candidate promised,
            List<Candidate> mistakes) {
        List<Promise.Patch> patches = new ArrayList<>();
        List<Promise.Patch> sound = new ArrayList<>();
        Map<Rgb8, List<Lab>> byCode = new LinkedHashMap<>();
        for (Reading reading : readings) {
            Lab lab = reading.lab();
            if (lab == null) {
                continue;
            }
            Lab wanted = promised.absolute(reading.rgb());
            Promise.Patch patch =
                    new Promise.Patch(reading.id(), wanted, DeltaE.ciede2000(wanted, lab));
            patches.add(patch);
            if (reading.isSound()) {
                sound.add(patch);
                if (reading.labRelative() != null) {
                    byCode.computeIfAbsent(reading.rgb(), k -> new ArrayList<>())
                            .add(reading.labRelative());
                }
            }
        }
        if (sound.size() < FEWEST_PATCHES) {
            return Optional.empty();
        }
        double[] errors = sound.stream().mapToDouble(Promise.Patch::deltaE00).sorted().toArray();
        Promise.Patch worst =
                sound.stream()
                        .max(Comparator.comparingDouble(Promise.Patch::deltaE00))
                        .orElseThrow();
        Map<Rgb8, Lab> means = new LinkedHashMap<>();
        byCode.forEach((code, labs) -> means.put(code, Lab.mean(labs)));
        Optional<Fit> best = mistake(means, promised, mistakes);
        return Optional.of(
                new Promise(
                        printer.name(),
                        printer.sha256(),
                        printer.profile().description(),
                        route,
                        patches,
                        sound.size(),
                        Arrays.stream(errors).average().orElseThrow(),
                        errors[(int) Math.ceil(0.95 * errors.length) - 1],
                        worst.deltaE00(),
                        worst.id(),
                        means.isEmpty() ? null : fit(means, promised),
                        best.map(
                                        f ->
                                                new Promise.Mistake(
                                                        f.candidate.kind(),
                                                        f.candidate.words(),
                                                        f.error))
                                .orElse(null)));
    }

    private record Fit(Candidate candidate, double error) {}

    private static Optional<Fit> mistake(
            Map<Rgb8, Lab> means, Candidate promised, List<Candidate> mistakes) {
        double own = fit(means, promised);
        List<Fit> fits =
                mistakes.stream()
                        .map(candidate -> new Fit(candidate, fit(means, candidate)))
                        .sorted(Comparator.comparingDouble(Fit::error))
                        .toList();
        if (fits.isEmpty()) {
            return Optional.empty();
        }
        Fit best = fits.get(0);
        boolean better =
                best.error <= EXPLAINED
                        && best.error <= MUCH_BETTER * own
                        && best.error <= own - BETTER_BY
                        && apart(means, promised, best.candidate) >= APART
                        && mostNearer(means, promised, best.candidate);
        boolean alone =
                fits.stream()
                        .allMatch(
                                other ->
                                        other.candidate.kind() == best.candidate.kind()
                                                || other.error >= AMBIGUOUS * best.error);
        return better && alone ? Optional.of(best) : Optional.empty();
    }

    /** Trimmed mean of what a prediction leaves unexplained. */
    private static double fit(Map<Rgb8, Lab> means, Candidate candidate) {
        double[] errors =
                means.entrySet().stream()
                        .mapToDouble(
                                e -> DeltaE.ciede2000(candidate.relative(e.getKey()), e.getValue()))
                        .sorted()
                        .toArray();
        int kept = (int) Math.ceil(KEPT * errors.length);
        return Arrays.stream(errors, 0, kept).average().orElse(0);
    }

    private static double apart(Map<Rgb8, Lab> means, Candidate one, Candidate two) {
        return means.keySet().stream()
                .mapToDouble(code -> DeltaE.ciede2000(one.relative(code), two.relative(code)))
                .average()
                .orElse(0);
    }

    private static boolean mostNearer(Map<Rgb8, Lab> means, Candidate promised, Candidate mistake) {
        int telling = 0;
        int nearer = 0;
        for (Map.Entry<Rgb8, Lab> e : means.entrySet()) {
            Lab one = promised.relative(e.getKey());
            Lab two = mistake.relative(e.getKey());
            if (DeltaE.ciede2000(one, two) >= TELLING) {
                telling++;
                nearer +=
                        DeltaE.ciede2000(two, e.getValue()) < DeltaE.ciede2000(one, e.getValue())
                                ? 1
                                : 0;
            }
        }
        return telling >= FEWEST_TELLING && nearer >= MOST * telling;
    }
}
