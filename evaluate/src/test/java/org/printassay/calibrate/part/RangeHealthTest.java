package org.printassay.calibrate.part;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.function.BiFunction;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.printassay.calibrate.SimulatedScan;
import org.printassay.calibrate.codes.ScanColour;
import org.printassay.calibrate.codes.ScanPart;
import org.printassay.colour.LinearRgb;
import org.printassay.colour.Rgb8;
import org.printassay.colour.RgbSpace;
import org.printassay.colour.icc.RgbProfiles;
import org.printassay.reading.ReadingFlag;
import org.printassay.reading.Warning;
import org.printassay.reading.WarningCode;
import org.printassay.sample.PatchSample;
import org.printassay.sample.SheetSamples;

/** What paper and black say of a scan's settings, on simulated samples. */
class RangeHealthTest {
    private static List<Warning> warnings(BiFunction<PatchSample, LinearRgb, LinearRgb> change)
            throws Exception {
        SheetSamples plain = new SimulatedScan().scan();
        List<PatchSample> samples = new ArrayList<>();
        for (PatchSample sample : plain.samples()) {
            LinearRgb light = change.apply(sample, sample.linear());
            boolean clipped = Math.max(light.r(), Math.max(light.g(), light.b())) >= 1;
            samples.add(
                    new PatchSample(
                            sample.patch(),
                            light,
                            sample.standardError(),
                            sample.blocks(),
                            clipped ? Set.of(ReadingFlag.CLIPPED) : sample.flags()));
        }
        SheetSamples changed =
                new SheetSamples(
                        plain.scan(), plain.located(), samples, plain.page(), plain.preview());
        ScanColour colour =
                ScanColour.given("scanner.icc", RgbProfiles.of(RgbSpace.SRGB), changed.scan());
        HealthNotes notes = new HealthNotes(changed.scan());
        RangeHealth.note(PartResult.of(new ScanPart(changed, colour)), notes);
        return notes.warnings();
    }

    private static Set<WarningCode> codes(List<Warning> warnings) {
        return warnings.stream().map(Warning::code).collect(Collectors.toSet());
    }

    private static LinearRgb times(LinearRgb light, double r, double g, double b) {
        return new LinearRgb(
                Math.min(1, r * light.r()), Math.min(1, g * light.g()), Math.min(1, b * light.b()));
    }

    /** Of paper that is clipped in all channels nothing is known, so not that it is neutral. */
    @Test
    void clippedPaperIsNotCalledNeutral() throws Exception {
        Set<WarningCode> told = codes(warnings((sample, light) -> times(light, 1.25, 1.25, 1.25)));
        assertTrue(told.contains(WarningCode.CLIPPED), told.toString());
        assertTrue(told.contains(WarningCode.AUTOMATIC_EXPOSURE), told.toString());
        assertFalse(told.contains(WarningCode.AUTOMATIC_COLOUR), told.toString());
        // Below the end of the range it is.
        Set<WarningCode> balanced =
                codes(
                        warnings(
                                (sample, light) ->
                                        sample.patch().rgb().equals(Rgb8.grey(255))
                                                ? new LinearRgb(0.97, 0.97, 0.97)
                                                : light));
        assertTrue(balanced.contains(WarningCode.AUTOMATIC_COLOUR), balanced.toString());
    }

    /** Codes that are no light, read as light by their profile; a gamma that leaves black dark. */
    @Test
    void aBlackPalerThanAnyPrintsIsDoubted() throws Exception {
        List<Warning> doubted =
                warnings(
                        (sample, light) ->
                                new LinearRgb(
                                        Math.pow(Math.max(0, light.r()), 0.38),
                                        Math.pow(Math.max(0, light.g()), 0.38),
                                        Math.pow(Math.max(0, light.b()), 0.38)));
        assertTrue(doubted.toString().contains("paler than a print's"), doubted.toString());
        assertTrue(codes(doubted).contains(WarningCode.PROFILE_DOUBTFUL));
        List<Warning> dark =
                warnings(
                        (sample, light) ->
                                new LinearRgb(
                                        Math.pow(Math.max(0, light.r()), 0.7),
                                        Math.pow(Math.max(0, light.g()), 0.7),
                                        Math.pow(Math.max(0, light.b()), 0.7)));
        assertFalse(codes(dark).contains(WarningCode.PROFILE_DOUBTFUL), dark.toString());
    }

    private static String doubt(double r, double g, double b) throws Exception {
        return warnings((sample, light) -> times(light, r, g, b)).stream()
                .filter(w -> w.code() == WarningCode.PROFILE_DOUBTFUL)
                .map(Warning::text)
                .collect(Collectors.joining());
    }

    /** Brown paper is seldom, but is there; paper lighter than any is not. */
    @Test
    void colouredPaperIsNamedBesideTheProfile() throws Exception {
        String brown = doubt(0.55, 0.37, 0.24);
        assertTrue(brown.contains("unless the paper is so coloured, the profile seems"), brown);
        assertEquals("", doubt(1, 1, 1));
        String other =
                warnings(
                                (sample, light) ->
                                        sample.patch().rgb().equals(Rgb8.grey(255))
                                                ? light
                                                : times(light, 1.3, 0.6, 0.15))
                        .stream()
                        .filter(w -> w.code() == WarningCode.PROFILE_DOUBTFUL)
                        .map(Warning::text)
                        .collect(Collectors.joining());
        assertTrue(other.contains("hardly a print does: the profile seems"), other);
    }
}
