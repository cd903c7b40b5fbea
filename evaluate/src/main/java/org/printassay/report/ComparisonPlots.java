package org.printassay.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import org.printassay.compare.Comparison;
import org.printassay.compare.Side;
import org.printassay.evaluation.Colours;
import org.printassay.evaluation.Evaluation;
import org.printassay.metric.ColourDetail;
import org.printassay.metric.GamutMesh;
import org.printassay.metric.Tone;
import org.printassay.report.draw.SvgWriter;
import org.printassay.report.plot.SideCurves;
import org.printassay.report.plot.SideGamuts;
import org.printassay.report.plot.SideKeys;

/** Plots of several sides together. */
final class ComparisonPlots {
    /** Where gamuts are cut: dark, middle and light colours. */
    private static final List<Double> CUTS = List.of(35.0, 50.0, 80.0);

    private static final double SAME = 0.5;

    private final Comparison comparison;

    ComparisonPlots(Comparison comparison) {
        this.comparison = comparison;
    }

    Optional<Plot> tone() {
        List<SideCurves.Side> sides = new ArrayList<>();
        for (int i = 0; i < comparison.sides().size(); i++) {
            List<SideCurves.Spot> spots = spots(comparison.sides().get(i));
            if (spots.isEmpty()) {
                return Optional.empty();
            }
            sides.add(new SideCurves.Side(i + 1, comparison.shortName(i), spots));
        }
        return Optional.of(
                new Plot(
                        "tone-plot",
                        (width, tall) -> SideCurves.draw(sides, width, tall),
                        Plot.WIDE));
    }

    /** Mean over the prints of a side, by level. */
    private static List<SideCurves.Spot> spots(Side side) {
        TreeMap<Integer, List<Tone.Point>> levels = new TreeMap<>();
        for (Evaluation print : side.prints()) {
            if (print.tone() != null) {
                for (Tone.Point point : print.tone().points()) {
                    levels.computeIfAbsent(point.level(), k -> new ArrayList<>()).add(point);
                }
            }
        }
        return levels.values().stream()
                .map(
                        points ->
                                new SideCurves.Spot(
                                        points.get(0).fileL(),
                                        points.stream()
                                                .mapToDouble(p -> p.measuredL() - p.aimL())
                                                .average()
                                                .orElseThrow()))
                .toList();
    }

    Optional<Plot> gamut() {
        List<SideGamuts.Side> sides = new ArrayList<>();
        for (int i = 0; i < comparison.sides().size(); i++) {
            List<List<List<GamutMesh.Place>>> cuts = cuts(comparison.sides().get(i));
            if (cuts.size() != CUTS.size()) {
                return Optional.empty();
            }
            sides.add(new SideGamuts.Side(i + 1, comparison.shortName(i), cuts));
        }
        int against = comparison.against();
        return Optional.of(
                new Plot(
                        "gamut-plot",
                        width -> SideGamuts.draw(sides, CUTS, against, width),
                        Plot.WIDE));
    }

    /** Of the first print that was judged. */
    private static List<List<List<GamutMesh.Place>>> cuts(Side side) {
        for (Evaluation print : side.prints()) {
            ColourDetail detail = detail(print.colours());
            if (detail != null) {
                List<List<List<GamutMesh.Place>>> cuts = new ArrayList<>();
                for (double wanted : CUTS) {
                    detail.slices().stream()
                            .filter(s -> Math.abs(s.lightness() - wanted) < SAME)
                            .findFirst()
                            .ifPresent(slice -> cuts.add(slice.print()));
                }
                return cuts;
            }
        }
        return List.of();
    }

    private static @Nullable ColourDetail detail(@Nullable Colours colours) {
        return colours == null ? null : colours.detail();
    }

    /** Lines of plots in which sides lie over each other; none where each has its own. */
    List<ComparisonView.Key> keys() {
        List<ComparisonView.Key> keys = new ArrayList<>();
        if (SideKeys.over(comparison.sides().size())) {
            for (int i = 0; i < comparison.sides().size(); i++) {
                String sample = SvgWriter.write(SideKeys.key(i), "key-" + i, "key");
                keys.add(new ComparisonView.Key(new Html(sample), i + 1, comparison.shortName(i)));
            }
        }
        return keys;
    }
}
