package org.printassay.chart;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.printassay.colour.Lab;
import org.printassay.colour.Rgb8;
import org.printassay.colour.RgbSpace;
import org.printassay.problem.Problem;
import org.printassay.recipe.Margins;
import org.printassay.recipe.PageSize;
import org.printassay.recipe.Recipe;
import org.printassay.sheet.Artwork;
import org.printassay.sheet.Patch;
import org.printassay.sheet.PointMm;
import org.printassay.sheet.RectMm;
import org.printassay.sheet.Section;
import org.printassay.sheet.Sheet;

/** What the sheet must hold is counted here from the words of the design, not from the code. */
class PaperSheetContentTest {
    private static List<Patch> patches(RgbSpace space) throws Problem {
        Recipe recipe = Recipe.paper(PageSize.parse("A4"), Margins.all(12), space);
        return Charts.create(recipe).sheets().get(0).patches();
    }

    private static List<Patch> patches(Section section, RgbSpace space) throws Problem {
        return patches(space).stream().filter(patch -> patch.section() == section).toList();
    }

    private static Map<Rgb8, Long> counts(List<Patch> patches) {
        return patches.stream()
                .collect(Collectors.groupingBy(Patch::rgb, TreeMap::new, Collectors.counting()));
    }

    @Test
    void everyShadowLevelFourTimes() throws Problem {
        Map<Rgb8, Long> counts = counts(patches(Section.SHADOWS, RgbSpace.SRGB));
        Set<Rgb8> wanted = new TreeSet<>();
        for (int level = 0; level <= 24; level++) {
            wanted.add(Rgb8.grey(level));
        }
        for (int level = 26; level <= 48; level += 2) {
            wanted.add(Rgb8.grey(level));
        }
        assertEquals(wanted, counts.keySet());
        assertEquals(Set.of(4L), new HashSet<>(counts.values()));
    }

    @Test
    void everyHighlightLevelFourTimes() throws Problem {
        Map<Rgb8, Long> counts = counts(patches(Section.HIGHLIGHTS, RgbSpace.SRGB));
        Set<Rgb8> wanted = new TreeSet<>();
        for (int level = 231; level <= 255; level++) {
            wanted.add(Rgb8.grey(level));
        }
        for (int level = 207; level <= 229; level += 2) {
            wanted.add(Rgb8.grey(level));
        }
        assertEquals(wanted, counts.keySet());
        assertEquals(Set.of(4L), new HashSet<>(counts.values()));
    }

    /** Half a code in a space's steepest part is worth at most this much L*. */
    @ParameterizedTest
    @EnumSource(RgbSpace.class)
    void neutralRampIsEvenInLightnessAndTwinned(RgbSpace space) throws Problem {
        Map<Rgb8, Long> counts = counts(patches(Section.NEUTRAL_RAMP, space));
        assertEquals(33, counts.size());
        assertEquals(Set.of(2L), new HashSet<>(counts.values()));
        int step = 0;
        for (Rgb8 rgb : counts.keySet()) {
            assertTrue(rgb.isNeutral());
            double halfCode =
                    Math.abs(
                            space.toLab(Rgb8.grey(Math.min(255, rgb.g() + 1))).l()
                                    - space.toLab(Rgb8.grey(Math.max(0, rgb.g() - 1))).l());
            assertEquals(100.0 * step / 32, space.toLab(rgb).l(), 0.26 * halfCode + 0.02);
            step++;
        }
    }

    @Test
    void cubeSurfaceHasNinetyEightColours() throws Problem {
        Set<Rgb8> colours = counts(patches(Section.CUBE, RgbSpace.SRGB)).keySet();
        assertEquals(98, colours.size());
        for (Rgb8 rgb : colours) {
            Set<Integer> codes = Set.of(0, 255);
            assertTrue(
                    codes.contains(rgb.r()) || codes.contains(rgb.g()) || codes.contains(rgb.b()),
                    rgb + " lies inside the cube");
        }
    }

    @Test
    void hueRampsAddStepsBetweenThoseOfTheCube() throws Problem {
        Set<Rgb8> ramps = counts(patches(Section.HUE_RAMPS, RgbSpace.SRGB)).keySet();
        Set<Rgb8> cube = counts(patches(Section.CUBE, RgbSpace.SRGB)).keySet();
        assertEquals(6 * 8, ramps.size());
        Set<Rgb8> both = new TreeSet<>(ramps);
        both.retainAll(cube);
        assertEquals(Set.of(), both);
        // Red by its codes alone: from paper (255,x,x) to full and on to black (x,0,0), in order.
        Set<Rgb8> red = new TreeSet<>();
        for (Set<Rgb8> all : List.of(ramps, cube)) {
            for (Rgb8 rgb : all) {
                if (rgb.g() == rgb.b() && (rgb.r() == 255 || rgb.g() == 0)) {
                    red.add(rgb);
                }
            }
        }
        assertEquals(8 + 9, red.size(), red.toString());
    }

    /** The table is kept as published; its CIELAB is what counts in every encoding. */
    @ParameterizedTest
    @EnumSource(RgbSpace.class)
    void skinTonesAreThePublishedOnes(RgbSpace space) throws Problem, IOException {
        Map<String, Lab> published = new HashMap<>();
        try (BufferedReader lines =
                new BufferedReader(
                        new InputStreamReader(
                                Objects.requireNonNull(
                                        getClass().getResourceAsStream("/published/skin-like.csv")),
                                StandardCharsets.UTF_8))) {
            for (String line : lines.lines().filter(text -> text.startsWith("S")).toList()) {
                String[] row = line.split(",", -1);
                published.put(
                        row[0],
                        new Lab(
                                Double.parseDouble(row[1]),
                                Double.parseDouble(row[2]),
                                Double.parseDouble(row[3])));
            }
        }
        assertEquals(11, published.size());
        List<Patch> skin = patches(Section.SKIN, space);
        assertEquals(22, skin.size());
        assertEquals(11, counts(skin).size());
        for (Patch patch : skin) {
            Lab wanted = Objects.requireNonNull(published.get(patch.id().substring(0, 3)));
            Lab got = space.toLab(patch.rgb());
            // Codes are whole: half a code each way in three channels of the widest encoding.
            double distance =
                    Math.sqrt(
                            Math.pow(wanted.l() - got.l(), 2)
                                    + Math.pow(wanted.a() - got.a(), 2)
                                    + Math.pow(wanted.b() - got.b(), 2));
            assertTrue(distance < 0.8, patch.id() + " is off by " + distance);
        }
    }

    @Test
    void straylightPairsStandOnWhiteAndOnBlack() throws Problem {
        List<Patch> stray = patches(Section.STRAY_LIGHT, RgbSpace.SRGB);
        Set<Rgb8> white = new TreeSet<>();
        Set<Rgb8> black = new TreeSet<>();
        for (Patch patch : stray) {
            (patch.id().startsWith("XW") ? white : black).add(patch.rgb());
        }
        assertEquals(white, black);
        assertEquals(Set.of(Rgb8.grey(0), Rgb8.grey(48), Rgb8.grey(128)), white);
    }

    @Test
    void solidBlackHasBlackAroundItsCentre() throws Problem {
        Recipe recipe = Recipe.paper(PageSize.parse("A4"), Margins.all(12), RgbSpace.SRGB);
        Sheet sheet = Charts.create(recipe).sheets().get(0);
        Patch solid =
                sheet.patches().stream()
                        .filter(patch -> patch.section() == Section.SOLID_BLACK)
                        .findFirst()
                        .orElseThrow();
        PointMm centre = solid.area().centre();
        double toPatch = Double.POSITIVE_INFINITY;
        for (Patch patch : sheet.patches()) {
            if (!patch.rgb().equals(Rgb8.grey(0))) {
                toPatch = Math.min(toPatch, Geometry.distance(centre, patch.area()));
            }
        }
        RectMm field =
                sheet.artwork().stream()
                        .filter(Artwork.Field.class::isInstance)
                        .map(thing -> ((Artwork.Field) thing).area())
                        .findFirst()
                        .orElseThrow();
        double toEdge =
                Math.min(
                        Math.min(centre.x() - field.x(), field.right() - centre.x()),
                        Math.min(centre.y() - field.y(), field.bottom() - centre.y()));
        assertTrue(Math.min(toPatch, toEdge) > 18, "black within " + Math.min(toPatch, toEdge));
    }

    @Test
    void textSaysWhatAPersonNeeds() throws Problem {
        Recipe recipe = Recipe.paper(PageSize.parse("A4"), Margins.all(12), RgbSpace.DISPLAY_P3);
        Chart chart = Charts.create(recipe, 7);
        String text =
                chart.sheets().get(0).artwork().stream()
                        .filter(Artwork.Text.class::isInstance)
                        .map(thing -> ((Artwork.Text) thing).text())
                        .collect(Collectors.joining("\n"));
        for (String part :
                List.of(
                        "Full paper sheet",
                        chart.id(),
                        "sheet 1 of 1",
                        "Print 7",
                        "Display P3",
                        "100 %, no scaling",
                        "This edge up",
                        "Paper",
                        "Printer",
                        "Route",
                        "Date",
                        "Time")) {
            assertTrue(text.contains(part), part + " is missing in:\n" + text);
        }
    }
}
