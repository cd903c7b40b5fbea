package org.printassay.recipe;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.printassay.colour.Lab;
import org.printassay.colour.RgbSpace;
import org.printassay.problem.Problem;

/**
 * The colours that a picture has most of. Its pixels are parted in CIELAB by median cut (P.
 * Heckbert, "Color image quantization for frame buffer display", Computer Graphics 16(3), 1982),
 * the means of the parts are settled by Lloyd's iteration (S. Lloyd, "Least squares quantization in
 * PCM", IEEE Trans. Inf. Theory 28(2), 1982), and the colours come with the most frequent first.
 * The picture's own profile is honoured; see {@link PicturePixels}.
 */
public final class PictureColours {
    private static final int SETTLING = 8;

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
     * @param at named in notes
     * @param space that the colours are for
     * @param notes filled with what the user should know of the picture's own encoding
     * @throws Problem input, when it cannot be read
     */
    public static List<Lab> of(Path file, int count, String at, RgbSpace space, List<String> notes)
            throws Problem {
        PicturePixels pixels = PicturePixels.read(file);
        String note = pixels.note(space);
        if (!note.isEmpty()) {
            notes.add(at + ": " + note);
        }
        return mostFrequent(pixels.colours(), count);
    }

    /** The most frequent of pixels. */
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
}
