package org.printassay.report;

import org.jspecify.annotations.Nullable;
import org.printassay.evaluation.Evaluation;
import org.printassay.evaluation.PrintSurface;
import org.printassay.report.paged.PageFormat;
import org.printassay.sheet.RectMm;

/** Which pages a report goes on when nobody says. */
final class ReportPages {
    private static final double INCH = 25.4;
    private static final double HALF_INCH = INCH / 2;

    /** Millimetres that a page measured in inches is off from whole or half inches. */
    private static final double SLACK = 0.3;

    private ReportPages() {}

    /** Letter where the chart's page is measured in inches, else A4. */
    static PageFormat like(Evaluation e) {
        PrintSurface surface = e.surface();
        RectMm page = surface == null ? null : surface.page();
        return inches(page) ? PageFormat.LETTER : PageFormat.A4;
    }

    private static boolean inches(@Nullable RectMm page) {
        return page != null && halves(page.width()) && halves(page.height());
    }

    private static boolean halves(double mm) {
        return Math.abs(mm - HALF_INCH * Math.rint(mm / HALF_INCH)) < SLACK;
    }
}
