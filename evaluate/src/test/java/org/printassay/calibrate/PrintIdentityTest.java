package org.printassay.calibrate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.printassay.colour.Lab;
import org.printassay.colour.Rgb8;
import org.printassay.recipe.Recipe;
import org.printassay.sample.SheetSamples;
import org.printassay.sheet.Sheet;

/**
 * Short sheets have too few twins for a print's fingerprint: that two of them, printed by different
 * routes ({@link PressRoutes}), were named as one print is told by how far they disagree.
 */
class PrintIdentityTest {
    private final SimulatedScan scan = new SimulatedScan(Recipe.Kind.SHORT);
    private final Map<String, Map<Rgb8, Lab>> routes = PressRoutes.all();

    PrintIdentityTest() throws Exception {}

    private PartResult read(String route, long seed) {
        SheetSamples samples = scan.scan();
        Sheet sheet = scan.chart.sheets().get(0);
        Map<Rgb8, Lab> colours = Objects.requireNonNull(routes.get(route));
        return new PartResult(
                new ScanPart(samples, ScanColour.embedded(scan.info())),
                LightFit.of(samples),
                PressRoutes.printed(sheet, colours, seed, (place, lab) -> lab));
    }

    @Test
    void printsThatDisagreeAreTold() {
        PartResult first = read("second-relative", 1);
        PartResult second = read("second-perceptual", 2);
        assertTrue(PrintIdentity.disagreement(first, second).isPresent());
        assertTrue(
                ScanWarnings.of(List.of(first.part(), second.part()), List.of(first, second), false)
                        .stream()
                        .anyMatch(w -> w.text().contains("evaluate each on its own")));
    }

    @Test
    void repeatsThatAgreeAreNot() {
        PartResult first = read("second-relative", 1);
        PartResult again = read("second-relative", 2);
        assertEquals(Optional.empty(), PrintIdentity.disagreement(first, again));
    }
}
