package org.printassay.recipe;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import org.printassay.colour.RgbSpace;
import org.printassay.json.CheckedJson;
import org.printassay.problem.Problem;

/**
 * Recipes as JSON that a person edits, {@code printassay/recipe/1}:
 *
 * <pre>
 * {
 *   "schema": "printassay/recipe/1",
 *   "kind": "paper",
 *   "page": "A4",
 *   "marginsMm": [12],
 *   "space": "srgb"
 * }
 * </pre>
 *
 * The kind {@code edited} has {@code sections} besides; the published schema tells them all.
 */
public final class RecipeFile {
    private static final int SCHEMA_VERSION = 1;

    /** Thousands of own colours stay far below; a larger file is refused before it is read. */
    private static final long LARGEST_BYTES = 4L << 20;

    private static final Pattern SECTION = Pattern.compile("/sections/\\d+");

    private RecipeFile() {}

    /**
     * A recipe that was read.
     *
     * @param recipe what it says
     * @param roll whether it names the width of a roll alone: the page is as long as can be
     * @param notes what the user should know, such as colours outside the encoding
     */
    public record Read(Recipe recipe, boolean roll, List<String> notes) {
        public Read {
            notes = List.copyOf(notes);
        }
    }

    /**
     * Reads a recipe.
     *
     * @param fallback page, margins and space where the file names none
     * @throws Problem input, when it cannot be read or is not a valid recipe
     */
    public static Read read(Path file, Recipe fallback) throws Problem {
        String where = String.valueOf(file.getFileName());
        JsonNode json = CheckedJson.read(file, "recipe", SCHEMA_VERSION, LARGEST_BYTES);
        Path folder = file.toAbsolutePath().getParent();
        try {
            return recipe(where, json, folder, fallback);
        } catch (Problem e) {
            throw placed(file, e);
        }
    }

    /** As {@link #read}, of text already in memory; {@code where} is for messages. */
    public static Recipe parse(String where, String text, Recipe fallback) throws Problem {
        byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
        JsonNode json = CheckedJson.parse(where, bytes, "recipe", SCHEMA_VERSION);
        return recipe(where, json, null, fallback).recipe();
    }

    /**
     * A problem with what a recipe asks for, told as one of its file: with the line of the section
     * that it names.
     */
    public static Problem placed(Path file, Problem problem) {
        String text = String.valueOf(problem.getMessage());
        Matcher section = SECTION.matcher(text);
        if (problem.kind() == Problem.Kind.CHART || problem.kind() == Problem.Kind.OUTPUT) {
            return problem;
        }
        String where = String.valueOf(file.getFileName());
        String what = problem.where().equals(where) ? problem.what() : text;
        String line = section.find() ? CheckedJson.line(file, section.group()) : "";
        return Problem.input(where + line, what);
    }

    /** The text of a recipe; the same recipe always gives the same text. */
    public static String write(Recipe recipe) throws Problem {
        Recipe plain = recipe.canonical();
        Margins margins = plain.margins();
        Design edited = plain.edited();
        String edges = PageSize.plain(margins.top());
        if (!margins.isEven()) {
            edges =
                    String.join(
                            ", ",
                            edges,
                            PageSize.plain(margins.right()),
                            PageSize.plain(margins.bottom()),
                            PageSize.plain(margins.left()));
        }
        return String.join(
                "\n",
                "{",
                "  \"schema\": \"printassay/recipe/" + SCHEMA_VERSION + "\",",
                "  \"kind\": \"" + plain.kind().key() + "\",",
                "  \"page\": \"" + plain.page().name() + "\",",
                "  \"marginsMm\": [" + edges + "],",
                "  \"space\": \"" + plain.space().key() + "\",",
                "  \"layoutVersion\": " + plain.layoutVersion() + (edited == null ? "" : ","),
                (edited == null ? "" : DesignJson.write(edited, "  ") + "\n") + "}",
                "");
    }

    private static Read recipe(String where, JsonNode file, @Nullable Path folder, Recipe fallback)
            throws Problem {
        Recipe.Kind kind = Recipe.Kind.ofKey(file.path("kind").asText()).orElseThrow();
        int version = file.path("layoutVersion").asInt(kind.currentLayout());
        if (version > kind.currentLayout()) {
            throw Problem.input(
                    where,
                    "asks for layout version "
                            + version
                            + "; this printassay knows up to "
                            + kind.currentLayout()
                            + ". Leave layoutVersion out or update printassay.");
        }
        try {
            String pageText = file.path("page").asText();
            RollWidth roll = RollWidth.parse(pageText).orElse(null);
            PageSize page =
                    roll != null
                            ? roll.longest()
                            : file.has("page") ? PageSize.parse(pageText) : fallback.page();
            Margins margins =
                    kind == Recipe.Kind.SHORT && fallback.kind() != kind
                            ? Margins.all(kind.usualMarginMm())
                            : fallback.margins();
            if (file.has("marginsMm")) {
                List<Double> values = new ArrayList<>();
                file.path("marginsMm").forEach(value -> values.add(value.asDouble()));
                margins = Margins.of(values);
            }
            RgbSpace space =
                    file.has("space")
                            ? RgbSpace.ofKey(file.path("space").asText()).orElseThrow()
                            : fallback.space();
            boolean edited = kind == Recipe.Kind.EDITED;
            if (edited != file.has("sections") || (!edited && file.has("title"))) {
                throw Problem.usage(
                        edited
                                ? "an edited recipe needs its \"sections\"."
                                : "\"sections\" and \"title\" belong to the kind \"edited\".");
            }
            List<String> notes = new ArrayList<>();
            Design design = edited ? DesignJson.read(file, space, folder, notes) : null;
            return new Read(
                    new Recipe(kind, page, margins, space, version, design), roll != null, notes);
        } catch (Problem e) {
            throw Problem.input(where, String.valueOf(e.getMessage()));
        }
    }
}
