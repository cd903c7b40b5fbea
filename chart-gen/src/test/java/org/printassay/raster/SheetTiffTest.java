package org.printassay.raster;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.awt.geom.AffineTransform;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.printassay.chart.Chart;
import org.printassay.chart.Charts;
import org.printassay.colour.Rgb8;
import org.printassay.colour.RgbSpace;
import org.printassay.recipe.Margins;
import org.printassay.recipe.PageSize;
import org.printassay.recipe.Recipe;
import org.printassay.sheet.Patch;
import org.printassay.sheet.Sheet;

class SheetTiffTest {
    private static Sheet sheet() throws Exception {
        Chart chart =
                Charts.create(Recipe.paper(PageSize.parse("A4"), Margins.all(10), RgbSpace.SRGB));
        return chart.sheets().get(0);
    }

    private static byte[] tiff(Sheet sheet) throws Exception {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        SheetTiff.write(sheet, RgbSpace.SRGB, 300, out);
        return out.toByteArray();
    }

    /** The JDK's TIFF reader is the independent reader here. */
    @Test
    void everyPatchIsWholePixelsOfItsExactCode() throws Exception {
        Sheet sheet = sheet();
        BufferedImage image = ImageIO.read(new ByteArrayInputStream(tiff(sheet)));
        assertEquals(Math.round(sheet.printable().width() * 300 / 25.4), image.getWidth());
        for (Patch patch : sheet.patches()) {
            double left = (patch.area().x() - sheet.printable().x()) * 300 / 25.4;
            double top = (patch.area().y() - sheet.printable().y()) * 300 / 25.4;
            double right = left + patch.area().width() * 300 / 25.4;
            double bottom = top + patch.area().height() * 300 / 25.4;
            assertEquals(Math.rint(left), left, 1e-6, patch.id());
            assertEquals(Math.rint(top), top, 1e-6, patch.id());
            int x0 = (int) Math.round(left);
            int y0 = (int) Math.round(top);
            int x1 = (int) Math.round(right) - 1;
            int y1 = (int) Math.round(bottom) - 1;
            for (int[] at : new int[][] {{x0, y0}, {x1, y0}, {x0, y1}, {x1, y1}}) {
                int rgb = image.getRaster().getSample(at[0], at[1], 0);
                assertEquals(patch.rgb().r(), rgb, patch.id());
                assertEquals(
                        patch.rgb().g(), image.getRaster().getSample(at[0], at[1], 1), patch.id());
                assertEquals(
                        patch.rgb().b(), image.getRaster().getSample(at[0], at[1], 2), patch.id());
            }
        }
    }

    @Test
    void sameSheetSameBytes() throws Exception {
        Sheet sheet = sheet();
        assertArrayEquals(tiff(sheet), tiff(sheet));
    }

    /** Covered area is what geometry says: a turned rectangle keeps its area. */
    @Test
    void coverageAddsUpToTheArea() {
        Canvas canvas = new Canvas(100, 100);
        AffineTransform turn = AffineTransform.getRotateInstance(Math.toRadians(5), 50, 50);
        canvas.fill(
                turn.createTransformedShape(new Rectangle2D.Double(20.3, 25.7, 60, 50)),
                Rgb8.grey(0));
        double dark = 0;
        for (int i = 0; i < canvas.bytes().length; i += 3) {
            dark += (255 - (canvas.bytes()[i] & 0xff)) / 255.0;
        }
        assertEquals(3000, dark, 1);
    }
}
