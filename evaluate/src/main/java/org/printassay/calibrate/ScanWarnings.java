package org.printassay.calibrate;

import java.util.ArrayList;
import java.util.DoubleSummaryStatistics;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.printassay.calibrate.codes.ScanPart;
import org.printassay.calibrate.light.StrayEstimate;
import org.printassay.calibrate.part.PartResult;
import org.printassay.calibrate.part.ScanHealth;
import org.printassay.reading.StrayLight;
import org.printassay.reading.Warning;
import org.printassay.reading.WarningCode;
import org.printassay.scan.ScanInfo;

/** What the user must know about scans and their light, in plain words. */
final class ScanWarnings {
    /** Illumination differing by less, percent, is not worth a line. */
    private static final double UNEVEN_PERCENT = 1;

    /** Standard error of black by that of the glare, L*, from which the scanner limits it. */
    private static final double LIMITED_L = 1;

    /**
     * Paper differing by more between scans of a print, percent of Y, and by more than the light of
     * one of them within itself, is not explained by where on the bed they lay.
     */
    private static final double EXPOSURES_PERCENT = 1;

    /**
     * Paper differing by more than this, percent of Y, is 2 L*, more than a lamp that warms up
     * explains (common practice, no source): no lightness of such scans is what it seems.
     */
    private static final double EXPOSED_PERCENT = 5;

    private ScanWarnings() {}

    static List<Warning> of(List<ScanPart> parts, List<PartResult> results, boolean absolute) {
        Set<Warning> warnings = new LinkedHashSet<>();
        for (ScanPart part : parts) {
            warnings.addAll(part.colour().warnings());
        }
        if (absolute) {
            boolean calibrated =
                    parts.stream().allMatch(part -> part.colour().calibration().isPresent());
            warnings.add(exposure(results, calibrated));
            exposures(results, warnings);
        }
        for (ScanPart part : parts) {
            file(part, warnings);
        }
        for (PartResult result : results) {
            warnings.addAll(ScanHealth.of(result));
            boolean told =
                    result.part().samples().located().photographed()
                            || results.stream().anyMatch(r -> Unevenness.turned(result, r));
            light(result, told, warnings);
        }
        repeats(results, warnings);
        return new ArrayList<>(warnings);
    }

    private static void repeats(List<PartResult> results, Set<Warning> warnings) {
        for (int j = 1; j < results.size(); j++) {
            PartResult last = results.get(j);
            for (PartResult one : results.subList(0, j)) {
                PrintIdentity.disagreement(one, last)
                        .ifPresent(
                                words ->
                                        warnings.add(
                                                new Warning(
                                                        WarningCode.REPEATS_DIFFER,
                                                        format(
                                                                "%s and %s: %s. Repeats of one print on"
                                                                        + " one scanner agree better. If they"
                                                                        + " are two prints, evaluate each on"
                                                                        + " its own; if not, scan both with"
                                                                        + " the same settings.",
                                                                one.part().samples().scan().name(),
                                                                last.part().samples().scan().name(),
                                                                words))));
            }
        }
    }

    private static Warning exposure(List<PartResult> results, boolean calibrated) {
        String text =
                "Absolute lightness, density and colour differences are true only if the scanner's"
                        + " automatic exposure, contrast and colour were off and no curve was laid"
                        + " over the scan"
                        + (calibrated
                                ? ", now and when the calibration was made."
                                : ", and its profile is that of this scanner.");
        double percent = apartPercent(results);
        if (percent > Math.max(EXPOSURES_PERCENT, unevenPercent(results))
                && percent <= EXPOSED_PERCENT) {
            text +=
                    format(
                            " Automatic exposure seems to have been on: the same paper differs by"
                                    + " %.1f %% between the scans.",
                            percent);
        }
        boolean coloured = results.stream().anyMatch(r -> !r.part().colour().grey());
        if (coloured && !calibrated) {
            text +=
                    " Optical brightener shows as it does under the scanner's lamp: in daylight such"
                            + " paper may look bluer, or less blue, by several units of b*.";
        }
        return new Warning(WarningCode.EXPOSURE_UNKNOWN, text);
    }

    /** Of scans of one paper that are so far apart, one at least is not what it seems. */
    private static void exposures(List<PartResult> results, Set<Warning> warnings) {
        double percent = apartPercent(results);
        if (percent > Math.max(EXPOSED_PERCENT, unevenPercent(results))) {
            warnings.add(
                    new Warning(
                            WarningCode.AUTOMATIC_EXPOSURE,
                            format(
                                    "The same paper differs by %.0f %% between the scans: exposures,"
                                            + " scanners or backings differ, and which is right"
                                            + " cannot be told. Switch automatic exposure off, and"
                                            + " scan all parts on one scanner with the same"
                                            + " settings.",
                                    percent)));
        }
    }

    /** By how much paper differs between scans that show bare paper; 0 where none or one does. */
    private static double apartPercent(List<PartResult> results) {
        DoubleSummaryStatistics paper =
                results.stream()
                        .filter(r -> r.light().paperKnown())
                        .mapToDouble(PartResult::whiteY)
                        .summaryStatistics();
        return paper.getCount() < 2 ? 0 : 100 * (paper.getMax() / paper.getMin() - 1);
    }

    private static double unevenPercent(List<PartResult> results) {
        return results.stream().mapToDouble(r -> r.light().falloffPercent()).max().orElse(0);
    }

    private static void file(ScanPart part, Set<Warning> warnings) {
        ScanInfo info = part.samples().scan();
        if (info.channels() == 1) {
            warnings.add(
                    new Warning(
                            WarningCode.GREY_SCAN,
                            info.name() + " is grey: lightness is judged, colour is not."));
        }
    }

    /**
     * @param told whether it is known whose the unevenness is, or that it cannot be told by scans
     */
    private static void light(PartResult result, boolean told, Set<Warning> warnings) {
        String name = result.part().samples().scan().name();
        double falloff = result.light().falloffPercent();
        if (falloff >= UNEVEN_PERCENT) {
            warnings.add(
                    new Warning(
                            WarningCode.UNEVEN_LIGHT,
                            format(
                                    "%s: light differs by %.1f %% over the sheet and was evened out.%s",
                                    name,
                                    falloff,
                                    told
                                            ? ""
                                            : " The lamp or the print may be the cause: a second scan,"
                                                    + " turned by 180 degrees, tells most of it apart.")));
        }
        StrayLight stray = result.strayLight();
        PartResult.Blacks blacks = result.blacks();
        if (stray != null && stray.corrected()) {
            warnings.add(new Warning(WarningCode.STRAY_LIGHT, stray(name, stray, blacks)));
        }
        String limit = limit(result, stray, blacks);
        if (limit != null) {
            warnings.add(new Warning(WarningCode.SCANNER_LIMITED, name + ": " + limit));
        }
    }

    /** Less is not worth a word, and less than nothing is the estimate's own scatter. */
    private static final double LEAST_RETURNED = 5e-5;

    private static String stray(String name, StrayLight stray, PartResult.@Nullable Blacks blacks) {
        String text =
                format(
                        "%s: stray light %.2f %% ± %.2f (two standard errors) %s",
                        name,
                        100 * stray.fraction(),
                        200 * stray.standardError(),
                        Double.isNaN(stray.widthMm())
                                ? "half of it or more along the sensor's lines"
                                : format("within about %.0f mm", 2 * stray.widthMm()));
        if (stray.returned() >= LEAST_RETURNED) {
            text += format(", and %.2f %% returned by the neighbourhood", 100 * stray.returned());
        }
        text += ", removed";
        if (blacks != null) {
            text +=
                    format(
                            "; without this the black would have read L* %.1f instead of %.1f",
                            blacks.without(), blacks.corrected());
        }
        return text + ".";
    }

    /** Why the darkest reading is the scanner's rather than the print's; null when it is not. */
    private static @Nullable String limit(
            PartResult result, @Nullable StrayLight stray, PartResult.@Nullable Blacks blacks) {
        if (stray == null && result.light().assumed()) {
            return "stray light could be estimated only roughly (too few patches stand twice): what"
                    + " they tell of it was taken off, and a slight mark over one of them may pass"
                    + " for it; black and Dmax are limited by the scanner.";
        }
        if (stray == null) {
            return "stray light could not be estimated (too few patches stand twice), so black and"
                    + " Dmax are limited by the scanner.";
        }
        StrayEstimate found = result.light().stray();
        if (found != null && found.negative()) {
            return "dark patches read darker beside paper than beside black, which stray light does"
                    + " not do; nothing was removed, and black and Dmax are limited by the"
                    + " scanner. Sharpening or a shadow correction may be on: switch it off.";
        }
        if (blacks != null && blacks.clipped() && !result.blackCut()) {
            return "most black patches are at the end of the scanner's range, so black and Dmax are"
                    + " limited by the scanner.";
        }
        if (blacks != null && blacks.error() > LIMITED_L) {
            return format(
                    "stray light is known to ± %.2f %% only, which is ± %.1f L* in the black: it"
                            + " and Dmax are limited by the scanner.",
                    200 * stray.standardError(), 2 * blacks.error());
        }
        return null;
    }

    private static String format(String pattern, Object... values) {
        return String.format(Locale.ROOT, pattern, values);
    }
}
