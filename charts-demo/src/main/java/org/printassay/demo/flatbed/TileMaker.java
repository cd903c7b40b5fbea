package org.printassay.demo.flatbed;

import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Makes one tile of a scan after the other; safe to use from several threads. */
final class TileMaker {
    private final Flatbed flatbed;
    private final Frame frame;
    private final Raster raster;
    private final @Nullable StrayField stray;
    private final Specks specks;
    private final AutoLevels levels;
    private final CurveTable curve;
    private final Blur blur;
    private final Blur halo;
    private final int halfWidth;
    private final int nodeStep;

    /**
     * @param cellMm size of the raster's cells
     */
    TileMaker(
            Flatbed flatbed,
            Frame frame,
            Raster raster,
            @Nullable StrayField stray,
            Specks specks,
            double cellMm,
            AutoLevels levels) {
        this.flatbed = flatbed;
        this.frame = frame;
        this.raster = raster;
        this.stray = stray;
        this.specks = specks;
        this.levels = levels;
        this.curve = new CurveTable(flatbed.sensor().encoding(), (1 << flatbed.file().bits()) - 1);
        double pixelMm = 1 / frame.samplesPerMm();
        double wantedMm = flatbed.optics().blurSigmaUm() / 1000;
        double variance =
                wantedMm * wantedMm
                        + (pixelMm * pixelMm - cellMm * cellMm) / 12
                        - cellMm * cellMm * Exposure.SAMPLER_VARIANCE;
        double sigma = Math.sqrt(Math.max(0, variance)) / cellMm;
        double haloSigma =
                flatbed.optics().sharpening() > 0
                        ? flatbed.optics().sharpeningSigmaUm() / 1000 / cellMm
                        : 0;
        this.blur = new Blur(sigma);
        this.halo = new Blur(haloSigma);
        this.halfWidth =
                3
                        + Blur.reach(sigma)
                        + Blur.reach(haloSigma)
                        + (int) Math.ceil(flatbed.placing().wobbleMm() / cellMm);
        this.nodeStep = Math.max(1, (int) (0.7 * frame.samplesPerMm()));
    }

    void make(int left, int top, int columns, int rows, FastNoise noise, byte[] band) {
        float[][] tile = new float[3][columns * rows];
        sample(left, top, columns, rows, tile);
        light(left, top, columns, rows, tile);
        dirt(left, top, columns, rows, tile);
        store(left, columns, rows, tile, noise, band);
    }

    /** Blurred sheet at the pixel centres, by cubic B-spline: no overshoot at edges. */
    private void sample(int left, int top, int columns, int rows, float[][] tile) {
        Raster.Cut cut = around(left, top, columns, rows);
        float[][] planes = new float[3][];
        float strength = (float) flatbed.optics().sharpening();
        for (int c = 0; c < 3; c++) {
            planes[c] = blur.apply(cut.planes()[c], cut.width(), cut.wanted());
            if (strength > 0) {
                float[] soft = halo.apply(planes[c], cut.width(), cut.wanted());
                float[] sharp = new float[soft.length];
                for (int i = 0; i < soft.length; i++) {
                    sharp[i] = planes[c][i] + strength * (planes[c][i] - soft[i]);
                }
                planes[c] = sharp;
            }
        }
        double[] step = frame.stepRight();
        double stepX = raster.cellX(step[0]) - raster.cellX(0);
        double stepY = raster.cellY(step[1]) - raster.cellY(0);
        float[] wx = new float[4];
        float[] wy = new float[4];
        for (int row = 0; row < rows; row++) {
            double bedX = frame.bedX(left + 0.5);
            double bedY = frame.wobbled(frame.bedY(top + row + 0.5));
            double x0 = raster.cellX(frame.sheetX(bedX, bedY)) - cut.x() - 0.5;
            double y0 = raster.cellY(frame.sheetY(bedX, bedY)) - cut.y() - 0.5;
            for (int column = 0; column < columns; column++) {
                double x = x0 + column * stepX;
                double y = y0 + column * stepY;
                int i = (int) x;
                int j = (int) y;
                weights((float) (x - i), wx);
                weights((float) (y - j), wy);
                int at = (j - 1) * cut.width() + i - 1;
                for (int c = 0; c < 3; c++) {
                    tile[c][row * columns + column] = spline(planes[c], at, cut.width(), wx, wy);
                }
            }
        }
    }

    private static float spline(float[] plane, int start, int width, float[] wx, float[] wy) {
        float sum = 0;
        int at = start;
        for (int j = 0; j < 4; j++) {
            sum +=
                    wy[j]
                            * (wx[0] * plane[at]
                                    + wx[1] * plane[at + 1]
                                    + wx[2] * plane[at + 2]
                                    + wx[3] * plane[at + 3]);
            at += width;
        }
        return sum;
    }

    private static void weights(float f, float[] w) {
        float g = 1 - f;
        w[0] = g * g * g / 6;
        w[3] = f * f * f / 6;
        w[1] = (3 * f * f * f - 6 * f * f + 4) / 6;
        w[2] = 1 - w[0] - w[1] - w[3];
    }

    private Raster.Cut around(int left, int top, int columns, int rows) {
        double[] x = new double[4];
        double[] y = new double[4];
        for (int corner = 0; corner < 4; corner++) {
            double bedX = frame.bedX(corner == 0 || corner == 3 ? left : left + columns);
            double bedY = frame.bedY(corner < 2 ? top : top + rows);
            x[corner] = raster.cellX(frame.sheetX(bedX, bedY));
            y[corner] = raster.cellY(frame.sheetY(bedX, bedY));
        }
        int firstX = (int) Math.floor(Arrays.stream(x).min().getAsDouble()) - halfWidth;
        int firstY = (int) Math.floor(Arrays.stream(y).min().getAsDouble()) - halfWidth;
        int width = (int) Math.ceil(Arrays.stream(x).max().getAsDouble()) + halfWidth - firstX;
        int height = (int) Math.ceil(Arrays.stream(y).max().getAsDouble()) + halfWidth - firstY;
        for (int corner = 0; corner < 4; corner++) {
            x[corner] -= firstX;
            y[corner] -= firstY;
        }
        return raster.cut(firstX, firstY, width, Spans.around(x, y, halfWidth, width, height));
    }

    /** Lamp and stray light: a factor and an addend that vary slowly along a row. */
    private void light(int left, int top, int columns, int rows, float[][] tile) {
        if (stray == null && flatbed.light().falloff() == 0) {
            return;
        }
        int nodes = (columns - 1) / nodeStep + 2;
        float[][] factor = new float[3][nodes];
        float[][] addend = new float[3][nodes];
        for (int row = 0; row < rows; row++) {
            for (int n = 0; n < nodes; n++) {
                node(left + n * nodeStep, top + row, n, factor, addend);
            }
            for (int c = 0; c < 3; c++) {
                for (int column = 0; column < columns; column++) {
                    int n = column / nodeStep;
                    float share = (float) (column - n * nodeStep) / nodeStep;
                    float f = factor[c][n] + share * (factor[c][n + 1] - factor[c][n]);
                    float a = addend[c][n] + share * (addend[c][n + 1] - addend[c][n]);
                    int at = row * columns + column;
                    tile[c][at] = f * tile[c][at] + a;
                }
            }
        }
    }

    private void node(int column, int row, int n, float[][] factor, float[][] addend) {
        double bedX = frame.bedX(column + 0.5);
        double bedY = frame.bedY(row + 0.5);
        double lamp =
                flatbed.light()
                        .at(
                                2 * bedX / frame.frameWidthMm() - 1,
                                2 * bedY / frame.frameHeightMm() - 1);
        Optics optics = flatbed.optics();
        for (int c = 0; c < 3; c++) {
            if (stray == null) {
                factor[c][n] = (float) lamp;
                continue;
            }
            double around = stray.at(c, frame.sheetX(bedX, bedY), frame.sheetY(bedX, bedY));
            double returned =
                    (1 + optics.returnedLight() * around)
                            / (1 + optics.returnedLight() * optics.surround());
            factor[c][n] = (float) (lamp * (1 - optics.glare()) * returned);
            addend[c][n] = (float) (lamp * optics.glare() * around);
        }
    }

    private void dirt(int left, int top, int columns, int rows, float[][] tile) {
        double pixelMm = 1 / frame.samplesPerMm();
        List<Specks.Stroke> near =
                specks.near(
                        frame.bedX(left),
                        frame.bedY(top),
                        frame.bedX(left + columns),
                        frame.bedY(top + rows));
        for (Specks.Stroke stroke : near) {
            for (int row = 0; row < rows; row++) {
                double y = frame.bedY(top + row + 0.5);
                for (int column = 0; column < columns; column++) {
                    double distance = stroke.distance(frame.bedX(left + column + 0.5), y);
                    double cover = (stroke.radius() - distance) / (1.5 * pixelMm) + 0.5;
                    if (cover > 0) {
                        float share = (float) (Math.min(1, cover) * stroke.cover());
                        int at = row * columns + column;
                        for (int c = 0; c < 3; c++) {
                            tile[c][at] += share * ((float) stroke.reflectance() - tile[c][at]);
                        }
                    }
                }
            }
        }
    }

    private void store(
            int left, int columns, int rows, float[][] tile, FastNoise noise, byte[] band) {
        Sensor sensor = flatbed.sensor();
        boolean noisy = sensor.noisy();
        float shot = sensor.electronsAtWhite() > 0 ? (float) (1 / sensor.electronsAtWhite()) : 0;
        float read = (float) (sensor.readNoise() * sensor.readNoise());
        float gain = (float) sensor.exposure();
        int highest = (1 << flatbed.file().bits()) - 1;
        float low = levels.low() * highest;
        int sampleBytes = flatbed.file().bits() / 8;
        for (int row = 0; row < rows; row++) {
            int to = (row * frame.width() + left) * 3 * sampleBytes;
            for (int column = 0; column < columns; column++) {
                int at = row * columns + column;
                for (int c = 0; c < 3; c++) {
                    float light = tile[c][at];
                    if (noisy) {
                        float deviation = (float) Math.sqrt(shot * Math.max(0, light) + read);
                        light += deviation * noise.gaussian();
                    }
                    float value = (curve.code(light * gain) - low) * levels.gain();
                    int code = (int) (value + 0.5f);
                    code = code < 0 ? 0 : Math.min(code, highest);
                    if (sampleBytes == 2) {
                        band[to++] = (byte) (code >> 8);
                    }
                    band[to++] = (byte) code;
                }
            }
        }
    }
}
