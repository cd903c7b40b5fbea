package org.printassay.report.paged;

import java.nio.charset.StandardCharsets;
import java.util.HexFormat;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.pdmodel.PDPage;

/** What is painted on one page: its content stream in the making. */
final class Canvas {
    /** Name of the font in the resources that all pages share. */
    static final String FONT = "Text";

    /** Name of the state that paints thinly. */
    static final String THIN = "Thin";

    /** A quarter of a circle as a Bezier curve, off by less than 0.03 % of the radius. */
    private static final double QUARTER = 0.5522847498;

    private static final double STRONG_OUTLINE = 0.035;

    private final StringBuilder out = new StringBuilder(1 << 14);
    private final PDPage page;
    private final double height;
    private final int index;
    private final COSArray elements = new COSArray();
    private String fill = "";
    private String stroke = "";

    /** An empty page, counted from 0. */
    Canvas(PDPage page, double height, int index) {
        this.page = page;
        this.height = height;
        this.index = index;
    }

    PDPage page() {
        return page;
    }

    int index() {
        return index;
    }

    /** The element of each piece of tagged content, by its number. */
    COSArray elements() {
        return elements;
    }

    byte[] bytes() {
        return out.toString().getBytes(StandardCharsets.US_ASCII);
    }

    /** Begins content that belongs to an element of the structure. */
    void beginTagged(String type, int number) {
        out.append('/').append(type).append(" <</MCID ").append(number).append(">> BDC\n");
    }

    /** Begins content that tells nothing: lines, grounds. */
    void beginDecoration() {
        out.append("/Artifact BMC\n");
    }

    /** Begins what stands at the foot of every page. */
    void beginFooter() {
        out.append("/Artifact <</Type /Pagination /Subtype /Footer>> BDC\n");
    }

    /** Begins what is repeated at the top of a page, such as the head of a table. */
    void beginRepeated() {
        out.append("/Artifact <</Type /Pagination>> BDC\n");
    }

    /** Ends what was begun. */
    void end() {
        out.append("EMC\n");
    }

    /** A line of text, its baseline at y. */
    void text(double x, double y, Typeface.Shown shown, double size, String colour) {
        text(x, y, shown, size, colour, false);
    }

    /** A line of text; strong is the same face with a hair's outline, so that one font serves. */
    void text(
            double x, double y, Typeface.Shown shown, double size, String colour, boolean strong) {
        if (shown.codes().isEmpty()) {
            return;
        }
        if (shown.actual() != null) {
            byte[] actual = ("\ufeff" + shown.actual()).getBytes(StandardCharsets.UTF_16BE);
            out.append("/Span <</ActualText <").append(HexFormat.of().formatHex(actual));
            out.append(">>> BDC\n");
        }
        fill(colour);
        out.append("BT /").append(FONT).append(' ');
        number(size);
        out.append("Tf ");
        if (strong) {
            stroke(colour);
            number(size * STRONG_OUTLINE);
            out.append("w [] 0 d 2 Tr ");
        }
        point(x, y);
        out.append("Td <").append(shown.codes()).append("> Tj ");
        out.append(strong ? "0 Tr ET\n" : "ET\n");
        if (shown.actual() != null) {
            out.append("EMC\n");
        }
    }

    /** A filled rectangle. */
    void box(double x, double y, double width, double tall, String colour) {
        fill(colour);
        rectangle(x, y, width, tall);
        out.append("f\n");
    }

    /** A hairline from left to right. */
    void rule(double x, double y, double width, String colour) {
        stroke(colour);
        out.append("0.5 w [] 0 d ");
        point(x, y);
        out.append("m ");
        point(x + width, y);
        out.append("l S\n");
    }

    /** A picture of the resources. */
    void picture(String name, double x, double y, double width, double tall) {
        out.append("q ");
        number(width);
        out.append("0 0 ");
        number(tall);
        point(x, y + tall);
        out.append("cm /").append(name).append(" Do Q\n");
    }

    /** Begins to paint thinly; {@link #restore} ends it. */
    void thin() {
        out.append("q /").append(THIN).append(" gs\n");
    }

    /** Ends what {@link #thin} began. */
    void restore() {
        out.append("Q\n");
        fill = "";
        stroke = "";
    }

    void fill(String colour) {
        if (!colour.equals(fill)) {
            channels(colour);
            out.append("rg ");
            fill = colour;
        }
    }

    void stroke(String colour) {
        if (!colour.equals(stroke)) {
            channels(colour);
            out.append("RG ");
            stroke = colour;
        }
    }

    /** Width of lines, and the lengths of dashes and gaps between them. */
    void pen(double width, boolean round, double... dashes) {
        number(width);
        out.append("w ").append(round ? "1 J [" : "0 J [");
        for (double dash : dashes) {
            number(dash);
        }
        out.append("] 0 d ");
    }

    void move(double x, double y) {
        point(x, y);
        out.append("m ");
    }

    void lineTo(double x, double y) {
        point(x, y);
        out.append("l ");
    }

    void rectangle(double x, double y, double width, double tall) {
        point(x, y + tall);
        number(width);
        number(tall);
        out.append("re ");
    }

    void circle(double x, double y, double r) {
        double k = QUARTER * r;
        move(x + r, y);
        curve(x + r, y + k, x + k, y + r, x, y + r);
        curve(x - k, y + r, x - r, y + k, x - r, y);
        curve(x - r, y - k, x - k, y - r, x, y - r);
        curve(x + k, y - r, x + r, y - k, x + r, y);
        out.append("h ");
    }

    private void curve(double x1, double y1, double x2, double y2, double x3, double y3) {
        point(x1, y1);
        point(x2, y2);
        point(x3, y3);
        out.append("c ");
    }

    /** Ends a path: closed or not, filled, stroked or both. */
    void paint(boolean closed, boolean filled, boolean stroked) {
        out.append(closed ? "h " : "");
        out.append(filled ? (stroked ? "B\n" : "f\n") : stroked ? "S\n" : "n\n");
    }

    private void channels(String colour) {
        for (int i = 1; i < 7; i += 2) {
            number(Integer.parseInt(colour, i, i + 2, 16) / 255.0);
        }
    }

    private void point(double x, double y) {
        number(x);
        number(height - y);
    }

    /** Three decimals: below anything a printer shows. */
    private void number(double value) {
        long thousandths = Math.round(value * 1000);
        if (thousandths < 0) {
            out.append('-');
            thousandths = -thousandths;
        }
        out.append(thousandths / 1000);
        long rest = thousandths % 1000;
        if (rest != 0) {
            out.append('.');
            out.append((char) ('0' + rest / 100));
            if (rest % 100 != 0) {
                out.append((char) ('0' + rest / 10 % 10));
                if (rest % 10 != 0) {
                    out.append((char) ('0' + rest % 10));
                }
            }
        }
        out.append(' ');
    }
}
