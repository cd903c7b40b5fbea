package org.printassay.cli;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import org.printassay.evaluation.Evaluator;
import org.printassay.problem.Problem;
import org.printassay.report.Reports;
import org.printassay.report.paged.PageFormat;

/** Writes what belongs to one print. */
final class PrintResults {
    private PrintResults() {}

    /**
     * Writes the whole set and moves it into place.
     *
     * @param pages of the report to hand on; empty to take them as the chart's
     * @param first of the files that it was read from; tells when it was scanned or measured
     * @param force whether another print's results may be written over
     */
    static void write(
            Evaluator.Result result,
            Optional<PageFormat> pages,
            Path first,
            OutputFolder folder,
            boolean force)
            throws Problem {
        SamePrint.refuseOther(folder.path(), result.evaluation(), force);
        folder.write(
                Reports::earlier,
                part -> {
                    Reports.writeAll(
                            result.evaluation(),
                            Previews.of(result),
                            false,
                            pages.orElseGet(() -> Reports.pagesLike(result.evaluation())),
                            part);
                    Reports.writeCxf(
                            result.evaluation(),
                            Files.getLastModifiedTime(first).toInstant(),
                            part);
                });
    }
}
