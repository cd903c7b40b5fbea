package org.printassay.sample;

import java.util.List;
import org.printassay.locate.Placement;
import org.printassay.locate.PointPx;
import org.printassay.scan.ScanInfo;
import org.printassay.sheet.PointMm;
import org.printassay.sheet.RectMm;

/** A rectangle of the page as it lies in a scan: which pixels of each row are in it. */
final class RowSpan {
    private final double[] cornerX = new double[4];
    private final double[] cornerY = new double[4];
    private final int firstRow;
    private final int lastRow;
    private final int width;

    RowSpan(RectMm area, Placement placement, ScanInfo info) {
        List<PointMm> corners =
                List.of(
                        new PointMm(area.x(), area.y()),
                        new PointMm(area.right(), area.y()),
                        new PointMm(area.right(), area.bottom()),
                        new PointMm(area.x(), area.bottom()));
        double top = Double.POSITIVE_INFINITY;
        double bottom = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < 4; i++) {
            PointPx at = placement.toScan(corners.get(i));
            cornerX[i] = at.x();
            cornerY[i] = at.y();
            top = Math.min(top, at.y());
            bottom = Math.max(bottom, at.y());
        }
        this.firstRow = Math.max(0, (int) Math.ceil(top - 0.5));
        this.lastRow = Math.min(info.height() - 1, (int) Math.floor(bottom - 0.5));
        this.width = info.width();
    }

    int firstRow() {
        return firstRow;
    }

    int lastRow() {
        return lastRow;
    }

    /** First column of a row whose centre lies inside, and the column after the last. */
    int[] columns(int y) {
        double at = y + 0.5;
        double from = Double.POSITIVE_INFINITY;
        double to = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < 4; i++) {
            int k = (i + 1) % 4;
            double y0 = cornerY[i];
            double y1 = cornerY[k];
            if (at < Math.min(y0, y1) || at > Math.max(y0, y1)) {
                continue;
            }
            double share = y0 == y1 ? 0 : (at - y0) / (y1 - y0);
            double x = cornerX[i] + share * (cornerX[k] - cornerX[i]);
            from = Math.min(from, x);
            to = Math.max(to, x);
            if (y0 == y1) {
                from = Math.min(from, cornerX[k]);
                to = Math.max(to, cornerX[k]);
            }
        }
        int begin = (int) Math.max(0, Math.ceil(from - 0.5));
        int end = (int) Math.min(width, Math.floor(to - 0.5) + 1);
        return new int[] {begin, Math.max(begin, end)};
    }
}
