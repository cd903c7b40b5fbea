package org.printassay.report;

import java.io.IOException;
import java.io.OutputStream;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.printassay.report.draw.Drawing;
import org.printassay.report.paged.PageFormat;
import org.printassay.report.paged.PagedDocument;
import org.printassay.report.paged.PagedDocument.Sentence;
import org.printassay.report.paged.Table;
import org.printassay.report.paged.Table.Cell;
import org.printassay.report.paged.Table.Column;
import org.printassay.report.paged.Type;

/** A check on paper: the same view as on screen, part by part. */
final class CheckPdf {
    private static final int ABREAST = 2;

    /** What it costs to show curves smaller. */
    private static final double SMALLER = 0.5;

    private final PdfFrame frame;
    private final PagedDocument document;
    private final CheckView view;

    private CheckPdf(PdfFrame frame, PagedDocument document, CheckView view) {
        this.frame = frame;
        this.document = document;
        this.view = view;
    }

    /**
     * Writes the check; the stream is left open.
     *
     * @throws IOException when it cannot be written
     */
    static void write(CheckView view, PageFormat format, OutputStream out) throws IOException {
        PdfFrame.write(
                format,
                view.title(),
                view.simulated(),
                view.identity(),
                out,
                (frame, document) -> new CheckPdf(frame, document, view).all());
    }

    private void all() {
        frame.head(CheckText.KIND, view.title(), view.about());
        changed();
        changes();
        numbers();
        curves();
        document.part(CheckText.LINES);
        frame.entries(view.surface());
        patches();
        document.part(CheckText.RULE);
        document.paragraph(Type.BODY, view.rule());
        document.paragraph(Type.BODY, view.tolerances());
        frame.end(CheckText.END, List.of("check.json"));
    }

    private void changed() {
        document.part(CheckText.CHANGED);
        document.paragraph(Type.FINDING, view.headline());
        document.gap(4);
        document.numbered(
                view.sentences().stream()
                        .map(sentence -> List.of(new Sentence(Type.BODY, sentence)))
                        .toList());
        if (!view.cautions().isEmpty()) {
            document.part(CheckText.BEFORE);
            document.points(Type.BODY, view.cautions());
        }
    }

    private void changes() {
        Plot changes = view.changes();
        if (changes != null) {
            frame.plot(CheckText.AGAINST, CheckText.AGAINST_LEAD, changes);
            document.key(view.keys().stream().map(Sign::drawing).toList());
            document.remark(view.decision());
            document.remark(view.spread());
        }
    }

    private void numbers() {
        if (view.rows().isEmpty()) {
            return;
        }
        document.part(CheckText.NUMBERS);
        List<String> heads = CheckText.changeHeads();
        List<Column> columns = new ArrayList<>();
        columns.add(Column.text(heads.get(0), 34));
        heads.subList(1, heads.size() - 1).forEach(head -> columns.add(Column.number(head, 10)));
        columns.add(Column.text(heads.get(heads.size() - 1), 14));
        List<List<Cell>> rows = new ArrayList<>();
        for (CheckView.Row row : view.rows()) {
            rows.add(
                    PdfFrame.cells(
                            row.label(),
                            row.before(),
                            row.after(),
                            row.change(),
                            row.half(),
                            row.limit(),
                            row.outcome()));
        }
        document.table(new Table(columns, rows));
    }

    private void curves() {
        if (view.curves().isEmpty()) {
            return;
        }
        document.part(CheckText.CURVES);
        document.lead(view.curvesLead());
        document.either(
                Stream.concat(
                                PdfFrame.ways(tall -> curves(ABREAST, tall)).stream(),
                                Stream.of(
                                        new PagedDocument.Way(
                                                SMALLER, () -> curves(ABREAST + 1, 1))))
                        .toList());
    }

    private void curves(int abreast, double tall) {
        double units = document.unitsAbreast(abreast);
        List<Drawing> drawings =
                view.curves().stream().map(plot -> plot.shape().draw(units, tall)).toList();
        for (int i = 0; i < drawings.size(); i += abreast) {
            document.figures(drawings.subList(i, Math.min(drawings.size(), i + abreast)));
        }
    }

    private void patches() {
        if (view.patches().isEmpty()) {
            return;
        }
        document.part(CheckText.PATCHES);
        document.lead(view.patchesLead());
        List<List<Cell>> rows = new ArrayList<>();
        for (CheckView.Patch patch : view.patches()) {
            rows.add(
                    List.of(
                            Cell.of(patch.rgb()),
                            new Cell(patch.before(), patch.beforeSwatch().colour()),
                            new Cell(patch.after(), patch.afterSwatch().colour()),
                            Cell.of(patch.off())));
        }
        document.table(
                new Table(
                        List.of(
                                Column.text("R G B", 16),
                                Column.text("Baseline", 30),
                                Column.text("Print", 30),
                                Column.number("dE00", 10)),
                        rows));
    }
}
