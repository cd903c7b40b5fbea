package org.printassay.report;

import java.io.IOException;
import java.io.OutputStream;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.printassay.report.draw.Drawing;
import org.printassay.report.paged.NamedFigure;
import org.printassay.report.paged.PageFormat;
import org.printassay.report.paged.PagedDocument;
import org.printassay.report.paged.Table;
import org.printassay.report.paged.Table.Cell;
import org.printassay.report.paged.Table.Column;
import org.printassay.report.paged.Type;

/** The report of one evaluation on paper: the same view as on screen, part by part. */
final class ReportPdf {
    /** Plots with figures beside them take this share of the width. */
    private static final double BESIDE = 0.5;

    private static final double PICTURE = 0.38;

    /** Heights of sentence, key and gaps of a part with plots. */
    private static final double AROUND = 45;

    /** Where so much of a page is left, a part's figures may go on on the next one. */
    private static final double MUCH_ROOM = 0.4;

    /** The furthest patches that are listed. */
    private static final int FURTHEST = 24;

    private final PdfFrame frame;
    private final PagedDocument document;
    private final ReportView view;

    private ReportPdf(PdfFrame frame, PagedDocument document, ReportView view) {
        this.frame = frame;
        this.document = document;
        this.view = view;
    }

    /**
     * Writes the report; the stream is left open.
     *
     * @throws IOException when it cannot be written
     */
    static void write(ReportView view, PageFormat format, OutputStream out) throws IOException {
        boolean told = view.title().equalsIgnoreCase(PageText.KIND);
        String title = view.title() + (told ? "" : " \u2013 " + PageText.KIND);
        PdfFrame.write(
                format,
                title,
                view.simulated(),
                view.identity(),
                out,
                (frame, document) -> new ReportPdf(frame, document, view).all());
    }

    private void all() throws IOException {
        head();
        findings();
        figures();
        notes();
        part(view.tone());
        part(view.shadows());
        part(view.highlights());
        part(view.neutrality());
        part(view.colours());
        part(view.skin());
        part(view.lines());
        part(view.texture());
        promise();
        if (!view.further().isEmpty()) {
            document.part(PageText.FURTHER, document.height(PdfFrame.rows(view.further())));
            frame.entries(view.further());
        }
        document.part(PageText.CONDITIONS, document.height(PdfFrame.rows(view.conditions())));
        frame.entries(view.conditions());
        budgets();
        document.part(PageText.SURE, PdfFrame.KEEP);
        document.points(Type.BODY, view.cautions());
        readings();
        scans();
        frame.end(PageText.END, Reports.FOR_SCRIPTS);
    }

    private void head() {
        frame.head(PageText.KIND, view.title(), view.about());
        Plot strip = view.strip();
        if (strip != null) {
            document.gap(6);
            document.figures(List.of(strip.at().apply(document.units(1))));
        }
    }

    private void findings() {
        document.part(PageText.FINDINGS, PdfFrame.KEEP);
        if (view.findings().isEmpty()) {
            document.paragraph(Type.BODY, PageText.NOTHING);
            return;
        }
        frame.findings(view.findings());
    }

    private void figures() {
        document.part(PageText.FIGURES, PdfFrame.KEEP);
        frame.entries(view.glance());
        document.paragraph(
                Type.QUIET,
                "Trust: "
                        + view.trust()
                        + ". "
                        + view.trustMeaning()
                        + " "
                        + PageText.HALF_WIDTHS
                        + (view.scans().isEmpty() ? "" : " " + PageText.SCANS_LAST));
    }

    private void notes() {
        if (!view.warnings().isEmpty()) {
            document.part(PageText.NOTES, PdfFrame.KEEP / 2);
            document.points(
                    Type.BODY,
                    view.warnings().stream()
                            .map(w -> w.text() + " (" + w.code().key() + ")")
                            .toList());
        }
    }

    private void scans() throws IOException {
        if (view.scans().isEmpty()) {
            return;
        }
        double first = document.height(view.scans().get(0).figure().picture(), PICTURE);
        document.part(PageText.SCANS, first + AROUND);
        document.paragraph(Type.QUIET, PageText.SCANS_LEAD);
        for (ReportView.Scan scan : view.scans()) {
            document.picture(scan.figure().picture(), PICTURE, scan.caption());
        }
    }

    private void part(ReportView.@Nullable Part part) {
        if (part == null) {
            return;
        }
        List<Drawing> drawings = drawings(part);
        List<NamedFigure> facts = PdfFrame.rows(part.facts());
        double tallest = drawings.stream().mapToDouble(Drawing::height).max().orElse(0);
        double tall =
                beside(part)
                        ? document.height(drawings.get(0), facts)
                        : tallest * PagedDocument.UNIT;
        double below = beside(part) ? 0 : document.height(facts);
        double figures = tall + AROUND;
        boolean whole =
                document.fits(figures + below + PdfFrame.KEEP / 3) || document.room() < MUCH_ROOM;
        document.part(part.title(), figures + (whole ? below : Math.min(below, PdfFrame.KEEP / 2)));
        document.paragraph(Type.QUIET, part.lead());
        if (beside(part)) {
            document.beside(drawings.get(0), facts);
        } else if (!drawings.isEmpty()) {
            document.figures(drawings);
        }
        if (!part.key().isEmpty()) {
            document.key(part.key().stream().map(Sign::drawing).toList());
        }
        document.paragraph(Type.SMALL, part.note());
        if (!beside(part)) {
            frame.entries(part.facts());
        }
    }

    private static boolean beside(ReportView.Part part) {
        return part.figures().size() == 1 && part.figures().get(0).wide() == Plot.TWO_THIRDS;
    }

    private List<Drawing> drawings(ReportView.Part part) {
        double share = beside(part) ? BESIDE : 1.0 / Math.max(1, part.figures().size());
        double units = document.units(share);
        return part.figures().stream().map(plot -> plot.at().apply(units)).toList();
    }

    private void promise() {
        ReportView.Promised promised = view.promise();
        if (promised == null) {
            return;
        }
        document.part(PageText.PROMISE, PdfFrame.KEEP);
        document.paragraph(Type.QUIET, promised.lead());
        frame.entries(promised.facts());
        List<ReportView.PromisedRow> furthest = promised.rows().stream().limit(FURTHEST).toList();
        document.paragraph(
                Type.QUIET,
                "The "
                        + furthest.size()
                        + " patches that are furthest off, of "
                        + promised.rows().size()
                        + ", absolute CIELAB (D50):");
        document.table(
                new Table(
                        List.of(
                                Column.text("Patch", 14),
                                Column.text("R G B", 16),
                                Column.text("Promised", 28),
                                Column.text("Read", 28),
                                Column.number("dE00", 10)),
                        furthest.stream()
                                .map(
                                        row ->
                                                List.of(
                                                        Cell.of(row.id()),
                                                        Cell.of(row.rgb()),
                                                        new Cell(
                                                                row.promised(),
                                                                row.promisedSwatch().colour()),
                                                        new Cell(
                                                                row.read(),
                                                                row.readSwatch().colour()),
                                                        Cell.of(row.deltaE())))
                                .toList()));
    }

    private void budgets() {
        if (view.budgets().isEmpty()) {
            return;
        }
        document.part(PageText.BUDGETS, PdfFrame.KEEP);
        document.paragraph(Type.QUIET, PageText.BUDGETS_LEAD);
        List<Column> columns = new ArrayList<>();
        for (String head : PageText.budgetHeads()) {
            columns.add(columns.isEmpty() ? Column.text(head, 24) : Column.number(head, 12));
        }
        document.table(
                new Table(
                        columns,
                        view.budgets().stream()
                                .map(
                                        row ->
                                                PdfFrame.cells(
                                                        row.figure(),
                                                        row.value(),
                                                        row.random(),
                                                        row.light(),
                                                        row.calibration(),
                                                        row.systematic(),
                                                        "\u00b1\u00a0" + row.all()))
                                .toList()));
    }

    private void readings() {
        if (view.readings().isEmpty()) {
            return;
        }
        document.part(PageText.READINGS, PdfFrame.KEEP);
        document.paragraph(
                Type.QUIET,
                view.readings().size()
                        + " readings, "
                        + view.readingsHold()
                        + ", by section of the chart. Each one stands in readings.csv.");
        List<Column> columns = new ArrayList<>();
        for (String head : PageText.sectionHeads()) {
            columns.add(Column.text(head, columns.isEmpty() || columns.size() == 3 ? 26 : 16));
        }
        document.table(
                new Table(
                        columns,
                        view.sections().stream()
                                .map(
                                        row ->
                                                PdfFrame.cells(
                                                        row.section(),
                                                        row.patches(),
                                                        row.range(),
                                                        row.error(),
                                                        row.flags()))
                                .toList()));
        document.points(
                Type.SMALL,
                view.flags().stream().map(flag -> flag.label() + ": " + flag.value()).toList());
    }
}
