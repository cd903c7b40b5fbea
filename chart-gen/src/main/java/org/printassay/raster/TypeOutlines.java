package org.printassay.raster;

import java.awt.Shape;
import java.awt.geom.AffineTransform;
import java.awt.geom.Path2D;
import java.io.IOException;
import java.io.InputStream;
import java.util.Objects;
import org.apache.fontbox.ttf.CmapLookup;
import org.apache.fontbox.ttf.GlyphData;
import org.apache.fontbox.ttf.TTFParser;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.apache.pdfbox.io.RandomAccessReadBuffer;

/** Outlines of text in the typeface that the PDF embeds. */
final class TypeOutlines {
    private static final String TYPEFACE =
            "/org/apache/pdfbox/resources/ttf/LiberationSans-Regular.ttf";

    private final TrueTypeFont font;
    private final CmapLookup glyphs;

    private TypeOutlines(TrueTypeFont font) throws IOException {
        this.font = font;
        this.glyphs = font.getUnicodeCmapLookup();
    }

    static TypeOutlines load() throws IOException {
        try (InputStream in =
                Objects.requireNonNull(TrueTypeFont.class.getResourceAsStream(TYPEFACE))) {
            return new TypeOutlines(new TTFParser().parse(new RandomAccessReadBuffer(in)));
        }
    }

    /** Width of a line of text in units of its size. */
    double width(String text) throws IOException {
        double units = 0;
        for (int c : text.codePoints().toArray()) {
            units += font.getAdvanceWidth(glyphs.getGlyphId(c));
        }
        return units / font.getUnitsPerEm();
    }

    /** Outline of a line of text, its baseline beginning at x, y; size in pixels, y down. */
    Shape outline(String text, double x, double y, double size) throws IOException {
        Path2D path = new Path2D.Double(Path2D.WIND_NON_ZERO);
        double scale = size / font.getUnitsPerEm();
        double at = x;
        for (int c : text.codePoints().toArray()) {
            int glyph = glyphs.getGlyphId(c);
            GlyphData data = font.getGlyph().getGlyph(glyph);
            if (data != null) {
                AffineTransform place = new AffineTransform(scale, 0, 0, -scale, at, y);
                path.append(place.createTransformedShape(data.getPath()), false);
            }
            at += font.getAdvanceWidth(glyph) * scale;
        }
        return path;
    }
}
