package org.printassay.calibrate.outlier;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.printassay.calibrate.PressRoutes;
import org.printassay.calibrate.SimulatedScan;
import org.printassay.calibrate.codes.PatchColour;
import org.printassay.colour.DeltaE;
import org.printassay.colour.Lab;
import org.printassay.colour.Rgb8;
import org.printassay.colour.RgbSpace;
import org.printassay.colour.Xyz;
import org.printassay.reading.ReadingFlag;
import org.printassay.recipe.Recipe;
import org.printassay.sheet.Patch;
import org.printassay.sheet.Sheet;

/** On real routes ({@link PressRoutes}) no colour is out of line but those that are covered. */
class LoneCheckTest {
    private static final Lab PEN = new Lab(25, 5, -30);

    private final Sheet sheet = new SimulatedScan().chart.sheets().get(0);
    private final Map<String, Map<Rgb8, Lab>> routes = PressRoutes.all();

    LoneCheckTest() throws Exception {}

    private List<PatchColour> printed(Map<Rgb8, Lab> route, long seed) {
        return PressRoutes.printed(sheet, route, seed, (place, lab) -> lab);
    }

    private static Set<String> outOfLine(List<PatchColour> colours) {
        return outOfLine(colours, RgbSpace.SRGB);
    }

    private static Set<String> outOfLine(List<PatchColour> colours, RgbSpace space) {
        Set<String> far = new HashSet<>();
        for (PatchColour colour : LoneCheck.flagged(colours, space)) {
            if (colour.flags().contains(ReadingFlag.OUT_OF_LINE)) {
                far.add(colour.patch().id());
            }
        }
        return far;
    }

    /** Colours with one patch, light enough to be judged. */
    private List<Integer> lone() {
        Map<Rgb8, Integer> twins = new HashMap<>();
        sheet.patches().forEach(patch -> twins.merge(patch.rgb(), 1, Integer::sum));
        List<Integer> lone = new ArrayList<>();
        for (int i = 0; i < sheet.patches().size(); i++) {
            Rgb8 code = sheet.patches().get(i).rgb();
            boolean judged =
                    !code.isNeutral() && RgbSpace.SRGB.toLab(code).l() >= LoneCheck.DARKEST;
            if (judged && twins.getOrDefault(code, 0) == 1) {
                lone.add(i);
            }
        }
        return lone;
    }

    private static PatchColour pen(PatchColour under, Map<Rgb8, Lab> route) {
        return PressRoutes.colour(under.patch(), PEN, PressRoutes.paper(route));
    }

    private static double deltaE00(PatchColour one, PatchColour other) {
        return DeltaE.ciede2000(
                Lab.of(one.relative(), Xyz.PCS_WHITE), Lab.of(other.relative(), Xyz.PCS_WHITE));
    }

    @Test
    void nothingIsOutOfLineOnRealRoutes() throws Exception {
        assertEquals(6, routes.size());
        for (RgbSpace space : List.of(RgbSpace.SRGB, RgbSpace.ADOBE_RGB)) {
            Map<String, Map<Rgb8, Lab>> some =
                    PressRoutes.from(space.equals(RgbSpace.SRGB) ? "srgb" : "adobe-rgb");
            assertTrue(some.size() >= 3);
            some.forEach(
                    (name, route) -> {
                        for (long seed = 1; seed <= 5; seed++) {
                            assertEquals(Set.of(), outOfLine(printed(route, seed), space), name);
                        }
                    });
        }
    }

    @Test
    void aPenOverAColourIsTold() {
        List<Integer> lone = lone();
        assertTrue(lone.size() > 100, "lone colours: " + lone.size());
        int covered = 0;
        int told = 0;
        for (Map<Rgb8, Lab> route : routes.values()) {
            for (int i : lone) {
                List<PatchColour> colours = printed(route, i);
                PatchColour pen = pen(colours.get(i), route);
                if (deltaE00(pen, colours.get(i)) > 25) {
                    colours.set(i, pen);
                    Set<String> far = outOfLine(colours);
                    String id = pen.patch().id();
                    assertTrue(Set.of(id).containsAll(far), id + " but " + far);
                    covered++;
                    told += far.size();
                }
            }
        }
        assertTrue(covered > 600 && told == covered, told + " of " + covered);
    }

    @Test
    void aPenOverAGreyOfTheShortSheetIsTold() throws Exception {
        Sheet small = new SimulatedScan(Recipe.Kind.SHORT).chart.sheets().get(0);
        int told = 0;
        int covered = 0;
        for (Map<Rgb8, Lab> route : routes.values()) {
            List<PatchColour> clean = PressRoutes.printed(small, route, 1, (place, lab) -> lab);
            assertEquals(Set.of(), outOfLine(clean));
            for (int i = 0; i < clean.size(); i++) {
                Patch patch = clean.get(i).patch();
                if (patch.id().startsWith("N") && patch.rgb().g() > 60 && patch.rgb().g() < 240) {
                    List<PatchColour> colours = new ArrayList<>(clean);
                    colours.set(i, pen(colours.get(i), route));
                    Set<String> far = outOfLine(colours);
                    assertTrue(Set.of(patch.id()).containsAll(far), patch.id() + " but " + far);
                    covered++;
                    told += far.size();
                }
            }
        }
        assertTrue(covered >= 42 && told == covered, told + " of " + covered);
    }

    @Test
    void whatIsDoubtedOrHardlyKnownIsNotTold() {
        Map<Rgb8, Lab> route = routes.values().iterator().next();
        List<PatchColour> colours = printed(route, 1);
        int covered = lone().get(10);
        colours.set(covered, pen(colours.get(covered), route));
        assertEquals(Set.of(colours.get(covered).patch().id()), outOfLine(colours));
        List<PatchColour> flagged = new ArrayList<>(colours);
        flagged.set(covered, colours.get(covered).flagged(ReadingFlag.DUSTY));
        assertEquals(Set.of(), outOfLine(flagged));
        List<PatchColour> most = new ArrayList<>(colours);
        for (int i : lone().subList(20, lone().size())) {
            most.set(i, colours.get(i).flagged(ReadingFlag.COARSE));
        }
        assertEquals(Set.of(), outOfLine(most));
        assertEquals(Set.of(), outOfLine(colours.subList(0, 30)));
    }
}
