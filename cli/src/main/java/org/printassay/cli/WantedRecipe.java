package org.printassay.cli;

import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.printassay.chart.Chart;
import org.printassay.chart.Charts;
import org.printassay.chart.Rolls;
import org.printassay.colour.Lab;
import org.printassay.colour.RgbSpace;
import org.printassay.problem.Problem;
import org.printassay.recipe.Design;
import org.printassay.recipe.DesignJson;
import org.printassay.recipe.Designs;
import org.printassay.recipe.Margins;
import org.printassay.recipe.PageSize;
import org.printassay.recipe.Part;
import org.printassay.recipe.PictureColours;
import org.printassay.recipe.Recipe;
import org.printassay.recipe.RecipeFile;
import org.printassay.recipe.RollWidth;

/**
 * The recipe that options ask for, and its chart.
 *
 * @param chart its first print
 * @param notes what the user should know, a line each
 */
record WantedRecipe(Recipe recipe, Chart chart, List<String> notes) {
    private static final int PICTURE_COLOURS = 24;

    WantedRecipe {
        notes = List.copyOf(notes);
    }

    /**
     * Reads and lays out.
     *
     * @param name of a design that comes with the tool, or of a file
     * @param pageText as typed, also the width of a roll
     * @param pageGiven whether the page was typed, so that it rules over that of a file
     * @param margins as typed
     * @param space where a file names none
     * @param spaceGiven whether the space was typed, so that it must not contradict a file
     * @param picture whose colours are added
     */
    static WantedRecipe of(
            String name,
            String pageText,
            boolean pageGiven,
            Optional<String> margins,
            RgbSpace space,
            boolean spaceGiven,
            Optional<Path> picture)
            throws Problem {
        Optional<RollWidth> roll = RollWidth.parse(pageText);
        PageSize page = roll.isPresent() ? roll.get().longest() : PageSize.parse(pageText);
        Optional<Recipe.Kind> kind =
                Recipe.Kind.ofKey(name).filter(known -> known != Recipe.Kind.EDITED);
        List<String> notes = new ArrayList<>();
        if (kind.isPresent()) {
            Margins edges = edges(margins, kind.get());
            Recipe recipe = Recipe.of(kind.get(), page, edges, space);
            if (picture.isPresent()) {
                if (kind.get() != Recipe.Kind.PAPER) {
                    throw Problem.usage(
                            "--colours-from goes with a recipe file, or makes a sheet of its own;"
                                    + " leave --recipe "
                                    + name
                                    + " away.");
                }
                Part own = own(picture.get(), space, notes);
                recipe = Recipe.edited(page, edges, space, Designs.ofPicture(own.colours()));
            }
            return made(recipe, roll.isPresent(), notes);
        }
        Path file = file(name);
        Margins usual = edges(Optional.empty(), Recipe.Kind.PAPER);
        RecipeFile.Read read = RecipeFile.read(file, Recipe.paper(page, usual, space));
        notes.addAll(read.notes());
        Recipe said = read.recipe();
        if (spaceGiven && said.space() != space) {
            throw Problem.usage(
                    "--space "
                            + space.key()
                            + " contradicts the recipe, which is for "
                            + said.space().key()
                            + ". Leave one of them away.");
        }
        Design design = said.edited();
        if (picture.isPresent()) {
            if (design == null) {
                throw Problem.usage("--colours-from needs a recipe of the kind \"edited\".");
            }
            List<Part> parts = new ArrayList<>(design.parts());
            parts.add(own(picture.get(), said.space(), notes));
            design = new Design(design.title(), parts);
        }
        Recipe recipe =
                new Recipe(
                        said.kind(),
                        pageGiven ? page : said.page(),
                        margins.isPresent() ? edges(margins, said.kind()) : said.margins(),
                        said.space(),
                        said.layoutVersion(),
                        design);
        try {
            return made(recipe, pageGiven ? roll.isPresent() : read.roll(), notes);
        } catch (Problem e) {
            throw RecipeFile.placed(file, e);
        }
    }

    private static Margins edges(Optional<String> typed, Recipe.Kind kind) throws Problem {
        return typed.isPresent() ? Margins.parse(typed.get()) : Margins.all(kind.usualMarginMm());
    }

    private static Path file(String name) throws Problem {
        try {
            Path file = Path.of(name);
            if (name.endsWith(".json") || Files.exists(file)) {
                return file;
            }
        } catch (InvalidPathException e) {
            // Told below: it is neither a name nor a file.
        }
        throw Problem.usage(
                "recipe \""
                        + PlainText.line(name)
                        + "\" is not known. Use "
                        + Stream.of(Recipe.Kind.values())
                                .filter(known -> known != Recipe.Kind.EDITED)
                                .map(Recipe.Kind::key)
                                .collect(Collectors.joining(", "))
                        + " or a recipe file.");
    }

    private static WantedRecipe made(Recipe recipe, boolean roll, List<String> notes)
            throws Problem {
        Recipe wanted = roll ? Rolls.shortest(recipe) : recipe;
        return new WantedRecipe(wanted, Charts.create(wanted, 1), notes);
    }

    private static Part own(Path picture, RgbSpace space, List<String> notes) throws Problem {
        String option = "--colours-from";
        List<Lab> colours = PictureColours.of(picture, PICTURE_COLOURS, option, space, notes);
        return DesignJson.own(option, colours, space, notes);
    }
}
