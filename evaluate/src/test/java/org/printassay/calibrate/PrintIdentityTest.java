package org.printassay.calibrate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import org.junit.jupiter.api.Test;
import org.printassay.calibrate.codes.PatchColour;
import org.printassay.calibrate.codes.ScanColour;
import org.printassay.calibrate.codes.ScanPart;
import org.printassay.calibrate.light.LightFit;
import org.printassay.calibrate.part.PartResult;
import org.printassay.colour.Lab;
import org.printassay.colour.Rgb8;
import org.printassay.colour.Xyz;
import org.printassay.recipe.Recipe;
import org.printassay.sample.PatchSample;
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
        return read(scan.scan(), route, seed);
    }

    private PartResult read(SheetSamples samples, String route, long seed) {
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

    /** A sheet with twins, whose departures tell that it is another print of the same code. */
    private static PartResult print(long seed, double darker) throws Exception {
        SimulatedScan scan = new SimulatedScan();
        scan.seed = seed;
        scan.dusty = 0;
        scan.drift = (x, y, lightness) -> -darker * Math.sin(Math.PI * lightness / 100);
        return PartResult.of(new ScanPart(scan.scan(), ScanColour.embedded(scan.info())));
    }

    @Test
    void printsOfTwoDaysThatDifferByLittleAreTold() throws Exception {
        PartResult first = print(1, 0);
        String words = PrintIdentity.disagreement(first, print(2, 1.2)).orElseThrow();
        assertTrue(words.startsWith("greys differ by 0."), words);
        assertEquals(Optional.empty(), PrintIdentity.disagreement(first, print(2, 0)));
        // Of one print a scanner may differ by as much.
        assertEquals(Optional.empty(), PrintIdentity.disagreement(first, print(1, 1.2)));
    }

    /** Ten L* lighter, more than any two scanners differ by, as far as some of its patches show. */
    private static PartResult lighter(PartResult of, Predicate<PatchColour> shown) {
        List<PatchColour> colours =
                of.colours().stream()
                        .filter(shown)
                        .map(
                                colour -> {
                                    Lab lab = Lab.of(colour.relative(), Xyz.PCS_WHITE);
                                    return PressRoutes.colour(
                                            colour.patch(),
                                            new Lab(Math.min(100, lab.l() + 10), lab.a(), lab.b()),
                                            new Lab(100, 0, 0));
                                })
                        .toList();
        return new PartResult(of.part(), of.light(), colours);
    }

    @Test
    void aFewGreysRefuseNoScan() {
        PartResult first = read("second-relative", 1);
        assertTrue(PrintIdentity.different(first, lighter(first, c -> true)).isPresent());
        List<PatchColour> greys =
                first.colours().stream()
                        .filter(c -> c.patch().rgb().isNeutral() && c.patch().rgb().r() < 250)
                        .toList();
        for (int few : new int[] {1, 9}) {
            Set<PatchColour> kept = Set.copyOf(greys.subList(0, few));
            PartResult part = lighter(first, kept::contains);
            assertEquals(Optional.empty(), PrintIdentity.different(first, part));
        }
        PartResult ten = lighter(first, Set.copyOf(greys.subList(0, 10))::contains);
        assertTrue(PrintIdentity.different(first, ten).isPresent());
    }

    /** The lightest patch of a part without bare paper is none. */
    @Test
    void aPartWithoutPaperIsNotHeldAgainstOneWithIt() {
        SheetSamples all = scan.scan();
        List<PatchSample> printed =
                all.samples().stream()
                        .filter(s -> !s.patch().rgb().equals(Rgb8.grey(255)))
                        .toList();
        SheetSamples part =
                new SheetSamples(all.scan(), all.located(), printed, all.page(), all.preview());
        PartResult first = read(all, "second-relative", 1);
        PartResult without = lighter(read(part, "second-relative", 2), c -> true);
        assertFalse(without.light().paperKnown());
        assertEquals(Optional.empty(), PrintIdentity.different(first, without));
        assertEquals(Optional.empty(), PrintIdentity.different(without, first));
        assertEquals(Optional.empty(), PrintIdentity.disagreement(first, without));
    }
}
