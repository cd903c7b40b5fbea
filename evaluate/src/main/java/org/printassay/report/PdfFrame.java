package org.printassay.report;

import java.io.IOException;
import java.io.OutputStream;
import java.util.ArrayList;
import java.util.List;
import org.printassay.evaluation.Finding;
import org.printassay.report.draw.Drawing;
import org.printassay.report.paged.NamedFigure;
import org.printassay.report.paged.PageFormat;
import org.printassay.report.paged.PagedDocument;
import org.printassay.report.paged.PagedDocument.Sentence;
import org.printassay.report.paged.Table.Cell;
import org.printassay.report.paged.Type;

/** What every document to hand on has: its head, findings, figures one a line, and its end. */
final class PdfFrame {
    /** What of a part must follow its heading on the same page. */
    static final double KEEP = 90;

    private final PagedDocument document;
    private final boolean simulated;

    private PdfFrame(PagedDocument document, boolean simulated) {
        this.document = document;
        this.simulated = simulated;
    }

    /** Fills a document. */
    @FunctionalInterface
    interface Parts {
        void fill(PdfFrame frame, PagedDocument document) throws IOException;
    }

    /**
     * Writes a document; the stream is left open.
     *
     * @param title name of the document
     * @param simulated whether nothing in it is real, to be said on every page
     * @param identity number that documents of other content do not have
     * @throws IOException when it cannot be written
     */
    static void write(
            PageFormat format,
            String title,
            boolean simulated,
            long identity,
            OutputStream out,
            Parts parts)
            throws IOException {
        String note = simulated ? PageText.SIMULATED : "";
        try (PagedDocument document = new PagedDocument(format, title, note, identity)) {
            parts.fill(new PdfFrame(document, simulated), document);
            document.write(out);
        }
    }

    /**
     * The beginning.
     *
     * @param kind what the document is
     * @param about what it is of
     */
    void head(String kind, String title, String about) {
        String nothingReal = simulated ? " \u00b7 " + PageText.SIMULATED : "";
        document.paragraph(Type.ACCENT, "printassay " + kind + nothingReal);
        document.title(title);
        document.paragraph(Type.QUIET, about);
    }

    /** Findings with how sure they are and what to do, numbered. */
    void findings(List<Finding> findings) {
        List<List<Sentence>> items = new ArrayList<>();
        for (Finding finding : findings) {
            items.add(
                    List.of(
                            new Sentence(Type.FINDING, finding.text()),
                            new Sentence(Type.SMALL, finding.sureness()),
                            new Sentence(Type.BODY, finding.advice())));
        }
        document.numbered(items);
    }

    /** A plot of its own part, over the whole width. */
    void plot(String heading, String lead, Plot plot) {
        Drawing drawing = plot.at().apply(document.units(1));
        document.part(heading, drawing.height() * PagedDocument.UNIT + KEEP / 2);
        document.paragraph(Type.QUIET, lead);
        document.figures(List.of(drawing));
    }

    /** Figures with their names. */
    void entries(List<Fact> facts) {
        document.entries(rows(facts));
    }

    /**
     * The last lines.
     *
     * @param files that hold the same figures for programs
     */
    void end(String words, List<String> files) {
        document.gap(8);
        document.paragraph(Type.SMALL, words + " " + String.join(", ", files));
    }

    /** Facts as the document lays them out. */
    static List<NamedFigure> rows(List<Fact> facts) {
        return facts.stream().map(PdfFrame::row).toList();
    }

    private static NamedFigure row(Fact fact) {
        Swatch swatch = fact.swatch();
        return new NamedFigure(
                fact.label(),
                swatch == null ? null : swatch.colour(),
                fact.value(),
                fact.sureness());
    }

    /** Cells of text alone. */
    static List<Cell> cells(String... texts) {
        return List.of(texts).stream().map(Cell::of).toList();
    }
}
