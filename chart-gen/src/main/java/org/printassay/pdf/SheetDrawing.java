package org.printassay.pdf;

import java.io.IOException;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.nio.charset.StandardCharsets;
import java.util.HexFormat;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSBoolean;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSFloat;
import org.apache.pdfbox.cos.COSInteger;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDResources;
import org.apache.pdfbox.pdmodel.common.function.PDFunctionType2;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.graphics.color.PDICCBased;
import org.apache.pdfbox.pdmodel.graphics.shading.PDShadingType2;
import org.printassay.chart.CodeSymbol;
import org.printassay.colour.Rgb8;
import org.printassay.sheet.Artwork;
import org.printassay.sheet.Marker;
import org.printassay.sheet.MarkerPattern;
import org.printassay.sheet.Patch;
import org.printassay.sheet.PointMm;
import org.printassay.sheet.RectMm;
import org.printassay.sheet.Section;
import org.printassay.sheet.Sheet;

/**
 * The content stream of one page. Written here rather than through the library's page drawer so
 * that every colour operand has the decimals that give back its code exactly.
 */
final class SheetDrawing {
    private static final double POINTS_PER_MM = 72 / 25.4;
    private static final Rgb8 BLACK = Rgb8.grey(0);

    private final Sheet sheet;
    private final PDFont font;
    private final PDICCBased space;
    private final PDResources resources;
    private final StringBuilder out = new StringBuilder(1 << 16);
    private Rgb8 fill = Rgb8.grey(255);
    private int shadings;

    SheetDrawing(Sheet sheet, PDFont font, PDICCBased space, PDResources resources) {
        this.sheet = sheet;
        this.font = font;
        this.space = space;
        this.resources = resources;
    }

    byte[] bytes() throws IOException {
        out.append("/Chart cs /Chart CS 1 1 1 sc\n");
        for (Artwork thing : sheet.artwork()) {
            draw(thing);
        }
        for (Patch patch : sheet.patches()) {
            if (patch.section() != Section.PAPER) {
                fill(patch.rgb());
                rectangle(patch.area());
                out.append("f\n");
            }
        }
        fill(BLACK);
        for (Marker marker : sheet.markers()) {
            MarkerPattern pattern = MarkerPattern.of(marker.id());
            cells(marker.area(), MarkerPattern.CELLS, pattern::black);
        }
        CodeSymbol code = CodeSymbol.of(sheet.codeText());
        cells(sheet.code(), code.size(), code::dark);
        return out.toString().getBytes(StandardCharsets.US_ASCII);
    }

    private void draw(Artwork thing) throws IOException {
        if (thing instanceof Artwork.Field field) {
            fill(field.rgb());
            rectangle(field.area());
            out.append("f\n");
        } else if (thing instanceof Artwork.Vignette vignette) {
            shade(vignette);
        } else if (thing instanceof Artwork.SlantedSquare slanted) {
            slanted(slanted);
        } else if (thing instanceof Artwork.Disc disc) {
            disc(disc);
        } else if (thing instanceof Artwork.Text text) {
            text(text);
        } else if (thing instanceof Artwork.Rule rule) {
            operands(colour(rule.rgb())).append("SC ");
            operands(rule.widthMm() * POINTS_PER_MM).append("w ");
            point(rule.from()).append("m ");
            point(rule.to()).append("l S\n");
        }
    }

    private void fill(Rgb8 rgb) {
        if (!rgb.equals(fill)) {
            operands(colour(rgb)).append("sc\n");
            fill = rgb;
        }
    }

    private static double[] colour(Rgb8 rgb) {
        return new double[] {rgb.r() / 255.0, rgb.g() / 255.0, rgb.b() / 255.0};
    }

    private void rectangle(RectMm area) {
        operands(
                        x(area.x()),
                        y(area.bottom()),
                        area.width() * POINTS_PER_MM,
                        area.height() * POINTS_PER_MM)
                .append("re ");
    }

    /** Whether a cell of a square pattern is black. */
    @FunctionalInterface
    private interface Cells {
        boolean black(int column, int row);
    }

    /**
     * Fills black cells. Each row's runs reach down over the black cells below them, so that no
     * renderer leaves a hair between two rows.
     */
    private void cells(RectMm area, int count, Cells cells) {
        double step = area.width() / count;
        for (int row = 0; row < count; row++) {
            int column = 0;
            while (column < count) {
                int end = column;
                while (end < count && cells.black(end, row)) {
                    end++;
                }
                if (end > column) {
                    rectangle(
                            new RectMm(
                                    area.x() + column * step,
                                    area.y() + row * step,
                                    (end - column) * step,
                                    step));
                }
                column = end + 1;
            }
        }
        for (int column = 0; column < count; column++) {
            int row = 0;
            while (row < count) {
                int end = row;
                while (end < count && cells.black(column, end)) {
                    end++;
                }
                if (end > row + 1) {
                    rectangle(
                            new RectMm(
                                    area.x() + column * step,
                                    area.y() + row * step,
                                    step,
                                    (end - row) * step));
                }
                row = end + 1;
            }
        }
        out.append("f\n");
    }

    private void shade(Artwork.Vignette vignette) {
        RectMm area = vignette.area();
        COSDictionary dictionary = new COSDictionary();
        dictionary.setInt(COSName.FUNCTION_TYPE, 2);
        dictionary.setItem(COSName.DOMAIN, array(0, 1));
        double from = vignette.fromLevel() / 255;
        double to = vignette.toLevel() / 255;
        dictionary.setItem(COSName.C0, array(from, from, from));
        dictionary.setItem(COSName.C1, array(to, to, to));
        dictionary.setInt(COSName.N, 1);
        PDShadingType2 shading = new PDShadingType2(new COSDictionary());
        shading.setShadingType(2);
        shading.getCOSObject().setItem(COSName.COLORSPACE, space);
        shading.setCoords(array(x(area.x()), 0, x(area.right()), 0));
        shading.setFunction(new PDFunctionType2(dictionary));
        COSArray extend = new COSArray();
        extend.add(COSBoolean.TRUE);
        extend.add(COSBoolean.TRUE);
        shading.setExtend(extend);
        String name = "Shade" + ++shadings;
        resources.put(COSName.getPDFName(name), shading);
        out.append("q ");
        rectangle(area);
        out.append("W n /").append(name).append(" sh Q\n");
    }

    private static COSArray array(double... values) {
        COSArray array = new COSArray();
        for (double value : values) {
            array.add(
                    value == Math.rint(value)
                            ? COSInteger.get((long) value)
                            : new COSFloat((float) value));
        }
        return array;
    }

    private void slanted(Artwork.SlantedSquare slanted) {
        fill(slanted.light());
        rectangle(slanted.area());
        out.append("f\n");
        fill(slanted.dark());
        RectMm square = slanted.square();
        PointMm centre = square.centre();
        double angle = Math.toRadians(slanted.degrees());
        double[][] corners = {{-1, -1}, {1, -1}, {1, 1}, {-1, 1}};
        for (int i = 0; i < 4; i++) {
            double dx = corners[i][0] * square.width() / 2;
            double dy = corners[i][1] * square.height() / 2;
            point(
                            new PointMm(
                                    centre.x() + dx * Math.cos(angle) - dy * Math.sin(angle),
                                    centre.y() + dx * Math.sin(angle) + dy * Math.cos(angle)))
                    .append(i == 0 ? "m " : "l ");
        }
        out.append("h f\n");
    }

    /** A circle of four Bezier curves, off by less than 0.03 % of its radius. */
    private void disc(Artwork.Disc disc) {
        fill(disc.rgb());
        double k = disc.radius() * 0.5522847498;
        double r = disc.radius();
        double cx = disc.centre().x();
        double cy = disc.centre().y();
        point(new PointMm(cx + r, cy)).append("m ");
        curve(cx + r, cy + k, cx + k, cy + r, cx, cy + r);
        curve(cx - k, cy + r, cx - r, cy + k, cx - r, cy);
        curve(cx - r, cy - k, cx - k, cy - r, cx, cy - r);
        curve(cx + k, cy - r, cx + r, cy - k, cx + r, cy);
        out.append("h f\n");
    }

    private void curve(double x1, double y1, double x2, double y2, double x3, double y3) {
        point(new PointMm(x1, y1));
        point(new PointMm(x2, y2));
        point(new PointMm(x3, y3)).append("c ");
    }

    /** Text; bold is the same face with a hair's outline, so that one font serves. */
    private void text(Artwork.Text text) throws IOException {
        text.text().codePoints().forEach(font::addToSubset);
        double width = font.getStringWidth(text.text()) / 1000 * text.sizePt();
        double left = x(text.anchor().x()) - width * (text.align() + 1) / 2;
        fill(text.rgb());
        out.append("BT /Text ");
        operands(text.sizePt()).append("Tf ");
        if (text.bold()) {
            operands(colour(text.rgb())).append("SC ");
            operands(text.sizePt() * 0.03).append("w 2 Tr ");
        }
        operands(left, y(text.anchor().y())).append("Td <");
        out.append(HexFormat.of().formatHex(font.encode(text.text())));
        out.append("> Tj ").append(text.bold() ? "0 Tr " : "").append("ET\n");
    }

    private StringBuilder point(PointMm point) {
        return operands(x(point.x()), y(point.y()));
    }

    private static double x(double mm) {
        return mm * POINTS_PER_MM;
    }

    private double y(double mm) {
        return (sheet.page().height() - mm) * POINTS_PER_MM;
    }

    private StringBuilder operands(double... values) {
        for (double value : values) {
            out.append(
                            BigDecimal.valueOf(value)
                                    .setScale(6, RoundingMode.HALF_UP)
                                    .stripTrailingZeros()
                                    .toPlainString())
                    .append(' ');
        }
        return out;
    }
}
