package org.printassay.report;

import java.io.IOException;
import java.io.OutputStream;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.printassay.report.draw.Drawing;
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

    /** Plots that else take the whole width may take this share of it. */
    private static final double BESIDE_WIDE = 0.66;

    /** What it costs not to show a plot over the whole width. */
    private static final double SMALLER = 0.5;

    private static final double PICTURE = 0.38;

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
            document.part(PageText.FURTHER);
            frame.entries(view.further());
        }
        document.part(PageText.CONDITIONS);
        frame.entries(view.conditions());
        budgets();
        document.part(PageText.SURE);
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
            document.figures(List.of(strip.at(document.units(1))));
        }
    }

    private void findings() {
        document.part(PageText.FINDINGS);
        if (view.findings().isEmpty()) {
            document.paragraph(Type.BODY, PageText.NOTHING);
            return;
        }
        frame.findings(view.findings());
    }

    private void figures() {
        document.part(PageText.FIGURES);
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
            document.part(PageText.NOTES);
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
        document.part(PageText.SCANS);
        document.lead(PageText.SCANS_LEAD);
        for (ReportView.Scan scan : view.scans()) {
            document.picture(scan.figure().picture(), PICTURE, scan.caption());
        }
    }

    private void part(ReportView.@Nullable Part part) {
        if (part == null) {
            return;
        }
        document.part(part.title());
        document.lead(part.lead());
        document.either(ways(part));
    }

    /** How a part may be shown: its plots with the figures to their right or below. */
    private List<PagedDocument.Way> ways(ReportView.Part part) {
        Plot only = part.figures().size() == 1 ? part.figures().get(0) : null;
        if (only != null && only.wide() == Plot.TWO_THIRDS) {
            return PdfFrame.ways(tall -> beside(part, only, BESIDE, tall));
        }
        List<PagedDocument.Way> ways = new ArrayList<>();
        ways.addAll(PdfFrame.ways(tall -> below(part, tall)));
        if (only != null) {
            Drawing drawing = only.at(document.units(BESIDE_WIDE));
            boolean lower = drawing.height() <= only.at(document.units(1)).height();
            if (lower && document.balanced(drawing, PdfFrame.rows(part.facts()))) {
                ways.add(new PagedDocument.Way(SMALLER, () -> beside(part, only, BESIDE_WIDE, 1)));
            }
        }
        return ways;
    }

    private void beside(ReportView.Part part, Plot plot, double share, double tall) {
        Drawing drawing = plot.shape().draw(document.units(share), tall);
        document.beside(drawing, PdfFrame.rows(part.facts()));
        explained(part);
    }

    private void below(ReportView.Part part, double tall) {
        double units = document.unitsAbreast(Math.max(1, part.figures().size()));
        if (!part.figures().isEmpty()) {
            document.figures(
                    part.figures().stream().map(p -> p.shape().draw(units, tall)).toList());
        }
        explained(part);
        frame.entries(part.facts());
    }

    private void explained(ReportView.Part part) {
        if (!part.key().isEmpty()) {
            document.key(part.key().stream().map(Sign::drawing).toList());
        }
        document.remark(part.note());
    }

    private void promise() {
        ReportView.Promised promised = view.promise();
        if (promised == null) {
            return;
        }
        document.part(PageText.PROMISE);
        document.lead(promised.lead());
        frame.entries(promised.facts());
        List<ReportView.PromisedRow> furthest = promised.rows().stream().limit(FURTHEST).toList();
        document.lead(
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
        document.part(PageText.BUDGETS);
        document.lead(PageText.BUDGETS_LEAD);
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
        document.part(PageText.READINGS);
        document.lead(
                view.readings().size()
                        + " readings, "
                        + view.readingsHold()
                        + ", by section of the chart. Each one stands in readings.csv.");
        List<Column> columns = new ArrayList<>();
        List<String> heads = PageText.sectionHeads();
        List<Integer> shares = List.of(22, 10, 16, 26, 30);
        for (int i = 0; i < shares.size(); i++) {
            String head = heads.get(i);
            int share = shares.get(i);
            columns.add(
                    PageText.isFigure(head)
                            ? Column.number(head, share)
                            : Column.text(head, share));
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
