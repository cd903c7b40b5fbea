package org.printassay.report;

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
import org.printassay.report.draw.SvgWriter;

/** A scan as a picture inside the page, with outlines where patches and markers were found. */
final class ScanFigure {
    private static final float QUALITY = 0.82f;

    private ScanFigure() {}

    static Html of(ScanPreview scan, String id) throws IOException {
        int width = scan.image().getWidth();
        int height = scan.image().getHeight();
        String title =
                scan.patchOutlines().size()
                        + " patches and "
                        + scan.markers().size()
                        + " markers outlined in "
                        + scan.file();
        StringBuilder out = new StringBuilder();
        out.append("<svg class=\"scan\" viewBox=\"0 0 ").append(width).append(' ').append(height);
        out.append("\" role=\"img\" aria-labelledby=\"").append(id).append("\"><title id=\"");
        out.append(id).append("\">").append(SvgWriter.escape(title)).append("</title>");
        out.append("<image width=\"").append(width).append("\" height=\"").append(height);
        out.append("\" href=\"data:image/jpeg;base64,");
        out.append(Base64.getEncoder().encodeToString(jpeg(scan.image()))).append("\"/>");
        outlines(out, scan.patchOutlines(), "found-under");
        outlines(out, scan.patchOutlines(), "found");
        outlines(out, scan.markers(), "found-marker");
        return new Html(out.append("</svg>").toString());
    }

    private static void outlines(StringBuilder out, List<List<Point2D>> shapes, String cssClass) {
        if (shapes.isEmpty()) {
            return;
        }
        out.append("<path class=\"").append(cssClass).append("\" d=\"");
        for (List<Point2D> shape : shapes) {
            char command = 'M';
            for (Point2D p : shape) {
                out.append(command).append(tenth(p.getX())).append(' ').append(tenth(p.getY()));
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
