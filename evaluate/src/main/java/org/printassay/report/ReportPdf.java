package org.printassay.report;

import java.io.IOException;
import java.io.OutputStream;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.printassay.evaluation.Finding;
import org.printassay.report.draw.Drawing;
import org.printassay.report.paged.Entry;
import org.printassay.report.paged.PageFormat;
import org.printassay.report.paged.PagedDocument;
import org.printassay.report.paged.PagedDocument.Sentence;
import org.printassay.report.paged.Table;
import org.printassay.report.paged.Table.Cell;
import org.printassay.report.paged.Table.Column;
import org.printassay.report.paged.Type;

/** The report of one evaluation on paper: the same view as on screen, part by part. */
final class ReportPdf {
    /** Plots with figures beside them take this share of the width. */
    private static final double BESIDE = 0.5;

    private static final double PICTURE = 0.48;

    /** What of a part must follow its heading on the same page. */
    private static final double KEEP = 90;

    /** Heights of sentence, key and gaps of a part with plots. */
    private static final double AROUND = 45;

    /** Where so much of a page is left, a part's figures may go on on the next one. */
    private static final double MUCH_ROOM = 0.4;

    /** The furthest patches that are listed. */
    private static final int FURTHEST = 24;

    private final PagedDocument document;
    private final ReportView view;

    private ReportPdf(PagedDocument document, ReportView view) {
        this.document = document;
        this.view = view;
    }

    /**
     * Writes the report; the stream is left open.
     *
     * @throws IOException when it cannot be written
     */
    static void write(ReportView view, PageFormat format, OutputStream out) throws IOException {
        String note = view.simulated() ? PageText.SIMULATED : "";
        boolean told = view.title().equalsIgnoreCase(PageText.KIND);
        String title = view.title() + (told ? "" : " \u2013 " + PageText.KIND);
        try (PagedDocument document = new PagedDocument(format, title, note, view.identity())) {
            new ReportPdf(document, view).all();
            document.write(out);
        }
    }

    private void all() throws IOException {
        head();
        findings();
        figures();
        notes();
        scans();
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
            document.part(PageText.FURTHER, document.height(entries(view.further())));
            document.entries(entries(view.further()));
        }
        document.part(PageText.CONDITIONS, document.height(entries(view.conditions())));
        document.entries(entries(view.conditions()));
        budgets();
        document.part(PageText.SURE, KEEP);
        document.points(Type.BODY, view.cautions());
        readings();
        document.gap(8);
        document.paragraph(Type.SMALL, PageText.END + " " + String.join(", ", Reports.FOR_SCRIPTS));
    }

    private void head() {
        document.paragraph(
                Type.ACCENT,
                "printassay "
                        + PageText.KIND
                        + (view.simulated() ? " \u00b7 " + PageText.SIMULATED : ""));
        document.title(view.title());
        document.paragraph(Type.QUIET, view.about());
        Plot strip = view.strip();
        if (strip != null) {
            document.gap(6);
            document.figures(List.of(strip.at().apply(document.units(1))));
        }
    }

    private void findings() {
        document.part(PageText.FINDINGS, KEEP);
        if (view.findings().isEmpty()) {
            document.paragraph(Type.BODY, PageText.NOTHING);
            return;
        }
        List<List<Sentence>> items = new ArrayList<>();
        for (Finding finding : view.findings()) {
            items.add(
                    List.of(
                            new Sentence(Type.FINDING, finding.text()),
                            new Sentence(Type.SMALL, finding.sureness()),
                            new Sentence(Type.BODY, finding.advice())));
        }
        document.numbered(items);
    }

    private void figures() {
        document.part(PageText.FIGURES, KEEP);
        document.entries(entries(view.glance()));
        document.paragraph(
                Type.QUIET,
                "Trust: " + view.trust() + ". " + view.trustMeaning() + " " + PageText.HALF_WIDTHS);
    }

    private void notes() {
        if (!view.warnings().isEmpty()) {
            document.part(PageText.NOTES, KEEP / 2);
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
        document.part(PageText.SCANS, 3 * KEEP);
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
        double tall = drawings.stream().mapToDouble(Drawing::height).max().orElse(0);
        double below = beside(part) ? 0 : document.height(entries(part.facts()));
        double figures = tall * PagedDocument.UNIT + AROUND;
        boolean whole = document.fits(figures + below + KEEP / 3) || document.room() < MUCH_ROOM;
        document.part(part.title(), figures + (whole ? below : Math.min(below, KEEP / 2)));
        document.paragraph(Type.QUIET, part.lead());
        if (beside(part)) {
            document.beside(drawings.get(0), entries(part.facts()));
        } else if (!drawings.isEmpty()) {
            document.figures(drawings);
        }
        if (!part.key().isEmpty()) {
            document.key(part.key().stream().map(Sign::drawing).toList());
        }
        document.paragraph(Type.SMALL, part.note());
        if (!beside(part)) {
            document.entries(entries(part.facts()));
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
        document.part(PageText.PROMISE, KEEP);
        document.paragraph(Type.QUIET, promised.lead());
        document.entries(entries(promised.facts()));
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
        document.part(PageText.BUDGETS, KEEP);
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
                                                cells(
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
        document.part(PageText.READINGS, KEEP);
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
                                                cells(
                                                        row.section(),
                                                        row.patches(),
                                                        row.range(),
                                                        row.error(),
                                                        row.flags()))
                                .toList()));
    }

    private static List<Cell> cells(String... texts) {
        return List.of(texts).stream().map(Cell::of).toList();
    }

    private static List<Entry> entries(List<Fact> facts) {
        return facts.stream().map(ReportPdf::entry).toList();
    }

    private static Entry entry(Fact fact) {
        Swatch swatch = fact.swatch();
        return new Entry(
                fact.label(),
                swatch == null ? null : swatch.colour(),
                fact.value(),
                fact.sureness());
    }
}
