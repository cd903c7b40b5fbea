package org.printassay.recipe;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
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
 */
public final class RecipeFile {
    private static final int SCHEMA_VERSION = 1;

    private RecipeFile() {}

    /**
     * Reads a recipe.
     *
     * @param fallback page, margins and space where the file names none
     * @throws Problem input, when it cannot be read or is not a valid recipe
     */
    public static Recipe read(Path file, Recipe fallback) throws Problem {
        String where = String.valueOf(file.getFileName());
        return recipe(where, CheckedJson.read(file, "recipe", SCHEMA_VERSION), fallback);
    }

    /** As {@link #read}, of text already in memory; {@code where} is for messages. */
    public static Recipe parse(String where, String text, Recipe fallback) throws Problem {
        byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
        return recipe(where, CheckedJson.parse(where, bytes, "recipe", SCHEMA_VERSION), fallback);
    }

    /** The text of a recipe; the same recipe always gives the same text. */
    public static String write(Recipe recipe) throws Problem {
        Recipe plain = recipe.canonical();
        Margins margins = plain.margins();
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
                "  \"layoutVersion\": " + plain.layoutVersion(),
                "}",
                "");
    }

    private static Recipe recipe(String where, JsonNode file, Recipe fallback) throws Problem {
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
            PageSize page =
                    file.has("page") ? PageSize.parse(file.path("page").asText()) : fallback.page();
            Margins margins = fallback.margins();
            if (file.has("marginsMm")) {
                List<Double> values = new ArrayList<>();
                file.path("marginsMm").forEach(value -> values.add(value.asDouble()));
                margins = Margins.of(values);
            }
            RgbSpace space =
                    file.has("space")
                            ? RgbSpace.ofKey(file.path("space").asText()).orElseThrow()
                            : fallback.space();
            return new Recipe(kind, page, margins, space, version);
        } catch (Problem e) {
            throw Problem.input(where, String.valueOf(e.getMessage()));
        }
    }
}
