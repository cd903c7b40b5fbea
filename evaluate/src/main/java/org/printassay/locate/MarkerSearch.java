package org.printassay.locate;

import boofcv.alg.filter.blur.GBlurImageOps;
import boofcv.alg.misc.ImageStatistics;
import boofcv.struct.image.GrayU8;
import java.util.ArrayList;
import java.util.List;
import org.printassay.layout.SheetLayout;

/**
 * Finds the markers of a scan: at first as it is; where some of a sheet's are missing, again with
 * its contrast stretched, smoothed, and at half the size, which noise and dull paper ask for. A
 * plain scan costs one look.
 */
public final class MarkerSearch {
    /** Every sheet has at least so many. */
    private static final int ON_A_SHEET = 12;

    /** Of the pixels, this share may be darker or lighter than the stretched range. */
    private static final double ENDS = 0.005;

    private static final double SMOOTHED_PX = 1;

    /** Markers of one print differ less in size, even in a photograph at an angle. */
    private static final double SIZES = 2;

    private MarkerSearch() {}

    /** All markers of a scan, in full-resolution pixels. */
    public static List<FoundMarker> in(LocatingImage image) {
        return in(image.grey(), image.factor());
    }

    /**
     * Has the classes and tables of the search ready before they are needed, while a scan is still
     * being read.
     */
    public static void warmUp() {
        new MarkerDetector().detect(new GrayU8(64, 64), 1);
    }

    /**
     * All markers of an image.
     *
     * @param scale full-resolution pixels a pixel of the image
     */
    static List<FoundMarker> in(GrayU8 image, double scale) {
        MarkerDetector detector = new MarkerDetector();
        List<FoundMarker> found = new ArrayList<>(detector.detect(image, scale));
        if (found.size() < ON_A_SHEET) {
            GrayU8 stretched = stretched(image);
            add(found, detector.detect(stretched, scale));
            add(found, detector.detect(smoothed(stretched), scale));
            add(found, detector.detect(halved(stretched), 2 * scale));
        }
        return likeSized(found);
    }

    /**
     * Those of about the size that most markers of one sheet have: patterns of patches and of noise
     * pass for markers, but these are smaller.
     */
    static List<FoundMarker> likeSized(List<FoundMarker> found) {
        List<FoundMarker> best = List.of();
        long most = 0;
        for (FoundMarker marker : found) {
            List<FoundMarker> alike =
                    found.stream().filter(other -> areAlike(marker, other)).toList();
            int sheet = SheetLayout.sheetOfMarker(marker.id());
            // The same letter of a text passes for the same marker again and again.
            long together =
                    alike.stream()
                            .mapToInt(FoundMarker::id)
                            .filter(id -> SheetLayout.sheetOfMarker(id) == sheet)
                            .distinct()
                            .count();
            if (together > most || (together == most && alike.size() > best.size())) {
                best = alike;
                most = together;
            }
        }
        return best;
    }

    private static boolean areAlike(FoundMarker one, FoundMarker other) {
        double ratio = one.sidePx() / other.sidePx();
        return ratio < SIZES && ratio > 1 / SIZES;
    }

    /** Adds those that were not found before; the earlier look places them better. */
    private static void add(List<FoundMarker> found, List<FoundMarker> again) {
        for (FoundMarker marker : again) {
            boolean known =
                    found.stream()
                            .anyMatch(
                                    other ->
                                            other.id() == marker.id()
                                                    && apart(other, marker) < marker.sidePx());
            if (!known) {
                found.add(marker);
            }
        }
    }

    private static double apart(FoundMarker a, FoundMarker b) {
        PointPx one = a.centre();
        PointPx other = b.centre();
        return Math.hypot(one.x() - other.x(), one.y() - other.y());
    }

    private static GrayU8 stretched(GrayU8 image) {
        int[] counts = new int[256];
        ImageStatistics.histogram(image, 0, counts);
        long ends = (long) (ENDS * image.width * image.height);
        int low = 0;
        for (long sum = counts[0]; sum <= ends && low < 254; sum += counts[low]) {
            low++;
        }
        int high = 255;
        for (long sum = counts[255]; sum <= ends && high > low + 1; sum += counts[high]) {
            high--;
        }
        GrayU8 result = new GrayU8(image.width, image.height);
        for (int y = 0; y < image.height; y++) {
            for (int x = 0; x < image.width; x++) {
                int code = 255 * (image.get(x, y) - low) / (high - low);
                result.set(x, y, Math.max(0, Math.min(255, code)));
            }
        }
        return result;
    }

    private static GrayU8 smoothed(GrayU8 image) {
        GrayU8 result = new GrayU8(image.width, image.height);
        GBlurImageOps.gaussian(image, result, SMOOTHED_PX, -1, null);
        return result;
    }

    private static GrayU8 halved(GrayU8 image) {
        GrayU8 result = new GrayU8(image.width / 2, image.height / 2);
        for (int y = 0; y < result.height; y++) {
            for (int x = 0; x < result.width; x++) {
                int sum =
                        image.get(2 * x, 2 * y)
                                + image.get(2 * x + 1, 2 * y)
                                + image.get(2 * x, 2 * y + 1)
                                + image.get(2 * x + 1, 2 * y + 1);
                result.set(x, y, (sum + 2) / 4);
            }
        }
        return result;
    }
}
