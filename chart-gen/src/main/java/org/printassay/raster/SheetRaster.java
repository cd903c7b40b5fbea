package org.printassay.raster;

import java.awt.BasicStroke;
import java.awt.geom.AffineTransform;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.io.IOException;
import org.printassay.chart.CodeSymbol;
import org.printassay.colour.Rgb8;
import org.printassay.sheet.Artwork;
import org.printassay.sheet.Marker;
import org.printassay.sheet.MarkerPattern;
import org.printassay.sheet.Patch;
import org.printassay.sheet.RectMm;
import org.printassay.sheet.Section;
import org.printassay.sheet.Sheet;

/** Draws the printable part of a sheet. */
final class SheetRaster {
    private static final double MM_PER_INCH = 25.4;
    private static final double POINTS_PER_INCH = 72;

    private final Sheet sheet;
    private final int dpi;
    private final Canvas canvas;

    private SheetRaster(Sheet sheet, int dpi) {
        this.sheet = sheet;
        this.dpi = dpi;
        this.canvas =
                new Canvas(
                        (int) Math.round(sheet.printable().width() * dpi / MM_PER_INCH),
                        (int) Math.round(sheet.printable().height() * dpi / MM_PER_INCH));
    }

    static Canvas draw(Sheet sheet, int dpi) throws IOException {
        return new SheetRaster(sheet, dpi).draw();
    }

    private Canvas draw() throws IOException {
        TypeOutlines type = TypeOutlines.load();
        for (Artwork thing : sheet.artwork()) {
            draw(thing, type);
        }
        for (Patch patch : sheet.patches()) {
            if (patch.section() != Section.PAPER) {
                flat(patch.area(), patch.rgb());
            }
        }
        for (Marker marker : sheet.markers()) {
            MarkerPattern pattern = MarkerPattern.of(marker.id());
            cells(marker.area(), MarkerPattern.CELLS, pattern::black);
        }
        CodeSymbol code = CodeSymbol.of(sheet.codeText());
        cells(sheet.code(), code.size(), code::dark);
        return canvas;
    }

    private double x(double mm) {
        return (mm - sheet.printable().x()) * dpi / MM_PER_INCH;
    }

    private double y(double mm) {
        return (mm - sheet.printable().y()) * dpi / MM_PER_INCH;
    }

    private void flat(RectMm area, Rgb8 rgb) {
        canvas.rectangle(x(area.x()), y(area.y()), x(area.right()), y(area.bottom()), rgb);
    }

    /** Whether a cell of a square pattern is black. */
    @FunctionalInterface
    private interface Cells {
        boolean black(int column, int row);
    }

    private void cells(RectMm area, int count, Cells cells) {
        double step = area.width() / count;
        for (int row = 0; row < count; row++) {
            for (int column = 0; column < count; column++) {
                if (cells.black(column, row)) {
                    flat(
                            new RectMm(area.x() + column * step, area.y() + row * step, step, step),
                            Rgb8.grey(0));
                }
            }
        }
    }

    private void draw(Artwork thing, TypeOutlines type) throws IOException {
        if (thing instanceof Artwork.Field field) {
            flat(field.area(), field.rgb());
        } else if (thing instanceof Artwork.Vignette vignette) {
            vignette(vignette);
        } else if (thing instanceof Artwork.SlantedSquare slanted) {
            flat(slanted.area(), slanted.light());
            RectMm square = slanted.square();
            AffineTransform turn =
                    AffineTransform.getRotateInstance(
                            Math.toRadians(slanted.degrees()),
                            x(square.centre().x()),
                            y(square.centre().y()));
            canvas.fill(turn.createTransformedShape(shape(square)), slanted.dark());
        } else if (thing instanceof Artwork.Disc disc) {
            double r = disc.radius() * dpi / MM_PER_INCH;
            canvas.fill(
                    new Ellipse2D.Double(
                            x(disc.centre().x()) - r, y(disc.centre().y()) - r, 2 * r, 2 * r),
                    disc.rgb());
        } else if (thing instanceof Artwork.Text text) {
            double size = text.sizePt() * dpi / POINTS_PER_INCH;
            double left =
                    x(text.anchor().x()) - type.width(text.text()) * size * (text.align() + 1) / 2;
            double base = y(text.anchor().y());
            canvas.fill(type.outline(text.text(), left, base, size), text.rgb());
            if (text.bold()) {
                // The PDF's bold is the same face with a hair's outline.
                double hair = size * 0.03;
                canvas.fill(type.outline(text.text(), left + hair, base, size), text.rgb());
            }
        } else if (thing instanceof Artwork.Rule rule && isSlanted(rule)) {
            float stroke = (float) (rule.widthMm() * dpi / MM_PER_INCH);
            Line2D line =
                    new Line2D.Double(
                            x(rule.from().x()),
                            y(rule.from().y()),
                            x(rule.to().x()),
                            y(rule.to().y()));
            canvas.fill(new BasicStroke(stroke).createStrokedShape(line), rule.rgb());
        } else if (thing instanceof Artwork.Rule rule) {
            double half = rule.widthMm() / 2;
            canvas.fill(
                    shape(
                            new RectMm(
                                    Math.min(rule.from().x(), rule.to().x()) - across(rule, half),
                                    Math.min(rule.from().y(), rule.to().y()) - down(rule, half),
                                    Math.abs(rule.to().x() - rule.from().x())
                                            + 2 * across(rule, half),
                                    Math.abs(rule.to().y() - rule.from().y())
                                            + 2 * down(rule, half))),
                    rule.rgb());
        }
    }

    private static boolean isSlanted(Artwork.Rule rule) {
        return rule.from().x() != rule.to().x() && rule.from().y() != rule.to().y();
    }

    /** The width of a level or upright line goes to the other side. */
    private static double across(Artwork.Rule rule, double half) {
        return rule.from().x() == rule.to().x() ? half : 0;
    }

    private static double down(Artwork.Rule rule, double half) {
        return rule.from().x() == rule.to().x() ? 0 : half;
    }

    private Rectangle2D shape(RectMm area) {
        return new Rectangle2D.Double(
                x(area.x()),
                y(area.y()),
                area.width() * dpi / MM_PER_INCH,
                area.height() * dpi / MM_PER_INCH);
    }

    /** Every column the nearest level. */
    private void vignette(Artwork.Vignette vignette) {
        RectMm area = vignette.area();
        int from = (int) Math.round(x(area.x()));
        int to = (int) Math.round(x(area.right()));
        for (int column = from; column < to; column++) {
            double share = (column + 0.5 - from) / (to - from);
            double level =
                    vignette.fromLevel() + share * (vignette.toLevel() - vignette.fromLevel());
            canvas.rectangle(
                    column,
                    y(area.y()),
                    column + 1,
                    y(area.bottom()),
                    Rgb8.grey((int) Math.round(level)));
        }
    }
}
