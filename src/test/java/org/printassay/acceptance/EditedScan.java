package org.printassay.acceptance;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Optional;
import java.util.Random;
import java.util.function.UnaryOperator;
import java.util.stream.IntStream;
import javax.imageio.ImageIO;
import org.printassay.locate.PointPx;
import org.printassay.problem.Problem;
import org.printassay.scan.ScanImage;
import org.printassay.scan.ScanInfo;

/**
 * The green of a scan in memory, edited pixel by pixel: tape, a second print beside it, a camera's
 * view.
 */
final class EditedScan implements ScanImage {
    private static final int BED = 238 * 257;
    private static final int TOP = 65535;

    private final ScanInfo info;
    private final char[] codes;

    private EditedScan(ScanInfo like, int width, int height, char[] codes) {
        this.info =
                new ScanInfo(
                        like.name(),
                        like.format(),
                        width,
                        height,
                        1,
                        like.bits(),
                        like.samplesPerInch(),
                        Optional.empty(),
                        like.lossy());
        this.codes = codes;
    }

    static EditedScan of(ScanImage scan) throws Problem {
        ScanInfo info = scan.info();
        char[] codes = new char[info.width() * info.height()];
        int channels = info.channels();
        scan.stream(
                (y, row) -> {
                    for (int x = 0; x < info.width(); x++) {
                        codes[y * info.width() + x] = row[x * channels + channels / 2];
                    }
                });
        return new EditedScan(info, info.width(), info.height(), codes);
    }

    @Override
    public ScanInfo info() {
        return info;
    }

    @Override
    public void stream(RowSink sink) throws Problem {
        int stride = info.width();
        for (int y = 0; y < info.height(); y++) {
            sink.row(y, Arrays.copyOfRange(codes, y * stride, (y + 1) * stride));
        }
    }

    /** A round thing of one code lying on the glass. */
    EditedScan covered(double x, double y, double radiusPx, int code8) {
        char[] copy = codes.clone();
        for (int row = 0; row < info.height(); row++) {
            for (int column = 0; column < info.width(); column++) {
                if (Math.hypot(column + 0.5 - x, row + 0.5 - y) < radiusPx) {
                    copy[row * info.width() + column] = (char) (code8 * 257);
                }
            }
        }
        return new EditedScan(info, info.width(), info.height(), copy);
    }

    /** What is seen when each point of a new picture shows another point of this one. */
    EditedScan mapped(int width, int height, UnaryOperator<PointPx> from) {
        char[] result = new char[width * height];
        IntStream.range(0, height)
                .parallel()
                .forEach(
                        y -> {
                            for (int x = 0; x < width; x++) {
                                PointPx at = from.apply(new PointPx(x + 0.5, y + 0.5));
                                result[y * width + x] = (char) Math.round(code(at));
                            }
                        });
        return new EditedScan(info, width, height, result);
    }

    private double code(PointPx at) {
        double x = at.x() - 0.5;
        double y = at.y() - 0.5;
        int column = (int) Math.floor(x);
        int row = (int) Math.floor(y);
        double fx = x - column;
        double fy = y - row;
        return (1 - fy) * ((1 - fx) * at(column, row) + fx * at(column + 1, row))
                + fy * ((1 - fx) * at(column, row + 1) + fx * at(column + 1, row + 1));
    }

    private int at(int column, int row) {
        return column < 0 || row < 0 || column >= info.width() || row >= info.height()
                ? BED
                : codes[row * info.width() + column];
    }

    /** This scan with another one to its right. */
    EditedScan beside(EditedScan other) {
        int width = info.width() + other.info.width();
        int height = Math.max(info.height(), other.info.height());
        char[] both = new char[width * height];
        for (int y = 0; y < height; y++) {
            for (int x = 0; x < width; x++) {
                boolean here = x < info.width();
                both[y * width + x] = (char) (here ? at(x, y) : other.at(x - info.width(), y));
            }
        }
        return new EditedScan(info, width, height, both);
    }

    /** Part of this scan. */
    EditedScan cropped(int left, int top, int width, int height) {
        return mapped(width, height, p -> new PointPx(p.x() + left, p.y() + top));
    }

    /**
     * Which point of this scan a camera shows at a point of its picture, tilted about the
     * horizontal axis: nearer things look larger.
     *
     * @param perspective relative change of size from the middle to the lower edge
     * @param barrel share by which the lens pulls the corners in
     */
    UnaryOperator<PointPx> camera(double perspective, double barrel) {
        double middleX = info.width() / 2.0;
        double middleY = info.height() / 2.0;
        double reach = Math.hypot(middleX, middleY);
        return p -> {
            double x = 1.15 * (p.x() - middleX);
            double y = 1.15 * (p.y() - middleY);
            double r = Math.hypot(x, y) / reach;
            double lens = 1 + barrel * r * r;
            double w = 1 - perspective * lens * y / middleY;
            return new PointPx(middleX + lens * x / w, middleY + lens * y / w);
        };
    }

    /** Blurred by a Gaussian. */
    EditedScan blurred(double sigmaPx) {
        int reach = (int) Math.ceil(3 * sigmaPx);
        double[] weights = new double[2 * reach + 1];
        double sum = 0;
        for (int i = -reach; i <= reach; i++) {
            weights[i + reach] = Math.exp(-0.5 * i * i / (sigmaPx * sigmaPx));
            sum += weights[i + reach];
        }
        EditedScan result = this;
        for (int axis = 0; axis < 2; axis++) {
            EditedScan from = result;
            char[] to = new char[codes.length];
            boolean across = axis == 0;
            double total = sum;
            IntStream.range(0, info.height())
                    .parallel()
                    .forEach(
                            y -> {
                                for (int x = 0; x < info.width(); x++) {
                                    double value = 0;
                                    for (int i = -reach; i <= reach; i++) {
                                        int code = across ? from.at(x + i, y) : from.at(x, y + i);
                                        value += weights[i + reach] * code;
                                    }
                                    to[y * info.width() + x] = (char) (value / total);
                                }
                            });
            result = new EditedScan(info, info.width(), info.height(), to);
        }
        return result;
    }

    /** Codes squeezed between two levels of 255, with noise of so many levels. */
    EditedScan dull(int dark8, int light8, double noise8, long seed) {
        Random random = new Random(seed);
        char[] copy = new char[codes.length];
        for (int i = 0; i < copy.length; i++) {
            double code =
                    257.0 * dark8
                            + codes[i] * (light8 - dark8) / 255.0
                            + 257 * noise8 * random.nextGaussian();
            copy[i] = (char) Math.max(0, Math.min(TOP, code));
        }
        return new EditedScan(info, info.width(), info.height(), copy);
    }

    /** As an 8 bit RGB PNG, for tools and commands. */
    Path write(Path file) throws IOException {
        BufferedImage picture =
                new BufferedImage(info.width(), info.height(), BufferedImage.TYPE_INT_RGB);
        for (int y = 0; y < info.height(); y++) {
            for (int x = 0; x < info.width(); x++) {
                int rgb = 0;
                for (int c = 0; c < 3; c++) {
                    rgb = rgb << 8 | at(x, y) / 257;
                }
                picture.setRGB(x, y, rgb);
            }
        }
        ImageIO.write(picture, "png", file.toFile());
        return file;
    }
}
