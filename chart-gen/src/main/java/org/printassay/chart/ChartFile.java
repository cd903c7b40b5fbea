package org.printassay.chart;

import com.fasterxml.jackson.core.io.JsonStringEncoder;
import com.fasterxml.jackson.databind.JsonNode;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.regex.Matcher;
import org.printassay.colour.RgbSpace;
import org.printassay.json.CheckedJson;
import org.printassay.problem.Problem;
import org.printassay.recipe.DesignJson;
import org.printassay.recipe.Margins;
import org.printassay.recipe.PageSize;
import org.printassay.recipe.Recipe;

/**
 * The chart file, {@code chart.json}: everything about a chart that a reader or a script needs. The
 * chart is rebuilt from its recipe on reading; a file that says something else is refused, because
 * a reading at a place where no patch stands would be believed.
 */
public final class ChartFile {
    /** Version of the schema that is written and read. */
    public static final int SCHEMA_VERSION = 1;

    private ChartFile() {}

    /** The text of a chart's file; the same chart always gives the same text. */
    public static String write(Chart chart) {
        return ChartText.of(chart);
    }

    /**
     * As {@link #write(Chart)}, with the route that the print is to take: program, profile, intent,
     * driver settings. It belongs to the print, not to the design, and changes no checksum.
     */
    public static String write(Chart chart, Optional<String> route) {
        if (route.isEmpty()) {
            return write(chart);
        }
        String quoted = String.valueOf(JsonStringEncoder.getInstance().quoteAsString(route.get()));
        return write(chart)
                .replaceFirst(
                        "\n  \"checksum\"",
                        Matcher.quoteReplacement(
                                "\n  \"route\": \"" + quoted + "\",\n  \"checksum\""));
    }

    /**
     * The route that a chart file keeps; empty when none was said.
     *
     * @throws Problem as {@link #read(Path)}
     */
    public static Optional<String> route(Path file) throws Problem {
        JsonNode route = CheckedJson.read(file, "chart", SCHEMA_VERSION).path("route");
        return route.isTextual() ? Optional.of(route.asText()) : Optional.empty();
    }

    /**
     * Reads a chart file.
     *
     * @throws Problem input, when it cannot be read, is not a valid chart file of this version, or
     *     does not agree with the chart that its recipe makes
     */
    public static Chart read(Path file) throws Problem {
        return chart(
                String.valueOf(file.getFileName()),
                CheckedJson.read(file, "chart", SCHEMA_VERSION));
    }

    /** As {@link #read(Path)}, of text already in memory; {@code where} is for messages. */
    public static Chart parse(String where, String text) throws Problem {
        byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
        return chart(where, CheckedJson.parse(where, bytes, "chart", SCHEMA_VERSION));
    }

    private static Chart chart(String where, JsonNode file) throws Problem {
        Recipe recipe = recipe(where, file.path("recipe"));
        Chart chart;
        try {
            chart = Charts.create(recipe, file.path("print").asInt());
        } catch (Problem e) {
            throw Problem.input(where, String.valueOf(e.getMessage()));
        }
        String own = write(chart);
        byte[] bytes = own.getBytes(StandardCharsets.UTF_8);
        JsonNode expected = CheckedJson.parse(where, bytes, "chart", SCHEMA_VERSION);
        List<String> path = new ArrayList<>();
        if (differ(expected, file, path)) {
            throw Problem.input(
                    where,
                    "does not agree with the chart that its recipe makes (first at /"
                            + String.join("/", path)
                            + "). It was changed by hand or is damaged: write it again with the"
                            + " same recipe.");
        }
        return chart;
    }

    private static Recipe recipe(String where, JsonNode recipe) throws Problem {
        Recipe.Kind kind = Recipe.Kind.ofKey(recipe.path("kind").asText()).orElseThrow();
        int version = recipe.path("layoutVersion").asInt();
        if (version > kind.currentLayout()) {
            throw Problem.input(
                    where, "was made by a newer printassay (layout version " + version + ").");
        }
        JsonNode page = recipe.path("page");
        JsonNode margins = recipe.path("marginsMm");
        RgbSpace space = RgbSpace.ofKey(recipe.path("space").asText()).orElseThrow();
        try {
            return new Recipe(
                    kind,
                    PageSize.of(page.path("widthMm").asDouble(), page.path("heightMm").asDouble()),
                    Margins.of(
                            List.of(
                                    margins.path("top").asDouble(),
                                    margins.path("right").asDouble(),
                                    margins.path("bottom").asDouble(),
                                    margins.path("left").asDouble())),
                    space,
                    version,
                    kind == Recipe.Kind.EDITED
                            ? DesignJson.read(recipe, space, null, new ArrayList<>())
                            : null);
        } catch (Problem e) {
            throw Problem.input(where, String.valueOf(e.getMessage()));
        }
    }

    /**
     * Whether a file lacks or contradicts something; what it has beyond that is ignored.
     *
     * @param path filled with the way to the first difference
     */
    private static boolean differ(JsonNode expected, JsonNode found, List<String> path) {
        if (expected.isObject()) {
            for (String name : (Iterable<String>) expected::fieldNames) {
                path.add(name);
                if (differ(expected.path(name), found.path(name), path)) {
                    return true;
                }
                path.remove(path.size() - 1);
            }
            return false;
        }
        if (expected.isArray()) {
            int count = Math.max(expected.size(), found.size());
            for (int i = 0; i < count; i++) {
                path.add(String.valueOf(i));
                if (differ(expected.path(i), found.path(i), path)) {
                    return true;
                }
                path.remove(path.size() - 1);
            }
            return false;
        }
        if (expected.isNumber() && found.isNumber()) {
            return expected.decimalValue().compareTo(found.decimalValue()) != 0;
        }
        return !Objects.equals(expected, found);
    }
}
