package org.printassay.report;

import java.io.IOException;
import java.io.OutputStream;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.printassay.report.paged.PageFormat;
import org.printassay.report.paged.PagedDocument;
import org.printassay.report.paged.PagedDocument.Sentence;
import org.printassay.report.paged.Table;
import org.printassay.report.paged.Table.Cell;
import org.printassay.report.paged.Table.Column;
import org.printassay.report.paged.Type;

/** A comparison on paper: the same view as on screen, part by part. */
final class ComparisonPdf {
    private static final String KIND = "comparison";

    private final PdfFrame frame;
    private final PagedDocument document;
    private final ComparisonView view;

    private ComparisonPdf(PdfFrame frame, PagedDocument document, ComparisonView view) {
        this.frame = frame;
        this.document = document;
        this.view = view;
    }

    /**
     * Writes the comparison; the stream is left open.
     *
     * @throws IOException when it cannot be written
     */
    static void write(ComparisonView view, PageFormat format, OutputStream out) throws IOException {
        PdfFrame.write(
                format,
                view.title(),
                view.simulated(),
                view.identity(),
                out,
                (frame, document) -> new ComparisonPdf(frame, document, view).all());
    }

    private void all() {
        head();
        findings();
        sides();
        questions();
        strips();
        plot(ComparisonText.TONE, ComparisonText.TONE_LEAD, ComparisonText.TONE_APART, view.tone());
        plot(
                ComparisonText.GAMUT,
                ComparisonText.GAMUT_LEAD,
                ComparisonText.GAMUT_APART,
                view.gamut());
        figures();
        document.part(PageText.SURE);
        document.points(Type.BODY, view.method());
        frame.end(ComparisonText.END, List.of("comparison.json", "comparison.csv"));
    }

    private void head() {
        frame.head(KIND, view.title(), view.lead());
        if (!view.cautions().isEmpty()) {
            document.part(ComparisonText.BEFORE);
            document.points(Type.BODY, view.cautions());
        }
    }

    private void findings() {
        document.part(PageText.FINDINGS);
        frame.findings(view.findings());
    }

    private void sides() {
        document.part(ComparisonText.SIDES);
        List<List<Sentence>> items = new ArrayList<>();
        for (ComparisonView.Column side : view.sides()) {
            items.add(
                    List.of(
                            new Sentence(Type.BODY, side.name()),
                            new Sentence(Type.SMALL, side.about())));
        }
        document.numbered(items);
        document.paragraph(Type.QUIET, view.common());
        document.part(ComparisonText.SHORT);
        document.points(Type.BODY, view.inShort());
    }

    private void questions() {
        document.part(ComparisonText.QUESTIONS);
        document.lead(ComparisonText.QUESTIONS_LEAD);
        for (ComparisonView.Asked asked : view.questions()) {
            document.subheading(asked.label());
            document.paragraph(Type.BODY, asked.none());
            if (!asked.places().isEmpty()) {
                document.table(places(asked));
            }
            document.remark(asked.rule());
        }
    }

    private static Table places(ComparisonView.Asked asked) {
        List<Column> columns = new ArrayList<>();
        columns.add(Column.text("Place", 0.5));
        columns.add(Column.text("Name", 2.4));
        asked.heads().forEach(head -> columns.add(Column.number(head, 1.2)));
        List<List<Cell>> rows = new ArrayList<>();
        for (ComparisonView.Placed placed : asked.places()) {
            List<Cell> row = new ArrayList<>();
            row.add(Cell.of(placed.place()));
            String why = placed.why().isEmpty() ? "" : " (" + placed.why() + ")";
            row.add(Cell.of(placed.number() + "  " + placed.name() + why));
            placed.values().forEach(value -> row.add(Cell.of(value)));
            rows.add(row);
        }
        return new Table(columns, rows);
    }

    private void strips() {
        document.part(ComparisonText.STRIPS);
        document.lead(ComparisonText.STRIPS_LEAD);
        for (ComparisonView.Column side : view.sides()) {
            Plot strip = side.strip();
            if (strip != null) {
                document.caption(side.number() + "  " + side.name());
                document.figures(List.of(strip.at(document.units(1))));
            }
        }
    }

    /** A plot; {@code apart} is said where each side has a place of its own. */
    private void plot(String heading, String lead, String apart, @Nullable Plot plot) {
        if (plot == null) {
            return;
        }
        frame.plot(heading, lead, plot);
        document.remark(view.keys().isEmpty() ? apart : "");
        List<String> names = new ArrayList<>();
        for (ComparisonView.Column side : view.sides()) {
            names.add(side.number() + " " + side.name());
        }
        document.remark(String.join(";  ", names));
    }

    private void figures() {
        document.part(ComparisonText.ALL);
        document.lead(view.allLead());
        List<Column> columns = new ArrayList<>();
        columns.add(Column.text("Figure", 1.7));
        for (int i = 0; i < view.sides().size(); i++) {
            ComparisonView.Column side = view.sides().get(i);
            double share = hasDifferences(i) ? 1.3 : 0.8;
            columns.add(Column.text(side.number() + "  " + side.shortName(), share));
        }
        List<List<Cell>> rows = new ArrayList<>();
        view.topics().forEach(topic -> rows.addAll(rows(topic)));
        document.table(new Table(columns, rows));
    }

    /** Whether anything is said of a side but its figures: those alone need less room. */
    private boolean hasDifferences(int side) {
        return view.topics().stream()
                .flatMap(topic -> topic.rows().stream())
                .anyMatch(row -> !row.cells().get(side).difference().isEmpty());
    }

    private static List<List<Cell>> rows(ComparisonView.Topic topic) {
        List<List<Cell>> rows = new ArrayList<>();
        for (ComparisonView.Row row : topic.rows()) {
            List<Cell> cells = new ArrayList<>();
            cells.add(Cell.of(row.label()));
            for (ComparisonView.Cell cell : row.cells()) {
                String verdict = cell.verdict().isEmpty() ? "" : ", " + cell.verdict();
                String difference =
                        cell.difference().isEmpty() ? "" : " (" + cell.difference() + verdict + ")";
                cells.add(Cell.of(cell.value() + difference));
            }
            rows.add(cells);
        }
        return rows;
    }
}
