package org.printassay.compare;

import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import org.printassay.colour.Rgb8;
import org.printassay.evaluation.Evaluation;
import org.printassay.metric.ColourDetail;
import org.printassay.reading.Reading;

/**
 * Which figures are taken over the same codes in all prints. Figures come whole from each
 * evaluation: a mean over other colours, or steps counted over other levels, is another figure.
 */
public final class CommonCodes {
    /** Levels that wedges test: from black, and from paper. */
    private static final int SHADOWS_TO = 48;

    private static final int HIGHLIGHTS_FROM = 207;

    private static final Map<Figure, Function<Evaluation, Set<Rgb8>>> CODES = codes();

    private CommonCodes() {}

    private static Map<Figure, Function<Evaluation, Set<Rgb8>>> codes() {
        Map<Figure, Function<Evaluation, Set<Rgb8>>> codes = new EnumMap<>(Figure.class);
        for (Figure figure : List.of(Figure.COLOURS_MEAN, Figure.GAMUT_VOLUME)) {
            codes.put(figure, e -> read(e, rgb -> !rgb.isNeutral()));
        }
        for (Figure figure : List.of(Figure.SKIN_MEAN, Figure.SKIN_LIGHTNESS)) {
            codes.put(figure, CommonCodes::skin);
        }
        for (Figure figure : List.of(Figure.SHADOWS_VISIBLE, Figure.SHADOWS_STEPS)) {
            codes.put(figure, e -> read(e, rgb -> rgb.isNeutral() && rgb.r() <= SHADOWS_TO));
        }
        for (Figure figure : List.of(Figure.HIGHLIGHTS_VISIBLE, Figure.HIGHLIGHTS_STEPS)) {
            codes.put(figure, e -> read(e, rgb -> rgb.isNeutral() && rgb.r() >= HIGHLIGHTS_FROM));
        }
        return codes;
    }

    private static Set<Rgb8> read(Evaluation print, Predicate<Rgb8> which) {
        return print.patches().stream().map(Reading::rgb).filter(which).collect(Collectors.toSet());
    }

    private static Set<Rgb8> skin(Evaluation print) {
        ColourDetail detail = print.colours() == null ? null : print.colours().detail();
        return detail == null
                ? Set.of()
                : detail.skin().stream()
                        .map(ColourDetail.SkinTone::rgb)
                        .collect(Collectors.toSet());
    }

    /**
     * Figures that are not the same thing in all prints. Of one chart a patch may be missing here
     * and there; that makes no other figure.
     */
    public static Set<Figure> leftOut(List<Evaluation> prints) {
        Set<Figure> left = EnumSet.noneOf(Figure.class);
        String chart = prints.get(0).chartId();
        if (chart != null && prints.stream().allMatch(e -> chart.equals(e.chartId()))) {
            return left;
        }
        CODES.forEach(
                (figure, codes) -> {
                    if (prints.stream().map(codes).distinct().count() > 1) {
                        left.add(figure);
                    }
                });
        return left;
    }

    /** The same in words, to follow what charts there are; empty when nothing is left out. */
    static String words(List<Evaluation> prints) {
        Set<Figure> left = leftOut(prints);
        return left.isEmpty()
                ? ""
                : " Not compared, because taken over other patches: "
                        + left.stream().map(Figure::shortLabel).collect(Collectors.joining(", "))
                        + ".";
    }
}
