package org.printassay.compare;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.ToDoubleFunction;
import org.jspecify.annotations.Nullable;
import org.printassay.colour.Lab;
import org.printassay.colour.Rgb8;
import org.printassay.evaluation.Evaluation;
import org.printassay.reading.Reading;
import org.printassay.reading.ReadingFlag;
import org.printassay.reading.Undoubted;

/**
 * Mean colour of every code of one print or of several that are meant to be alike, readings with
 * doubtful flags left out where there are others, with the spread of a single reading among the
 * twins of a print.
 */
final class CodeMeans {
    /** Share of clipped patches from which a code is left out (common practice, no source). */
    private static final double CUT = 0.25;

    /** Of each code, the readings of each print that has it. */
    private final Map<Rgb8, List<List<Lab>>> readings;

    private CodeMeans(Map<Rgb8, List<List<Lab>>> readings) {
        this.readings = readings;
    }

    /**
     * The means of prints.
     *
     * @param relative whether colours are taken relative to their paper
     */
    static CodeMeans of(List<Evaluation> prints, boolean relative) {
        Map<Rgb8, List<List<Lab>>> kept = new LinkedHashMap<>();
        for (Evaluation print : prints) {
            byCode(print, relative)
                    .forEach(
                            (code, list) ->
                                    kept.computeIfAbsent(code, k -> new ArrayList<>())
                                            .add(kept(list, relative)));
        }
        return new CodeMeans(kept);
    }

    private static Map<Rgb8, List<Reading>> byCode(Evaluation print, boolean relative) {
        Map<Rgb8, List<Reading>> all = new LinkedHashMap<>();
        for (Reading reading : print.patches()) {
            if (colour(reading, relative) != null) {
                all.computeIfAbsent(reading.rgb(), k -> new ArrayList<>()).add(reading);
            }
        }
        all.values().removeIf(CodeMeans::isCut);
        return all;
    }

    /**
     * Whether the scanner's range ended within a code's patches: the rest of them would mislead.
     */
    private static boolean isCut(List<Reading> twins) {
        long cut = twins.stream().filter(r -> r.flags().contains(ReadingFlag.CLIPPED)).count();
        return cut > CUT * twins.size();
    }

    private static List<Lab> kept(List<Reading> all, boolean relative) {
        List<Lab> labs = new ArrayList<>();
        for (Reading reading : Undoubted.of(all)) {
            Lab lab = colour(reading, relative);
            if (lab != null) {
                labs.add(lab);
            }
        }
        return labs;
    }

    private static @Nullable Lab colour(Reading reading, boolean relative) {
        return relative ? reading.labRelative() : reading.lab();
    }

    Set<Rgb8> codes() {
        return readings.keySet();
    }

    /** How many readings a mean is of; 0 when the code is not there. */
    int count(Rgb8 code) {
        return all(code).size();
    }

    /** Mean colour of a code that is there. */
    Lab mean(Rgb8 code) {
        return Lab.mean(all(code));
    }

    private List<Lab> all(Rgb8 code) {
        return readings.getOrDefault(code, List.of()).stream().flatMap(List::stream).toList();
    }

    private static double mean(List<Lab> labs, ToDoubleFunction<Lab> value) {
        return labs.stream().mapToDouble(value).average().orElseThrow();
    }

    /** Degrees of freedom of {@link #deviation} within the same bounds. */
    int freedom(double fromL, double toL) {
        return readings.values().stream()
                .flatMap(List::stream)
                .filter(twins -> mean(twins, Lab::l) >= fromL && mean(twins, Lab::l) <= toL)
                .mapToInt(twins -> twins.size() - 1)
                .sum();
    }

    /**
     * Standard deviation of one reading among twins whose L* lies within bounds; NaN without twins.
     */
    double deviation(ToDoubleFunction<Lab> value, double fromL, double toL) {
        double squares = 0;
        int freedom = 0;
        for (List<List<Lab>> prints : readings.values()) {
            for (List<Lab> twins : prints) {
                double l = mean(twins, Lab::l);
                double middle = mean(twins, value);
                if (twins.size() > 1 && l >= fromL && l <= toL) {
                    squares +=
                            twins.stream()
                                    .mapToDouble(t -> Math.pow(value.applyAsDouble(t) - middle, 2))
                                    .sum();
                    freedom += twins.size() - 1;
                }
            }
        }
        return freedom == 0 ? Double.NaN : Math.sqrt(squares / freedom);
    }
}
