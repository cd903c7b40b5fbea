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

    private static final double GAP = 7;
    private static final double COLUMN_GAP = 22;
    private static final double BULLET_INDENT = 11;
    private static final double NUMBER_INDENT = 20;
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
        return share * (format.textWidth() - (share < 1 ? COLUMN_GAP : 0)) / UNIT;
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
            sentence(type, text, PageFormat.SIDE, textWidth());
            flow.advance(type.leading() / 3);
        }
    }

    private void sentence(Type type, String text, double x, double width) {
        structure.open("P");
        flow.text(text, type, x, width);
        structure.close();
    }

    /** Empty space. */
    public void gap(double height) {
        if (!flow.atTop()) {
            flow.advance(height);
        }
    }

    /** Points in no order. */
    public void points(Type type, List<String> texts) {
        structure.open("L");
        structure.numbering("Disc");
        for (String text : texts) {
            item("\u2022", type, BULLET_INDENT, List.of(new Sentence(type, text)));
            flow.advance(2);
        }
        structure.close();
        flow.advance(GAP / 2);
    }

    /** A sentence of a list's item. */
    public record Sentence(Type type, String text) {}

    /** Items in order, each of one or more sentences; empty ones are left out. */
    public void numbered(List<List<Sentence>> items) {
        structure.open("L");
        structure.numbering("Decimal");
        for (int i = 0; i < items.size(); i++) {
            List<Sentence> said =
                    items.get(i).stream().filter(one -> !one.text().isEmpty()).toList();
            item(String.valueOf(i + 1), Type.FINDING, NUMBER_INDENT, said);
            flow.advance(GAP);
        }
        structure.close();
    }

    private void item(String label, Type type, double indent, List<Sentence> said) {
        flow.need(Math.min(3, said.size() + 1) * type.leading());
        structure.open("LI");
        structure.open("Lbl");
        structure.begin(flow.canvas());
        flow.line(label, type, PageFormat.SIDE, flow.y());
        flow.canvas().end();
        structure.close();
        structure.open("LBody");
        for (Sentence one : said) {
            double x = PageFormat.SIDE + indent;
            sentence(one.type(), one.text(), x, textWidth() - indent);
        }
        structure.close();
        structure.close();
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
    public void entries(List<Entry> entries) {
        table(entryTable(entries));
    }

    /** Height of what {@link #entries} writes. */
    public double height(List<Entry> entries) {
        return writer().height(entryTable(entries)) + GAP;
    }

    private static Table entryTable(List<Entry> entries) {
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
        double tallest = drawings.stream().mapToDouble(Drawing::height).max().orElse(0);
        double unit = fitting(tallest);
        flow.need(tallest * unit);
        double x = PageFormat.SIDE;
        for (Drawing drawing : drawings) {
            figure(drawing, x, unit);
            x += drawing.width() * unit + COLUMN_GAP;
        }
        flow.advance(tallest * unit + GAP);
    }

    /** A smaller unit where the drawing would be taller than a page. */
    private double fitting(double height) {
        return Math.min(UNIT, format.textHeight() / Math.max(1, height));
    }

    private void figure(Drawing drawing, double x, double unit) {
        beginFigure(drawing, x, unit);
        new DrawingPainter(flow.canvas(), typeface, x, flow.y(), unit).paint(drawing);
        endFigure();
    }

    private void beginFigure(Drawing drawing, double x, double unit) {
        structure.open("Figure");
        double top = format.height() - flow.y();
        String words = VisibleText.of(drawing.title() + ". " + drawing.description());
        structure.figure(words, x, top - drawing.height() * unit, x + drawing.width() * unit, top);
        structure.begin(flow.canvas());
    }

    private void endFigure() {
        flow.canvas().end();
        structure.close();
    }

    /** A drawing with figures to its right; below it where they are too many. */
    public void beside(Drawing drawing, List<Entry> entries) {
        double unit = fitting(drawing.height());
        double right = drawing.width() * unit + COLUMN_GAP;
        SideList list = new SideList(flow, structure, typeface, textWidth() - right);
        double height = Math.max(drawing.height() * unit, list.height(entries));
        if (height > format.textHeight() || textWidth() - right < SideList.NARROWEST) {
            figures(List.of(drawing));
            entries(entries);
            return;
        }
        flow.need(height);
        figure(drawing, PageFormat.SIDE, unit);
        double top = flow.y();
        list.write(entries, PageFormat.SIDE + right);
        flow.to(top + height + GAP);
    }

    /** Signs and what they mean, in running lines. */
    public void key(List<Drawing> signs) {
        structure.open("L");
        structure.numbering("None");
        flow.need(Type.SMALL.leading());
        double x = PageFormat.SIDE;
        for (Drawing sign : signs) {
            String words = VisibleText.of(sign.title());
            double wide = sign.width() * UNIT;
            double all = wide + 4 + typeface.width(words) * Type.SMALL.size();
            if (x + all > PageFormat.SIDE + textWidth() && x > PageFormat.SIDE) {
                x = PageFormat.SIDE;
                flow.advance(Type.SMALL.leading());
                flow.need(Type.SMALL.leading());
            }
            Canvas canvas = flow.canvas();
            canvas.beginDecoration();
            double middle = flow.y() + (Type.SMALL.leading() - sign.height() * UNIT) / 2;
            new DrawingPainter(canvas, typeface, x, middle, UNIT).paint(sign);
            canvas.end();
            structure.open("LI");
            structure.open("LBody");
            structure.begin(canvas);
            flow.line(words, Type.SMALL, x + wide + 4, flow.y());
            canvas.end();
            structure.close();
            structure.close();
            x += all + 16;
        }
        structure.close();
        flow.advance(Type.SMALL.leading() + GAP);
    }

    /**
     * A photograph with its caption at the right.
     *
     * @param share of the text's width
     * @throws IOException when it is no JPEG
     */
    public void picture(Picture picture, double share, String caption) throws IOException {
        Drawing over = picture.over();
        double wide = share * textWidth();
        double unit = Math.min(wide / over.width(), 0.8 * format.textHeight() / over.height());
        PDImageXObject image = JPEGFactory.createFromByteArray(document, picture.jpeg());
        String name = resources.add(image).getName();
        flow.need(over.height() * unit);
        beginFigure(over, PageFormat.SIDE, unit);
        double tall = over.height() * unit;
        flow.canvas().picture(name, PageFormat.SIDE, flow.y(), over.width() * unit, tall);
        new DrawingPainter(flow.canvas(), typeface, PageFormat.SIDE, flow.y(), unit).paint(over);
        endFigure();
        double top = flow.y();
        double x = PageFormat.SIDE + over.width() * unit + COLUMN_GAP;
        structure.open("P");
        flow.text(caption, Type.SMALL, x, PageFormat.SIDE + textWidth() - x, 40);
        structure.close();
        flow.to(top + tall + GAP);
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
        double room = textWidth() - right.width() * size - COLUMN_GAP;
        String line = typeface.wrap(left, size, room, 1).get(0);
        canvas.text(PageFormat.SIDE, y, typeface.show(line), size, quiet);
        canvas.end();
    }

    @Override
    public void close() throws IOException {
        document.close();
    }
}
