package org.printassay.evaluation;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.NavigableMap;
import java.util.TreeMap;
import org.printassay.colour.Lab;
import org.printassay.colour.Rgb8;
import org.printassay.robust.Median;
import org.printassay.sample.PatchSample;
import org.printassay.sample.SheetSamples;

/**
 * How light the greys of a sheet are in its scan, by code. A vignette is made of the same codes:
 * where it is much lighter or darker than they are, it is something else that is seen.
 */
final class GreyTones {
    /**
     * Greys so many codes beside one tell of it: an edge between stairs of tone may lie between.
     */
    private static final double BESIDE_CODES = 2;

    /**
     * What uneven light and stray light may make between two places: L*, that of light that falls
     * off by a tenth, and share of paper (common practice, no source).
     */
    private static final double OFF_L = 4.5;

    private static final double OFF_LIGHT = 0.015;

    private final NavigableMap<Double, Double> byCode = new TreeMap<>();

    private GreyTones() {}

    /**
     * Greys of a scan, stray light still in.
     *
     * @param paper luminance of bare paper, device light
     */
    static GreyTones of(SheetSamples samples, double paper) {
        Map<Rgb8, List<Double>> lights = new TreeMap<>((a, b) -> Integer.compare(a.g(), b.g()));
        for (PatchSample sample : samples.samples()) {
            Rgb8 rgb = sample.patch().rgb();
            if (rgb.isNeutral() && sample.flags().isEmpty()) {
                lights.computeIfAbsent(rgb, k -> new ArrayList<>())
                        .add(VignetteJudge.luminance(sample) / paper);
            }
        }
        GreyTones tones = new GreyTones();
        lights.forEach(
                (rgb, all) ->
                        tones.byCode.put(
                                (double) rgb.g(),
                                Median.of(all.stream().mapToDouble(one -> one).toArray())));
        return tones;
    }

    /**
     * Whether light may be that of a grey of some code: not far from what lies between greys of
     * lower and of higher codes. True where they are not known.
     *
     * @param light over that of paper
     * @param stepL size of a step beside it, L*, of which half may be off
     */
    boolean fits(double code, double light, double stepL) {
        Map.Entry<Double, Double> below = byCode.floorEntry(code - BESIDE_CODES);
        Map.Entry<Double, Double> above = byCode.ceilingEntry(code + BESIDE_CODES);
        if (below == null || above == null) {
            return true;
        }
        double darker = Math.min(below.getValue(), above.getValue());
        double lighter = Math.max(below.getValue(), above.getValue());
        double most = Math.max(OFF_L, stepL / 2);
        return !isBrighter(light, lighter, most) && !isBrighter(darker, light, most);
    }

    private static boolean isBrighter(double light, double other, double byL) {
        return light - other > OFF_LIGHT && lightness(light) - lightness(other) > byL;
    }

    private static double lightness(double light) {
        return Lab.lightness(Math.max(0, light));
    }
}
