package org.printassay.measurement;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import org.printassay.colour.Lab;
import org.printassay.colour.Rgb8;
import org.printassay.colour.Xyz;
import org.printassay.problem.Problem;

/**
 * Numbers of a table to patches: finds the scales, computes CIELAB, notes what it did. Mutable:
 * {@link #take} first.
 */
final class PatchReader {
    static final Pattern NUMBER =
            Pattern.compile("[+-]?(\\d+([.,]\\d*)?|[.,]\\d+)([eE][+-]?\\d{1,3})?");

    /** A code this far from a whole number was not printed as 8 bits. */
    private static final double CODE_SLACK = 0.25;

    private static final double PERCENT = 2.55;
    private static final double FRACTION = 255;

    private final String name;
    private final TextTables.Table table;
    private final Columns columns;
    private final int id;
    private final List<String> notes;
    private final ValueScale scale = new ValueScale();
    private List<double[]> rgb = List.of();
    private List<double[]> labs = List.of();
    private List<double[]> xyzs = List.of();
    private List<double[]> spectra = List.of();
    private double codeScale = 1;

    /**
     * @param id column of the patch names, -1 where there is none
     */
    PatchReader(String name, TextTables.Table table, Columns columns, int id, List<String> notes) {
        this.name = name;
        this.table = table;
        this.columns = columns;
        this.id = id;
        this.notes = notes;
    }

    /**
     * Takes the numbers.
     *
     * @param chart the chart's patches by name, empty when no chart is known
     */
    PatchReader take(Map<String, Rgb8> chart) throws Problem {
        rgb = numbers(columns.rgb());
        labs = numbers(columns.lab());
        xyzs = numbers(columns.xyz());
        spectra = numbers(List.copyOf(columns.bands().values()));
        codeScale = columns.rgb().isEmpty() ? 1 : codeScale(rgb, Set.copyOf(chart.values()));
        for (int i = 0; i < table.rows().size(); i++) {
            String named = id < 0 ? "" : table.rows().get(i).cells().get(id);
            double value =
                    isSpectral()
                            ? ValueScale.middle(spectra.get(i))
                            : columns.xyz().isEmpty() ? 0 : xyzs.get(i)[1];
            double[] v = labs.get(i);
            scale.add(
                    value,
                    v.length > 0 ? new Lab(v[0], v[1], v[2]) : null,
                    columns.rgb().isEmpty() ? chart.get(named) : rounded(rgb.get(i), codeScale));
        }
        return this;
    }

    boolean isSpectral() {
        return !columns.bands().isEmpty();
    }

    /** Whether its values run to 100, by the header or by themselves; null where neither tells. */
    @Nullable Boolean hundred() throws Problem {
        String says = isSpectral() ? SpectralPairs.scaleKeyword(table.keywords()) : "";
        String norm = table.keywords().get(says);
        if (norm == null || !norm.matches("1(00)?([.,]0*)?")) {
            return scale.hundred();
        }
        boolean hundred = norm.startsWith("100");
        Boolean compared = scale.compared();
        if (compared != null && compared != hundred) {
            throw Problem.input(
                    name,
                    says
                            + " says that spectral values run to "
                            + (hundred ? "100" : "1")
                            + ", but beside codes or CIELAB they are "
                            + (hundred ? "fractions of 1" : "percent")
                            + ". Correct that line or export again.");
        }
        return hundred;
    }

    /**
     * The patches.
     *
     * @param hundred whether spectra or XYZ run to 100
     */
    List<RawPatch> read(boolean hundred) throws Problem {
        notes.add(columns.used(table.fields(), id));
        columns.again(table.fields()).ifPresent(notes::add);
        ColourMaker colours = new ColourMaker(notes);
        boolean spectral = isSpectral();
        if (spectral) {
            colours.bands(name, columns.bands().keySet());
            colours.spectralScale(hundred);
        } else if (!columns.xyz().isEmpty()) {
            colours.xyzScale(hundred);
        } else {
            colours.labAsStated();
        }
        if (spectral) {
            StatedLight.noteOnSpectra(table.keywords()).ifPresent(notes::add);
        } else {
            StatedLight.refuseOther(name, table.keywords());
        }
        List<RawPatch> patches = new ArrayList<>();
        int rounded = 0;
        for (int i = 0; i < table.rows().size(); i++) {
            TextTables.Row row = table.rows().get(i);
            double[] codes = rgb.get(i);
            rounded += isFractional(codes, codeScale) ? 1 : 0;
            double[] v = xyzs.get(i);
            double[] stated = labs.get(i);
            ColourMaker.Made made =
                    colours.make(
                            name + ", line " + row.line(),
                            spectra.get(i),
                            v.length > 0 ? new Xyz(v[0], v[1], v[2]) : null,
                            stated.length > 0 ? new Lab(stated[0], stated[1], stated[2]) : null);
            patches.add(
                    new RawPatch(
                            id < 0 ? "" : row.cells().get(id),
                            rgb8(row, codes, codeScale),
                            made.lab(),
                            made.xyz(),
                            made.spectrum(),
                            row.line()));
        }
        if (rounded > 0) {
            notes.add(
                    "RGB codes between whole numbers were rounded to 8 bits in patches: "
                            + rounded
                            + ".");
        }
        colours.noteDoubts();
        return patches;
    }

    /** Numbers of some columns, row by row; empty arrays when there are no such columns. */
    private List<double[]> numbers(List<Integer> which) throws Problem {
        List<double[]> all = new ArrayList<>();
        for (TextTables.Row row : table.rows()) {
            double[] values = new double[which.size()];
            for (int i = 0; i < which.size(); i++) {
                String cell = row.cells().get(which.get(i));
                if (!NUMBER.matcher(cell).matches()) {
                    throw bad(row, which.get(i), "is not a number. Correct it or measure again");
                }
                values[i] = Double.parseDouble(cell.replace(',', '.'));
                if (Math.abs(values[i]) > 1e6) {
                    throw bad(row, which.get(i), "is out of any sensible range. Correct it");
                }
            }
            all.add(values);
        }
        return all;
    }

    /** Factor from the file's RGB to 0-255: what fits the chart best, else what is likeliest. */
    private double codeScale(List<double[]> rgb, Set<Rgb8> chartCodes) {
        double max = rgb.stream().flatMapToDouble(Arrays::stream).max().orElse(0);
        if (max > 100) {
            return 1;
        }
        double scale = likeliestScale(rgb, max);
        for (double other : new double[] {1, PERCENT, FRACTION}) {
            if (known(rgb, other, chartCodes) > known(rgb, scale, chartCodes)) {
                scale = other;
            }
        }
        notes.add(
                scale == PERCENT
                        ? "RGB runs from 0 to 100 in the file and was taken as percent of 255."
                        : scale == FRACTION
                                ? "RGB runs from 0 to 1 in the file and was taken as a fraction of"
                                        + " 255."
                                : "No RGB value is above 100; they were taken as codes 0 to 255.");
        return scale;
    }

    private static double likeliestScale(List<double[]> rgb, double max) {
        boolean whole =
                rgb.stream().flatMapToDouble(Arrays::stream).allMatch(v -> v == Math.rint(v));
        if (max == 100 || (max > 1 && !whole)) {
            return PERCENT;
        }
        return max > 0 && (!whole || max == 1) ? FRACTION : 1;
    }

    /** How many rows have codes of the chart by a scale. */
    private static long known(List<double[]> rgb, double scale, Set<Rgb8> chartCodes) {
        return chartCodes.isEmpty()
                ? 0
                : rgb.stream()
                        .map(v -> rounded(v, scale))
                        .filter(Objects::nonNull)
                        .filter(chartCodes::contains)
                        .count();
    }

    private static @Nullable Rgb8 rounded(double[] codes, double scale) {
        int[] whole = new int[3];
        for (int i = 0; i < 3; i++) {
            whole[i] = (int) Math.round(codes[i] * scale);
            if (whole[i] < 0 || whole[i] > 255) {
                return null;
            }
        }
        return new Rgb8(whole[0], whole[1], whole[2]);
    }

    private static boolean isFractional(double[] codes, double scale) {
        boolean fractional = false;
        for (double code : codes) {
            double scaled = code * scale;
            fractional |= Math.abs(scaled - Math.rint(scaled)) > CODE_SLACK;
        }
        return fractional;
    }

    private @Nullable Rgb8 rgb8(TextTables.Row row, double[] codes, double scale) throws Problem {
        if (codes.length == 0) {
            return null;
        }
        Rgb8 rgb = rounded(codes, scale);
        for (int i = 0; rgb == null && i < 3; i++) {
            long code = Math.round(codes[i] * scale);
            if (code < 0 || code > 255) {
                throw bad(row, columns.rgb().get(i), "is outside 0 to 255. Correct it");
            }
        }
        return rgb;
    }

    private Problem bad(TextTables.Row row, int column, String what) {
        return Problem.input(
                name + ", line " + row.line(),
                String.format(
                        Locale.ROOT,
                        "'%s' in column %s %s.",
                        row.cells().get(column),
                        table.fields().get(column),
                        what));
    }
}
