package org.printassay.calibrate;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Random;
import java.util.Set;
import org.printassay.calibrate.codes.PatchColour;
import org.printassay.colour.Lab;
import org.printassay.colour.Rgb8;
import org.printassay.colour.Xyz;
import org.printassay.reading.LabError;
import org.printassay.sheet.Patch;
import org.printassay.sheet.PointMm;
import org.printassay.sheet.Sheet;

/**
 * Colours that real routes make of the codes of the paper sheet: LittleCMS through free press
 * profiles, see the head of {@code press-routes.txt}. The spread of patches is made up.
 */
public final class PressRoutes {
    /** Spread of a patch, L*, a* and b*. */
    public static final double SPREAD = 0.25;

    private PressRoutes() {}

    /** By name, what each route from sRGB makes of each code, absolute. */
    public static Map<String, Map<Rgb8, Lab>> all() throws IOException {
        return from("srgb");
    }

    /** The same of another encoding: {@code srgb} or {@code adobe-rgb}. */
    public static Map<String, Map<Rgb8, Lab>> from(String space) throws IOException {
        Map<String, Map<Rgb8, Lab>> routes = new LinkedHashMap<>();
        InputStream in =
                Objects.requireNonNull(
                        PressRoutes.class.getResourceAsStream("/recorded/press-routes.txt"));
        try (BufferedReader lines =
                new BufferedReader(new InputStreamReader(in, StandardCharsets.UTF_8))) {
            for (String line = lines.readLine(); line != null; line = lines.readLine()) {
                String[] words = line.split(" ", -1);
                if (!words[0].equals(space)) {
                    continue;
                }
                double[] n = new double[words.length];
                for (int i = 2; i < n.length; i++) {
                    n[i] = Double.parseDouble(words[i]);
                }
                routes.computeIfAbsent(words[1], k -> new HashMap<>())
                        .put(
                                new Rgb8((int) n[2], (int) n[3], (int) n[4]),
                                new Lab(n[5], n[6], n[7]));
            }
        }
        return routes;
    }

    /** What happens to a colour at a place. */
    public interface Change {
        Lab at(PointMm place, Lab lab);
    }

    /** A print of a sheet by a route, as it would be read. */
    public static List<PatchColour> printed(
            Sheet sheet, Map<Rgb8, Lab> route, long seed, Change change) {
        Random random = new Random(seed);
        List<PatchColour> colours = new ArrayList<>();
        for (Patch patch : sheet.patches()) {
            Lab lab = Objects.requireNonNull(route.get(patch.rgb()), patch.rgb().toString());
            Lab varied =
                    new Lab(
                            lab.l() + SPREAD * random.nextGaussian(),
                            lab.a() + SPREAD * random.nextGaussian(),
                            lab.b() + SPREAD * random.nextGaussian());
            colours.add(colour(patch, change.at(patch.area().centre(), varied), paper(route)));
        }
        return colours;
    }

    public static Lab paper(Map<Rgb8, Lab> route) {
        return Objects.requireNonNull(route.get(Rgb8.grey(255)));
    }

    /** A patch that reads as a colour. */
    public static PatchColour colour(Patch patch, Lab lab, Lab paper) {
        Xyz white = Xyz.PCS_WHITE;
        Xyz xyz = lab.toXyz(white);
        Xyz bare = paper.toXyz(white);
        Xyz relative =
                new Xyz(
                        xyz.x() / bare.x() * white.x(),
                        xyz.y() / bare.y() * white.y(),
                        xyz.z() / bare.z() * white.z());
        LabError error = new LabError(0.05, 0.05, 0.05);
        return new PatchColour(patch, 1, xyz, relative, xyz.y(), error, List.of(), 0, Set.of());
    }
}
