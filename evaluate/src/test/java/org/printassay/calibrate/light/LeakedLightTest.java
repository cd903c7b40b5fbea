package org.printassay.calibrate.light;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.DoubleBinaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.printassay.calibrate.Convolution;
import org.printassay.calibrate.SimulatedScan;
import org.printassay.colour.Lab;
import org.printassay.colour.Rgb8;
import org.printassay.sample.SheetSamples;
import org.printassay.sheet.Patch;
import org.printassay.sheet.RectMm;

/**
 * Light from outside, put into simulated scans forwards, in shapes that are not those looked for.
 */
class LeakedLightTest {
    private static SimulatedScan scan(double glare, long seed) throws Exception {
        SimulatedScan scan = new SimulatedScan();
        scan.glare = new double[] {glare, glare, glare};
        scan.glareKernel = Convolution.exponential(3, SimulatedScan.STEP_MM);
        scan.falloff = 0.03;
        scan.seed = seed;
        return scan;
    }

    private static DoubleBinaryOperator at(LeakedLight.Edge edge, RectMm page, double amount) {
        return (x, y) -> {
            double away =
                    switch (edge) {
                        case LEFT -> x;
                        case RIGHT -> page.right() - x;
                        case TOP -> y;
                        case BOTTOM -> page.bottom() - y;
                    };
            return amount * Math.max(0, 1 - Math.max(0, away) / 55);
        };
    }

    /** Errors of L* of black patches, green channel. */
    private static List<Double> blackErrors(
            SimulatedScan scan, SheetSamples samples, LightFit fit) {
        List<Double> errors = new ArrayList<>();
        for (int i = 0; i < samples.samples().size(); i++) {
            Patch patch = samples.samples().get(i).patch();
            if (patch.rgb().equals(Rgb8.grey(0))) {
                errors.add(
                        Lab.lightness(fit.corrected()[1][i]) - Lab.lightness(scan.truth(patch, 1)));
            }
        }
        return errors;
    }

    @ParameterizedTest
    @CsvSource({"LEFT, 0.01", "RIGHT, 0.02", "TOP, 0.015", "BOTTOM, 0.02"})
    void aRampOfLightIsTakenOff(LeakedLight.Edge edge, double amount) throws Exception {
        SimulatedScan scan = scan(0.015, 3);
        scan.leak = at(edge, scan.sheet.page(), amount);
        SheetSamples samples = scan.scan();
        LightFit fit = LightFit.of(samples);
        Optional<LeakedLight> leak = fit.leak();
        assertTrue(leak.isPresent());
        assertEquals(Set.of(edge), leak.get().edges());
        double largestAdded =
                scan.sheet.patches().stream()
                        .map(patch -> patch.area().centre())
                        .mapToDouble(at -> scan.leak.applyAsDouble(at.x(), at.y()))
                        .max()
                        .orElseThrow();
        // The ramp is none of the shapes that are fitted, and the largest is at its very edge.
        double share = leak.get().largest(fit.paper()) / largestAdded;
        assertTrue(share > 0.9 && share < 1.9, "share of the true light " + share);
        double largest =
                blackErrors(scan, samples, fit).stream().mapToDouble(Math::abs).max().orElseThrow();
        assertTrue(largest < 2, "a black is off by " + largest);
    }

    @Test
    void muchLightIsSurelyLight() throws Exception {
        SimulatedScan scan = scan(0.01, 4);
        scan.leak = (x, y) -> 0.04 * Math.exp(-x / 20);
        LeakedLight leak = LightFit.of(scan.scan()).leak().orElseThrow();
        assertTrue(leak.sure());
        assertEquals(Set.of(LeakedLight.Edge.LEFT), leak.edges());
    }

    @Test
    void bothEdgesAreNamed() throws Exception {
        SimulatedScan scan = scan(0.01, 5);
        RectMm page = scan.sheet.page();
        DoubleBinaryOperator left = at(LeakedLight.Edge.LEFT, page, 0.02);
        DoubleBinaryOperator right = at(LeakedLight.Edge.RIGHT, page, 0.02);
        scan.leak = (x, y) -> left.applyAsDouble(x, y) + right.applyAsDouble(x, y);
        LightFit fit = LightFit.of(scan.scan());
        assertEquals("left and right", fit.leak().orElseThrow().words());
    }

    /** With less ink, in all tones alike, by their darkness or in dark ones alone: the print. */
    @ParameterizedTest
    @CsvSource({
        "LEFT, alike, 3, 0.01",
        "LEFT, alike, 5, 0.01",
        "LEFT, ink, 4, 0.01",
        "LEFT, darks, 3, 0.01",
        "LEFT, slope, 3, 0.01",
        "LEFT, step, 3, 0.01",
        "LEFT, ink, 6, 0.03",
        "BOTTOM, ink, 4, 0.01"
    })
    void aPrintThatIsLighterAtAnEdgeIsNotTakenForIt(
            LeakedLight.Edge edge, String way, double more, double glare) throws Exception {
        SimulatedScan scan = scan(glare, 6);
        DoubleBinaryOperator from = at(edge, scan.sheet.page(), 1);
        scan.drift =
                (x, y, l) ->
                        more
                                * switch (way) {
                                    case "alike" -> from.applyAsDouble(x, y);
                                    case "darks" -> l < 40 ? from.applyAsDouble(x, y) : 0;
                                    case "slope" -> (1 - l / 100) * (1 - x / 210);
                                    case "step" -> from.applyAsDouble(x, y) > 0 ? 1 - l / 100 : 0;
                                    default -> (1 - l / 100) * from.applyAsDouble(x, y);
                                };
        Optional<LeakedLight> leak = LightFit.of(scan.scan()).leak();
        assertFalse(leak.map(LeakedLight::sure).orElse(false));
    }

    @Test
    void strayLightIsNotTakenForIt() throws Exception {
        for (int seed = 0; seed < 8; seed++) {
            SimulatedScan scan = scan(0.004 * seed, 20 + seed);
            scan.glareKernel =
                    seed % 2 == 0
                            ? new Convolution(
                                    r -> Math.pow(1 + r * r / 100, -1.5), SimulatedScan.STEP_MM)
                            : Convolution.gaussian(10, SimulatedScan.STEP_MM);
            scan.returned = new double[] {0.05, 0.05, 0.05};
            scan.returnedKernel = scan.glareKernel;
            scan.lid = seed % 3 == 0 ? 0.05 : 0.85;
            scan.lineGlare = seed > 5 ? 0.01 : 0;
            assertTrue(LightFit.of(scan.scan()).leak().isEmpty(), "seed " + seed);
        }
    }
}
