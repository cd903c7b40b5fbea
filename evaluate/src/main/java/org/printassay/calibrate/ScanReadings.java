package org.printassay.calibrate;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.printassay.calibrate.codes.PatchColour;
import org.printassay.calibrate.codes.ScanColour;
import org.printassay.calibrate.codes.ScanPart;
import org.printassay.calibrate.part.PartResult;
import org.printassay.calibrate.part.ToneDoubt;
import org.printassay.colour.Lab;
import org.printassay.colour.RgbSpace;
import org.printassay.reading.Reading;
import org.printassay.reading.ReadingSet;
import org.printassay.reading.SharedError;
import org.printassay.reading.StrayLight;
import org.printassay.reading.Trust;
import org.printassay.reading.Warning;
import org.printassay.sample.SheetSamples;
import org.printassay.scannermodel.ScannerCalibration;

/**
 * From the samples of one print's scans to its readings: light evened out, stray light removed,
 * colour by trust.
 *
 * @param readings one for each patch that was read, by sheet, in sheet order
 * @param strayLight what was found about stray light (of the scan with most of it, when there are
 *     several); null when the twins cannot tell
 * @param falloffPercent largest difference of illumination over the patches of a scan, in percent
 *     of its brightest; 0 when not significant. It has been evened out.
 * @param unevenness whose the unevenness is; null without a turned repeat
 * @param scattered scans in which patches of one code lie far apart over the sheet
 * @param different two scans that are not of one print
 * @param warnings what the user must know
 */
public record ScanReadings(
        ReadingSet readings,
        @Nullable StrayLight strayLight,
        double falloffPercent,
        @Nullable Unevenness unevenness,
        List<ScanPart> scattered,
        Optional<Different> different,
        List<Warning> warnings) {
    public ScanReadings {
        scattered = List.copyOf(scattered);
        warnings = List.copyOf(warnings);
    }

    /**
     * Two scans that show different prints.
     *
     * @param first the first scan, counted from 0
     * @param second the second
     * @param why words that follow the second's name
     */
    public record Different(int first, int second, String why) {}

    /** Readings of scans that all have the same colour. */
    public static ScanReadings of(List<SheetSamples> scans, ScanColour colour) {
        return of(scans.stream().map(scan -> new ScanPart(scan, colour)).toList());
    }

    /**
     * Readings of one print.
     *
     * @param parts its scans: sheets, parts of sheets, repeats; at least one, of the same chart
     */
    public static ScanReadings of(List<ScanPart> parts) {
        if (parts.isEmpty()) {
            throw new IllegalArgumentException("no scan to read");
        }
        RgbSpace space = parts.get(0).samples().located().chart().space();
        boolean absolute = parts.stream().allMatch(part -> part.colour().trust().absolute());
        boolean colour = parts.stream().noneMatch(part -> part.colour().grey());
        // One scan that is less to be trusted makes the whole so.
        Trust trust =
                parts.stream()
                        .map(part -> part.colour().trust())
                        .max(Comparator.naturalOrder())
                        .orElseThrow();
        List<PartResult> results = new ArrayList<>();
        for (ScanPart part : parts) {
            if (!part.samples().samples().isEmpty()) {
                results.add(PartResult.of(part));
            }
        }
        boolean paper = results.stream().allMatch(result -> result.light().paperKnown());
        List<List<PatchColour>> scans = new ArrayList<>();
        double white = results.stream().mapToDouble(PartResult::whiteY).average().orElse(100);
        results.forEach(result -> scans.add(result.withPaperAt(white)));
        List<PatchColour> all = scans.stream().flatMap(List::stream).toList();
        StrayLight stray = null;
        double falloff = 0;
        for (PartResult result : results) {
            StrayLight one = result.strayLight();
            if (one != null && (stray == null || one.fraction() > stray.fraction())) {
                stray = one;
            }
            falloff = Math.max(falloff, result.light().falloffPercent());
        }
        List<Reading> merged = new Merging(absolute, paper, colour).readings(all);
        List<SharedError> shared = new ArrayList<>(SharedErrors.of(merged, results));
        shared.addAll(SharedErrors.disagreement(merged, scans, absolute));
        List<Reading> readings = UnsureReadings.flagged(merged, shared, colour);
        List<Warning> warnings = ScanWarnings.of(parts, results, absolute);
        return new ScanReadings(
                new ReadingSet(
                                readings,
                                space,
                                trust,
                                colour,
                                shared,
                                calibration(parts, readings, trust, warnings, results))
                        .withCodingSteps(SharedErrors.codingSteps(readings, results))
                        .withContrast(ToneDoubt.of(results)),
                stray,
                falloff,
                Unevenness.of(results),
                results.stream().filter(PartResult::scattered).map(PartResult::part).toList(),
                PrintIdentity.among(parts, results),
                warnings);
    }

    /** Whether stray light was estimated, or its likely amounts stand among the shared errors. */
    private static boolean allowsForStray(PartResult result) {
        return result.strayLight() != null || result.light().assumed();
    }

    /**
     * What a calibration adds to the error of each reading, and what a calibration or a profile may
     * be off that the scan itself casts doubt on; nothing where neither does.
     */
    private static List<Lab> calibration(
            List<ScanPart> parts,
            List<Reading> readings,
            Trust trust,
            List<Warning> warnings,
            List<PartResult> results) {
        List<@Nullable Lab> colours = new ArrayList<>();
        readings.forEach(reading -> colours.add(reading.lab()));
        boolean blackMoved = ToneDoubt.blackMoved(results);
        if (trust == Trust.PROFILED_SCAN) {
            boolean strayAllowedFor = results.stream().allMatch(ScanReadings::allowsForStray);
            List<Lab> errors = ProfileDoubt.of(colours, warnings, strayAllowedFor);
            return blackMoved ? ProfileDoubt.blackMoved(errors, colours) : errors;
        }
        List<Lab> errors = new ArrayList<>();
        for (Reading reading : readings) {
            double l = 0;
            double a = 0;
            double b = 0;
            for (ScanPart part : parts) {
                Optional<ScannerCalibration> calibration = part.colour().calibration();
                if (calibration.isEmpty()) {
                    return List.of();
                }
                // Scans of one scanner are off alike: the largest stands for all.
                Lab error = calibration.get().errorNear(reading.best());
                l = Math.max(l, error.l());
                a = Math.max(a, error.a());
                b = Math.max(b, error.b());
            }
            errors.add(new Lab(l, a, b));
        }
        List<Lab> doubted = ProfileDoubt.added(errors, warnings);
        return blackMoved ? ProfileDoubt.blackMoved(doubted, colours) : doubted;
    }
}
