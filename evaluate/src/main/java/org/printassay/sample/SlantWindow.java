package org.printassay.sample;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.printassay.locate.Placement;
import org.printassay.locate.PointPx;
import org.printassay.scan.ScanInfo;
import org.printassay.sheet.Artwork;
import org.printassay.sheet.PointMm;
import org.printassay.sheet.RectMm;
import org.printassay.surface.Along;
import org.printassay.texture.EdgeResponse;
import org.printassay.texture.SlantedEdge;

/** Pixels around one side of a slanted square while rows come in. */
final class SlantWindow implements RowWindow {
    /** Light on either side that is used; the square and its field reach further. */
    private static final double REACH_MM = 1.9;

    private static final double LONGEST_MM = 10;

    /** Part of a side that is used: away from the corners. */
    private static final double PART = 0.6;

    private final Along along;
    private final double x;
    private final double y;
    private final double outX;
    private final double outY;
    private final double sideX;
    private final double sideY;
    private final double halfMm;
    private final double pitchMm;
    private final int channels;
    private final int firstRow;
    private final int lastRow;
    private final int firstColumn;
    private final int lastColumn;
    private double[] pixels = new double[3 * 4096];
    private int used;

    private SlantWindow(
            Artwork.SlantedSquare slanted,
            double nx,
            double ny,
            Along along,
            Placement placement,
            ScanInfo info) {
        RectMm square = slanted.square();
        double angle = Math.toRadians(slanted.degrees());
        double outMmX = nx * Math.cos(angle) - ny * Math.sin(angle);
        double outMmY = nx * Math.sin(angle) + ny * Math.cos(angle);
        double away = (nx != 0 ? square.width() : square.height()) / 2;
        double side = nx != 0 ? square.height() : square.width();
        PointMm centre = square.centre();
        PointMm middle = new PointMm(centre.x() + away * outMmX, centre.y() + away * outMmY);
        this.along = along;
        this.halfMm = Math.min(LONGEST_MM, PART * side) / 2;
        this.pitchMm = 1 / placement.samplesPerMm();
        this.channels = info.channels();
        PointPx at = placement.toScan(middle);
        PointPx right = placement.toScan(new PointMm(middle.x() + 1, middle.y()));
        PointPx down = placement.toScan(new PointMm(middle.x(), middle.y() + 1));
        this.x = at.x();
        this.y = at.y();
        // Pixels to millimetres of the page, here; then to distances across and along the edge.
        double a = right.x() - x;
        double b = down.x() - x;
        double c = right.y() - y;
        double d = down.y() - y;
        double determinant = a * d - b * c;
        this.outX = (outMmX * d - outMmY * c) / determinant;
        this.outY = (-outMmX * b + outMmY * a) / determinant;
        this.sideX = (-outMmY * d - outMmX * c) / determinant;
        this.sideY = (outMmY * b + outMmX * a) / determinant;
        double reach = Math.hypot(REACH_MM, halfMm) / pitchMm;
        this.firstRow = Math.max(0, (int) Math.floor(y - reach));
        this.lastRow = Math.min(info.height() - 1, (int) Math.ceil(y + reach));
        this.firstColumn = Math.max(0, (int) Math.floor(x - reach));
        this.lastColumn = Math.min(info.width() - 1, (int) Math.ceil(x + reach));
    }

    /** The four sides of a slanted square. */
    static List<SlantWindow> of(Artwork.SlantedSquare slanted, Placement placement, ScanInfo info) {
        List<SlantWindow> windows = new ArrayList<>();
        for (int sign = -1; sign <= 1; sign += 2) {
            windows.add(new SlantWindow(slanted, sign, 0, Along.X, placement, info));
            windows.add(new SlantWindow(slanted, 0, sign, Along.Y, placement, info));
        }
        return windows;
    }

    @Override
    public int firstRow() {
        return firstRow;
    }

    @Override
    public int lastRow() {
        return lastRow;
    }

    @Override
    public void take(int row, char[] codes, float[][] curves) {
        double dy = row + 0.5 - y;
        for (int column = firstColumn; column <= lastColumn; column++) {
            double dx = column + 0.5 - x;
            double across = dx * outX + dy * outY;
            double beside = dx * sideX + dy * sideY;
            if (Math.abs(across) > REACH_MM || Math.abs(beside) > halfMm) {
                continue;
            }
            if (used + 3 > pixels.length) {
                pixels = Arrays.copyOf(pixels, 2 * pixels.length);
            }
            pixels[used++] = across;
            pixels[used++] = beside;
            pixels[used++] = Luminance.of(codes, column, channels, curves);
        }
    }

    /** Axis of the page that the edge's light changes along. */
    Along along() {
        return along;
    }

    /** The response of the edge; null when there is no clean edge. Lets go of the pixels. */
    @Nullable EdgeResponse response() {
        double[][] parts = new double[3][used / 3];
        for (int i = 0; i < used; i++) {
            parts[i % 3][i / 3] = pixels[i];
        }
        pixels = new double[0];
        used = 0;
        return SlantedEdge.response(parts[0], parts[1], parts[2], pitchMm);
    }
}
