package org.printassay.compare;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.printassay.evaluation.Evaluation;
import org.printassay.evaluation.PrintDetails;

/**
 * One side of a comparison: one or several prints that are meant to be alike, such as repeats on
 * one paper.
 *
 * @param name what readers call it
 * @param prints their evaluations, at least one
 * @param figures of each print, in the same order
 */
public record Side(String name, List<Evaluation> prints, List<PrintFigures> figures) {
    public Side {
        prints = List.copyOf(prints);
        figures = List.copyOf(figures);
        if (prints.isEmpty() || prints.size() != figures.size()) {
            throw new IllegalArgumentException("a side needs prints, and figures of each");
        }
    }

    /** A side of these prints. */
    public static Side of(String name, List<Evaluation> prints) {
        return new Side(name, prints, prints.stream().map(PrintFigures::of).toList());
    }

    /** Whether the spread between its prints can be told at all. */
    public boolean repeated() {
        return prints.size() > 1;
    }

    /** Whether all its prints were read so that absolute colours are known. */
    boolean absolute() {
        return prints.stream().allMatch(print -> print.trust().absolute());
    }

    /** A figure of every print that has it. */
    public List<FigureValue> values(Figure figure) {
        List<FigureValue> values = new ArrayList<>();
        for (PrintFigures print : figures) {
            print.get(figure).ifPresent(values::add);
        }
        return values;
    }

    /** Mean of a figure over the prints that have it; empty when none has. */
    public Optional<Double> mean(Figure figure) {
        List<FigureValue> values = values(figure);
        return values.isEmpty()
                ? Optional.empty()
                : Optional.of(
                        values.stream().mapToDouble(FigureValue::value).average().orElseThrow());
    }

    /**
     * What comes before the first comma of the name, where that alone tells it from the others; the
     * whole name where printers differ, for then it is not the paper alone.
     *
     * @param all sides that are named together
     */
    public String shortName(List<Side> all) {
        if (Subject.differ(all, PrintDetails::printer)) {
            return name;
        }
        String mine = beginning(name);
        long alike = all.stream().filter(side -> beginning(side.name()).equals(mine)).count();
        return alike == 1 ? mine : name;
    }

    private static String beginning(String name) {
        int comma = name.indexOf(',');
        return comma <= 0 ? name : name.substring(0, comma).strip();
    }
}
