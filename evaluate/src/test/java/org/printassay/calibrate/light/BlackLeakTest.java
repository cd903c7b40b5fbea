package org.printassay.calibrate.light;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.function.DoubleBinaryOperator;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.printassay.calibrate.Convolution;
import org.printassay.calibrate.SimulatedScan;
import org.printassay.colour.LinearRgb;
import org.printassay.colour.Rgb8;
import org.printassay.problem.Problem;
import org.printassay.recipe.Recipe;
import org.printassay.sample.MarkerBlack;
import org.printassay.sample.PatchSample;
import org.printassay.sample.SheetSamples;
import org.printassay.sheet.PointMm;
import org.printassay.sheet.RectMm;

/**
 * Light from outside over the fourteen markers and the few twins of a short sheet, put in forwards
 * by formulas of its own here (all simulated).
 */
class BlackLeakTest {
    private static SimulatedScan scan(long seed) throws Problem {
        SimulatedScan scan = new SimulatedScan(Recipe.Kind.SHORT);
        scan.seed = seed;
        scan.dusty = 0;
        return scan;
    }

    /** A scan with the stray light of an ordinary flatbed. */
    private static SimulatedScan straying(double glare, double widthMm, long seed) throws Problem {
        SimulatedScan scan = scan(seed);
        scan.glare = new double[] {glare, glare, glare};
        scan.glareKernel = Convolution.gaussian(widthMm, SimulatedScan.STEP_MM);
        scan.falloff = 0.03;
        return scan;
    }

    private static BlackLeak.Found found(SheetSamples samples) {
        LightFitter.Fitted light = LightFitter.fit(ScanLight.of(samples));
        return BlackLeak.found(new BlackWitnesses(samples, light.scan(), light.outcome()));
    }

    /** Millimetres from an edge. */
    private static double away(LeakedLight.Edge edge, RectMm page, double x, double y) {
        return switch (edge) {
            case LEFT -> x;
            case RIGHT -> page.width() - x;
            case TOP -> y;
            case BOTTOM -> page.height() - y;
        };
    }

    private static DoubleBinaryOperator exponential(
            LeakedLight.Edge edge, RectMm page, double amount, double depthMm) {
        return (x, y) -> amount * Math.exp(-Math.max(0, away(edge, page, x, y)) / depthMm);
    }

    /** Light of all beams together at a place of the page. */
    private static double light(
            List<LeakedLight.Beam> beams, PointMm at, RectMm page, int channel) {
        double sum = 0;
        for (LeakedLight.Beam beam : beams) {
            double depth = away(beam.edge(), page, at.x(), at.y()) / beam.depthMm();
            sum += beam.amounts()[channel] * Math.exp(-Math.pow(depth, beam.power()));
        }
        return sum;
    }

    private static Set<LeakedLight.Edge> edges(List<LeakedLight.Beam> beams) {
        return beams.stream()
                .map(LeakedLight.Beam::edge)
                .collect(Collectors.toCollection(() -> EnumSet.noneOf(LeakedLight.Edge.class)));
    }

    /** A marker with more light on it, paper 1. */
    private static MarkerBlack lighter(MarkerBlack marker, double r, double g, double b) {
        LinearRgb light = marker.light();
        return new MarkerBlack(
                marker.area(),
                new LinearRgb(
                        light.r() + r * SimulatedScan.paper(0),
                        light.g() + g * SimulatedScan.paper(1),
                        light.b() + b * SimulatedScan.paper(2)),
                marker.standardError());
    }

    /**
     * Shapes that are looked for come back, each of their numbers. Ordinary stray light and drift
     * of the print are not known, and leave the amount open by a tenth.
     */
    @ParameterizedTest
    @CsvSource({
        "LEFT, 0.02, 30, 0",
        "LEFT, 0.04, 8, 0",
        "RIGHT, 0.03, 15, 0.01",
        "TOP, 0.02, 55, 0",
        "BOTTOM, 0.04, 30, 0.02",
        "BOTTOM, 0.02, 100, 0"
    })
    void knownLightComesBack(LeakedLight.Edge edge, double amount, double depthMm, double glare)
            throws Problem {
        SimulatedScan scan = straying(glare, 10, 1);
        scan.leak = exponential(edge, scan.sheet.page(), amount, depthMm);
        BlackLeak.Found found = found(scan.scan());
        assertEquals(1, found.told().size(), found::toString);
        LeakedLight.Beam beam = found.told().get(0);
        assertEquals(edge, beam.edge());
        assertEquals(depthMm, beam.depthMm());
        assertEquals(1, beam.power());
        for (double of : beam.amounts()) {
            assertEquals(amount, of, 0.1 * amount);
        }
    }

    /** Largest difference from what fell on a marker, as share of the most that fell on any. */
    private static double off(
            List<LeakedLight.Beam> told, SimulatedScan scan, List<MarkerBlack> markers) {
        double largest = 0;
        double off = 0;
        for (MarkerBlack marker : markers) {
            PointMm at = marker.area().centre();
            double truth = scan.leak.applyAsDouble(at.x(), at.y());
            largest = Math.max(largest, truth);
            off = Math.max(off, Math.abs(light(told, at, scan.sheet.page(), 1) - truth));
        }
        return off / largest;
    }

    /** Other shapes come back as light where it fell, within a seventh of the most. */
    @ParameterizedTest
    @CsvSource({"LEFT, 1", "RIGHT, 2", "TOP, 3", "BOTTOM, 4"})
    void lightOfAnotherShapeIsToldWhereItFell(LeakedLight.Edge edge, long seed) throws Problem {
        SimulatedScan scan = straying(0.01, 8, seed);
        RectMm page = scan.sheet.page();
        scan.leak = (x, y) -> 0.04 * Math.max(0, 1 - Math.max(0, away(edge, page, x, y)) / 60);
        SheetSamples samples = scan.scan();
        List<LeakedLight.Beam> told = found(samples).told();
        assertEquals(Set.of(edge), edges(told));
        double off = off(told, scan, samples.markers());
        assertTrue(off < 1 / 7.0, "off by " + off);
    }

    @Test
    void lightAtTwoEdgesIsToldOfBoth() throws Problem {
        SimulatedScan scan = straying(0.01, 10, 5);
        RectMm page = scan.sheet.page();
        DoubleBinaryOperator left = exponential(LeakedLight.Edge.LEFT, page, 0.03, 15);
        DoubleBinaryOperator bottom = exponential(LeakedLight.Edge.BOTTOM, page, 0.02, 30);
        scan.leak = (x, y) -> left.applyAsDouble(x, y) + bottom.applyAsDouble(x, y);
        SheetSamples samples = scan.scan();
        List<LeakedLight.Beam> told = found(samples).told();
        assertEquals(Set.of(LeakedLight.Edge.LEFT, LeakedLight.Edge.BOTTOM), edges(told));
        double off = off(told, scan, samples.markers());
        assertTrue(off < 1 / 7.0, "off by " + off);
    }

    /** Reddish light over markers alone: four parts red, two green, one blue. */
    @Test
    void eachChannelHasItsOwnAmount() throws Problem {
        SimulatedScan scan = scan(6);
        SheetSamples dark = scan.scan();
        DoubleBinaryOperator shape = exponential(LeakedLight.Edge.TOP, scan.sheet.page(), 0.01, 30);
        List<MarkerBlack> lit = new ArrayList<>();
        for (MarkerBlack marker : dark.markers()) {
            PointMm at = marker.area().centre();
            double fell = shape.applyAsDouble(at.x(), at.y());
            lit.add(lighter(marker, 4 * fell, 2 * fell, fell));
        }
        List<LeakedLight.Beam> told = found(SimulatedScan.withMarkers(dark, lit)).told();
        assertEquals(Set.of(LeakedLight.Edge.TOP), edges(told));
        double[] amounts = told.get(0).amounts();
        assertEquals(2, amounts[0] / amounts[1], 0.1);
        assertEquals(2, amounts[1] / amounts[2], 0.1);
    }

    @Test
    void aGreyScanTellsOneAmount() throws Problem {
        SimulatedScan scan = straying(0.01, 10, 7);
        scan.grey = true;
        scan.leak = exponential(LeakedLight.Edge.LEFT, scan.sheet.page(), 0.03, 30);
        double[] amounts = found(scan.scan()).told().get(0).amounts();
        assertEquals(0.03, amounts[1], 0.003);
        assertEquals(amounts[1], amounts[0]);
        assertEquals(amounts[1], amounts[2]);
    }

    /** Stray light up to what flatbeds have, near and far, and slow drift of the print. */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
    void scansAndPrintsInOrderTellNone(long seed) throws Problem {
        Random random = new Random(seed);
        SimulatedScan scan =
                straying(0.03 * random.nextDouble(), 3 + 20 * random.nextDouble(), seed);
        scan.lid = random.nextBoolean() ? 0.05 : 0.85;
        RectMm page = scan.sheet.page();
        double across = 0.4 * random.nextGaussian();
        double down = 0.4 * random.nextGaussian();
        double edges = 0.4 * random.nextGaussian();
        scan.drift =
                (x, y, l) -> {
                    double u = 2 * x / page.width() - 1;
                    double v = 2 * y / page.height() - 1;
                    return across * u + down * v + edges * u * u;
                };
        BlackLeak.Found found = found(scan.scan());
        assertEquals(List.of(), found.told());
        double probability = inDoubt(found);
        assertTrue(probability < 0.02, "probability " + probability);
    }

    /** One marker alone, however light, wherever it stands. */
    @ParameterizedTest
    @ValueSource(doubles = {0.005, 0.02, 0.3})
    void aMarkOverOneMarkerIsNoLight(double by) throws Problem {
        SheetSamples clean = straying(0.01, 10, 9).scan();
        for (int k = 0; k < clean.markers().size(); k++) {
            List<MarkerBlack> marked = new ArrayList<>(clean.markers());
            marked.set(k, lighter(marked.get(k), by, by, by));
            BlackLeak.Found found = found(SimulatedScan.withMarkers(clean, marked));
            assertEquals(List.of(), found.told(), "marker " + k);
            double perhaps = inDoubt(found);
            assertTrue(perhaps < 0.02, "marker " + k + ": " + perhaps);
        }
    }

    /**
     * Nor where the only other marker of that edge is a little lighter: by a thousandth of paper,
     * or two, which in its black are 0.9 and 1.8 L*.
     */
    @ParameterizedTest
    @ValueSource(doubles = {0.001, 0.002})
    void aMarkAndALighterMarkerAreNoLight(double lighter) throws Problem {
        SimulatedScan scan = scan(9);
        scan.twinL = 0.05;
        SheetSamples clean = scan.scan();
        List<MarkerBlack> marked = new ArrayList<>(clean.markers());
        marked.set(0, lighter(marked.get(0), 0.02, 0.02, 0.02));
        marked.set(1, lighter(marked.get(1), lighter, lighter, lighter));
        BlackLeak.Found found = found(SimulatedScan.withMarkers(clean, marked));
        assertEquals(List.of(), found.told());
        double perhaps = inDoubt(found);
        assertTrue(perhaps < 0.1, "probability " + perhaps);
    }

    /** Light is only added: blacks that are darker along an edge have more ink. */
    @Test
    void darkerBlacksAtAnEdgeAreNoLight() throws Problem {
        SimulatedScan scan = scan(10);
        scan.drift = (x, y, l) -> x < 30 ? -3 : 0;
        BlackLeak.Found found = found(scan.scan());
        assertEquals(List.of(), found.told());
        double perhaps = inDoubt(found);
        assertTrue(perhaps < 0.02, "probability " + perhaps);
    }

    /**
     * Light that is no more than in doubt: the more there is, the more probable it is, up to about
     * the amount from which it is told.
     */
    @ParameterizedTest
    @ValueSource(longs = {11, 12, 13})
    void moreLightIsMoreProbable(long seed) throws Problem {
        double before = 0;
        for (double amount : new double[] {0.003, 0.004, 0.005, 0.0053}) {
            SimulatedScan scan = scan(seed);
            scan.twinL = 0.05;
            scan.leak = exponential(LeakedLight.Edge.LEFT, scan.sheet.page(), amount, 30);
            SheetSamples samples = scan.scan();
            BlackLeak.Found found = found(samples);
            assertEquals(List.of(), found.told());
            BlackLeak.Perhaps perhaps = found.perhaps().orElseThrow();
            double off = off(List.of(perhaps.beam()), scan, samples.markers());
            assertTrue(off < 0.4, "off by " + off + " of " + amount);
            assertTrue(perhaps.probability() > 1.3 * before, "of " + amount + ": " + perhaps);
            before = perhaps.probability();
        }
        assertTrue(before > 0.3 && before < 0.95, "probability " + before);
    }

    /** Besides light that is told, other light may be in doubt. */
    @Test
    void whatIsInDoubtIsNotWhatIsTold() throws Problem {
        SimulatedScan scan = scan(12);
        scan.twinL = 0.05;
        RectMm page = scan.sheet.page();
        DoubleBinaryOperator left = exponential(LeakedLight.Edge.LEFT, page, 0.03, 15);
        DoubleBinaryOperator bottom = exponential(LeakedLight.Edge.BOTTOM, page, 0.005, 30);
        scan.leak = (x, y) -> left.applyAsDouble(x, y) + bottom.applyAsDouble(x, y);
        BlackLeak.Found found = found(scan.scan());
        assertEquals(Set.of(LeakedLight.Edge.LEFT), edges(found.told()));
        BlackLeak.Perhaps perhaps = found.perhaps().orElseThrow();
        assertEquals(LeakedLight.Edge.BOTTOM, perhaps.beam().edge());
        assertTrue(perhaps.beam().amounts()[1] < 0.03, perhaps::toString);
    }

    /** Five markers and no twins tell nothing, however much light there is. */
    @Test
    void fewWitnessesTellNothing() throws Problem {
        SimulatedScan scan = scan(12);
        scan.leak = exponential(LeakedLight.Edge.LEFT, scan.sheet.page(), 0.05, 30);
        SheetSamples all = scan.scan();
        Map<Rgb8, PatchSample> lone = new LinkedHashMap<>();
        all.samples().forEach(sample -> lone.putIfAbsent(sample.patch().rgb(), sample));
        SheetSamples single = all.withLight(List.copyOf(lone.values()), all.page());
        for (int count : new int[] {0, 1, 5}) {
            List<MarkerBlack> some = all.markers().subList(0, count);
            BlackLeak.Found found = found(SimulatedScan.withMarkers(single, some));
            assertEquals(List.of(), found.told());
            assertEquals(Optional.empty(), found.perhaps());
        }
        assertEquals(Set.of(LeakedLight.Edge.LEFT), edges(found(single).told()));
    }

    /** How probable light is that is not told; 0 where none is. */
    private static double inDoubt(BlackLeak.Found found) {
        return found.perhaps().map(BlackLeak.Perhaps::probability).orElse(0.0);
    }
}
