package org.printassay.scan;

import java.awt.geom.Point2D;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * Strips in which office scanners write one image: as wide, one below the other without gap or
 * overlap, at one scale. They may be drawn in any order and turned together.
 *
 * @param strips from the top
 * @param acrossPt width as drawn, points
 * @param downPt height as drawn, points
 */
record PdfStack(List<Strip> strips, double acrossPt, double downPt) {
    /** Coordinates may be rounded to whole points. */
    private static final double ROUNDED_PT = 1.2;

    /** Samples are as long as wide but for this share: a row that is lost every hundred shows. */
    private static final double SQUARE = 0.007;

    /** One of them, and where it lies: along the rows and down from the first one's corner. */
    record Strip(
            PdfDrawing.Drawn drawn,
            PdfImage image,
            double left,
            double right,
            double top,
            double bottom) {}

    /**
     * The stack that images make up; of no strips when they do not.
     *
     * @param drawn at least one
     * @param images what their dictionaries tell, in the same order
     */
    static PdfStack of(List<PdfDrawing.Drawn> drawn, List<PdfImage> images) {
        Point2D corner = drawn.get(0).corner(0, 1);
        Point2D along = direction(corner, drawn.get(0).corner(1, 1));
        Point2D down = direction(corner, drawn.get(0).corner(0, 0));
        List<Strip> strips = new ArrayList<>();
        long rows = 0;
        for (int i = 0; i < images.size(); i++) {
            PdfDrawing.Drawn one = drawn.get(i);
            strips.add(
                    new Strip(
                            one,
                            images.get(i),
                            along(along, corner, one.corner(0, 1)),
                            along(along, corner, one.corner(1, 1)),
                            along(down, corner, one.corner(0, 1)),
                            along(down, corner, one.corner(1, 0))));
            rows += images.get(i).height();
        }
        strips.sort(Comparator.comparingDouble(Strip::top));
        Strip first = strips.get(0);
        double across = first.right - first.left;
        double height = strips.get(strips.size() - 1).bottom - first.top;
        PdfStack stack = new PdfStack(List.copyOf(strips), across, height);
        return stack.fits(rows) ? stack : new PdfStack(List.of(), across, height);
    }

    private boolean fits(long rows) {
        Strip first = strips.get(0);
        double row = downPt / rows;
        double square = acrossPt / first.image.width();
        if (strips.size() > 1 && !(Math.abs(row - square) <= SQUARE * square + ROUNDED_PT / rows)) {
            return false;
        }
        long above = 0;
        for (Strip strip : strips) {
            long below = above + strip.image.height();
            boolean there =
                    strip.image.continues(first.image)
                            && near(strip.left, first.left)
                            && near(strip.right, first.right)
                            && near(strip.top, first.top + row * above)
                            && near(strip.bottom, first.top + row * below);
            if (strips.size() > 1 && !there) {
                return false;
            }
            above = below;
        }
        return true;
    }

    private static boolean near(double one, double other) {
        return Math.abs(one - other) <= ROUNDED_PT;
    }

    private static Point2D direction(Point2D from, Point2D to) {
        double length = from.distance(to);
        return new Point2D.Double(
                (to.getX() - from.getX()) / length, (to.getY() - from.getY()) / length);
    }

    private static double along(Point2D direction, Point2D from, Point2D to) {
        return (to.getX() - from.getX()) * direction.getX()
                + (to.getY() - from.getY()) * direction.getY();
    }
}
