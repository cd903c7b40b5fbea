package org.printassay.locate;

import java.util.ArrayList;
import java.util.List;
import org.printassay.sheet.PointMm;

/** Placement by four corners that a person has read off the scan. */
public final class CornerPlacement implements Placement {
    private final Homography toScan;
    private final Homography toPage;
    private final double samplesPerMm;
    private final double rotationDegrees;

    private CornerPlacement(Homography toScan, PointMm middle) {
        this.toScan = toScan;
        this.toPage = toScan.inverse();
        PointPx here = toScan.apply(middle.x(), middle.y());
        PointPx right = toScan.apply(middle.x() + 1, middle.y());
        PointPx down = toScan.apply(middle.x(), middle.y() + 1);
        this.samplesPerMm =
                Math.sqrt(
                        Math.abs(
                                (right.x() - here.x()) * (down.y() - here.y())
                                        - (right.y() - here.y()) * (down.x() - here.x())));
        this.rotationDegrees =
                Math.toDegrees(Math.atan2(right.y() - here.y(), right.x() - here.x()));
    }

    /**
     * The placement.
     *
     * @param corners four points in millimetres, no three on a line
     * @param scan where they are in the scan, in the same order
     */
    public static CornerPlacement of(List<PointMm> corners, List<PointPx> scan) {
        if (corners.size() != 4 || scan.size() != 4) {
            throw new IllegalArgumentException("four corners");
        }
        List<Homography.Pair> pairs = new ArrayList<>();
        double x = 0;
        double y = 0;
        for (int i = 0; i < 4; i++) {
            pairs.add(new Homography.Pair(corners.get(i), scan.get(i)));
            x += corners.get(i).x() / 4;
            y += corners.get(i).y() / 4;
        }
        return new CornerPlacement(Homography.fit(pairs), new PointMm(x, y));
    }

    @Override
    public PointPx toScan(PointMm page) {
        return toScan.apply(page.x(), page.y());
    }

    @Override
    public PointMm toPage(PointPx scan) {
        PointPx page = toPage.apply(scan.x(), scan.y());
        return new PointMm(page.x(), page.y());
    }

    @Override
    public double samplesPerMm() {
        return samplesPerMm;
    }

    @Override
    public double rotationDegrees() {
        return rotationDegrees;
    }
}
