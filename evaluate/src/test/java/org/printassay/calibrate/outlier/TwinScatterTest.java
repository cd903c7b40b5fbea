package org.printassay.calibrate.outlier;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.printassay.calibrate.PressRoutes;
import org.printassay.calibrate.SimulatedScan;
import org.printassay.calibrate.codes.PatchColour;
import org.printassay.colour.Lab;
import org.printassay.colour.Rgb8;
import org.printassay.reading.ReadingFlag;
import org.printassay.sheet.Sheet;

/** Prints of real routes ({@link PressRoutes}) whose twins are pulled apart, made up. */
class TwinScatterTest {
    private final Sheet sheet = new SimulatedScan().chart.sheets().get(0);
    private final Map<String, Map<Rgb8, Lab>> routes = PressRoutes.all();

    TwinScatterTest() throws Exception {}

    private static long told(List<PatchColour> colours) {
        return TwinScatter.flagged(colours).stream()
                .filter(colour -> colour.flags().contains(ReadingFlag.SCATTERED))
                .count();
    }

    @Test
    void realRoutesAreNotScattered() {
        routes.forEach(
                (name, route) -> {
                    List<PatchColour> colours =
                            PressRoutes.printed(sheet, route, 5, (place, lab) -> lab);
                    assertEquals("", TwinScatter.of(colours).words(), name);
                    assertEquals(0, told(colours), name);
                });
    }

    /**
     * Of greys of L* 50 a difference in lightness is dE00 itself, its weight being 1 there (ISO/CIE
     * 11664-6, formula for S_L), so that the root mean square is the deviation that was drawn: of
     * some 300 degrees of freedom, within a tenth.
     */
    @ParameterizedTest
    @ValueSource(doubles = {0.6, 0.85, 1.15, 2})
    void theRootMeanSquareIsTheDeviationDrawn(double deviation) {
        Random random = new Random(3);
        Lab paper = new Lab(100, 0, 0);
        List<PatchColour> colours =
                sheet.patches().stream()
                        .map(patch -> PressRoutes.colour(patch, grey(deviation, random), paper))
                        .toList();
        TwinScatter scatter = TwinScatter.of(colours);
        assertEquals(deviation, scatter.tones().get(1), 0.1 * deviation);
        assertEquals(deviation > 1, scatter.words().contains("in mid-tones"));
        assertEquals(deviation > 1 ? colours.size() : 0, told(colours));
    }

    private static Lab grey(double deviation, Random random) {
        return new Lab(50 + deviation * random.nextGaussian(), 0, 0);
    }

    /** Six parts of a sensor, each with its own tint: bare paper has it too. */
    @Test
    void aSensorInPartsIsTheScanner() {
        double[] parts = {1.5, -2, 0.5, 2.5, -1, -1.5};
        routes.forEach(
                (name, route) -> {
                    List<PatchColour> colours =
                            PressRoutes.printed(
                                    sheet,
                                    route,
                                    7,
                                    (place, lab) ->
                                            new Lab(
                                                    lab.l(),
                                                    lab.a() + parts[(int) (place.x() / 35)],
                                                    lab.b() - parts[(int) (place.x() / 35)]));
                    assertFalse(TwinScatter.of(colours).words().isEmpty(), name);
                    assertTrue(TwinScatter.of(colours).onPaper(), name);
                });
    }

    /** Clouds of the print alone: bare paper has nothing of them, and is not flagged. */
    @Test
    void cloudsOfInkAreNotTheScanner() {
        routes.forEach(
                (name, route) -> {
                    Lab paper = PressRoutes.paper(route);
                    List<PatchColour> colours =
                            PressRoutes.printed(
                                    sheet,
                                    route,
                                    7,
                                    (place, lab) ->
                                            lab.l() > paper.l() - 2
                                                    ? paper
                                                    : new Lab(
                                                            lab.l()
                                                                    + 4
                                                                            * Math.sin(
                                                                                    place.x() / 11)
                                                                            * Math.cos(
                                                                                    place.y() / 13),
                                                            lab.a(),
                                                            lab.b()));
                    assertFalse(TwinScatter.of(colours).words().isEmpty(), name);
                    assertFalse(TwinScatter.of(colours).onPaper(), name);
                    assertTrue(told(colours) < colours.size(), name);
                });
    }
}
