package org.printassay.raster;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.io.OutputStream;
import java.util.HashMap;
import java.util.Map;
import javax.imageio.ImageIO;
import org.printassay.chart.Chart;
import org.printassay.colour.Lab;
import org.printassay.colour.NearestCodes;
import org.printassay.colour.Rgb8;
import org.printassay.colour.RgbSpace;
import org.printassay.sheet.RectMm;
import org.printassay.sheet.Sheet;

/**
 * A picture of a whole page to look at on a screen: PNG, sRGB, labelled as what it is. Colours that
 * sRGB cannot hold are moved to its surface; nothing must be printed from it.
 */
public final class SheetPreview {
    private static final int DPI = 120;
    private static final int LARGEST_SIDE = 2400;
    private static final int LABEL_HEIGHT = 34;
    private static final int TYPE_SIZE = 15;
    private static final int BORDER = 12;
    private static final Color AROUND = new Color(0xe4e5e3);
    private static final Color WORDS = new Color(0x30353a);

    private SheetPreview() {}

    /** Writes the picture of one sheet; the stream is left open. */
    public static void write(Chart chart, Sheet sheet, OutputStream out) throws IOException {
        RectMm page = sheet.page();
        double longest = Math.max(page.width(), page.height()) / 25.4;
        int dpi = (int) Math.min(DPI, Math.floor(LARGEST_SIDE / longest));
        double perMm = dpi / 25.4;
        int width = (int) Math.ceil(page.width() * perMm);
        int height = (int) Math.ceil(page.height() * perMm);
        BufferedImage picture =
                new BufferedImage(
                        width + 2 * BORDER,
                        height + LABEL_HEIGHT + BORDER,
                        BufferedImage.TYPE_INT_RGB);
        Graphics2D graphics = picture.createGraphics();
        try {
            graphics.setColor(AROUND);
            graphics.fillRect(0, 0, picture.getWidth(), picture.getHeight());
            graphics.setColor(Color.WHITE);
            graphics.fillRect(BORDER, LABEL_HEIGHT, width, height);
            label(chart, sheet, graphics, picture.getWidth());
        } finally {
            graphics.dispose();
        }
        paste(
                SheetRaster.draw(sheet, dpi),
                chart.space(),
                picture,
                BORDER + (int) Math.round(sheet.printable().x() * perMm),
                LABEL_HEIGHT + (int) Math.round(sheet.printable().y() * perMm));
        ImageIO.write(picture, "png", out);
    }

    private static void label(Chart chart, Sheet sheet, Graphics2D graphics, int width)
            throws IOException {
        String text =
                "Preview of chart "
                        + chart.id()
                        + ", sheet "
                        + sheet.number()
                        + " of "
                        + chart.sheets().size()
                        + ". Not for printing.";
        TypeOutlines type = TypeOutlines.load();
        double size = Math.min(TYPE_SIZE, (width - 2.0 * BORDER) / type.width(text));
        graphics.setRenderingHint(
                RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        graphics.setColor(WORDS);
        graphics.fill(type.outline(text, BORDER, LABEL_HEIGHT - 12.0, size));
    }

    private static void paste(
            Canvas canvas, RgbSpace space, BufferedImage picture, int left, int top) {
        byte[] bytes = canvas.bytes();
        Map<Integer, Integer> shown = new HashMap<>();
        int width = Math.min(canvas.width(), picture.getWidth() - left);
        int height = Math.min(canvas.height(), picture.getHeight() - top);
        for (int y = 0; y < height; y++) {
            for (int x = 0; x < width; x++) {
                int at = 3 * (y * canvas.width() + x);
                int rgb =
                        ((bytes[at] & 255) << 16)
                                | ((bytes[at + 1] & 255) << 8)
                                | (bytes[at + 2] & 255);
                picture.setRGB(
                        left + x,
                        top + y,
                        shown.computeIfAbsent(rgb, code -> onScreen(space, code)));
            }
        }
    }

    private static int onScreen(RgbSpace space, int code) {
        if (space == RgbSpace.SRGB) {
            return code;
        }
        Lab lab = space.toLab(new Rgb8(code >> 16, (code >> 8) & 255, code & 255));
        Rgb8 rgb = NearestCodes.of(RgbSpace.SRGB, lab).rgb();
        return (rgb.r() << 16) | (rgb.g() << 8) | rgb.b();
    }
}
