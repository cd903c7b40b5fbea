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
 * A document that is filled from top to bottom and then written. Parts that do not fit on a page go
 * to the next one. Text may be anything: what cannot be shown becomes a square. The same calls make
 * the same bytes. Not for use by several threads.
 */
public final class PagedDocument implements Closeable {
    /** Length of a drawing's unit, so that its text is as large as small text. */
    public static final double UNIT = 0.6;

    static final double GAP = 7;
    private static final float THIN = 0.16f;
    private static final int TITLE_LINES = 4;
    private static final int LONGEST_TITLE = 300;

    private final PDDocument document = new PDDocument();
    private final PDDocumentOutline outline = new PDDocumentOutline();
    private final PDResources resources = new PDResources();
    private final Structure structure = new Structure();
    private final PageFormat format;
    private final Typeface typeface;
    private final Flow flow;
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
            lists = new ListWriter(flow, structure, format.textWidth());
            figures = new FigureWriter(flow, structure, typeface, format);
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

    /** What is left of the page, as a share of the text's height. */
    public double room() {
        return flow.room() / format.textHeight();
    }

    /** Whether so much fits on what is left of the page. */
    public boolean fits(double height) {
        return flow.fits(height);
    }

    /** How many units wide a drawing is that takes a share of the text's width. */
    public double units(double share) {
        return share * (format.textWidth() - (share < 1 ? FigureWriter.COLUMN_GAP : 0)) / UNIT;
    }

    /** The document's name, at the top of its first page. */
    public void title(String text) {
        structure.open("H1");
        flow.text(text, Type.TITLE, PageFormat.SIDE, textWidth(), TITLE_LINES);
        structure.close();
        flow.advance(2);
    }

    /**
     * Heading of a part, with a line above it and a bookmark.
     *
     * @param keep height that should follow on the same page; more than a page has is not kept
     */
    public void part(String text, double keep) {
        if (!flow.atTop()) {
            flow.advance(12);
        }
        double heading = Type.HEADING.leading() + 12;
        flow.need(heading + Math.min(keep, format.textHeight() - heading));
        Canvas canvas = flow.canvas();
        canvas.beginDecoration();
        canvas.rule(PageFormat.SIDE, flow.y(), textWidth(), Shade.RULE.colour());
        canvas.end();
        bookmark(text);
        flow.advance(9);
        structure.open("H2");
        flow.text(text, Type.HEADING, PageFormat.SIDE, textWidth());
        structure.close();
        flow.advance(3);
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
    public void paragraph(Type type, String text) {
        if (!text.isEmpty()) {
            structure.open("P");
            flow.text(text, type, PageFormat.SIDE, textWidth());
            structure.close();
            flow.advance(type.leading() / 3);
        }
    }

    /** Empty space. */
    public void gap(double height) {
        if (!flow.atTop()) {
            flow.advance(height);
        }
    }

    /** Points in no order. */
    public void points(Type type, List<String> texts) {
        lists.points(type, texts);
        flow.advance(GAP / 2);
    }

    /** A sentence of a list's item. */
    public record Sentence(Type type, String text) {}

    /** Items in order, each of one or more sentences; empty ones are left out. */
    public void numbered(List<List<Sentence>> items) {
        lists.numbered(items);
    }

    /** A table over the whole width. */
    public void table(Table table) {
        if (!table.rows().isEmpty()) {
            writer().write(table);
            flow.advance(GAP);
        }
    }

    private TableWriter writer() {
        return new TableWriter(flow, structure, typeface, PageFormat.SIDE, textWidth());
    }

    /** Figures with their names, one a line. */
    public void entries(List<NamedFigure> entries) {
        table(entryTable(entries));
    }

    /** Height of what {@link #entries} writes. */
    public double height(List<NamedFigure> entries) {
        return writer().height(entryTable(entries)) + GAP;
    }

    private static Table entryTable(List<NamedFigure> entries) {
        return new Table(
                List.of(
                        new Table.Column("", 21, false, Type.QUIET),
                        new Table.Column("", 34, false, Type.VALUE),
                        new Table.Column("", 45, false, Type.SMALL)),
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

    /** Height of what {@link #beside} writes first: all of it, or the drawing alone. */
    public double height(Drawing drawing, List<NamedFigure> entries) {
        return figures.heightBeside(drawing, entries).orElse(figures.height(drawing));
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

    /**
     * Height of the photograph that {@link #picture} paints, points; the caption, which stands
     * beside it, is left out.
     */
    public double height(Picture picture, double share) {
        return figures.height(picture, share);
    }

    /** Finishes the document; nothing may be added after. The stream is left open. */
    public void write(OutputStream out) throws IOException {
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
