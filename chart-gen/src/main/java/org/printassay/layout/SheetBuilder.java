package org.printassay.layout;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.printassay.colour.Rgb8;
import org.printassay.sheet.Artwork;
import org.printassay.sheet.Marker;
import org.printassay.sheet.Patch;
import org.printassay.sheet.PointMm;
import org.printassay.sheet.RectMm;
import org.printassay.sheet.Section;
import org.printassay.sheet.Sheet;

/**
 * Collects what stands on one sheet. Takes dots of 1/300 inch from the top left corner of the
 * content and gives millimetres on the page; the only place that converts. Mutable, used by one
 * thread.
 */
final class SheetBuilder {
    private final int number;
    private final RectMm page;
    private final RectMm printable;
    private final int left;
    private final Captions captions;
    private final List<Patch> patches = new ArrayList<>();
    private final List<Marker> markers = new ArrayList<>();
    private final List<Artwork> artwork = new ArrayList<>();
    private RectMm code = new RectMm(0, 0, 0, 0);
    private int windows;

    /**
     * @param left where the content begins, dots to the right of the printable area's edge
     */
    SheetBuilder(int number, RectMm page, RectMm printable, int left) {
        this(number, page, printable, left, Captions.latest());
    }

    /** With the words of a layout version. */
    SheetBuilder(int number, RectMm page, RectMm printable, int left, Captions captions) {
        this.captions = captions;
        this.number = number;
        this.page = page;
        this.printable = printable;
        this.left = left;
    }

    Captions captions() {
        return captions;
    }

    int number() {
        return number;
    }

    RectMm rect(double x, double y, double width, double height) {
        PointMm corner = point(x, y);
        return new RectMm(corner.x(), corner.y(), SheetLayout.mm(width), SheetLayout.mm(height));
    }

    PointMm point(double x, double y) {
        return new PointMm(
                printable.x() + SheetLayout.mm(left + x), printable.y() + SheetLayout.mm(y));
    }

    void patch(Ink ink, int x, int y, int width, int height) {
        patches.add(new Patch(ink.id(), ink.section(), ink.rgb(), rect(x, y, width, height)));
    }

    /** An unprinted window. */
    void window(int x, int y, int width, int height) {
        windows++;
        String id = PaperContent.two("P" + number, windows);
        patch(new Ink(id, Section.PAPER, Rgb8.grey(255)), x, y, width, height);
    }

    /** The next marker of the sheet, its black square's top left corner given. */
    void marker(int x, int y) {
        int id = SheetLayout.markerId(number, markers.size());
        markers.add(new Marker(id, rect(x, y, SheetLayout.MARKER_PX, SheetLayout.MARKER_PX)));
    }

    void code(int x, int y) {
        code = rect(x, y, SheetLayout.CODE_PX, SheetLayout.CODE_PX);
    }

    void draw(Artwork thing) {
        artwork.add(thing);
    }

    void text(double x, double y, String text, double sizePt, boolean bold, int align, int level) {
        draw(new Artwork.Text(point(x, y), text, sizePt, bold, align, Rgb8.grey(level)));
    }

    void rule(double x1, double y1, double x2, double y2, double widthMm, int level) {
        draw(new Artwork.Rule(point(x1, y1), point(x2, y2), widthMm, Rgb8.grey(level)));
    }

    /** The patches so far. */
    List<Patch> patches() {
        return List.copyOf(patches);
    }

    /** Left and top of the content on the page. */
    PointMm origin() {
        return point(0, 0);
    }

    Sheet build(String codeText) {
        List<Patch> inOrder = new ArrayList<>(patches);
        inOrder.sort(
                Comparator.comparingDouble((Patch patch) -> patch.area().y())
                        .thenComparingDouble(patch -> patch.area().x()));
        return new Sheet(number, page, printable, inOrder, markers, code, codeText, artwork);
    }
}
