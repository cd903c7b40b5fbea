package org.printassay.cli;

import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.printassay.problem.Problem;
import org.printassay.report.paged.PageFormat;

/** Pages that a PDF is laid out for, as {@code --report-page} names them. */
final class ReportPageOption {
    private ReportPageOption() {}

    /**
     * The format of a name; empty when none is given.
     *
     * @throws Problem usage, when there is no such format
     */
    static Optional<PageFormat> format(@Nullable String name) throws Problem {
        if (name == null) {
            return Optional.empty();
        }
        Optional<PageFormat> format = PageFormat.named(name);
        if (format.isEmpty()) {
            throw Problem.usage(
                    "--report-page must be A4 or Letter, got " + PlainText.line(name) + ".");
        }
        return format;
    }
}
