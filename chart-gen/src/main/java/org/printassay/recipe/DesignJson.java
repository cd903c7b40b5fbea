package org.printassay.recipe;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.StringJoiner;
import org.jspecify.annotations.Nullable;
import org.printassay.colour.Lab;
import org.printassay.colour.NearestCodes;
import org.printassay.colour.Rgb8;
import org.printassay.colour.RgbSpace;
import org.printassay.problem.Problem;

/**
 * The sections of an edited recipe as JSON, read from files that are valid by the published schema,
 * and written with every value stated and every own colour as codes.
 */
public final class DesignJson {
    /** Sections that are one picture, not patches in rows. */
    private static final Set<Part.What> PICTURES =
            EnumSet.of(Part.What.STRAY_LIGHT, Part.What.EDGES, Part.What.VIGNETTES);

    private static final String USUAL_TITLE = "Edited sheet";
    private static final double USUAL_PATCH_MM = 6.5;
    private static final double TINT_WIDTH_MM = 10;
    private static final double TINT_LENGTH_MM = 120;
    private static final int USUAL_PICTURE_COLOURS = 24;

    private final RgbSpace space;
    private final @Nullable Path folder;
    private final List<String> notes;

    private DesignJson(RgbSpace space, @Nullable Path folder, List<String> notes) {
        this.space = space;
        this.folder = folder;
        this.notes = notes;
    }

    /**
     * The design that a recipe or a chart file states.
     *
     * @param file the object that has {@code title} and {@code sections}
     * @param folder pictures are looked for there; null where none may be named
     * @param notes filled with what the user should know, such as colours outside the encoding
     * @throws Problem usage, with the place in the file first, when sections contradict the rules
     */
    public static Design read(
            JsonNode file, RgbSpace space, @Nullable Path folder, List<String> notes)
            throws Problem {
        DesignJson reader = new DesignJson(space, folder, notes);
        List<Part> parts = new ArrayList<>();
        JsonNode sections = file.path("sections");
        int strayLight = 0;
        for (int i = 0; i < sections.size(); i++) {
            Part part = reader.part("/sections/" + i, sections.path(i));
            strayLight += part.what() == Part.What.STRAY_LIGHT ? 1 : 0;
            if (strayLight > 1) {
                throw Problem.usage("/sections/" + i + ": stray-light can be there once only.");
            }
            parts.add(part);
        }
        return new Design(file.path("title").asText(USUAL_TITLE), parts);
    }

    private Part part(String at, JsonNode json) throws Problem {
        Part.What what = Part.What.ofKey(json.path("section").asText()).orElseThrow();
        boolean tints = what == Part.What.TINTS;
        double width = tints ? TINT_WIDTH_MM : USUAL_PATCH_MM;
        double height = tints ? TINT_LENGTH_MM : USUAL_PATCH_MM;
        JsonNode size = json.path("patchMm");
        if (size.isNumber()) {
            width = size.asDouble();
            height = tints ? height : width;
        } else if (size.isArray()) {
            width = size.path(0).asDouble();
            height = size.path(1).asDouble();
        }
        if (PICTURES.contains(what)) {
            // Chart files say one copy of everything.
            if (json.path("copies").asInt(1) != 1) {
                refuse(at, json, what, List.of("copies"));
            }
            refuse(at, json, what, List.of("columns"));
            if (width != height) {
                throw Problem.usage(
                        at
                                + "/patchMm: the section "
                                + what.key()
                                + " is drawn in squares: give one"
                                + " number.");
            }
        }
        List<Rgb8> colours = List.of();
        if (what == Part.What.OWN) {
            colours = colours(at, json);
        } else {
            refuse(at, json, what, List.of("rgb", "lab", "picture"));
        }
        Part.Place place = null;
        if (json.has("atMm")) {
            place =
                    new Part.Place(
                            json.path("sheet").asInt(1),
                            json.path("atMm").path(0).asDouble(),
                            json.path("atMm").path(1).asDouble());
        } else if (json.has("sheet")) {
            throw Problem.usage(at + "/sheet: needs a place on that sheet, atMm.");
        }
        return new Part(
                what,
                json.path("copies").asInt(1),
                width,
                height,
                json.path("columns").asInt(0),
                amount(at, json, what),
                json.path("every").asInt(0),
                colours,
                place);
    }

    private static int amount(String at, JsonNode json, Part.What what) throws Problem {
        boolean wedge = what == Part.What.SHADOWS || what == Part.What.HIGHLIGHTS;
        boolean steps = what == Part.What.NEUTRAL_RAMP || what == Part.What.CUBE;
        refuse(at, json, what, wedge ? List.of("steps") : List.of("reach", "every"));
        if (!wedge && !steps) {
            refuse(at, json, what, List.of("steps"));
        }
        int amount = json.path(wedge ? "reach" : "steps").asInt(what.amount());
        if (what == Part.What.CUBE && amount > 9) {
            throw Problem.usage(at + "/steps: the edge of the cube has 2 to 9 steps.");
        }
        return amount;
    }

    private static void refuse(String at, JsonNode json, Part.What what, List<String> names)
            throws Problem {
        for (String name : names) {
            if (json.has(name)) {
                throw Problem.usage(
                        at + "/" + name + ": has no meaning in the section " + what.key() + ".");
            }
        }
    }

    private List<Rgb8> colours(String at, JsonNode json) throws Problem {
        int lists = 0;
        for (String name : List.of("rgb", "lab", "picture")) {
            lists += json.has(name) ? 1 : 0;
        }
        if (lists != 1) {
            throw Problem.usage(at + ": own colours need one of rgb, lab and picture.");
        }
        if (json.has("rgb")) {
            List<Rgb8> colours = new ArrayList<>();
            for (JsonNode rgb : json.path("rgb")) {
                colours.add(
                        new Rgb8(rgb.path(0).asInt(), rgb.path(1).asInt(), rgb.path(2).asInt()));
            }
            return colours;
        }
        List<Lab> labs = new ArrayList<>();
        if (json.has("lab")) {
            for (JsonNode lab : json.path("lab")) {
                labs.add(
                        new Lab(
                                lab.path(0).asDouble(),
                                lab.path(1).asDouble(),
                                lab.path(2).asDouble()));
            }
        } else {
            JsonNode picture = json.path("picture");
            if (folder == null) {
                throw Problem.usage(at + "/picture: a chart file states colours, no picture.");
            }
            labs =
                    PictureColours.of(
                            file(at, folder, picture.path("file").asText()),
                            picture.path("colours").asInt(USUAL_PICTURE_COLOURS),
                            at,
                            space,
                            notes);
        }
        return codes(at, labs);
    }

    private static Path file(String at, Path folder, String name) throws Problem {
        try {
            return folder.resolve(name);
        } catch (InvalidPathException e) {
            throw Problem.usage(at + "/picture/file: is not the name of a file.");
        }
    }

    /**
     * A section of own colours.
     *
     * @param at named in notes
     * @param notes filled as in {@link #read}
     */
    public static Part own(String at, List<Lab> labs, RgbSpace space, List<String> notes) {
        List<Rgb8> colours = new DesignJson(space, null, notes).codes(at, labs);
        return Part.of(Part.What.OWN, 1, USUAL_PATCH_MM, 0).withColours(colours);
    }

    /** Codes of Lab colours; those that the encoding cannot hold are told. */
    private List<Rgb8> codes(String at, List<Lab> labs) {
        List<Rgb8> colours = new ArrayList<>();
        StringJoiner outside = new StringJoiner(", ");
        int count = 0;
        double worst = 0;
        for (int i = 0; i < labs.size(); i++) {
            NearestCodes nearest = NearestCodes.of(space, labs.get(i));
            colours.add(nearest.rgb());
            if (nearest.outside()) {
                count++;
                worst = Math.max(worst, nearest.deltaE00());
                if (count <= 10) {
                    outside.add(String.valueOf(i + 1));
                }
            }
        }
        if (count > 0) {
            notes.add(
                    String.format(
                            Locale.ROOT,
                            "%s: %d of %d colours lie outside %s and were moved to its surface, by"
                                    + " up to %.1f dE00 (colour %s%s).",
                            at,
                            count,
                            labs.size(),
                            space.title(),
                            worst,
                            outside,
                            count > 10 ? ", ..." : ""));
        }
        return colours;
    }

    /** The members of a design, {@code "title"} and {@code "sections"}, one section a line. */
    public static String write(Design design, String indent) {
        StringJoiner lines = new StringJoiner(",\n");
        for (Part part : design.parts()) {
            lines.add(indent + "  " + write(part));
        }
        return indent
                + "\"title\": \""
                + design.title()
                + "\",\n"
                + indent
                + "\"sections\": [\n"
                + lines
                + "\n"
                + indent
                + "]";
    }

    private static String write(Part part) {
        StringBuilder text = new StringBuilder("{\"section\": \"" + part.what().key() + "\"");
        text.append(", \"copies\": ").append(part.copies());
        text.append(", \"patchMm\": [")
                .append(PageSize.plain(part.patchWidthMm()))
                .append(", ")
                .append(PageSize.plain(part.patchHeightMm()))
                .append("]");
        if (part.columns() > 0) {
            text.append(", \"columns\": ").append(part.columns());
        }
        if (part.amount() > 0) {
            boolean wedge = part.what() == Part.What.SHADOWS || part.what() == Part.What.HIGHLIGHTS;
            text.append(wedge ? ", \"reach\": " : ", \"steps\": ").append(part.amount());
        }
        if (part.every() > 0) {
            text.append(", \"every\": ").append(part.every());
        }
        if (part.what() == Part.What.OWN) {
            StringJoiner colours = new StringJoiner(", ");
            for (Rgb8 rgb : part.colours()) {
                colours.add("[" + rgb.r() + ", " + rgb.g() + ", " + rgb.b() + "]");
            }
            text.append(", \"rgb\": [").append(colours).append("]");
        }
        Part.Place place = part.place();
        if (place != null) {
            text.append(", \"sheet\": ")
                    .append(place.sheet())
                    .append(", \"atMm\": [")
                    .append(PageSize.plain(place.xMm()))
                    .append(", ")
                    .append(PageSize.plain(place.yMm()))
                    .append("]");
        }
        return text.append("}").toString();
    }
}
