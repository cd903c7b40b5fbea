package org.printassay.measurement;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.printassay.problem.Problem;

/**
 * Lines of three numbers and nothing else: CIELAB typed in reading order, with or without names in
 * front.
 */
final class TypedList {
    private static final int NUMBERS = 3;

    private TypedList() {}

    /**
     * The list as a table; empty when the text is something else.
     *
     * @param name of the file, for people
     * @throws Problem when it begins like a list and a line has more or fewer values
     */
    static Optional<TextTables.Table> read(String name, List<String> lines) throws Problem {
        boolean commaSeparates = Words.commasBetweenNumbers(lines);
        List<TextTables.Row> rows = new ArrayList<>();
        int columns = 0;
        for (int i = 0; i < lines.size(); i++) {
            List<String> words = Words.of(lines.get(i), commaSeparates);
            if (words.isEmpty()) {
                continue;
            }
            columns = columns == 0 ? words.size() : columns;
            if (rows.isEmpty() && (!endsInNumbers(words) || columns > NUMBERS + 1)) {
                return Optional.empty();
            }
            if (words.size() != columns) {
                throw Problem.input(
                        place(name, i),
                        words.size()
                                + " values where the lines before have "
                                + columns
                                + ". Type L* a* b* of one patch a line.");
            }
            rows.add(new TextTables.Row(i + 1, words));
            if (rows.size() > TextTables.MAX_ROWS) {
                throw Problem.input(place(name, i), "more than " + TextTables.MAX_ROWS + " rows.");
            }
        }
        if (rows.isEmpty()) {
            return Optional.empty();
        }
        List<String> fields = new ArrayList<>(List.of("LAB_L", "LAB_A", "LAB_B"));
        if (columns > NUMBERS) {
            fields.add(0, "ID");
        }
        return Optional.of(new TextTables.Table(List.copyOf(fields), List.copyOf(rows), Map.of()));
    }

    private static boolean endsInNumbers(List<String> words) {
        return words.size() >= NUMBERS
                && words.subList(words.size() - NUMBERS, words.size()).stream()
                        .allMatch(word -> PatchReader.NUMBER.matcher(word).matches());
    }

    private static String place(String name, int index) {
        return name + ", line " + (index + 1);
    }
}
