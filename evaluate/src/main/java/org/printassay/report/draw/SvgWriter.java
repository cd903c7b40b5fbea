package org.printassay.report.draw;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import java.util.Locale;

/** Drawings as inline SVG. Every text is escaped; colours come from the page's style sheet. */
public final class SvgWriter {
    private SvgWriter() {}

    /**
     * The SVG element.
     *
     * @param id unique in the page, letters, digits and hyphens
     * @param cssClass classes of the element
     */
    public static String write(Drawing drawing, String id, String cssClass) {
        StringBuilder out = new StringBuilder(8192);
        out.append("<svg class=\"").append(cssClass).append("\" viewBox=\"0 0 ");
        out.append(number(drawing.width())).append(' ').append(number(drawing.height()));
        out.append("\" role=\"img\" aria-labelledby=\"").append(id).append("-t ").append(id);
        out.append("-d\"><title id=\"").append(id).append("-t\">").append(escape(drawing.title()));
        out.append("</title><desc id=\"").append(id).append("-d\">");
        out.append(escape(drawing.description())).append("</desc>\n");
        for (Mark mark : drawing.marks()) {
            write(out, mark);
        }
        return out.append("</svg>").toString();
    }

    /** The SVG element of a sign that the words beside it explain. */
    public static String writeHidden(Drawing drawing, String cssClass) {
        StringBuilder out = new StringBuilder(256);
        out.append("<svg class=\"").append(cssClass).append("\" viewBox=\"0 0 ");
        out.append(number(drawing.width())).append(' ').append(number(drawing.height()));
        out.append("\" aria-hidden=\"true\">");
        for (Mark mark : drawing.marks()) {
            write(out, mark);
        }
        return out.append("</svg>").toString();
    }

    private static void write(StringBuilder out, Mark mark) {
        if (mark instanceof Mark.Line line) {
            out.append("<line");
            attribute(out, "x1", line.x1());
            attribute(out, "y1", line.y1());
            attribute(out, "x2", line.x2());
            attribute(out, "y2", line.y2());
            end(out, line.ink());
        } else if (mark instanceof Mark.Path path) {
            out.append(path.closed() ? "<polygon points=\"" : "<polyline points=\"");
            points(out, path.points());
            out.append('"');
            end(out, path.ink());
        } else if (mark instanceof Mark.Box box) {
            out.append("<rect");
            attribute(out, "x", box.x());
            attribute(out, "y", box.y());
            attribute(out, "width", box.width());
            attribute(out, "height", box.height());
            if (box.fill() == null) {
                end(out, box.ink());
            } else {
                out.append(" fill=\"").append(box.fill());
                // Neighbouring colours must not show a seam.
                out.append("\" shape-rendering=\"crispEdges\"/>\n");
            }
        } else if (mark instanceof Mark.Disc disc) {
            out.append("<circle");
            attribute(out, "cx", disc.x());
            attribute(out, "cy", disc.y());
            attribute(out, "r", disc.radius());
            if (disc.fill() != null) {
                out.append(" fill=\"").append(disc.fill()).append('"');
            }
            end(out, disc.ink());
        } else if (mark instanceof Mark.Label label) {
            out.append("<text");
            attribute(out, "x", label.x());
            attribute(out, "y", label.y());
            if (label.anchor() != Mark.Anchor.START) {
                out.append(" text-anchor=\"");
                out.append(label.anchor().name().toLowerCase(Locale.ROOT)).append('"');
            }
            out.append(" class=\"").append(label.ink().cssClass()).append("\">");
            out.append(escape(label.text())).append("</text>\n");
        }
    }

    private static void points(StringBuilder out, List<Mark.Point> points) {
        for (int i = 0; i < points.size(); i++) {
            out.append(i == 0 ? "" : " ").append(number(points.get(i).x()));
            out.append(',').append(number(points.get(i).y()));
        }
    }

    private static void attribute(StringBuilder out, String name, double value) {
        out.append(' ').append(name).append("=\"").append(number(value)).append('"');
    }

    private static void end(StringBuilder out, Ink ink) {
        out.append(" class=\"").append(ink.cssClass()).append("\"/>\n");
    }

    /** At most two decimals: below anything a screen or printer shows. */
    public static String number(double value) {
        BigDecimal rounded = BigDecimal.valueOf(value).setScale(2, RoundingMode.HALF_EVEN);
        return rounded.signum() == 0 ? "0" : rounded.stripTrailingZeros().toPlainString();
    }

    /** Text fit for an element or a quoted attribute. */
    public static String escape(String text) {
        StringBuilder out = new StringBuilder(text.length() + 16);
        text.codePoints()
                .forEach(
                        c -> {
                            switch (c) {
                                case '<' -> out.append("&lt;");
                                case '>' -> out.append("&gt;");
                                case '&' -> out.append("&amp;");
                                case '"' -> out.append("&#34;");
                                case '\'' -> out.append("&#39;");
                                default -> out.appendCodePoint(Character.isISOControl(c) ? ' ' : c);
                            }
                        });
        return out.toString();
    }
}
