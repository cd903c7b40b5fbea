package org.printassay.evaluation;

import static org.printassay.evaluation.Say.say;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.printassay.colour.RgbSpace;
import org.printassay.metric.Budget;
import org.printassay.problem.Problem;
import org.printassay.promise.PrintRoute;
import org.printassay.promise.PrinterProfile;
import org.printassay.promise.Promise;
import org.printassay.promise.PromiseJudge;
import org.printassay.reading.Trust;
import org.printassay.reading.Warning;
import org.printassay.reading.WarningCode;

/** Puts what the printer's profile promises beside an evaluation, and says it in words. */
final class PromiseFinding {
    private static final int MOST_FINDINGS = 7;

    /** Mean dE00 up to which a print keeps its promise (common practice, no source). */
    private static final double KEPT = 3;

    /**
     * What 95 of 100 patches have to be below (common practice, no source): a mean alone hides a
     * part that is far off.
     */
    private static final double MOST_KEPT = 4;

    /** Mean dE00 up to which a part of the colours does: about twice what is just seen. */
    private static final double PART_KEPT = 2;

    private static final String OWN_ERRORS = ", whose own errors are in it";

    private PromiseFinding() {}

    static Evaluation beside(Evaluation e, PrinterProfile printer, PrintRoute route)
            throws Problem {
        RgbSpace space = RgbSpace.ofKey(e.spaceKey()).orElseThrow();
        boolean grey = e.lightnessAlone();
        Optional<Promise> promise =
                grey ? Optional.empty() : PromiseJudge.judge(e.patches(), space, printer, route);
        List<Warning> warnings = new ArrayList<>(e.warnings());
        if (promise.isEmpty()) {
            warnings.add(
                    new Warning(
                            WarningCode.AIM_NOT_JUDGED,
                            "The print was not compared with the printer's profile: "
                                    + whyNot(grey, e.trust())));
            return e.toBuilder().warnings(warnings).build();
        }
        List<Finding> findings = new ArrayList<>(e.findings());
        Optional<PromiseZone> worst = PromiseZone.worst(e.patches(), promise.get());
        Budget budget = PromiseBudget.of(e, promise.get());
        Finding found = finding(promise.get(), worst, e.trust(), budget);
        boolean mostly = promise.get().mistake() == null && promise.get().meanDeltaE00() <= KEPT;
        boolean kept = mostly && partlyOff(promise.get(), worst, budget).isEmpty();
        if (kept && findings.size() >= MOST_FINDINGS) {
            findings.remove(findings.size() - 1);
        }
        // A wrong route is behind everything else that is wrong: it comes first. A part that is off
        // is no more than one fault among others.
        findings.add(kept ? findings.size() : mostly ? Math.min(1, findings.size()) : 0, found);
        return e.toBuilder()
                .promise(promise.get())
                .warnings(warnings)
                .findings(findings.subList(0, Math.min(MOST_FINDINGS, findings.size())))
                .build();
    }

    private static String whyNot(boolean grey, Trust trust) {
        if (grey) {
            return "only lightness was read. Scan in colour.";
        }
        return trust.absolute()
                ? "fewer than ten patches could be used."
                : "the scan carries no usable profile of its own.";
    }

    /** What is surely off where the mean is not; empty where nothing is. */
    private static Optional<String> partlyOff(
            Promise p, Optional<PromiseZone> worst, Budget budget) {
        double unsure = budget.halfWidth();
        if (worst.isPresent() && worst.get().meanDeltaE00() - unsure > PART_KEPT) {
            return Optional.of(
                    say("%s are %.1f dE00 off", worst.get().words(), worst.get().meanDeltaE00())
                            + worst.get().way());
        }
        return p.p95DeltaE00() - unsure > MOST_KEPT
                ? Optional.of(
                        say("5 of 100 colours are %.1f dE00 off or more", p.p95DeltaE00())
                                + worst.map(part -> ", most of all " + part.words() + part.way())
                                        .orElse(""))
                : Optional.empty();
    }

    /**
     * Says it in words.
     *
     * @param worst the part of the colours that is off most
     * @param budget where the uncertainty of the mean comes from
     */
    static Finding finding(Promise p, Optional<PromiseZone> worst, Trust trust, Budget budget) {
        String distance =
                say(
                        "Mean dE00 %.1f, 95 of 100 patches below %.1f, largest %.1f (patch %s), for %s;"
                                + " %s.",
                        p.meanDeltaE00(),
                        p.p95DeltaE00(),
                        p.maxDeltaE00(),
                        p.worst(),
                        p.route().words(),
                        basis(trust));
        Promise.Mistake mistake = p.mistake();
        if (mistake != null) {
            return new Finding(
                    "route",
                    "The print looks as if " + mistake.words() + ".",
                    say(
                                    "That leaves dE00 %.1f unexplained, the route as named %.1f (relative to"
                                            + " paper). ",
                                    mistake.fit(), Objects.requireNonNull(p.promisedFit()))
                            + distance,
                    advice(mistake));
        }
        Optional<String> off = partlyOff(p, worst, budget);
        if (p.meanDeltaE00() <= KEPT && off.isPresent()) {
            return new Finding(
                    "route",
                    "On the whole the print keeps what its profile promises, but "
                            + off.get()
                            + ".",
                    distance,
                    "Check intent, paper type and driver settings; if they are right, the printer"
                            + " has drifted or the profile needs to be made anew.");
        }
        if (p.meanDeltaE00() <= KEPT) {
            return new Finding("route", "The print keeps what its profile promises.", distance, "");
        }
        double halfWidth = budget.halfWidth();
        if (p.meanDeltaE00() <= KEPT + halfWidth) {
            return new Finding(
                    "route",
                    "Whether the print keeps what its profile promises cannot be told.",
                    say("The mean is known to +-%.1f, the limit is %.1f. ", halfWidth, KEPT)
                            + distance,
                    trust == Trust.INSTRUMENT
                            ? "Measure again, each patch several times."
                            : "Calibrate the scanner, or measure with an instrument.");
        }
        return new Finding(
                "route",
                "The print is far from what its profile promises, and "
                        + (p.promisedFit() == null
                                ? "mistakes in colour management were not judged: code 255 was not"
                                        + " read."
                                : "no common mistake in colour management clearly explains it."),
                distance,
                "Check that profile, paper type and driver settings belong to this paper; if they"
                        + " do, the printer has drifted or the profile needs to be made anew.");
    }

    private static String advice(Promise.Mistake mistake) {
        return switch (mistake.kind()) {
            case UNMANAGED ->
                    "Let either the program or the driver convert to the printer's profile, then"
                            + " print the chart again.";
            case TWICE ->
                    "Let only one of them convert: choose the profile in the program and switch"
                            + " colour management off in the driver, or the other way round.";
            case OTHER_ENCODING ->
                    "Embed the file's profile and let the program use it, then print the chart"
                            + " again.";
            case OTHER_SETTINGS, PROMISED ->
                    "If that is what you meant, say so with --intent or"
                            + " --no-black-point-compensation; else change the setting.";
        };
    }

    private static String basis(Trust trust) {
        String how = TrustWords.basis(trust, "by a scan");
        return switch (trust) {
            case INSTRUMENT -> how;
            case CALIBRATED_SCAN -> how + OWN_ERRORS;
            case PROFILED_SCAN, PLAIN_SCAN ->
                    how + OWN_ERRORS + "; true only if automatic corrections were off";
        };
    }
}
