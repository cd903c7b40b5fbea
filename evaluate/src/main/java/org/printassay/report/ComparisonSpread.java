package org.printassay.report;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Path;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.printassay.compare.EarlierSpread;
import org.printassay.compare.Figure;
import org.printassay.compare.Manner;
import org.printassay.compare.PrintSpread;
import org.printassay.json.CheckedJson;
import org.printassay.problem.Problem;

/** The spread between prints out of a {@code comparison.json}. */
public final class ComparisonSpread {
    private ComparisonSpread() {}

    /**
     * The spread between prints that an earlier comparison with repeats saw.
     *
     * @throws Problem input, when the file cannot be read, is of another version or not valid, or
     *     saw no repeats
     */
    public static EarlierSpread read(Path file) throws Problem {
        JsonNode root = CheckedJson.read(file, "comparison", ComparisonJson.SCHEMA_VERSION);
        Map<Figure, Double> deviations = new EnumMap<>(Figure.class);
        Map<Figure, Integer> freedoms = new EnumMap<>(Figure.class);
        for (JsonNode entry : root.path("spread")) {
            Optional<Figure> figure = Figure.ofKey(entry.path("figure").asText());
            if (figure.isPresent()) {
                deviations.put(figure.get(), entry.path("deviation").asDouble());
                if (entry.path("freedom").isInt()) {
                    freedoms.put(figure.get(), entry.path("freedom").asInt());
                }
            }
        }
        String where = String.valueOf(file.getFileName());
        if (deviations.isEmpty()) {
            throw Problem.input(
                    where,
                    "holds no spread between prints: its papers had one print each. Name a"
                            + " comparison of several prints a paper.");
        }
        return new EarlierSpread(
                where, new PrintSpread(deviations, freedoms), repeats(root), manner(root));
    }

    private static Set<String> repeats(JsonNode root) {
        Set<String> sums = new HashSet<>();
        for (JsonNode side : root.path("sides")) {
            if (side.path("prints").size() > 1) {
                for (JsonNode print : side.path("prints")) {
                    print.path("files").forEach(f -> sums.add(f.path("sha256").asText()));
                }
            }
        }
        return sums;
    }

    private static Manner manner(JsonNode root) {
        JsonNode judged = root.path("judged");
        return new Manner(
                JsonIn.text(root.path("sides").path(0).path("trust")),
                JsonIn.text(judged.path("space")),
                JsonIn.decimal(judged.path("threshold")),
                JsonIn.text(judged.path("aim")));
    }
}
