package org.printassay.report;

import gg.jte.Content;
import gg.jte.TemplateOutput;
import java.awt.Graphics2D;
import java.awt.geom.Point2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.Base64;
import java.util.Iterator;
import java.util.List;
import javax.imageio.IIOImage;
import javax.imageio.ImageIO;
import javax.imageio.ImageWriteParam;
import javax.imageio.ImageWriter;
import javax.imageio.stream.MemoryCacheImageOutputStream;
import org.printassay.report.draw.Drawing;
import org.printassay.report.draw.Ink;
import org.printassay.report.draw.Mark;
import org.printassay.report.draw.SvgWriter;
import org.printassay.report.paged.Picture;

/**
 * A scan as a picture, with outlines where patches and markers were found, and crosses over what is
 * doubtful.
 */
public final class ScanFigure implements Content {
    private static final float QUALITY = 0.82f;

    private final ScanPreview scan;
    private final String id;
    private final byte[] jpeg;

    private ScanFigure(ScanPreview scan, String id, byte[] jpeg) {
        this.scan = scan;
        this.id = id;
        this.jpeg = jpeg;
    }

    /**
     * The figure of a scan.
     *
     * @param id unique in the page
     * @throws IOException when the picture cannot be encoded
     */
    static ScanFigure of(ScanPreview scan, String id) throws IOException {
        return new ScanFigure(scan, id, jpeg(scan.image()));
    }

    private String title() {
        return scan.patchOutlines().size()
                + " patches and "
                + scan.markers().size()
                + " markers outlined in "
                + scan.file()
                + (scan.doubtful().isEmpty()
                        ? ""
                        : ", " + scan.doubtful().size() + " doubtful ones crossed");
    }

    @Override
    public void writeTo(TemplateOutput output) {
        int width = scan.image().getWidth();
        int height = scan.image().getHeight();
        StringBuilder out = new StringBuilder();
        out.append("<svg class=\"scan\" viewBox=\"0 0 ").append(width).append(' ').append(height);
        out.append("\" role=\"img\" aria-labelledby=\"").append(id).append("\"><title id=\"");
        out.append(id).append("\">").append(SvgWriter.escape(title())).append("</title>");
        out.append("<image width=\"").append(width).append("\" height=\"").append(height);
        out.append("\" href=\"data:image/jpeg;base64,");
        out.append(Base64.getEncoder().encodeToString(jpeg)).append("\"/>");
        outlines(out, scan.patchOutlines(), "found-under");
        outlines(out, scan.patchOutlines(), "found");
        crosses(out, scan.doubtful(), "found-under");
        crosses(out, scan.doubtful(), "found");
        outlines(out, scan.markers(), "found-marker");
        output.writeContent(out.append("</svg>").toString());
    }

    /** The same for paper. */
    Picture picture() {
        Drawing over =
                new Drawing(
                        "Scan", title() + ".", scan.image().getWidth(), scan.image().getHeight());
        outlines(over, scan.patchOutlines(), Ink.FOUND_UNDER);
        outlines(over, scan.patchOutlines(), Ink.FOUND);
        crosses(over, scan.doubtful(), Ink.FOUND_UNDER);
        crosses(over, scan.doubtful(), Ink.FOUND);
        outlines(over, scan.markers(), Ink.FOUND_MARKER);
        return new Picture(jpeg, over);
    }

    private static void outlines(Drawing over, List<List<Point2D>> shapes, Ink ink) {
        for (List<Point2D> shape : shapes) {
            over.area(shape.stream().map(p -> new Mark.Point(p.getX(), p.getY())).toList(), ink);
        }
    }

    private static void crosses(Drawing over, List<List<Point2D>> shapes, Ink ink) {
        for (List<Point2D> shape : shapes) {
            for (int from = 0; from < 2; from++) {
                Point2D one = shape.get(from);
                Point2D other = shape.get(from + 2);
                over.line(one.getX(), one.getY(), other.getX(), other.getY(), ink);
            }
        }
    }

    private static void crosses(StringBuilder out, List<List<Point2D>> shapes, String cssClass) {
        if (shapes.isEmpty()) {
            return;
        }
        out.append("<path class=\"").append(cssClass).append("\" d=\"");
        for (List<Point2D> shape : shapes) {
            for (int from = 0; from < 2; from++) {
                place(out, 'M', shape.get(from));
                place(out, 'L', shape.get(from + 2));
            }
        }
        out.append("\"/>");
    }

    private static void place(StringBuilder out, char command, Point2D p) {
        out.append(command).append(tenth(p.getX())).append(' ').append(tenth(p.getY()));
    }

    private static void outlines(StringBuilder out, List<List<Point2D>> shapes, String cssClass) {
        if (shapes.isEmpty()) {
            return;
        }
        out.append("<path class=\"").append(cssClass).append("\" d=\"");
        for (List<Point2D> shape : shapes) {
            char command = 'M';
            for (Point2D p : shape) {
                place(out, command, p);
                command = 'L';
            }
            out.append('Z');
        }
        out.append("\"/>");
    }

    private static String tenth(double value) {
        return SvgWriter.number(Math.round(value * 10) / 10.0);
    }

    private static byte[] jpeg(BufferedImage image) throws IOException {
        BufferedImage rgb = image;
        if (image.getType() != BufferedImage.TYPE_INT_RGB) {
            rgb =
                    new BufferedImage(
                            image.getWidth(), image.getHeight(), BufferedImage.TYPE_INT_RGB);
            Graphics2D g = rgb.createGraphics();
            g.drawImage(image, 0, 0, null);
            g.dispose();
        }
        Iterator<ImageWriter> writers = ImageIO.getImageWritersByFormatName("jpeg");
        ImageWriter writer = writers.next();
        try {
            ByteArrayOutputStream bytes = new ByteArrayOutputStream();
            ImageWriteParam how = writer.getDefaultWriteParam();
            how.setCompressionMode(ImageWriteParam.MODE_EXPLICIT);
            how.setCompressionQuality(QUALITY);
            try (MemoryCacheImageOutputStream out = new MemoryCacheImageOutputStream(bytes)) {
                writer.setOutput(out);
                writer.write(null, new IIOImage(rgb, null, null), how);
            }
            return bytes.toByteArray();
        } finally {
            writer.dispose();
        }
    }
}
