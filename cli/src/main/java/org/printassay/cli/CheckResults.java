package org.printassay.cli;

import java.util.Optional;
import org.printassay.check.Check;
import org.printassay.problem.Problem;
import org.printassay.report.CheckReports;
import org.printassay.report.paged.PageFormat;

/** Writes what belongs to one check. */
final class CheckResults {
    private CheckResults() {}

    /**
     * Writes the whole set and moves it into place.
     *
     * @param pages of the PDF; empty to take them as the chart's
     * @param force whether another check may be written over
     */
    static void write(Check check, Optional<PageFormat> pages, OutputFolder folder, boolean force)
            throws Problem {
        SameCheck.refuseOther(folder.path(), check, force);
        PageFormat format = pages.orElseGet(() -> CheckReports.pagesLike(check));
        folder.write(part -> CheckReports.writeAll(check, false, format, part));
    }
}
