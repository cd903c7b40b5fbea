package org.printassay.report.paged;

import java.io.ByteArrayInputStream;
import java.io.Closeable;
import java.io.IOException;
import java.io.OutputStream;
import java.util.List;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSInteger;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.cos.COSStream;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDResources;
import org.apache.pdfbox.pdmodel.common.PDStream;
import org.apache.pdfbox.pdmodel.graphics.color.PDColorSpace;
import org.apache.pdfbox.pdmodel.graphics.color.PDICCBased;
import org.apache.pdfbox.pdmodel.graphics.image.JPEGFactory;
import org.apache.pdfbox.pdmodel.graphics.image.PDImageXObject;
import org.apache.pdfbox.pdmodel.graphics.state.PDExtendedGraphicsState;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.destination.PDPageXYZDestination;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.outline.PDDocumentOutline;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.outline.PDOutlineItem;
import org.printassay.colour.RgbSpace;
import org.printassay.colour.icc.RgbProfiles;
import org.printassay.report.draw.Drawing;

/**
 * A document that is filled from top to bottom and then written; only then pages are made of it,
 * see {@link PageBreaks}. Text may be anything: what cannot be shown becomes a square. The same
 * calls make the same bytes. Not for use by several threads.
 */
public final class PagedDocument implements Closeable {
    /** Length of a drawing's unit, so that its text is as large as small text. */
    public static final double UNIT = 0.6;

    static final double GAP = 7;
    private static final float THIN = 0.16f;
    private static final int TITLE_LINES = 4;

    /** Height of heading and sentence above a table that stays in one piece. */
    private static final double ABOVE_TABLE = 100;

    /** So many figures may stand in two columns. */
    private static final int MANY = 6;

    /** Figures may be so much taller than the drawing beside them, points. */
    private static final double EXCESS = 110;

    private static final int LONGEST_TITLE = 300;

    private final PDDocument document = new PDDocument();
    private final PDDocumentOutline outline = new PDDocumentOutline();
    private final PDResources resources = new PDResources();
    private final Structure structure = new Structure();
    private final PageFormat format;
    private final Typeface typeface;
    private final Sequence sequence = new Sequence();
    private final Flow flow;
    private final TextWriter text;
    private final ListWriter lists;
    private final FigureWriter figures;
    private final String title;
    private final String note;
    private final long identity;

    /**
     * An empty document.
     *
     * @param title name of the document; also at the foot of every page
     * @param note what must be said on every page; may be empty
     * @param identity number that documents of other content do not have
     * @throws IOException when the typeface cannot be read
     */
    public PagedDocument(PageFormat format, String title, String note, long identity)
            throws IOException {
        this.format = format;
        this.note = note;
        this.identity = identity;
        String clean = VisibleText.of(title).strip();
        this.title =
                clean.codePointCount(0, clean.length()) <= LONGEST_TITLE
                        ? clean
                        : clean.substring(0, clean.offsetByCodePoints(0, LONGEST_TITLE)) + "\u2026";
        try {
            typeface = new Typeface(document);
            resources.put(COSName.getPDFName(Canvas.FONT), typeface.font());
            resources.put(COSName.getPDFName("DefaultRGB"), screenColours(document));
            PDExtendedGraphicsState thin = new PDExtendedGraphicsState();
            thin.setNonStrokingAlphaConstant(THIN);
            resources.put(COSName.getPDFName(Canvas.THIN), thin);
            flow = new Flow(document, format, resources, structure, typeface);
            text = new TextWriter(sequence, flow, typeface);
            lists = new ListWriter(sequence, flow, structure, text, format.textWidth());
            figures = new FigureWriter(sequence, flow, structure, typeface, format);
        } catch (IOException | RuntimeException e) {
            document.close();
            throw e;
        }
    }

    /** The colours of drawings and pictures are sRGB, whatever is printed on. */
    private static PDColorSpace screenColours(PDDocument document) throws IOException {
        COSStream profile = document.getDocument().createCOSStream();
        try (OutputStream bytes = profile.createOutputStream(COSName.FLATE_DECODE)) {
            bytes.write(RgbProfiles.of(RgbSpace.SRGB));
        }
        profile.setItem(COSName.N, COSInteger.THREE);
        profile.setItem(COSName.ALTERNATE, COSName.DEVICERGB);
        COSArray space = new COSArray();
        space.add(COSName.ICCBASED);
        space.add(profile);
        return PDICCBased.create(space, null);
    }

    /** What is left for text between the margins. */
    public double textWidth() {
        return format.textWidth();
    }

    /** How many units wide a drawing is that takes a share of the text's width. */
    public double units(double share) {
        return share * (format.textWidth() - (share < 1 ? FigureWriter.COLUMN_GAP : 0)) / UNIT;
    }

    /** How many units wide each drawing is where so many stand side by side. */
    public double unitsAbreast(int drawings) {
        return (format.textWidth() - (drawings - 1) * FigureWriter.COLUMN_GAP) / drawings / UNIT;
    }

    /** The document's name, at the top of its first page. */
    public void title(String name) {
        List<String> lines = text.wrap(name, Type.TITLE, textWidth(), TITLE_LINES);
        sequence.add(
                lines.size() * Type.TITLE.leading(),
                Turn.NEVER,
                top -> {
                    structure.open("H1");
                    flow.lines(lines, Type.TITLE, PageFormat.SIDE, false);
                    structure.close();
                });
        sequence.space(2);
        sequence.keep();
    }

    /** Heading of a part, with a line above it and a bookmark; what follows stays with it. */
    public void part(String heading) {
        List<String> lines = text.wrap(heading, Type.HEADING, textWidth());
        sequence.space(12);
        sequence.loosen();
        sequence.add(
                9 + lines.size() * Type.HEADING.leading(),
                Turn.FREE,
                top -> {
                    Canvas canvas = flow.canvas();
                    canvas.beginDecoration();
                    double y = flow.y();
                    canvas.rule(PageFormat.SIDE, y, textWidth(), Shade.RULE.colour());
                    canvas.end();
                    bookmark(heading);
                    flow.advance(9);
                    structure.open("H2");
                    flow.lines(lines, Type.HEADING, PageFormat.SIDE, false);
                    structure.close();
                });
        sequence.space(3);
        sequence.keep();
    }

    /** Heading within a part; what follows stays with it. */
    public void subheading(String heading) {
        sequence.space(6);
        paragraph(Type.SUBHEADING, heading);
        sequence.keep();
    }

    /** What a part begins with; what follows stays with it. Nothing for empty text. */
    public void lead(String said) {
        paragraph(Type.QUIET, said);
        sequence.keep();
    }

    /** What stands above a figure, and stays with it. */
    public void caption(String said) {
        paragraph(Type.BODY, said);
        sequence.keep();
    }

    /** What goes with what stands before it, and stays with it. Nothing for empty text. */
    public void remark(String said) {
        if (!said.isEmpty()) {
            sequence.keep();
            paragraph(Type.SMALL, said);
        }
    }

    private void bookmark(String text) {
        PDPageXYZDestination place = new PDPageXYZDestination();
        place.setPage(flow.canvas().page());
        place.setTop((int) (format.height() - flow.y() + 4));
        PDOutlineItem item = new PDOutlineItem();
        item.setTitle(VisibleText.of(text));
        item.setDestination(place);
        outline.addLast(item);
    }

    /** A paragraph; nothing for empty text. */
    public void paragraph(Type type, String said) {
        if (!said.isEmpty()) {
            text.add(
                    text.wrap(said, type, textWidth()),
                    type,
                    PageFormat.SIDE,
                    Turn.ROW,
                    Turn.LINE,
                    () -> structure.open("P"),
                    structure::close);
            sequence.space(type.leading() / 3);
        }
    }

    /** Empty space, but not at the top of a page. */
    public void gap(double height) {
        sequence.space(height);
    }

    /** Points in no order. */
    public void points(Type type, List<String> texts) {
        lists.points(type, texts);
        sequence.space(GAP / 2);
    }

    /** A sentence of a list's item. */
    public record Sentence(Type type, String text) {}

    /** Items in order, each of one or more sentences; empty ones are left out. */
    public void numbered(List<List<Sentence>> items) {
        lists.numbered(items);
    }

    /** A table over the whole width. */
    public void table(Table table) {
        table(table, Turn.ROW);
    }

    private void table(Table table, double turn) {
        if (!table.rows().isEmpty()) {
            writer().add(sequence, table, format.textHeight() - ABOVE_TABLE, turn);
            sequence.space(GAP);
        }
    }

    private TableWriter writer() {
        return new TableWriter(flow, structure, typeface, PageFormat.SIDE, textWidth());
    }

    /** Figures with their names, one a line; in two columns where they are many and short. */
    public void entries(List<NamedFigure> entries) {
        if (entries.size() < MANY || !abreast(entries)) {
            table(entryTable(entries), Turn.FIGURES);
        }
    }

    private boolean abreast(List<NamedFigure> entries) {
        double width = (textWidth() - FigureWriter.COLUMN_GAP) / 2;
        int half = (entries.size() + 1) / 2;
        Table first = closeTable(entries.subList(0, half), entries);
        Table second = closeTable(entries.subList(half, entries.size()), entries);
        double right = PageFormat.SIDE + width + FigureWriter.COLUMN_GAP;
        TableWriter one = new TableWriter(flow, structure, typeface, PageFormat.SIDE, width);
        TableWriter two = new TableWriter(flow, structure, typeface, right, width);
        if (!one.inSingleLines(first) || !two.inSingleLines(second)) {
            return false;
        }
        sequence.add(
                one.height(first),
                Turn.FIGURES,
                top -> {
                    double y = flow.y();
                    one.paint(first);
                    flow.to(y);
                    two.paint(second);
                });
        sequence.space(GAP);
        return true;
    }

    /** A table of some of the entries, its columns as wide as those of all. */
    private Table closeTable(List<NamedFigure> some, List<NamedFigure> all) {
        double label = 0;
        double value = 0;
        double detail = 0;
        for (NamedFigure entry : all) {
            label = Math.max(label, width(entry.label(), Type.QUIET));
            double sample = entry.colour() == null ? 0 : TableWriter.SAMPLE;
            value = Math.max(value, sample + width(entry.value(), Type.VALUE));
            detail = Math.max(detail, width(entry.detail(), Type.SMALL));
        }
        return entryTable(some, label + 1, value + 1, detail + 1);
    }

    private double width(String words, Type type) {
        return typeface.width(VisibleText.of(words)) * type.size();
    }

    private static Table entryTable(List<NamedFigure> entries) {
        return entryTable(entries, 21, 34, 45);
    }

    private static Table entryTable(
            List<NamedFigure> entries, double label, double value, double detail) {
        return new Table(
                List.of(
                        new Table.Column("", label, false, Type.QUIET),
                        new Table.Column("", value, false, Type.VALUE),
                        new Table.Column("", detail, false, Type.SMALL)),
                entries.stream()
                        .map(
                                e ->
                                        List.of(
                                                Table.Cell.of(e.label()),
                                                new Table.Cell(e.value(), e.colour()),
                                                Table.Cell.of(e.detail())))
                        .toList());
    }

    /** Drawings side by side; made for the text's width, in {@link #UNIT}. */
    public void figures(List<Drawing> drawings) {
        figures.sideBySide(drawings);
    }

    /** A drawing with figures to its right; below it where they are too many. */
    public void beside(Drawing drawing, List<NamedFigure> entries) {
        if (!figures.beside(drawing, entries)) {
            figures.sideBySide(List.of(drawing));
            entries(entries);
        }
    }

    /** Whether figures to the right of a drawing are about as tall as it, or less. */
    public boolean balanced(Drawing drawing, List<NamedFigure> entries) {
        return figures.excess(drawing, entries) <= EXCESS;
    }

    /**
     * One way to show something.
     *
     * @param cost 0 for the one that is liked most; a page of which a tenth stays empty costs 1
     * @param content writes it into this document; at least a paragraph or a figure
     */
    public record Way(double cost, Runnable content) {}

    /** Something that is shown in one of several ways, whichever fills the pages best. */
    public void either(List<Way> ways) {
        sequence.either(
                ways.stream().map(Way::cost).toList(), ways.stream().map(Way::content).toList());
    }

    /** Signs and what they mean, the titles of their drawings, in running lines. */
    public void key(List<Drawing> signs) {
        figures.key(signs);
    }

    /**
     * A photograph with its caption at the right.
     *
     * @param share of the text's width
     * @throws IOException when it is no JPEG
     */
    public void picture(Picture picture, double share, String caption) throws IOException {
        PDImageXObject image = JPEGFactory.createFromByteArray(document, picture.jpeg());
        figures.picture(picture, resources.add(image).getName(), share, caption);
    }

    /** Finishes the document; nothing may be added after. The stream is left open. */
    public void write(OutputStream out) throws IOException {
        flow.paint(PageBreaks.of(sequence, format.textHeight()));
        List<Canvas> pages = flow.pages();
        for (Canvas canvas : pages) {
            foot(canvas, pages.size());
            canvas.page()
                    .setContents(
                            new PDStream(
                                    document,
                                    new ByteArrayInputStream(canvas.bytes()),
                                    COSName.FLATE_DECODE));
        }
        typeface.font().subset();
        structure.finish(document, pages);
        document.getDocumentCatalog().setDocumentOutline(outline);
        Description.add(document, title, identity);
        document.save(out);
    }

    private void foot(Canvas canvas, int pages) {
        double y = format.height() - PageFormat.BOTTOM + 24;
        String number = "page " + (canvas.index() + 1) + " of " + pages;
        Typeface.Shown right = typeface.show(number);
        double size = Type.SMALL.size();
        String quiet = Shade.QUIET.colour();
        canvas.beginFooter();
        double end = format.width() - PageFormat.SIDE;
        canvas.text(end - right.width() * size, y, right, size, quiet);
        String left = note.isEmpty() ? title : title + " \u2013 " + note;
        double room = textWidth() - right.width() * size - FigureWriter.COLUMN_GAP;
        String line = typeface.wrap(left, size, room, 1).get(0);
        canvas.text(PageFormat.SIDE, y, typeface.show(line), size, quiet);
        canvas.end();
    }

    @Override
    public void close() throws IOException {
        document.close();
    }
}
