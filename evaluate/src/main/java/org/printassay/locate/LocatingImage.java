package org.printassay.locate;

import boofcv.struct.image.GrayU8;
import java.awt.image.BufferedImage;
import org.printassay.colour.RgbSpace;
import org.printassay.problem.Problem;
import org.printassay.scan.CodeLight;
import org.printassay.scan.ScanImage;
import org.printassay.scan.ScanInfo;

/**
 * A scan made small: box averages in linear light, at 140 to 290 samples an inch where the scan
 * declares its own sampling rightly. The markers are looked for in it, and the neighbourhood of
 * patches is read from it. Memory does not grow with the scan.
 */
public final class LocatingImage {
    /** Sampling that is enough for markers, per inch; up to twice this is kept. */
    private static final double SAMPLES_PER_INCH = 145;

    /** Declared samplings are wrong at times: the long side stays between these, pixels. */
    private static final int SHORTEST_LONG_SIDE = 1600;

    private static final int LONGEST_LONG_SIDE = 3600;

    private static final int PREVIEW_LONG_SIDE = 1000;
    private static final float TO_STORED = 65535;

    private final int factor;
    private final int width;
    private final int height;
    private final int channels;
    private final char[] light;
    private final CodeCensus census;
    private final PixelSteps steps;

    private LocatingImage(int factor, int width, int height, ScanInfo scan) {
        this.factor = factor;
        this.width = width;
        this.height = height;
        this.channels = scan.channels();
        this.light = new char[width * height * channels];
        this.census = new CodeCensus(channels);
        this.steps = new PixelSteps(scan.width());
    }

    /** Streams a scan once. */
    public static LocatingImage of(ScanImage scan, CodeLight codes) throws Problem {
        ScanInfo info = scan.info();
        int factor = factor(info);
        LocatingImage image =
                new LocatingImage(
                        factor,
                        Math.max(1, info.width() / factor),
                        Math.max(1, info.height() / factor),
                        info);
        float[][] curves = new float[info.channels()][];
        for (int c = 0; c < curves.length; c++) {
            curves[c] = codes.curve(info.channels() == 1 ? 1 : c);
        }
        scan.stream(image.new Boxes(curves));
        return image;
    }

    private static int factor(ScanInfo info) {
        int longest = Math.max(info.width(), info.height());
        int most = Math.max(1, longest / SHORTEST_LONG_SIDE);
        int least = (longest + LONGEST_LONG_SIDE - 1) / LONGEST_LONG_SIDE;
        double declared =
                info.samplesPerInch().map(s -> Math.max(s.x(), s.y())).orElse(Double.MAX_VALUE);
        double wanted = Math.floor(declared / SAMPLES_PER_INCH);
        int shortest = Math.min(info.width(), info.height());
        return (int) Math.min(shortest, Math.max(least, Math.min(most, wanted)));
    }

    /**
     * Sums up boxes of pixels. Of tall boxes the middle rows are enough: for a scan of 600 samples
     * an inch, two of four. Every row is asked for, as a few pixels may tell of the ends of the
     * range.
     */
    private final class Boxes implements ScanImage.RowSink {
        private final float[][] curves;
        private final float[] sums = new float[width * channels];
        private final int first;
        private final int last;

        Boxes(float[][] curves) {
            this.curves = curves;
            this.first = factor / 4;
            this.last = factor - 1 - first;
        }

        private boolean sumsUp(int y) {
            int down = y % factor;
            return y / factor < height && down >= first && down <= last;
        }

        @Override
        public void row(int y, char[] row) {
            census.addEnds(row, row.length);
            if (!sumsUp(y)) {
                return;
            }
            int down = y % factor;
            int target = y / factor;
            if (down == first && target % Math.max(1, CodeCensus.EVERY / factor) == 0) {
                census.add(row, row.length);
                steps.add(row, channels);
            }
            if (channels == 1) {
                addGrey(row);
            } else {
                addColour(row);
            }
            if (down == last) {
                keep(target);
            }
        }

        private void addGrey(char[] row) {
            float[] curve = curves[0];
            for (int x = 0, at = 0; x < width; x++) {
                float total = 0;
                for (int i = 0; i < factor; i++, at++) {
                    total += curve[row[at]];
                }
                sums[x] += total;
            }
        }

        private void addColour(char[] row) {
            float[] red = curves[0];
            float[] green = curves[1];
            float[] blue = curves[2];
            for (int x = 0, at = 0; x < width; x++) {
                float r = 0;
                float g = 0;
                float b = 0;
                for (int i = 0; i < factor; i++, at += 3) {
                    r += red[row[at]];
                    g += green[row[at + 1]];
                    b += blue[row[at + 2]];
                }
                sums[3 * x] += r;
                sums[3 * x + 1] += g;
                sums[3 * x + 2] += b;
            }
        }

        private void keep(int target) {
            float scale = TO_STORED / (factor * (last - first + 1));
            int begin = target * sums.length;
            for (int i = 0; i < sums.length; i++) {
                light[begin + i] = (char) (Math.min(TO_STORED, sums[i] * scale) + 0.5f);
                sums[i] = 0;
            }
        }
    }

    /** How often each code occurs. */
    public CodeCensus census() {
        return census;
    }

    /** How pixels step along rows. */
    public PixelSteps steps() {
        return steps;
    }

    /** How many scan pixels a pixel of this image is wide. */
    public int factor() {
        return factor;
    }

    /** Pixels across. */
    public int width() {
        return width;
    }

    /** Pixels down. */
    public int height() {
        return height;
    }

    /** Linear light (0-1) of a pixel; a grey scan has the same in all channels. */
    public float light(int channel, int x, int y) {
        return light[(y * width + x) * channels + (channels == 1 ? 0 : channel)] / TO_STORED;
    }

    /** Grey image for the marker detector, encoded so that steps look even. */
    GrayU8 grey() {
        GrayU8 grey = new GrayU8(width, height);
        byte[] encoded = encoding();
        int middle = channels == 1 ? 0 : 1;
        for (int i = 0; i < width * height; i++) {
            grey.data[i] = encoded[light[i * channels + middle] >> 4];
        }
        return grey;
    }

    /** A picture for people, its long side about a thousand pixels at most. */
    public Preview preview() {
        int step =
                Math.max(1, (Math.max(width, height) + PREVIEW_LONG_SIDE - 1) / PREVIEW_LONG_SIDE);
        BufferedImage picture =
                new BufferedImage(
                        Math.max(1, width / step),
                        Math.max(1, height / step),
                        BufferedImage.TYPE_INT_RGB);
        byte[] encoded = encoding();
        for (int y = 0; y < picture.getHeight(); y++) {
            for (int x = 0; x < picture.getWidth(); x++) {
                int rgb = 0;
                for (int c = 0; c < 3; c++) {
                    float mean = sum(c, x * step, y * step, step) / (step * step);
                    int index = Math.min(4095, (int) (mean * 4095 + 0.5f));
                    rgb = (rgb << 8) | (encoded[index] & 0xff);
                }
                picture.setRGB(x, y, rgb);
            }
        }
        return new Preview(picture, step * factor);
    }

    /** Light of a square of pixels added up. */
    private float sum(int channel, int left, int top, int side) {
        float sum = 0;
        for (int y = top; y < top + side; y++) {
            for (int x = left; x < left + side; x++) {
                sum += light(channel, x, y);
            }
        }
        return sum;
    }

    private static byte[] encoding() {
        byte[] encoded = new byte[4096];
        for (int i = 0; i < encoded.length; i++) {
            encoded[i] = (byte) Math.round(255 * RgbSpace.SRGB.encode(i / 4095.0));
        }
        return encoded;
    }

    /**
     * A small picture of a scan.
     *
     * @param picture for people
     * @param factor scan pixels a picture pixel
     */
    public record Preview(BufferedImage picture, int factor) {}
}
