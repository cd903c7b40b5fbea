package org.printassay.scannercalibration;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.printassay.json.CheckedJson;
import org.printassay.problem.Problem;
import org.printassay.sheet.PointMm;
import org.printassay.sheet.RectMm;

/**
 * Where the patches of a reference target stand, {@code printassay/target/1}: grids of named rows
 * and columns, and single patches, in millimetres from any origin, x to the right and y down; four
 * corners that can be found in a scan.
 *
 * <pre>
 * {
 *   "schema": "printassay/target/1",
 *   "name": "Target 1",
 *   "corners": [[0, 0], [150, 0], [150, 100], [0, 100]],
 *   "grids": [
 *     {"rows": ["A", "B"], "columns": ["1", "2", "3"], "xMm": 10, "yMm": 10, "stepXMm": 6,
 *      "stepYMm": 6, "widthMm": 6, "heightMm": 6}
 *   ],
 *   "patches": [{"id": "Dmin", "xMm": 10, "yMm": 80, "widthMm": 6, "heightMm": 8}],
 *   "background": [{"xMm": 2, "yMm": 2, "widthMm": 5, "heightMm": 5}]
 * }
 * </pre>
 *
 * @param name of the target
 * @param corners top left, top right, bottom right, bottom left
 * @param patches all patches, by name
 * @param background areas of one colour, spread over the target, that show how even the light is
 */
record TargetLayout(
        String name, List<PointMm> corners, List<Place> patches, List<RectMm> background) {
    private static final int MOST_PATCHES = 5000;

    TargetLayout {
        corners = List.copyOf(corners);
        patches = List.copyOf(patches);
        background = List.copyOf(background);
    }

    /** Where a patch stands. */
    record Place(String id, RectMm area) {}

    /**
     * Reads a layout.
     *
     * @throws Problem input, when it cannot be read or is not valid
     */
    static TargetLayout read(Path file) throws Problem {
        String where = String.valueOf(file.getFileName());
        JsonNode root = CheckedJson.read(file, "target", 1);
        List<PointMm> corners = new ArrayList<>();
        for (JsonNode corner : root.path("corners")) {
            corners.add(new PointMm(corner.path(0).asDouble(), corner.path(1).asDouble()));
        }
        List<Place> places = new ArrayList<>();
        for (JsonNode grid : root.path("grids")) {
            int row = 0;
            for (JsonNode rowName : grid.path("rows")) {
                int column = 0;
                for (JsonNode columnName : grid.path("columns")) {
                    double x = grid.path("xMm").asDouble();
                    double y = grid.path("yMm").asDouble();
                    places.add(
                            new Place(
                                    rowName.asText() + columnName.asText(),
                                    new RectMm(
                                            x + column * grid.path("stepXMm").asDouble(),
                                            y + row * grid.path("stepYMm").asDouble(),
                                            grid.path("widthMm").asDouble(),
                                            grid.path("heightMm").asDouble())));
                    column++;
                    if (places.size() > MOST_PATCHES) {
                        throw Problem.input(
                                where, "has more than " + MOST_PATCHES + " patches. Use fewer.");
                    }
                }
                row++;
            }
        }
        for (JsonNode patch : root.path("patches")) {
            places.add(new Place(patch.path("id").asText(), area(patch)));
        }
        List<RectMm> background = new ArrayList<>();
        root.path("background").forEach(node -> background.add(area(node)));
        Set<String> ids = new HashSet<>();
        for (Place place : places) {
            if (!ids.add(place.id())) {
                throw Problem.input(
                        where, "names patch \"" + place.id() + "\" twice. Give each its own name.");
            }
        }
        if (area(corners) < 1) {
            throw Problem.input(
                    where,
                    "its corners do not go round clockwise from the top left. Put them in that"
                            + " order.");
        }
        return new TargetLayout(root.path("name").asText(), corners, places, background);
    }

    private static RectMm area(JsonNode node) {
        return new RectMm(
                node.path("xMm").asDouble(),
                node.path("yMm").asDouble(),
                node.path("widthMm").asDouble(),
                node.path("heightMm").asDouble());
    }

    /** Least area of the triangles that three corners make; positive when all go clockwise. */
    static double area(List<PointMm> corners) {
        double least = Double.POSITIVE_INFINITY;
        for (int i = 0; i < 4; i++) {
            PointMm a = corners.get(i);
            PointMm b = corners.get((i + 1) % 4);
            PointMm c = corners.get((i + 2) % 4);
            double twice = (b.x() - a.x()) * (c.y() - a.y()) - (b.y() - a.y()) * (c.x() - a.x());
            least = Math.min(least, twice / 2);
        }
        return least;
    }
}
