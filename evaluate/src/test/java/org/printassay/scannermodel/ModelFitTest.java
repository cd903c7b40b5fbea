package org.printassay.scannermodel;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.printassay.colour.DeltaE;
import org.printassay.colour.Lab;
import org.printassay.colour.LinearRgb;
import org.printassay.colour.Rgb8;

/** Simulated scanners and prints; spectra of the solid colours are published ones. */
class ModelFitTest {
    /** Repeatability of a good instrument, L*, a*, b* each (common practice, no source). */
    private static final double INSTRUMENT = 0.03;

    /** Mean, 95 of 100, largest dE00 of patches that a model was not made from. */
    private record Errors(double mean, double p95, double max) {
        static Errors of(ScannerModel model, List<TrainingPatch> patches) {
            double[] sorted =
                    patches.stream()
                            .mapToDouble(p -> DeltaE.ciede2000(p.lab(), model.lab(p.light())))
                            .sorted()
                            .toArray();
            double sum = 0;
            for (double off : sorted) {
                sum += off;
            }
            int at = (int) Math.ceil(0.95 * sorted.length) - 1;
            return new Errors(sum / sorted.length, sorted[at], sorted[sorted.length - 1]);
        }
    }

    private static ModelFit fit(SpectralPrint.Scanner scanner, int colours, int twins) {
        return ModelFit.of(
                new SpectralPrint(SpectralPrint.Paper.ONE)
                        .patches(SpectralPrint.codes(colours, 5), twins, scanner, INSTRUMENT, 3));
    }

    /** Other codes, seen with the scanner's noise, against their true colours. */
    private static Errors on(
            SpectralPrint.Paper paper, ScannerModel model, SpectralPrint.Scanner scanner) {
        List<Rgb8> codes = SpectralPrint.randomCodes(400, 77);
        return Errors.of(model, new SpectralPrint(paper).patches(codes, 1, scanner, 0, 4));
    }

    @ParameterizedTest
    @EnumSource(SpectralPrint.Scanner.class)
    void threeHundredPatchesAreEnoughForPapersOfTheFamily(SpectralPrint.Scanner scanner) {
        ModelFit fit =
                ModelFit.of(
                        new SpectralPrint(SpectralPrint.Paper.ONE)
                                .patches(
                                        SpectralPrint.randomCodes(300, 5),
                                        1,
                                        scanner,
                                        INSTRUMENT,
                                        3));
        assertEquals(300, fit.error().patches());
        for (SpectralPrint.Paper paper :
                List.of(SpectralPrint.Paper.ONE, SpectralPrint.Paper.SISTER)) {
            Errors errors = on(paper, fit.model(), scanner);
            assertTrue(errors.mean <= 0.6 && errors.p95 <= 1.5, paper + " " + errors);
            double ratio = fit.error().meanDeltaE00() / errors.mean;
            assertTrue(ratio < 1.3 && ratio > 1 / 1.3, paper + " " + errors + fit.error());
        }
        Errors stranger = on(SpectralPrint.Paper.STRANGER, fit.model(), scanner);
        assertTrue(stranger.mean > 2.5 * fit.error().meanDeltaE00(), stranger + " " + fit.error());
    }

    @Test
    void theRestThatThePolynomialLeavesIsWorthPredicting() {
        List<TrainingPatch> patches =
                new SpectralPrint(SpectralPrint.Paper.ONE)
                        .patches(
                                SpectralPrint.codes(150, 5),
                                1,
                                SpectralPrint.Scanner.LAMPS,
                                INSTRUMENT,
                                3);
        RootPolynomial plain = RootPolynomialFit.fit(TrainingColour.of(patches), 3);
        Errors without =
                on(
                        SpectralPrint.Paper.SISTER,
                        new ScannerModel(plain, null),
                        SpectralPrint.Scanner.LAMPS);
        ModelFit fit = ModelFit.of(patches);
        Errors with = on(SpectralPrint.Paper.SISTER, fit.model(), SpectralPrint.Scanner.LAMPS);
        assertTrue(fit.model().smoothed());
        assertTrue(without.mean > 3 * with.mean, without + " " + with);
    }

    /** What is stated is what making the model anew, by brute force, gives. */
    @Test
    void leavingOneOutIsWhatMakingTheModelAnewGives() {
        List<TrainingPatch> patches =
                new SpectralPrint(SpectralPrint.Paper.ONE)
                        .patches(
                                SpectralPrint.codes(90, 5),
                                1,
                                SpectralPrint.Scanner.LAMPS,
                                INSTRUMENT,
                                3);
        ModelFit fit = ModelFit.of(patches);
        SmoothResidual rest = fit.model().residual();
        assertTrue(rest != null);
        for (int out : new int[] {0, 20, 45, 70, 89}) {
            List<TrainingPatch> others = new ArrayList<>(patches);
            others.remove(out);
            List<TrainingColour> colours = TrainingColour.of(others);
            RootPolynomial anew = RootPolynomialFit.fit(colours, fit.model().order());
            Lab polynomial = new ScannerModel(anew, null).lab(patches.get(out).light());
            RootPolynomial all = fit.model().polynomial();
            RootPolynomial quick =
                    RootPolynomialFit.withoutEach(TrainingColour.of(patches), all).get(out);
            Lab quickly = new ScannerModel(quick, null).lab(patches.get(out).light());
            assertEquals(0, DeltaE.cie1976(polynomial, quickly), 0.02, "colour " + out);
        }
    }

    @Test
    void thirdOrderNeedsMoreThanAHundredPatches() {
        ModelFit fit = fit(SpectralPrint.Scanner.LAMPS, 59, 1);
        assertEquals(2, fit.model().order());
        assertFalse(fit.model().smoothed());
    }

    @Test
    void tooFewColoursAreRefused() {
        assertThrows(IllegalArgumentException.class, () -> fit(SpectralPrint.Scanner.LAMPS, 23, 2));
    }

    /** A root polynomial scales: twice the light is twice the XYZ (Finlayson and others 2015). */
    @Test
    void twiceTheLightIsTwiceTheColour() {
        RootPolynomial third =
                RootPolynomialFit.fit(
                        TrainingColour.of(
                                new SpectralPrint(SpectralPrint.Paper.ONE)
                                        .patches(
                                                SpectralPrint.codes(150, 1),
                                                1,
                                                SpectralPrint.Scanner.FILTERS,
                                                INSTRUMENT,
                                                3)),
                        3);
        var one = third.at(new LinearRgb(0.1, 0.2, 0.3));
        var two = third.at(new LinearRgb(0.2, 0.4, 0.6));
        assertEquals(2 * one.x(), two.x(), 1e-9);
        assertEquals(2 * one.y(), two.y(), 1e-9);
        assertEquals(2 * one.z(), two.z(), 1e-9);
    }

    @Test
    void theLocalMetricIsThatOfCiede2000() {
        for (Lab lab :
                List.of(
                        new Lab(50, 2, -3),
                        new Lab(90, -40, 60),
                        new Lab(8, 0.4, 0.3),
                        new Lab(35, 40, -70))) {
            double[][] root = LocalMetric.rootAt(lab);
            double[] step = {0.2, -0.15, 0.1};
            double square = 0;
            for (int i = 0; i < 3; i++) {
                double sum = 0;
                for (int k = 0; k < 3; k++) {
                    sum += root[i][k] * step[k];
                }
                square += sum * sum;
            }
            Lab there = new Lab(lab.l() + step[0], lab.a() + step[1], lab.b() + step[2]);
            double real = DeltaE.ciede2000(lab, there);
            assertEquals(real, Math.sqrt(square), 0.03 * real, lab.toString());
        }
    }

    /** Twins that the print moves alike in both, and the instrument in the measurement alone. */
    @Test
    void theInstrumentsNoiseIsToldFromThePrintsSpread() {
        List<TrainingPatch> noisy =
                new SpectralPrint(SpectralPrint.Paper.ONE)
                        .patches(
                                SpectralPrint.codes(100, 5),
                                4,
                                SpectralPrint.Scanner.FILTERS,
                                0.2,
                                8);
        ModelFit fit = ModelFit.of(noisy);
        double found = Math.sqrt(InstrumentNoise.meanSquare(TrainingColour.of(noisy), fit.model()));
        double real = 0;
        for (TrainingPatch patch : noisy) {
            double[][] root = LocalMetric.rootAt(patch.lab());
            for (int i = 0; i < 3; i++) {
                for (int k = i; k < 3; k++) {
                    real += 0.04 * root[i][k] * root[i][k] / noisy.size();
                }
            }
        }
        assertEquals(Math.sqrt(real), found, 0.1 * Math.sqrt(real));
    }
}
