package org.printassay.report;

import gg.jte.Content;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.printassay.compare.Comparison;
import org.printassay.compare.Difference;
import org.printassay.compare.Figure;
import org.printassay.compare.Judged;
import org.printassay.compare.Side;
import org.printassay.report.draw.Drawing;
import org.printassay.report.draw.SvgWriter;
import org.printassay.report.plot.DifferenceBar;

/** Every figure of every side, each against the chosen one. */
final class ComparisonTable {
    private final Comparison comparison;

    ComparisonTable(Comparison comparison) {
        this.comparison = comparison;
    }

    List<ComparisonView.Topic> topics() {
        Map<Figure.Topic, List<ComparisonView.Row>> rows = new EnumMap<>(Figure.Topic.class);
        for (Figure figure : Figure.values()) {
            boolean judged = comparison.sides().stream().anyMatch(s -> !s.values(figure).isEmpty());
            if (judged) {
                rows.computeIfAbsent(figure.topic(), k -> new ArrayList<>()).add(row(figure));
            }
        }
        return rows.entrySet().stream()
                .map(e -> new ComparisonView.Topic(e.getKey().label(), e.getValue()))
                .toList();
    }

    private ComparisonView.Row row(Figure figure) {
        List<ComparisonView.Cell> cells = new ArrayList<>();
        for (int i = 0; i < comparison.sides().size(); i++) {
            cells.add(cell(figure, i));
        }
        return new ComparisonView.Row(figure.label(), cells, bar(figure));
    }

    private ComparisonView.Cell cell(Figure figure, int index) {
        Side side = comparison.sides().get(index);
        String value = ComparisonWords.value(side, figure);
        Optional<Judged> judged = judged(figure, index);
        return judged.map(
                        j ->
                                new ComparisonView.Cell(
                                        index + 1,
                                        value,
                                        ComparisonWords.difference(j.difference()),
                                        ComparisonWords.verdict(j.verdict()),
                                        ComparisonWords.differs(j)))
                .orElseGet(() -> new ComparisonView.Cell(index + 1, value, "", "", false));
    }

    private Optional<Judged> judged(Figure figure, int index) {
        return index == comparison.against()
                ? Optional.empty()
                : comparison.pairs().between(comparison.against(), index).of(figure);
    }

    /** Drawn where there is one difference a row. */
    private @Nullable Content bar(Figure figure) {
        if (comparison.sides().size() != 2) {
            return null;
        }
        Optional<Judged> judged = judged(figure, 1 - comparison.against());
        if (judged.isEmpty()) {
            return null;
        }
        Difference d = judged.get().difference();
        Double half = d.halfWidth();
        double unit = figure.visible();
        Drawing drawing =
                DifferenceBar.draw(
                        d.value() / unit,
                        half == null ? null : Double.valueOf(half / unit),
                        ComparisonWords.difference(d)
                                + ", where "
                                + ComparisonWords.value(figure, unit)
                                + " is just visible");
        return new Html(
                SvgWriter.write(
                        drawing,
                        "bar-" + figure.name().toLowerCase(Locale.ROOT).replace('_', '-'),
                        "bar"));
    }
}
