package org.printassay.recipe;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.Iterator;
import java.util.List;
import javax.imageio.ImageIO;
import javax.imageio.ImageReadParam;
import javax.imageio.ImageReader;
import javax.imageio.stream.ImageInputStream;
import org.printassay.colour.Lab;
import org.printassay.colour.Rgb8;
import org.printassay.colour.RgbSpace;
import org.printassay.problem.Problem;

/**
 * The colours that a picture has most of. Its pixels are parted in CIELAB by median cut (P.
 * Heckbert, "Color image quantization for frame buffer display", Computer Graphics 16(3), 1982),
 * the means of the parts are settled by Lloyd's iteration (S. Lloyd, "Least squares quantization in
 * PCM", IEEE Trans. Inf. Theory 28(2), 1982), and the colours come with the most frequent first.
 * The picture's own profile is honoured as far as sRGB reaches: what lies beyond is cut.
 */
public final class PictureColours {
    /** Pixels looked at along the longer side: enough for colours of any area that is seen. */
    private static final int LONGEST_SIDE = 240;

    private static final int SETTLING = 8;
    private static final long MOST_PIXELS = 400_000_000L;

    /** Pieces of a TIFF are decoded whole. */
    private static final long MOST_PIXELS_OF_A_PIECE = 50_000_000L;

    private PictureColours() {}

    /** One pixel, or a mean of many. */
    private record Group(List<Lab> pixels) {
        double range(int axis) {
            double least = Double.POSITIVE_INFINITY;
            double most = Double.NEGATIVE_INFINITY;
            for (Lab pixel : pixels) {
                least = Math.min(least, value(pixel, axis));
                most = Math.max(most, value(pixel, axis));
            }
            return most - least;
        }

        int longestAxis() {
            int longest = 0;
            for (int axis = 1; axis < 3; axis++) {
                longest = range(axis) > range(longest) ? axis : longest;
            }
            return longest;
        }

        /** Where parting does most good: many pixels, far apart. */
        double need() {
            return pixels.size() < 2 ? 0 : pixels.size() * Math.pow(range(longestAxis()), 2);
        }

        Lab mean() {
            double l = 0;
            double a = 0;
            double b = 0;
            for (Lab pixel : pixels) {
                l += pixel.l();
                a += pixel.a();
                b += pixel.b();
            }
            int n = pixels.size();
            return new Lab(l / n, a / n, b / n);
        }
    }

    private static double value(Lab lab, int axis) {
        return axis == 0 ? lab.l() : axis == 1 ? lab.a() : lab.b();
    }

    /**
     * The most frequent colours of a picture file (JPEG, PNG, TIFF, BMP, GIF).
     *
     * @param count at most so many; a picture of fewer colours gives fewer
     * @throws Problem input, when it cannot be read
     */
    public static List<Lab> of(Path file, int count) throws Problem {
        return mostFrequent(pixels(file), count);
    }

    /** As {@link #of(Path, int)}, of pixels in CIELAB. */
    static List<Lab> mostFrequent(List<Lab> pixels, int count) {
        List<Group> groups = new ArrayList<>(List.of(new Group(pixels)));
        while (groups.size() < count) {
            Group widest =
                    groups.stream().max(Comparator.comparingDouble(Group::need)).orElseThrow();
            if (widest.need() < 1e-9) {
                break;
            }
            groups.remove(widest);
            groups.addAll(parted(widest));
        }
        List<Lab> means = new ArrayList<>(groups.stream().map(Group::mean).toList());
        List<List<Lab>> shares = shares(pixels, means);
        for (int i = 0; i < SETTLING; i++) {
            for (int k = 0; k < means.size(); k++) {
                if (!shares.get(k).isEmpty()) {
                    means.set(k, new Group(shares.get(k)).mean());
                }
            }
            shares = shares(pixels, means);
        }
        List<Integer> order = new ArrayList<>();
        for (int k = 0; k < means.size(); k++) {
            if (!shares.get(k).isEmpty()) {
                order.add(k);
            }
        }
        List<List<Lab>> last = shares;
        order.sort(Comparator.comparingInt((Integer k) -> -last.get(k).size()));
        return order.stream().map(means::get).toList();
    }

    /** At the median of the longest axis, equal values on one side. */
    private static List<Group> parted(Group group) {
        int axis = group.longestAxis();
        List<Lab> sorted = new ArrayList<>(group.pixels());
        sorted.sort(Comparator.comparingDouble(pixel -> value(pixel, axis)));
        int cut = sorted.size() / 2;
        double median = value(sorted.get(cut), axis);
        boolean fromStart = value(sorted.get(0), axis) == median;
        while (fromStart
                ? value(sorted.get(cut), axis) == median
                : value(sorted.get(cut - 1), axis) == median) {
            cut += fromStart ? 1 : -1;
        }
        return List.of(
                new Group(List.copyOf(sorted.subList(0, cut))),
                new Group(List.copyOf(sorted.subList(cut, sorted.size()))));
    }

    private static List<List<Lab>> shares(List<Lab> pixels, List<Lab> means) {
        List<List<Lab>> shares = new ArrayList<>();
        means.forEach(mean -> shares.add(new ArrayList<>()));
        for (Lab pixel : pixels) {
            int nearest = 0;
            double least = Double.POSITIVE_INFINITY;
            for (int k = 0; k < means.size(); k++) {
                Lab mean = means.get(k);
                double l = pixel.l() - mean.l();
                double a = pixel.a() - mean.a();
                double b = pixel.b() - mean.b();
                double square = l * l + a * a + b * b;
                if (square < least) {
                    least = square;
                    nearest = k;
                }
            }
            shares.get(nearest).add(pixel);
        }
        return shares;
    }

    private static List<Lab> pixels(Path file) throws Problem {
        String name = String.valueOf(file.getFileName()).replaceAll("\\p{C}", "?");
        if (!Files.isRegularFile(file)) {
            throw Problem.input(name, "there is no such picture.");
        }
        try (ImageInputStream in = ImageIO.createImageInputStream(file.toFile())) {
            Iterator<ImageReader> readers = ImageIO.getImageReaders(in);
            if (!readers.hasNext()) {
                throw Problem.input(
                        name, "is not a picture that can be read. Use JPEG, PNG or TIFF.");
            }
            ImageReader reader = readers.next();
            try {
                reader.setInput(in, true, false);
                return pixels(name, reader);
            } finally {
                reader.dispose();
            }
        } catch (IOException | RuntimeException e) {
            // Decoders of the library throw whatever a damaged file leads them to.
            throw Problem.input(name, "the picture is damaged or of a kind that is not read.", e);
        }
    }

    private static List<Lab> pixels(String name, ImageReader reader) throws IOException, Problem {
        long width = reader.getWidth(0);
        long height = reader.getHeight(0);
        if (width * height > MOST_PIXELS) {
            throw Problem.input(name, "is too large. Give a copy of at most 20000 x 20000 pixels.");
        }
        boolean inPieces = "tif".equalsIgnoreCase(reader.getFormatName());
        long piece = (long) reader.getTileWidth(0) * reader.getTileHeight(0);
        if (inPieces && piece > MOST_PIXELS_OF_A_PIECE) {
            throw Problem.input(name, "is one giant piece. Give a copy saved as PNG or JPEG.");
        }
        int step = (int) Math.max(1, (Math.max(width, height) + LONGEST_SIDE - 1) / LONGEST_SIDE);
        ImageReadParam every = reader.getDefaultReadParam();
        every.setSourceSubsampling(step, step, 0, 0);
        BufferedImage small = reader.read(0, every);
        List<Lab> pixels = new ArrayList<>();
        for (int y = 0; y < small.getHeight(); y++) {
            for (int x = 0; x < small.getWidth(); x++) {
                int argb = small.getRGB(x, y);
                if (argb >>> 24 >= 128) {
                    Rgb8 rgb = new Rgb8((argb >> 16) & 255, (argb >> 8) & 255, argb & 255);
                    pixels.add(RgbSpace.SRGB.toLab(rgb));
                }
            }
        }
        if (pixels.isEmpty()) {
            throw Problem.input(name, "has no pixels that are not transparent.");
        }
        return pixels;
    }
}
