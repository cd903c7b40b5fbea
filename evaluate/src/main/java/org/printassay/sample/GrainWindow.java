package org.printassay.sample;

import org.jspecify.annotations.Nullable;
import org.printassay.locate.Placement;
import org.printassay.locate.PointPx;
import org.printassay.scan.ScanInfo;
import org.printassay.sheet.Patch;
import org.printassay.sheet.RectMm;
import org.printassay.texture.PixelTile;

/** An upright square of pixels in the middle of a flat patch, luminance, while rows come in. */
final class GrainWindow implements RowWindow {
    private static final int LARGEST = 256;

    private final Patch patch;
    private final int left;
    private final int top;
    private final int side;
    private final double samplesPerMm;
    private final int channels;
    private float @Nullable [] light;

    GrainWindow(Patch patch, RectMm middle, Placement placement, ScanInfo info) {
        this.patch = patch;
        this.samplesPerMm = placement.samplesPerMm();
        this.channels = info.channels();
        double angle = Math.toRadians(placement.rotationDegrees());
        double turned = Math.abs(Math.cos(angle)) + Math.abs(Math.sin(angle));
        double mm = Math.min(middle.width(), middle.height()) / turned;
        PointPx centre = placement.toScan(middle.centre());
        int fits = (int) Math.min(LARGEST, mm * samplesPerMm);
        this.left = (int) Math.round(centre.x() - fits / 2.0);
        this.top = (int) Math.round(centre.y() - fits / 2.0);
        boolean inside =
                left >= 0 && top >= 0 && left + fits <= info.width() && top + fits <= info.height();
        this.side = inside ? fits : 0;
    }

    @Override
    public int firstRow() {
        return side == 0 ? 0 : top;
    }

    @Override
    public int lastRow() {
        return side == 0 ? -1 : top + side - 1;
    }

    @Override
    public void take(int y, char[] row, float[][] curves) {
        float[] into = light;
        if (into == null) {
            into = new float[side * side];
            light = into;
        }
        int at = (y - top) * side;
        for (int column = left; column < left + side; column++) {
            into[at++] = Luminance.of(row, column, channels, curves);
        }
    }

    /** Column of the scan that the pixels begin at. */
    int left() {
        return left;
    }

    Patch patch() {
        return patch;
    }

    /** The pixels; null when the patch does not lie in the scan. */
    @Nullable PixelTile tile() {
        float[] values = light;
        return values == null
                ? null
                : new PixelTile(side, side, samplesPerMm, new PixelTile.Pixels(values));
    }
}
