package org.printassay.promise;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.printassay.colour.DeltaE;
import org.printassay.colour.Lab;
import org.printassay.colour.Rgb8;
import org.printassay.colour.RgbSpace;
import org.printassay.colour.Xyz;
import org.printassay.colour.icc.IccException;
import org.printassay.colour.icc.IccProfile;
import org.printassay.colour.icc.IccTransform;
import org.printassay.colour.icc.Intent;
import org.printassay.colour.icc.RgbProfiles;
import org.printassay.problem.Problem;
import org.printassay.reading.Reading;
import org.printassay.reading.ReadingFlag;

/** Simulated prints of known routes. The printer's own model prints; the profile only promises. */
class PromiseJudgeTest {
    @TempDir Path folder = Path.of("");

    private static final PrintRoute ROUTE = PrintRoute.USUAL;

    /** Errors of a print or scan: random, a drift of tone, another batch of paper. */
    private record Errors(double noise, double tone, double tint) {
        static final Errors SMALL = new Errors(0.4, 0, 0);
        static final Errors USUAL = new Errors(0.8, 0.04, 1);
    }

    private static double[] fractions(Rgb8 code) {
        return new double[] {code.r() / 255.0, code.g() / 255.0, code.b() / 255.0};
    }

    private static IccTransform conversion(
            SimulatedPrinter printer, RgbSpace space, PrintRoute route) throws IccException {
        return IccTransform.between(
                IccProfile.parse(RgbProfiles.of(space)),
                IccProfile.parse(printer.profile()),
                route.intent(),
                route.blackPointCompensation());
    }

    private static Function<Rgb8, double[]> once(
            SimulatedPrinter printer, RgbSpace space, PrintRoute route) throws IccException {
        IccTransform transform = conversion(printer, space, route);
        return code -> transform.convert(fractions(code));
    }

    private static Function<Rgb8, double[]> twice(SimulatedPrinter printer, RgbSpace space)
            throws IccException {
        IccTransform first = conversion(printer, space, ROUTE);
        IccTransform second = conversion(printer, RgbSpace.SRGB, ROUTE);
        return code -> second.convert(first.convert(fractions(code)));
    }

    private static List<Rgb8> codes() {
        List<Rgb8> codes = new ArrayList<>();
        for (int level = 0; level <= 255; level += 15) {
            codes.add(Rgb8.grey(level));
        }
        int[] edge = {0, 64, 128, 191, 255};
        for (int r : edge) {
            for (int g : edge) {
                for (int b : edge) {
                    codes.add(new Rgb8(r, g, b));
                }
            }
        }
        return codes;
    }

    private static List<Reading> print(
            SimulatedPrinter printer, Function<Rgb8, double[]> route, Errors errors, int seed) {
        Random random = new Random(seed);
        List<Lab> labs = new ArrayList<>();
        for (Rgb8 code : codes()) {
            double[] device = route.apply(code);
            for (int c = 0; c < 3; c++) {
                device[c] = Math.pow(device[c], 1 + errors.tone);
            }
            Lab lab = printer.print(device);
            labs.add(
                    new Lab(
                            lab.l() + errors.noise * random.nextGaussian(),
                            lab.a() + errors.noise * random.nextGaussian() + 0.3 * errors.tint,
                            lab.b() + errors.noise * random.nextGaussian() + errors.tint));
        }
        Xyz white = labs.get(codes().indexOf(Rgb8.grey(255))).toXyz(Xyz.PCS_WHITE);
        List<Reading> readings = new ArrayList<>();
        for (int i = 0; i < labs.size(); i++) {
            Xyz xyz = labs.get(i).toXyz(Xyz.PCS_WHITE);
            Xyz to = Xyz.PCS_WHITE;
            Xyz relative =
                    new Xyz(
                            xyz.x() / white.x() * to.x(),
                            xyz.y() / white.y() * to.y(),
                            xyz.z() / white.z() * to.z());
            readings.add(
                    new Reading(
                            "P" + i,
                            Optional.empty(),
                            codes().get(i),
                            labs.get(i),
                            Lab.of(relative, to),
                            null,
                            null,
                            Set.of(),
                            null,
                            1));
        }
        return readings;
    }

    private Promise judge(SimulatedPrinter printer, RgbSpace space, List<Reading> readings)
            throws Problem, IOException {
        Path file = Files.write(folder.resolve("printer.icc"), printer.profile());
        PrinterProfile profile = PrinterProfile.read(file, "printer.icc");
        return PromiseJudge.judge(readings, space, profile, ROUTE).orElseThrow();
    }

    private static @Nullable RouteKind kind(Promise promise) {
        return promise.mistake() == null ? null : promise.mistake().kind();
    }

    /** The prediction is the printer's own colour, but for the rounding of its tables. */
    @Test
    void aPerfectPrintKeepsItsPromise() throws Exception {
        SimulatedPrinter printer = SimulatedPrinter.glossy();
        Promise promise =
                judge(
                        printer,
                        RgbSpace.SRGB,
                        print(
                                printer,
                                once(printer, RgbSpace.SRGB, ROUTE),
                                new Errors(0, 0, 0),
                                1));
        assertTrue(promise.meanDeltaE00() < 0.3, "mean " + promise.meanDeltaE00());
        assertTrue(promise.p95DeltaE00() < 1, "95 of 100 " + promise.p95DeltaE00());
        assertNull(promise.mistake());
        assertEquals(codes().size(), promise.judged());
        assertEquals("printer.icc", promise.profile());
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 2})
    void rightPrintsAreNotAccused(int seed) throws Exception {
        for (SimulatedPrinter printer : printers()) {
            for (RgbSpace space : List.of(RgbSpace.SRGB, RgbSpace.ADOBE_RGB)) {
                for (Errors errors :
                        List.of(Errors.SMALL, Errors.USUAL, new Errors(1.5, -0.12, -2))) {
                    Promise promise =
                            judge(
                                    printer,
                                    space,
                                    print(printer, once(printer, space, ROUTE), errors, seed));
                    assertNull(promise.mistake(), () -> space + " " + errors + promise.mistake());
                }
            }
        }
    }

    private static List<SimulatedPrinter> printers() {
        return List.of(
                SimulatedPrinter.glossy(), SimulatedPrinter.matt(), SimulatedPrinter.likeSrgb());
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 2})
    void missingColourManagementIsTold(int seed) throws Exception {
        for (SimulatedPrinter printer : List.of(printers().get(0), printers().get(1))) {
            for (Errors errors : List.of(Errors.SMALL, Errors.USUAL)) {
                Promise promise =
                        judge(
                                printer,
                                RgbSpace.SRGB,
                                print(printer, PromiseJudgeTest::fractions, errors, seed));
                assertEquals(RouteKind.UNMANAGED, kind(promise), promise::toString);
            }
        }
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 2})
    void doubledColourManagementIsTold(int seed) throws Exception {
        for (SimulatedPrinter printer : List.of(printers().get(0), printers().get(1))) {
            for (Errors errors : List.of(Errors.SMALL, Errors.USUAL)) {
                Promise promise =
                        judge(
                                printer,
                                RgbSpace.SRGB,
                                print(printer, twice(printer, RgbSpace.SRGB), errors, seed));
                assertEquals(RouteKind.TWICE, kind(promise), promise::toString);
            }
        }
    }

    @Test
    void anotherEncodingIsTold() throws Exception {
        SimulatedPrinter printer = SimulatedPrinter.glossy();
        Promise promise =
                judge(
                        printer,
                        RgbSpace.ROMM,
                        print(printer, once(printer, RgbSpace.SRGB, ROUTE), Errors.USUAL, 1));
        assertEquals(RouteKind.OTHER_ENCODING, kind(promise));
        assertNotNull(promise.mistake());
        assertTrue(promise.mistake().words().contains("sRGB instead of ROMM"), promise::toString);
    }

    @Test
    void missingCompensationIsToldOnADullPaper() throws Exception {
        SimulatedPrinter printer =
                new SimulatedPrinter(new double[] {2.6, 2.3, 2.4}, 0.1, 0.06, new Lab(93, 0.5, 4));
        PrintRoute without = new PrintRoute(Intent.RELATIVE, false);
        Promise promise =
                judge(
                        printer,
                        RgbSpace.SRGB,
                        print(printer, once(printer, RgbSpace.SRGB, without), Errors.SMALL, 1));
        assertEquals(RouteKind.OTHER_SETTINGS, kind(promise), promise::toString);
    }

    /** Half way between right and unconverted: neither explains it, and nothing is said. */
    @Test
    void anAmbiguousPrintIsNotExplained() throws Exception {
        SimulatedPrinter printer = SimulatedPrinter.glossy();
        Function<Rgb8, double[]> right = once(printer, RgbSpace.SRGB, ROUTE);
        Promise promise =
                judge(
                        printer,
                        RgbSpace.SRGB,
                        print(
                                printer,
                                code -> {
                                    double[] one = right.apply(code);
                                    double[] two = fractions(code);
                                    return new double[] {
                                        (one[0] + two[0]) / 2,
                                        (one[1] + two[1]) / 2,
                                        (one[2] + two[2]) / 2
                                    };
                                },
                                Errors.SMALL,
                                1));
        assertNull(promise.mistake(), promise::toString);
        assertTrue(promise.meanDeltaE00() > 2, "mean " + promise.meanDeltaE00());
    }

    /** Where the printer takes codes for what they mean, missing or not looks the same. */
    @Test
    void whatLooksTheSameIsNotTold() throws Exception {
        SimulatedPrinter printer = SimulatedPrinter.likeSrgb();
        Promise promise =
                judge(
                        printer,
                        RgbSpace.SRGB,
                        print(printer, PromiseJudgeTest::fractions, Errors.USUAL, 1));
        assertNull(promise.mistake(), promise::toString);
    }

    /** Printed on another paper than the profile's: far off, and no mistake of the route. */
    @Test
    void anotherPaperIsNotAMistakeOfTheRoute() throws Exception {
        SimulatedPrinter named = SimulatedPrinter.glossy();
        SimulatedPrinter used =
                new SimulatedPrinter(new double[] {1.8, 2.3, 1.5}, 0.25, 0.05, new Lab(92, 0, 6));
        Promise promise =
                judge(
                        named,
                        RgbSpace.SRGB,
                        print(used, once(named, RgbSpace.SRGB, ROUTE), Errors.SMALL, 1));
        assertNull(promise.mistake(), promise::toString);
        assertTrue(promise.meanDeltaE00() > 4, "mean " + promise.meanDeltaE00());
    }

    /** Flagged patches are listed and decide nothing. */
    @Test
    void flaggedPatchesDecideNothing() throws Exception {
        SimulatedPrinter printer = SimulatedPrinter.glossy();
        List<Reading> readings =
                new ArrayList<>(
                        print(
                                printer,
                                once(printer, RgbSpace.SRGB, ROUTE),
                                new Errors(0, 0, 0),
                                1));
        Reading first = readings.get(40);
        readings.set(
                40,
                new Reading(
                        first.id(),
                        first.section(),
                        first.rgb(),
                        new Lab(50, 80, 80),
                        new Lab(50, 80, 80),
                        null,
                        null,
                        Set.of(ReadingFlag.DUSTY),
                        null,
                        1));
        Promise promise = judge(printer, RgbSpace.SRGB, readings);
        assertEquals(codes().size(), promise.patches().size());
        assertEquals(codes().size() - 1, promise.judged());
        assertTrue(promise.maxDeltaE00() < 3, "largest " + promise.maxDeltaE00());
        Promise.Patch patch = promise.patches().get(40);
        assertEquals(DeltaE.ciede2000(patch.lab(), new Lab(50, 80, 80)), patch.deltaE00(), 1e-9);
    }

    @Test
    void refusesWhatIsNoPrintersProfile() throws IOException {
        Path screen = Files.write(folder.resolve("screen.icc"), RgbProfiles.of(RgbSpace.SRGB));
        Problem e = assertThrows(Problem.class, () -> PrinterProfile.read(screen, "screen.icc"));
        assertEquals(
                "screen.icc: not a printer's profile (ICC profile, byte 12: it describes no"
                        + " printer). Name the profile that the print was made with.",
                e.getMessage());
        byte[] good = SimulatedPrinter.glossy().profile();
        Path cut = Files.write(folder.resolve("cut.icc"), java.util.Arrays.copyOf(good, 5000));
        e = assertThrows(Problem.class, () -> PrinterProfile.read(cut, "cut.icc"));
        assertTrue(String.valueOf(e.getMessage()).contains("cut off"), e::getMessage);
    }
}
