package org.printassay.calibrate.light;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.printassay.calibrate.Convolution;
import org.printassay.calibrate.SimulatedScan;
import org.printassay.colour.Lab;
import org.printassay.colour.Rgb8;
import org.printassay.problem.Problem;
import org.printassay.sample.PatchSample;
import org.printassay.sample.SheetSamples;
import org.printassay.sheet.Patch;

/**
 * Light is put into simulated scans forwards, by Fourier transform of a fine page, and must be
 * found again. All data are simulated; the sheet is a real one.
 */
class LightFitTest {
    private static double[] alike(double value) {
        return new double[] {value, value, value};
    }

    private static SimulatedScan glare(double amount, Convolution kernel) throws Problem {
        SimulatedScan scan = new SimulatedScan();
        scan.glare = alike(amount);
        scan.glareKernel = kernel;
        scan.dusty = 0;
        return scan;
    }

    private static Convolution gaussian(double sigmaMm) {
        return Convolution.gaussian(sigmaMm, SimulatedScan.STEP_MM);
    }

    /** Root mean square error of L*, green channel; the middle of the page is brightest. */
    private static double rms(SimulatedScan scan, SheetSamples samples, double[] light) {
        double middle = scan.light(scan.sheet.page().width() / 2, scan.sheet.page().height() / 2);
        double squares = 0;
        for (int i = 0; i < light.length; i++) {
            double truth = scan.truth(samples.samples().get(i).patch(), 1) * middle;
            squares += Math.pow(Lab.lightness(light[i]) - Lab.lightness(truth), 2);
        }
        return Math.sqrt(squares / light.length);
    }

    private static double[] measured(SheetSamples samples) {
        return samples.samples().stream().mapToDouble(s -> s.linear().g()).toArray();
    }

    /** Mean error of L* in black, green channel. */
    private static double blackError(SimulatedScan scan, SheetSamples samples, LightFit fit) {
        double sum = 0;
        int n = 0;
        for (int i = 0; i < samples.samples().size(); i++) {
            Patch patch = samples.samples().get(i).patch();
            if (patch.rgb().equals(Rgb8.grey(0))) {
                sum += Lab.lightness(fit.corrected()[1][i]) - Lab.lightness(scan.truth(patch, 1));
                n++;
            }
        }
        return sum / n;
    }

    private static StrayEstimate stray(LightFit fit) {
        return Objects.requireNonNull(fit.stray(), "stray light not estimated");
    }

    @Test
    void glareAndFalloffAreFoundAndRemoved() throws Problem {
        SimulatedScan scan = glare(0.02, gaussian(8));
        scan.falloff = 0.05;
        SheetSamples samples = scan.scan();
        LightFit fit = LightFit.of(samples);
        assertTrue(stray(fit).corrected());
        assertEquals(0.02, stray(fit).glare(), 2.5 * stray(fit).glareError());
        assertTrue(stray(fit).glareError() < 0.0006, "error " + stray(fit).glareError());
        assertEquals(8, stray(fit).widthMm(), 0.5);
        assertTrue(rms(scan, samples, measured(samples)) > 3, "the simulated harm is real");
        assertTrue(rms(scan, samples, fit.corrected()[1]) < 0.15);
        assertEquals(0, blackError(scan, samples, fit), 0.3);
        double least = 1;
        double most = 0;
        for (Patch patch : scan.sheet.patches()) {
            double light = scan.light(patch.area().centre().x(), patch.area().centre().y());
            least = Math.min(least, light);
            most = Math.max(most, light);
        }
        assertEquals(100 * (1 - least / most), fit.falloffPercent(), 0.25);
    }

    /** A fit leaves what it was given alone: the neighbourhood that it frees is its own. */
    @Test
    void aScanFittedTwiceGivesTheSame() throws Problem {
        SimulatedScan scan = glare(0.02, gaussian(8));
        scan.grey = true;
        ScanLight light = ScanLight.of(scan.scan());
        Blur blur = new Blur(light.grid(), 2, light.anyMap());
        double[] before = light.channels().get(0).around(blur);
        LightFitter.Fitted first = LightFitter.fit(light);
        assertArrayEquals(before, light.channels().get(0).around(blur));
        double[] freed = first.scan().channels().get(0).around(blur);
        double most = 0;
        for (int i = 0; i < freed.length; i++) {
            most = Math.max(most, before[i] - freed[i]);
        }
        assertTrue(most > 0.005, "freed by " + most);
        assertArrayEquals(
                first.outcome().fits()[0].amounts(),
                LightFitter.fit(light).outcome().fits()[0].amounts());
    }

    /** With 20 prints, fewer than 16 inside a true 95 % interval is one chance in 400. */
    @Test
    void statedIntervalHoldsTheTruth() throws Problem {
        Convolution kernel = gaussian(8);
        int inside = 0;
        for (int seed = 0; seed < 20; seed++) {
            SimulatedScan scan = glare(0.015, kernel);
            scan.grey = true;
            scan.seed = 1000L + seed;
            StrayEstimate stray = stray(LightFit.of(scan.scan()));
            inside += Math.abs(stray.glare() - 0.015) < 1.96 * stray.glareError() ? 1 : 0;
        }
        assertTrue(inside >= 16, inside + " of 20");
    }

    /**
     * Glare of every amount from none to half a percent, found or not, from a kernel with a far
     * tail, with and without returned light, which is kept where glare is not: errors of the black
     * over what is stated have a mean square of 1. Of 24 prints it is above 1.75 once in a hundred
     * (chi-square over its degrees of freedom), and not far below 1.
     */
    @ParameterizedTest
    @CsvSource({"0,8", "0.02,8", "0,14"})
    void statedErrorOfBlackHoldsWhetherGlareIsFoundOrNot(double returned, double lengthMm)
            throws Problem {
        Convolution kernel = Convolution.exponential(lengthMm, SimulatedScan.STEP_MM);
        double squares = 0;
        int prints = 24;
        for (int seed = 0; seed < prints; seed++) {
            SimulatedScan scan = glare(0.005 * seed / prints, kernel);
            scan.returned = alike(returned);
            scan.returnedKernel = kernel;
            scan.grey = true;
            scan.seed = 2000L + seed;
            SheetSamples samples = scan.scan();
            LightFit fit = LightFit.of(samples);
            double error = blackError(scan, samples, fit) / statedBlackError(samples, fit);
            squares += error * error / prints;
        }
        assertTrue(squares > 0.45 && squares < 1.75, "mean square " + squares);
    }

    /** Whatever its shape, for no twin tells which it is. */
    @Test
    void glareThatIsNotFoundMayHaveAnyShape() throws Problem {
        SimulatedScan scan = glare(0.0006, Convolution.exponential(8, SimulatedScan.STEP_MM));
        SheetSamples samples = scan.scan();
        LightFit fit = LightFit.of(samples);
        assertFalse(stray(fit).corrected());
        assertTrue(fit.shapes() > 2, fit.shapes() + " shapes");
    }

    /** Standard error of the mean black, L*, by the stated causes. */
    private static double statedBlackError(SheetSamples samples, LightFit fit) {
        double variance = 0;
        for (double[][] cause : fit.causes()) {
            double sum = 0;
            int n = 0;
            for (int i = 0; i < samples.samples().size(); i++) {
                if (samples.samples().get(i).patch().rgb().equals(Rgb8.grey(0))) {
                    double light = fit.corrected()[1][i];
                    sum += Lab.lightness(light + cause[1][i]) - Lab.lightness(light);
                    n++;
                }
            }
            variance += Math.pow(sum / n, 2);
        }
        return Math.sqrt(variance);
    }

    @ParameterizedTest
    @ValueSource(doubles = {3, 15})
    void narrowAndWideGlareIsRemoved(double sigmaMm) throws Problem {
        SimulatedScan scan = glare(0.02, gaussian(sigmaMm));
        SheetSamples samples = scan.scan();
        LightFit fit = LightFit.of(samples);
        assertEquals(0, blackError(scan, samples, fit), 0.3);
        assertTrue(rms(scan, samples, fit.corrected()[1]) < 0.15);
    }

    /** The model has Gaussians; real optics have tails. Most of the harm must go all the same. */
    @ParameterizedTest
    @ValueSource(doubles = {3, 6, 10})
    void longTailedGlareIsMostlyRemoved(double lengthMm) throws Problem {
        SimulatedScan scan = glare(0.02, Convolution.exponential(lengthMm, SimulatedScan.STEP_MM));
        SheetSamples samples = scan.scan();
        LightFit fit = LightFit.of(samples);
        assertEquals(0, blackError(scan, samples, fit), 0.6);
        assertTrue(rms(scan, samples, fit.corrected()[1]) < 0.3);
        assertTrue(rms(scan, samples, measured(samples)) > 2.5);
    }

    /** Dust is left in: an outlier must neither become stray light nor spread to its neighbours. */
    @Test
    void aCleanScanStaysAsItIs() throws Problem {
        SimulatedScan scan = new SimulatedScan();
        SheetSamples samples = scan.scan();
        LightFit fit = LightFit.of(samples);
        assertFalse(stray(fit).corrected());
        assertEquals(0, fit.falloffPercent());
        double largest = 0;
        for (int i = 0; i < samples.samples().size(); i++) {
            for (int c = 0; c < 3; c++) {
                double before = samples.samples().get(i).linear().channel(c);
                largest = Math.max(largest, Math.abs(fit.corrected()[c][i] - before));
            }
        }
        assertEquals(0, largest);
    }

    @Test
    void returnedLightAloneIsToldFromGlare() throws Problem {
        SimulatedScan scan = new SimulatedScan();
        scan.returned = alike(0.03);
        scan.returnedKernel = gaussian(6);
        scan.dusty = 0;
        SheetSamples samples = scan.scan();
        LightFit fit = LightFit.of(samples);
        assertTrue(stray(fit).corrected());
        assertEquals(0.03, stray(fit).returned(), 0.005);
        assertEquals(0, stray(fit).glare(), 2.5 * stray(fit).glareError());
        assertTrue(rms(scan, samples, fit.corrected()[1]) < 0.1);
    }

    @Test
    void returnedLightAndGlareOfDifferentWidthAreBothFound() throws Problem {
        SimulatedScan scan = glare(0.01, gaussian(12));
        scan.returned = alike(0.03);
        scan.returnedKernel = gaussian(4);
        SheetSamples samples = scan.scan();
        LightFit fit = LightFit.of(samples);
        assertEquals(0.01, stray(fit).glare(), 3 * stray(fit).glareError());
        assertEquals(0.03, stray(fit).returned(), 0.006);
        assertEquals(12, stray(fit).widthMm(), 2);
        assertEquals(0, blackError(scan, samples, fit), 0.3);
    }

    /** A line sensor sees one line at a time, and its optics scatter that line alone. */
    @ParameterizedTest
    @CsvSource({"0,false", "0.04,false", "0,true"})
    void glareAlongTheLinesOfTheScanIsRemoved(double returned, boolean down) throws Problem {
        SimulatedScan scan = new SimulatedScan();
        scan.linesDown = down;
        scan.lineGlare = 0.015;
        scan.lid = 0.05;
        scan.dusty = 0;
        scan.returned = alike(returned);
        scan.returnedKernel = gaussian(6);
        SheetSamples samples = scan.scan();
        LightFit fit = LightFit.of(samples);
        assertTrue(rms(scan, samples, measured(samples)) > 2, "the simulated harm is real");
        assertEquals(0, blackError(scan, samples, fit), 0.5);
        assertTrue(rms(scan, samples, fit.corrected()[1]) < 0.3);
        assertEquals(0.015, stray(fit).glare(), 0.002);
        assertTrue(Double.isNaN(stray(fit).widthMm()), "a line has no width");
    }

    /** Glass scatters around, the sensor's optics along its line: both at once. */
    @ParameterizedTest
    @CsvSource({"6,0.006", "10,0.006", "10,0.01"})
    void glareAroundAndAlongLinesIsRemovedTogether(double widthMm, double each) throws Problem {
        SimulatedScan scan = glare(each, gaussian(widthMm));
        scan.lineGlare = each;
        SheetSamples samples = scan.scan();
        LightFit fit = LightFit.of(samples);
        assertEquals(0, blackError(scan, samples, fit), 0.35);
        assertTrue(rms(scan, samples, fit.corrected()[1]) < 0.2);
        assertEquals(2 * each, stray(fit).glare(), 0.04 * 2 * each);
    }

    /** Lamps along the sensor light a strip, and what scatters in it reaches farther along. */
    @ParameterizedTest
    @CsvSource({"9,2.8", "2.8,9", "7,3.5"})
    void glareThatReachesFartherOneWayIsRemovedAndIsNoLeak(double acrossMm, double downMm)
            throws Problem {
        SimulatedScan scan =
                glare(0.022, Convolution.exponential(acrossMm, downMm, SimulatedScan.STEP_MM));
        SheetSamples samples = scan.scan();
        LightFit fit = LightFit.of(samples);
        assertTrue(fit.leak().isEmpty());
        assertEquals(0, blackError(scan, samples, fit), 0.4);
        assertTrue(rms(scan, samples, fit.corrected()[1]) < 0.2);
    }

    @Test
    void channelsHaveTheirOwnGlare() throws Problem {
        SimulatedScan scan = glare(0, gaussian(8));
        scan.glare = new double[] {0.03, 0.01, 0.002};
        SheetSamples samples = scan.scan();
        LightFit fit = LightFit.of(samples);
        for (int c = 0; c < 3; c++) {
            double worst = 0;
            for (int i = 0; i < samples.samples().size(); i++) {
                double truth = scan.truth(samples.samples().get(i).patch(), c);
                worst = Math.max(worst, Math.abs(fit.corrected()[c][i] - truth));
            }
            assertTrue(worst < 0.004, "channel " + c + ": " + worst);
        }
    }

    @Test
    void whatLiesBeyondACroppedEdgeIsFlagged() throws Problem {
        SimulatedScan scan = glare(0.02, gaussian(8));
        scan.reachMm = -14;
        SheetSamples samples = scan.scan();
        LightFit fit = LightFit.of(samples);
        for (int i = 0; i < samples.samples().size(); i++) {
            Patch patch = samples.samples().get(i).patch();
            double x = patch.area().centre().x() - 14;
            double y = patch.area().centre().y() - 14;
            double away =
                    Math.min(
                            Math.min(x, scan.sheet.page().width() - 28 - x),
                            Math.min(y, scan.sheet.page().height() - 28 - y));
            if (away < 14) {
                assertTrue(fit.nearEdge()[i], patch.id() + " at " + away);
            }
            if (away > 24) {
                assertFalse(fit.nearEdge()[i], patch.id() + " at " + away);
            }
        }
    }

    /** Pale twins tell little about glare: what they leave open is in the error of dark patches. */
    @Test
    void whatPaleTwinsLeaveOpenIsInTheError() throws Problem {
        SimulatedScan scan = glare(0.01, gaussian(8));
        SheetSamples all = scan.scan();
        Set<Rgb8> seen = new HashSet<>();
        List<PatchSample> kept = new ArrayList<>();
        int twins = 0;
        for (PatchSample sample : all.samples()) {
            Rgb8 code = sample.patch().rgb();
            boolean pale = SimulatedScan.reflectance(code, 1) > 0.4;
            boolean first = seen.add(code);
            if (first || (pale && twins < 36)) {
                kept.add(sample);
                twins += first ? 0 : 1;
            }
        }
        SheetSamples samples =
                new SheetSamples(all.scan(), all.located(), kept, all.page(), all.preview());
        LightFit fit = LightFit.of(samples);
        assertFalse(stray(fit).corrected());
        assertTrue(stray(fit).glareError() > 0.002, "error " + stray(fit).glareError());
        assertTrue(fit.assumed());
        int dark = 0;
        for (int i = 0; i < kept.size(); i++) {
            Patch patch = kept.get(i).patch();
            if (patch.rgb().isNeutral() && patch.rgb().r() < 40) {
                double squares = 0;
                for (double[][] cause : fit.causes()) {
                    squares += cause[1][i] * cause[1][i];
                }
                double off = fit.corrected()[1][i] - scan.truth(patch, 1);
                assertTrue(Math.abs(off) < 2.5 * Math.sqrt(squares), patch.id() + ": " + off);
                dark++;
            }
        }
        assertTrue(dark > 10, dark + " dark patches");
    }

    /** One black amid paper and others amid black tell much of what none would by itself. */
    @Test
    void ordinaryStrayLightIsNarrowedByAFewTwins() throws Problem {
        SimulatedScan scan = glare(0.015, gaussian(8));
        SheetSamples all = scan.scan();
        double[] open = darkErrors(scan, withBlacks(all, 1));
        double[] told = darkErrors(scan, withBlacks(all, 5));
        assertTrue(open[0] < 2.5 * open[1], "off " + open[0] + ", error " + open[1]);
        assertTrue(told[0] < 2.5 * told[1], "off " + told[0] + ", error " + told[1]);
        assertTrue(told[1] < 0.7 * open[1], "error " + told[1] + " from " + open[1]);
        assertTrue(told[0] < 0.5 * open[0], "off " + told[0] + " from " + open[0]);
    }

    private static SheetSamples withBlacks(SheetSamples all, int blacks) {
        Set<Rgb8> seen = new HashSet<>();
        List<PatchSample> kept = new ArrayList<>();
        // From the end: the black amid paper comes last.
        for (int i = all.samples().size() - 1; i >= 0; i--) {
            PatchSample sample = all.samples().get(i);
            boolean black = sample.patch().rgb().equals(Rgb8.grey(0));
            int have =
                    (int) kept.stream().filter(k -> k.patch().rgb().equals(Rgb8.grey(0))).count();
            if (black ? have < blacks : seen.add(sample.patch().rgb())) {
                kept.add(sample);
            }
        }
        return new SheetSamples(all.scan(), all.located(), kept, all.page(), all.preview());
    }

    /** Root mean square error of dark greys, and what is stated for it. */
    private static double[] darkErrors(SimulatedScan scan, SheetSamples samples) {
        LightFit fit = LightFit.of(samples);
        assertTrue(fit.assumed());
        assertNull(fit.stray());
        double off = 0;
        double stated = 0;
        int n = 0;
        for (int i = 0; i < samples.samples().size(); i++) {
            Patch patch = samples.samples().get(i).patch();
            if (patch.rgb().isNeutral() && patch.rgb().r() > 0 && patch.rgb().r() < 25) {
                off += Math.pow(fit.corrected()[1][i] - scan.truth(patch, 1), 2);
                for (double[][] cause : fit.causes()) {
                    stated += cause[1][i] * cause[1][i];
                }
                n++;
            }
        }
        return new double[] {Math.sqrt(off / n), Math.sqrt(stated / n)};
    }

    @Test
    void withoutTwinsNothingIsClaimed() throws Problem {
        SimulatedScan scan = glare(0.02, gaussian(8));
        SheetSamples all = scan.scan();
        Set<Rgb8> seen = new HashSet<>();
        List<PatchSample> once = new ArrayList<>();
        for (PatchSample sample : all.samples()) {
            if (seen.add(sample.patch().rgb())) {
                once.add(sample);
            }
        }
        SheetSamples samples =
                new SheetSamples(all.scan(), all.located(), once, all.page(), all.preview());
        LightFit fit = LightFit.of(samples);
        assertNull(fit.stray());
        assertEquals(0, fit.falloffPercent());
        assertNotNull(fit.corrected());
        assertEquals(measured(samples)[7], fit.corrected()[1][7]);
    }
}
