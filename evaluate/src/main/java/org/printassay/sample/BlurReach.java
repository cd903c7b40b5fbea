package org.printassay.sample;

import java.util.List;
import org.printassay.locate.LocatedSheet;
import org.printassay.locate.LocatingImage;

/** How wide a scan is blurred, from the edges of its markers, before its patches are read. */
final class BlurReach {
    /** Standard deviations of a Gaussian between 10 % and 90 % of an edge. */
    private static final double EDGE_WIDTH = 2.563;

    private BlurReach() {}

    /**
     * Standard deviation of the blur, millimetres on the page; 0 where edges cannot be measured.
     * The small image's own boxes are taken off.
     */
    static double sigmaMm(LocatedSheet located, LocatingImage image) {
        List<EdgeWindow> edges = EdgeWindow.of(located, image);
        for (EdgeWindow edge : edges) {
            for (int y = edge.firstRow(); y <= edge.lastRow(); y++) {
                int row = y;
                edge.take(row, image.width(), column -> image.light(1, column, row));
            }
        }
        double widthMm = EdgeWindow.profile(edges).widthMm();
        double boxMm = image.factor() / located.placement().samplesPerMm();
        double variance = Math.pow(widthMm / EDGE_WIDTH, 2) - boxMm * boxMm / 12;
        return variance > 0 ? Math.sqrt(variance) : 0;
    }
}
