package org.printassay.evaluation;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.printassay.problem.Problem;
import org.printassay.promise.PrinterProfile;
import org.printassay.sample.SheetSamples;
import org.printassay.scan.ScanFiles;

/** The way in: scans of one print, or measurement files of it, to an evaluation. */
public final class Evaluator {
    private Evaluator() {}

    /**
     * An evaluation and what a report shows beside it.
     *
     * @param evaluation every result
     * @param scans the scans as they were found and sampled; empty for a measurement file
     */
    public record Result(Evaluation evaluation, List<SheetSamples> scans) {
        public Result {
            scans = List.copyOf(scans);
        }
    }

    /** Evaluates with nobody looking on. */
    public static Result evaluate(EvaluationRequest request) throws Problem {
        return evaluate(request, Progress.NONE);
    }

    /**
     * Evaluates one print.
     *
     * @throws Problem when a file cannot be read, holds no chart, or the files do not belong
     *     together
     */
    public static Result evaluate(EvaluationRequest request, Progress progress) throws Problem {
        if (request.files().isEmpty()) {
            throw Problem.usage("name at least one scan or measurement file.");
        }
        Optional<PrinterProfile> printer = printer(request);
        Result result = read(request, progress);
        if (printer.isEmpty() || request.aim().isEmpty()) {
            return result;
        }
        return new Result(
                PromiseFinding.beside(
                        result.evaluation(), printer.get(), request.aim().get().route()),
                result.scans());
    }

    /** Read first, so that a wrong profile is told before the work. */
    private static Optional<PrinterProfile> printer(EvaluationRequest request) throws Problem {
        if (request.aim().isEmpty()) {
            return Optional.empty();
        }
        Path file = request.aim().get().profile();
        return Optional.of(PrinterProfile.read(file, ScanFiles.displayName(file)));
    }

    private static Result read(EvaluationRequest request, Progress progress) throws Problem {
        int images = 0;
        for (Path file : request.files()) {
            ScanFiles.refuseUnread(file);
            images += ScanFiles.looksLikeImage(file) ? 1 : 0;
        }
        if (images == request.files().size()) {
            return ScanEvaluation.evaluate(request, progress);
        }
        if (images > 0) {
            throw Problem.usage("name scans of one print, or measurement files of it, not both.");
        }
        if (request.calibration().isPresent()) {
            throw Problem.usage(
                    "a calibration is for scans; an instrument's measurement needs none.");
        }
        if (request.profile().isPresent()) {
            throw Problem.usage(
                    "a scanner's profile is for scans; an instrument's measurement needs none.");
        }
        return MeasurementEvaluation.evaluate(request);
    }
}
