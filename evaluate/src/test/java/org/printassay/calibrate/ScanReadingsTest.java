package org.printassay.calibrate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.printassay.calibrate.codes.ScanColour;
import org.printassay.calibrate.codes.ScanPart;
import org.printassay.colour.DeltaE;
import org.printassay.colour.Lab;
import org.printassay.colour.LinearRgb;
import org.printassay.colour.Rgb8;
import org.printassay.colour.RgbSpace;
import org.printassay.colour.Xyz;
import org.printassay.colour.icc.RgbProfiles;
import org.printassay.problem.Problem;
import org.printassay.reading.ContrastDoubt;
import org.printassay.reading.LabError;
import org.printassay.reading.Reading;
import org.printassay.reading.ReadingSet;
import org.printassay.reading.StrayLight;
import org.printassay.reading.Trust;
import org.printassay.reading.Warning;
import org.printassay.reading.WarningCode;
import org.printassay.sample.PatchSample;
import org.printassay.sample.SheetSamples;
import org.printassay.scan.ScanInfo;
import org.printassay.scannermodel.MadeCalibration;
import org.printassay.sheet.Patch;

/** Readings of simulated scans; the colour of the simulated patches is known. */
class ScanReadingsTest {
    private static ScanColour profiled(SimulatedScan scan) {
        ScanInfo info = scan.info();
        return ScanColour.embedded(
                new ScanInfo(
                        info.name(),
                        info.format(),
                        info.width(),
                        info.height(),
                        info.channels(),
                        info.bits(),
                        info.samplesPerInch(),
                        Optional.of(RgbProfiles.of(RgbSpace.SRGB)),
                        info.lossy()));
    }

    private static ScanColour plain(SimulatedScan scan) {
        return ScanColour.embedded(scan.info());
    }

    private static Xyz trueXyz(SimulatedScan scan, Patch patch) {
        return RgbSpace.SRGB.linearToXyz(
                scan.truth(patch, 0), scan.truth(patch, 1), scan.truth(patch, 2));
    }

    private static Map<String, Patch> patches(SimulatedScan scan) {
        Map<String, Patch> patches = new HashMap<>();
        scan.sheet.patches().forEach(patch -> patches.put(patch.id(), patch));
        return patches;
    }

    private static Patch patch(Map<String, Patch> patches, Reading reading) {
        return Objects.requireNonNull(patches.get(reading.id()));
    }

    private static Lab lab(Reading reading) {
        return Objects.requireNonNull(reading.lab());
    }

    private static boolean warns(ScanReadings result, WarningCode code) {
        return result.warnings().stream().map(Warning::code).anyMatch(code::equals);
    }

    private static SimulatedScan glaring() throws Problem {
        SimulatedScan scan = new SimulatedScan();
        scan.glare = new double[] {0.02, 0.015, 0.01};
        scan.glareKernel = Convolution.gaussian(8, SimulatedScan.STEP_MM);
        scan.dusty = 0;
        return scan;
    }

    @Test
    void absoluteColourIsThatOfThePrint() throws Problem {
        SimulatedScan scan = glaring();
        ScanReadings result = ScanReadings.of(List.of(scan.scan()), profiled(scan));
        assertEquals(Trust.PROFILED_SCAN, result.readings().trust());
        assertEquals(scan.sheet.patches().size(), result.readings().readings().size());
        Map<String, Patch> patches = patches(scan);
        double sum = 0;
        for (Reading reading : result.readings().readings()) {
            Xyz truth = trueXyz(scan, patch(patches, reading));
            sum += DeltaE.ciede2000(Lab.of(truth, Xyz.PCS_WHITE), lab(reading));
            assertEquals(
                    -Math.log10(truth.y() / 100), Objects.requireNonNull(reading.density()), 0.15);
        }
        assertTrue(sum / result.readings().readings().size() < 0.1, "mean dE00 " + sum);
        assertTrue(warns(result, WarningCode.EXPOSURE_UNKNOWN));
        assertTrue(warns(result, WarningCode.STRAY_LIGHT));
        assertFalse(warns(result, WarningCode.PLAIN_SCAN));
        assertFalse(warns(result, WarningCode.SCANNER_LIMITED));
        StrayLight stray = Objects.requireNonNull(result.strayLight());
        assertTrue(stray.blackWithout() > 7, "black without " + stray.blackWithout());
    }

    /**
     * As automatic contrast does: black at the end, but above code 0, so that nothing is clipped.
     */
    @Test
    void aBlackThatWasPutAtTheEndLeavesContrastInDoubt() throws Problem {
        SimulatedScan scan = new SimulatedScan();
        scan.dusty = 0;
        SheetSamples plain = scan.scan();
        SheetSamples moved = withoutBlack(plain);
        assertEquals(
                ContrastDoubt.NONE,
                ScanReadings.of(List.of(plain), plain(scan)).readings().contrast());
        assertEquals(
                ContrastDoubt.BLACK_MOVED,
                ScanReadings.of(List.of(moved), plain(scan)).readings().contrast());
    }

    /** What was done to the scan is known to a calibration no better than to a profile. */
    @Test
    void aBlackThatWasPutAtTheEndLeavesACalibrationInDoubt() throws Problem {
        SimulatedScan scan = new SimulatedScan();
        scan.dusty = 0;
        ScanColour colour =
                ScanColour.calibrated(
                        "c.json", MadeCalibration.of(plain(scan).codeLight()), scan.info());
        SheetSamples plain = scan.scan();
        ReadingSet sure = ScanReadings.of(List.of(plain), colour).readings();
        assertEquals(Trust.CALIBRATED_SCAN, sure.trust());
        assertTrue(sure.calibration().stream().allMatch(error -> error.l() < 2));
        ReadingSet doubted = ScanReadings.of(List.of(withoutBlack(plain)), colour).readings();
        assertTrue(doubted.calibration().stream().allMatch(error -> error.l() > 2.99));
    }

    private static SheetSamples withoutBlack(SheetSamples plain) {
        List<PatchSample> stretched = new ArrayList<>();
        for (PatchSample sample : plain.samples()) {
            LinearRgb light = sample.linear();
            stretched.add(
                    new PatchSample(
                            sample.patch(),
                            new LinearRgb(
                                    withoutBlack(light.r()),
                                    withoutBlack(light.g()),
                                    withoutBlack(light.b())),
                            sample.standardError(),
                            sample.blocks(),
                            sample.flags()));
        }
        return new SheetSamples(
                plain.scan(), plain.located(), stretched, plain.page(), plain.preview());
    }

    /** The black of the simulated prints is 0.0046 to 0.0052. */
    private static double withoutBlack(double light) {
        return Math.max(0.0002, (light - 0.005) / 0.995);
    }

    /** Lamps excite a brightener less or more than daylight does; none of both is known. */
    @Test
    void brightenerIsSaidToShowAsTheLampHasIt() throws Problem {
        String text = exposureOfPair(1, 0);
        assertTrue(text.contains("as it does under the scanner's lamp"), text);
        assertFalse(text.contains("shows no optical brightener"), text);
    }

    /** Stretched to just inside the range: nothing is clipped, but no paper is L* 99. */
    @Test
    void paperLighterThanPapersAreHadItsExposureSet() throws Problem {
        assertFalse(exposureWarned(1.08));
        assertTrue(exposureWarned(1.15));
    }

    private static boolean exposureWarned(double exposure) throws Problem {
        SimulatedScan scan = new SimulatedScan();
        scan.exposure = exposure;
        scan.dusty = 0;
        ScanReadings result = ScanReadings.of(List.of(scan.scan()), profiled(scan));
        return warns(result, WarningCode.AUTOMATIC_EXPOSURE);
    }

    @Test
    void paperThatDiffersByLessThanTheLightIsUnevenAccusesNoExposure() throws Problem {
        assertTrue(exposureOfPair(1.02, 0).contains("seems to have been on"));
        assertFalse(exposureOfPair(1.02, 0.05).contains("seems to have been on"));
        assertFalse(warns(pair(1.04, 0), WarningCode.AUTOMATIC_EXPOSURE));
        assertTrue(warns(pair(1.12, 0.05), WarningCode.AUTOMATIC_EXPOSURE));
        assertFalse(exposureOfPair(1.12, 0.05).contains("seems to have been on"), "told once");
    }

    /**
     * Which exposure is right nobody knows, so lightness is less sure than its profile makes it.
     */
    @Test
    void scansOfOtherExposuresLeaveLightnessInDoubt() throws Problem {
        ScanReadings same = pair(1.01, 0);
        assertFalse(warns(same, WarningCode.AUTOMATIC_EXPOSURE));
        ScanReadings apart = pair(0.88, 0);
        assertTrue(warns(apart, WarningCode.AUTOMATIC_EXPOSURE));
        double before = same.readings().calibration().stream().mapToDouble(Lab::l).max().orElse(0);
        double after = apart.readings().calibration().stream().mapToDouble(Lab::l).max().orElse(0);
        assertTrue(after > before + 2, before + " and " + after);
    }

    /** What is said of the exposure of two scans of a print, the second of them lighter. */
    private static String exposureOfPair(double exposure, double falloff) throws Problem {
        return pair(exposure, falloff).warnings().stream()
                .filter(w -> w.code() == WarningCode.EXPOSURE_UNKNOWN)
                .map(Warning::text)
                .findFirst()
                .orElseThrow();
    }

    private static ScanReadings pair(double exposure, double falloff) throws Problem {
        List<ScanPart> parts = new ArrayList<>();
        for (double each : new double[] {1, exposure}) {
            SimulatedScan scan = new SimulatedScan();
            scan.exposure = each;
            scan.falloff = falloff;
            scan.dusty = 0;
            parts.add(new ScanPart(scan.scan(), profiled(scan)));
        }
        return ScanReadings.of(parts);
    }

    /** A calibration averages scans, so it has to know whether they show one print. */
    @Test
    void lightOfTwoPrintsIsNotTakenForOne() throws Problem {
        SimulatedScan one = new SimulatedScan();
        SimulatedScan other = new SimulatedScan();
        other.seed = 2;
        ScanPart first = new ScanPart(one.scan(), plain(one));
        ScanPart second = new ScanPart(other.scan(), plain(other));
        assertTrue(ScanLights.of(List.of(first, second)).different().isPresent());
        assertTrue(ScanLights.of(List.of(first, first)).different().isEmpty());
    }

    /** The correction of a scan that needs none must change nothing to speak of. */
    @Test
    void aCleanScanIsNotHarmed() throws Problem {
        double sum = 0;
        int n = 0;
        for (long seed = 1; seed <= 4; seed++) {
            SimulatedScan scan = new SimulatedScan();
            scan.seed = seed;
            SheetSamples samples = scan.scan();
            ScanColour colour = profiled(scan);
            ScanReadings result = ScanReadings.of(List.of(samples), colour);
            for (int i = 0; i < samples.samples().size(); i++) {
                Lab before = Lab.of(colour.toXyz(samples.samples().get(i).linear()), Xyz.PCS_WHITE);
                sum += DeltaE.ciede2000(before, lab(result.readings().readings().get(i)));
                n++;
            }
            assertFalse(warns(result, WarningCode.STRAY_LIGHT));
        }
        assertTrue(sum / n < 0.05, "mean dE00 " + sum / n);
    }

    @Test
    void plainScanGivesColourRelativeToPaperOnly() throws Problem {
        SimulatedScan scan = glaring();
        ScanReadings result = ScanReadings.of(List.of(scan.scan()), plain(scan));
        assertEquals(Trust.PLAIN_SCAN, result.readings().trust());
        double l = 0;
        double a = 0;
        double b = 0;
        int papers = 0;
        for (Reading reading : result.readings().readings()) {
            assertNull(reading.lab());
            assertNull(reading.density());
            Lab relative = Objects.requireNonNull(reading.labRelative());
            if (reading.rgb().equals(Rgb8.grey(255))) {
                l += relative.l();
                a += relative.a();
                b += relative.b();
                papers++;
            }
        }
        assertEquals(100, l / papers, 0.05);
        assertEquals(0, a / papers, 0.05);
        assertEquals(0, b / papers, 0.05);
        assertTrue(warns(result, WarningCode.PLAIN_SCAN));
        assertFalse(warns(result, WarningCode.EXPOSURE_UNKNOWN));
    }

    @Test
    void greyScanHasLightnessOnly() throws Problem {
        SimulatedScan scan = glaring();
        scan.grey = true;
        ScanReadings result = ScanReadings.of(List.of(scan.scan()), plain(scan));
        assertFalse(result.readings().colour());
        assertTrue(warns(result, WarningCode.GREY_SCAN));
        for (Reading reading : result.readings().readings()) {
            assertEquals(0, Objects.requireNonNull(reading.labRelative()).chroma());
        }
    }

    /** L* of a dark neutral moves 903.3 times its light (ISO/CIE 11664-4). */
    @Test
    void standardErrorFollowsTheTransform() throws Problem {
        SimulatedScan scan = new SimulatedScan();
        SheetSamples samples = scan.scan();
        ScanReadings result = ScanReadings.of(List.of(samples), profiled(scan));
        for (int i = 0; i < samples.samples().size(); i++) {
            Reading reading = result.readings().readings().get(i);
            if (reading.rgb().equals(Rgb8.grey(0))) {
                LabError error = Objects.requireNonNull(reading.standardError());
                double light = samples.samples().get(i).standardError().g();
                assertEquals(903.3 * light, error.l(), 0.1 * error.l());
            }
        }
    }

    @Test
    void repeatsBecomeOneReadingEach() throws Problem {
        SimulatedScan scan = new SimulatedScan();
        scan.dusty = 0;
        SheetSamples one = scan.scan();
        ScanReadings once = ScanReadings.of(List.of(one), profiled(scan));
        ScanReadings twice = ScanReadings.of(List.of(one, one), profiled(scan));
        assertEquals(once.readings().readings().size(), twice.readings().readings().size());
        for (int i = 0; i < once.readings().readings().size(); i++) {
            Reading a = once.readings().readings().get(i);
            Reading b = twice.readings().readings().get(i);
            assertEquals(a.id(), b.id());
            assertEquals(lab(a).l(), lab(b).l(), 1e-9);
            LabError error = Objects.requireNonNull(a.standardError());
            assertEquals(error.l(), Objects.requireNonNull(b.standardError()).l(), 1e-9);
        }
    }

    @Test
    void repeatsThatDisagreeHaveALargerError() throws Problem {
        SimulatedScan scan = new SimulatedScan();
        SheetSamples one = scan.scan();
        scan.seed = 2;
        ScanReadings twice = ScanReadings.of(List.of(one, scan.scan()), profiled(scan));
        double errors = 0;
        for (Reading reading : twice.readings().readings()) {
            errors +=
                    Objects.requireNonNull(reading.standardError()).l()
                            / twice.readings().readings().size();
        }
        // The other seed is another print: twins 0.25 L* apart, their mean 0.18, ink only.
        assertTrue(errors > 0.08, "mean error " + errors);
    }
}
