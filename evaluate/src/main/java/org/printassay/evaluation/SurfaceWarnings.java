package org.printassay.evaluation;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.printassay.calibrate.codes.ScanPart;
import org.printassay.reading.Warning;
import org.printassay.reading.WarningCode;
import org.printassay.sample.SurfaceSamples;
import org.printassay.sheet.Patch;

/** Why lines, bands, grain, sharpness or vignettes of a scan were not judged. */
final class SurfaceWarnings {
    private static final double LINES_PER_INCH = 555;
    private static final double EDGES_PER_INCH = 280;

    /** So many places are named. */
    private static final int PLACES = 6;

    private SurfaceWarnings() {}

    /**
     * The warnings.
     *
     * @param parts all scans
     * @param fine those that were not made larger after scanning, so that their pixels tell detail
     * @param scattered those whose equal patches lie far apart, so that vignettes are not judged
     */
    static List<Warning> of(
            List<ScanPart> parts,
            List<ScanPart> fine,
            List<ScanPart> scattered,
            PrintSurface surface) {
        List<Warning> warnings = new ArrayList<>();
        double finest =
                25.4
                        * fine.stream()
                                .mapToDouble(p -> p.samples().located().placement().samplesPerMm())
                                .max()
                                .orElse(0);
        if (surface.lines() == null) {
            warnings.add(new Warning(WarningCode.LINES_NOT_JUDGED, lines(parts, finest)));
        } else {
            for (int sheet : unlooked(parts, fine)) {
                warnings.add(
                        new Warning(
                                WarningCode.LINES_NOT_JUDGED,
                                "Lines and bands of sheet "
                                        + sheet
                                        + " are not judged: scan it at 600 samples an inch too."));
            }
        }
        streaks(surface).ifPresent(warnings::add);
        List<String> missing = new ArrayList<>();
        if (surface.grain() == null) {
            missing.add(
                    finest < LINES_PER_INCH
                            ? "grain and mottle (scan at 600 samples an inch)"
                            : "grain and mottle (flat greys and paper in a scan without lossy"
                                    + " coding are needed)");
        }
        if (surface.sharpness() == null) {
            missing.add(
                    finest < EDGES_PER_INCH
                            ? "sharpness (scan at 300 samples an inch or more)"
                            : "sharpness (no slanted edges were read)");
        }
        if (surface.vignettes() == null) {
            missing.add(
                    !scattered.isEmpty()
                            ? "vignettes (patches of one code lie too far apart)"
                            : "vignettes (none were read)");
        }
        if (!missing.isEmpty()) {
            warnings.add(
                    new Warning(
                            WarningCode.TEXTURE_NOT_JUDGED,
                            "Not judged: " + String.join(", ", missing) + "."));
        }
        return warnings;
    }

    /** Steps in vignettes that bare paper shows too. */
    private static Optional<Warning> streaks(PrintSurface surface) {
        List<PrintSurface.Vignette> vignettes = surface.vignettes();
        if (vignettes == null) {
            return Optional.empty();
        }
        Set<Long> places = new TreeSet<>();
        for (PrintSurface.Vignette vignette : vignettes) {
            vignette.scannerSteps().forEach(step -> places.add(Math.round(step.positionMm())));
        }
        if (places.isEmpty()) {
            return Optional.empty();
        }
        String at =
                places.stream().limit(PLACES).map(String::valueOf).collect(Collectors.joining(", "))
                        + (places.size() > PLACES ? " and more" : "");
        return Optional.of(
                new Warning(
                        WarningCode.SCANNER_STREAK,
                        "Print and bare paper alike turn lighter or darker "
                                + at
                                + " mm from the left of the page (as printed): that is no step of"
                                + " the print but the scanner's, unless the paper has a fold there."
                                + " Clean the scanner's glass, the narrow one too if it has one, let"
                                + " it calibrate itself, and scan again."));
    }

    /** Sheets with long tints none of whose scans was looked at. */
    private static Set<Integer> unlooked(List<ScanPart> parts, List<ScanPart> fine) {
        Set<Integer> sheets = new TreeSet<>();
        for (ScanPart part : parts) {
            if (hasLongTints(part)) {
                sheets.add(part.samples().located().sheet().number());
            }
        }
        for (ScanPart part : fine) {
            if (!part.samples().surface().traces().isEmpty()) {
                sheets.remove(part.samples().located().sheet().number());
            }
        }
        return sheets;
    }

    private static String lines(List<ScanPart> parts, double finest) {
        String not = "Lines and bands are not judged: ";
        if (parts.stream().noneMatch(SurfaceWarnings::hasLongTints)) {
            return not + "this sheet has no long tints. Print the printer sheet for them.";
        }
        return finest < LINES_PER_INCH
                ? not + "that takes a scan at 600 samples an inch."
                : not + "the long tints were not read.";
    }

    private static boolean hasLongTints(ScanPart part) {
        for (Patch patch : part.samples().located().sheet().patches()) {
            if (SurfaceSamples.isLong(patch)) {
                return true;
            }
        }
        return false;
    }
}
