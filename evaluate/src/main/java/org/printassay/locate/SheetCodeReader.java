package org.printassay.locate;

import boofcv.struct.image.GrayU8;
import com.google.zxing.BinaryBitmap;
import com.google.zxing.ChecksumException;
import com.google.zxing.DecodeHintType;
import com.google.zxing.FormatException;
import com.google.zxing.NotFoundException;
import com.google.zxing.PlanarYUVLuminanceSource;
import com.google.zxing.Result;
import com.google.zxing.ResultPoint;
import com.google.zxing.common.BitMatrix;
import com.google.zxing.common.HybridBinarizer;
import com.google.zxing.qrcode.QRCodeReader;
import com.google.zxing.qrcode.decoder.Decoder;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.printassay.layout.SheetLayout;
import org.printassay.sheet.PointMm;
import org.printassay.sheet.RectMm;

/**
 * Reads the sheet code. Its place beside the sheet's first marker is known, so its modules are
 * sampled straight from there, or by its own patterns near there; where that marker is hidden, the
 * symbol is searched for.
 */
final class SheetCodeReader {
    private static final double[] SHIFTS_MM = {0, 0.3, -0.3, 0.6, -0.6};

    /** How much of the difference to each neighbour is added: nothing, then against blur. */
    private static final double[] SHARPER = {0, 0.2, 0.5};

    /** Codes nearer together than this share of a code's side are one. */
    private static final double SAME = 0.5;

    private SheetCodeReader() {}

    /**
     * A code that was read.
     *
     * @param text what it says
     * @param middle where its middle is, about, full-resolution pixels
     * @param besideMarker whether it was read by its marker, which tells left from right
     */
    record Read(String text, PointPx middle, boolean besideMarker) {}

    /**
     * The codes beside all first markers; where there is none, one found by itself.
     *
     * @param scale full-resolution pixels a pixel of the image
     */
    static List<Read> read(GrayU8 image, double scale, List<FoundMarker> markers) {
        List<Read> codes = new ArrayList<>();
        for (FoundMarker marker : markers) {
            if (!SheetLayout.isCodeMarker(marker.id())) {
                continue;
            }
            double side = marker.sidePx() * SheetLayout.CODE_MM / SheetLayout.MARKER_MM;
            Optional<Read> code = beside(image, scale, marker);
            if (code.isPresent()
                    && codes.stream().noneMatch(c -> near(c, code.get(), SAME * side))) {
                codes.add(code.get());
            }
        }
        if (codes.isEmpty()) {
            anywhere(image, scale).ifPresent(codes::add);
        }
        return codes;
    }

    private static boolean near(Read a, Read b, double distance) {
        return Math.hypot(a.middle.x() - b.middle.x(), a.middle.y() - b.middle.y()) < distance;
    }

    private static Optional<Read> beside(GrayU8 image, double scale, FoundMarker marker) {
        RectMm square = new RectMm(0, 0, SheetLayout.MARKER_MM, SheetLayout.MARKER_MM);
        List<PointMm> corners = PagePlacement.corners(square);
        List<Homography.Pair> pairs = new ArrayList<>();
        for (int i = 0; i < 4; i++) {
            PointPx corner = marker.corners().get(i);
            pairs.add(
                    new Homography.Pair(
                            corners.get(i), new PointPx(corner.x() / scale, corner.y() / scale)));
        }
        Homography map = Homography.fit(pairs);
        Optional<Read> straight = beside(image, scale, map);
        return straight.isPresent() ? straight : byPatterns(image, scale, marker);
    }

    /** At the place that the marker tells, or a little beside. */
    private static Optional<Read> beside(GrayU8 image, double scale, Homography map) {
        for (double down : SHIFTS_MM) {
            for (double right : SHIFTS_MM) {
                RectMm code =
                        new RectMm(
                                SheetLayout.CODE_RIGHT_OF_MARKER_MM + right,
                                SheetLayout.CODE_BELOW_MARKER_MM + down,
                                SheetLayout.CODE_MM,
                                SheetLayout.CODE_MM);
                Optional<Read> read = read(image, scale, map, code);
                if (read.isPresent()) {
                    return read;
                }
            }
        }
        return Optional.empty();
    }

    private static Optional<Read> read(GrayU8 image, double scale, Homography map, RectMm code) {
        return modules(image, map, code)
                .map(
                        text -> {
                            PointPx middle = map.apply(code.centre().x(), code.centre().y());
                            PointPx full = new PointPx(scale * middle.x(), scale * middle.y());
                            return new Read(text, full, true);
                        });
    }

    /** By the symbol's own patterns, which are looked for where the marker tells about. */
    private static Optional<Read> byPatterns(GrayU8 image, double scale, FoundMarker marker) {
        List<PointPx> at = marker.corners();
        PointPx middle = marker.centre();
        // Half of the mean of opposite sides: a homography of one marker goes too far astray.
        double acrossX = (at.get(1).x() - at.get(0).x() + at.get(2).x() - at.get(3).x()) / 4;
        double acrossY = (at.get(1).y() - at.get(0).y() + at.get(2).y() - at.get(3).y()) / 4;
        double downX = (at.get(3).x() - at.get(0).x() + at.get(2).x() - at.get(1).x()) / 4;
        double downY = (at.get(3).y() - at.get(0).y() + at.get(2).y() - at.get(1).y()) / 4;
        List<Homography.Pair> pairs = new ArrayList<>();
        double half = SheetLayout.MARKER_MM / 2;
        double module = SheetLayout.CODE_MM / SheetLayout.CODE_MODULES;
        for (int down = -1; down <= 1; down += 2) {
            for (int across = -1; across <= 1; across += 2) {
                pairs.add(
                        new Homography.Pair(
                                new PointMm(
                                        (half * (across + 1) - SheetLayout.CODE_RIGHT_OF_MARKER_MM)
                                                / module,
                                        (half * (down + 1) - SheetLayout.CODE_BELOW_MARKER_MM)
                                                / module),
                                new PointPx(
                                        (middle.x() + across * acrossX + down * downX) / scale,
                                        (middle.y() + across * acrossY + down * downY) / scale)));
            }
        }
        RectMm code = new RectMm(0, 0, SheetLayout.CODE_MODULES, SheetLayout.CODE_MODULES);
        return FinderPatterns.refine(image, Homography.fit(pairs)).stream()
                .flatMap(map -> read(image, scale, map, code).stream())
                .findFirst();
    }

    private static Optional<String> modules(GrayU8 image, Homography map, RectMm code) {
        int count = SheetLayout.CODE_MODULES;
        double[] values = new double[count * count];
        double step = code.width() / count;
        for (int row = 0; row < count; row++) {
            for (int column = 0; column < count; column++) {
                double sum = 0;
                for (int k = 0; k < 9; k++) {
                    double x = code.x() + (column + 0.5 + (k % 3 - 1) * 0.2) * step;
                    int line = k / 3;
                    double y = code.y() + (row + 0.5 + (line - 1) * 0.2) * step;
                    PointPx at = map.apply(x, y);
                    int px = (int) Math.floor(at.x());
                    int py = (int) Math.floor(at.y());
                    if (!image.isInBounds(px, py)) {
                        return Optional.empty();
                    }
                    sum += image.get(px, py);
                }
                values[row * count + column] = sum / 9;
            }
        }
        for (double sharper : SHARPER) {
            Optional<String> text = decoded(sharpened(values, count, sharper), count);
            if (text.isPresent()) {
                return text;
            }
        }
        return Optional.empty();
    }

    /** Takes back some of what blur carries from a module to its four neighbours. */
    private static double[] sharpened(double[] values, int count, double sharper) {
        double[] result = new double[values.length];
        for (int i = 0; i < values.length; i++) {
            int column = i % count;
            double own = values[i];
            double left = column > 0 ? values[i - 1] : own;
            double right = column < count - 1 ? values[i + 1] : own;
            double above = i >= count ? values[i - count] : own;
            double below = i + count < values.length ? values[i + count] : own;
            result[i] = own + sharper * (4 * own - left - right - above - below);
        }
        return result;
    }

    /**
     * Dark modules are those below the middle of what most are; tape or a stain moves it little.
     */
    private static Optional<String> decoded(double[] values, int count) {
        double[] sorted = values.clone();
        Arrays.sort(sorted);
        double middle = (sorted[sorted.length / 10] + sorted[sorted.length * 9 / 10]) / 2;
        BitMatrix bits = new BitMatrix(count);
        for (int i = 0; i < values.length; i++) {
            if (values[i] < middle) {
                bits.set(i % count, i / count);
            }
        }
        try {
            return Optional.of(new Decoder().decode(bits).getText());
        } catch (ChecksumException | FormatException e) {
            return Optional.empty();
        }
    }

    private static Optional<Read> anywhere(GrayU8 image, double scale) {
        byte[] grey = new byte[image.width * image.height];
        for (int y = 0; y < image.height; y++) {
            System.arraycopy(
                    image.data,
                    image.startIndex + y * image.stride,
                    grey,
                    y * image.width,
                    image.width);
        }
        BinaryBitmap bitmap =
                new BinaryBitmap(
                        new HybridBinarizer(
                                new PlanarYUVLuminanceSource(
                                        grey,
                                        image.width,
                                        image.height,
                                        0,
                                        0,
                                        image.width,
                                        image.height,
                                        false)));
        try {
            Result result =
                    new QRCodeReader().decode(bitmap, Map.of(DecodeHintType.TRY_HARDER, true));
            // The finders at the ends of a diagonal come first and third.
            ResultPoint[] finders = result.getResultPoints();
            double x = (finders[0].getX() + finders[2].getX()) / 2;
            double y = (finders[0].getY() + finders[2].getY()) / 2;
            return Optional.of(
                    new Read(result.getText(), new PointPx(scale * x, scale * y), false));
        } catch (NotFoundException | ChecksumException | FormatException e) {
            return Optional.empty();
        }
    }
}
