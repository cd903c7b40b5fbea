package org.printassay.demo.flatbed;

import org.printassay.sheet.PointMm;

/**
 * Where a sheet lies in a scan: the map between sheet millimetres and scan pixels. The outer corner
 * of the top left pixel is (0, 0).
 */
public final class Frame {
    /** Steps of an inverse whose error shrinks at least threefold a step. */
    private static final int WOBBLE_STEPS = 25;

    private final double samplesPerMm;
    private final double sheetWidthMm;
    private final double sheetHeightMm;
    private final double frameWidthMm;
    private final double frameHeightMm;
    private final double leftMm;
    private final double topMm;
    private final int width;
    private final int height;
    private final double cos;
    private final double sin;
    private final Placing placing;
    private final double wobblePhase;

    /**
     * Places a sheet.
     *
     * @param wobblePhase where the carriage's wobble starts, 0 to 1 of its period
     */
    Frame(Flatbed flatbed, double sheetWidthMm, double sheetHeightMm, double wobblePhase) {
        this.placing = flatbed.placing();
        this.samplesPerMm = flatbed.samplesPerInch() / 25.4;
        this.sheetWidthMm = sheetWidthMm;
        this.sheetHeightMm = sheetHeightMm;
        this.wobblePhase = wobblePhase;
        this.cos = Math.cos(Math.toRadians(placing.degrees()));
        this.sin = Math.sin(Math.toRadians(placing.degrees()));
        double border = 2 * placing.borderMm();
        this.frameWidthMm = Math.abs(cos) * sheetWidthMm + Math.abs(sin) * sheetHeightMm + border;
        this.frameHeightMm = Math.abs(sin) * sheetWidthMm + Math.abs(cos) * sheetHeightMm + border;
        Placing.Crop crop = placing.crop();
        this.leftMm = crop.left() * frameWidthMm;
        this.topMm = crop.top() * frameHeightMm;
        this.width = pixels((crop.right() - crop.left()) * frameWidthMm, flatbed.samplesPerInch());
        this.height =
                pixels((crop.bottom() - crop.top()) * frameHeightMm, flatbed.samplesPerInch());
    }

    private int pixels(double mm, double samplesPerInch) {
        long pixels = Math.round(mm * samplesPerMm);
        if (pixels < 1 || pixels > 60_000) {
            throw new IllegalArgumentException(
                    "a scan of " + mm + " mm at " + samplesPerInch + " per inch is out of range");
        }
        return (int) pixels;
    }

    /** Pixels across. */
    public int width() {
        return width;
    }

    /** Pixels down. */
    public int height() {
        return height;
    }

    /** Where a point of the sheet is in the scan, pixels; wobble left out. */
    public PointMm toScan(PointMm sheet) {
        double x = sheet.x() - sheetWidthMm / 2;
        double y = sheet.y() - sheetHeightMm / 2;
        double bedX = cos * x - sin * y + placing.offsetXMm() + frameWidthMm / 2;
        double bedY = sin * x + cos * y + placing.offsetYMm() + frameHeightMm / 2;
        if (placing.mirrored()) {
            bedX = frameWidthMm - bedX;
        }
        return new PointMm((bedX - leftMm) * samplesPerMm, (bedY - topMm) * samplesPerMm);
    }

    /** Where a point of the sheet is in the scan, pixels, the carriage's wobble included. */
    public PointMm inScan(PointMm sheet) {
        PointMm even = toScan(sheet);
        double wanted = bedY(even.y());
        double bed = wanted;
        for (int i = 0; i < WOBBLE_STEPS; i++) {
            bed -= wobbled(bed) - wanted;
        }
        return new PointMm(even.x(), (bed - topMm) * samplesPerMm);
    }

    /** Place on the bed of a pixel position, from the left edge of the full frame, millimetres. */
    double bedX(double column) {
        return leftMm + column / samplesPerMm;
    }

    /** Place on the bed of a pixel position, from the top edge of the full frame, millimetres. */
    double bedY(double row) {
        return topMm + row / samplesPerMm;
    }

    /** The bed's place with the carriage's wobble: where the sensor really is. */
    double wobbled(double bedY) {
        if (placing.wobbleMm() == 0) {
            return bedY;
        }
        double turns = bedY / placing.wobblePeriodMm() + wobblePhase;
        return bedY + placing.wobbleMm() * Math.sin(2 * Math.PI * turns);
    }

    /** Sheet x of a place on the bed. */
    double sheetX(double bedX, double bedY) {
        return cos * fromMiddleX(bedX) + sin * fromMiddleY(bedY) + sheetWidthMm / 2;
    }

    /** Sheet y of a place on the bed. */
    double sheetY(double bedX, double bedY) {
        return cos * fromMiddleY(bedY) - sin * fromMiddleX(bedX) + sheetHeightMm / 2;
    }

    /** How far sheet x and y move with one pixel to the right: {dx, dy} in millimetres. */
    double[] stepRight() {
        double step = (placing.mirrored() ? -1 : 1) / samplesPerMm;
        return new double[] {cos * step, -sin * step};
    }

    double samplesPerMm() {
        return samplesPerMm;
    }

    double frameWidthMm() {
        return frameWidthMm;
    }

    double frameHeightMm() {
        return frameHeightMm;
    }

    private double fromMiddleX(double bedX) {
        double x = placing.mirrored() ? frameWidthMm - bedX : bedX;
        return x - frameWidthMm / 2 - placing.offsetXMm();
    }

    private double fromMiddleY(double bedY) {
        return bedY - frameHeightMm / 2 - placing.offsetYMm();
    }
}
