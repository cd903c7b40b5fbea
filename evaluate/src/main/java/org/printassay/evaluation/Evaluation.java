package org.printassay.evaluation;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.printassay.colour.Lab;
import org.printassay.metric.Budget;
import org.printassay.metric.Extreme;
import org.printassay.metric.Neutrality;
import org.printassay.metric.PaperLight;
import org.printassay.metric.Tone;
import org.printassay.metric.Wedge;
import org.printassay.promise.Promise;
import org.printassay.reading.Reading;
import org.printassay.reading.StrayLight;
import org.printassay.reading.Trust;
import org.printassay.reading.Warning;
import org.printassay.reading.WarningCode;

/**
 * Every result for one print; null parts were not judged, and a warning says why.
 *
 * @param chartId chart the print was made from; null for measurement files of other charts
 * @param sheets sheets that were read
 * @param print print number from the sheet code; null when unknown
 * @param details what the user says about the print
 * @param fromScan true for scans, false for a measurement file
 * @param trust how colour was obtained
 * @param spaceKey RGB encoding that the codes are judged in
 * @param files what it was read from
 * @param placements one for each sheet in each scan
 * @param calibration where a scan's colours come from one
 * @param measurement how it was measured; null for scans
 * @param uncertainty what the uncertainty of each headline figure is made of
 * @param surface lines, bands, grain and the like; null for measurement files
 * @param promise the print beside what its printer's profile promises, where one was named
 */
public record Evaluation(
        @Nullable String chartId,
        List<Integer> sheets,
        @Nullable Integer print,
        PrintDetails details,
        boolean fromScan,
        Trust trust,
        String spaceKey,
        List<SourceFile> files,
        List<PlacementSummary> placements,
        @Nullable Extreme white,
        @Nullable Extreme black,
        List<Reading> patches,
        @Nullable Tone tone,
        @Nullable Wedge shadows,
        @Nullable Wedge highlights,
        @Nullable Neutrality neutrality,
        @Nullable Colours colours,
        @Nullable Evenness evenness,
        @Nullable StrayLight strayLight,
        List<Warning> warnings,
        List<Finding> findings,
        @Nullable CalibrationSummary calibration,
        @Nullable MeasurementSummary measurement,
        List<Budget> uncertainty,
        @Nullable PrintSurface surface,
        @Nullable Promise promise) {
    public Evaluation {
        sheets = List.copyOf(sheets);
        files = List.copyOf(files);
        placements = List.copyOf(placements);
        patches = List.copyOf(patches);
        warnings = List.copyOf(warnings);
        findings = List.copyOf(findings);
        uncertainty = List.copyOf(uncertainty);
    }

    /** Of a print of which nothing but this is known yet. */
    public static EvaluationBuilder builder(Trust trust, String spaceKey) {
        return new EvaluationBuilder(trust, spaceKey);
    }

    /** Starts from all that this one holds. */
    public EvaluationBuilder toBuilder() {
        return new EvaluationBuilder(this);
    }

    /** Whether a calibration was made for this kind of paper, this printer and this scanner. */
    public boolean calibrationFits() {
        return warnings.stream().noneMatch(w -> w.code() == WarningCode.CALIBRATION_PAPER);
    }

    /**
     * The light that the paper's colour is known for. What daylight makes of its brightener is
     * known to an instrument that does not cut ultraviolet, and to a calibration on its own kind of
     * paper.
     */
    public PaperLight paperLight() {
        if (fromScan && lightnessAlone()) {
            return PaperLight.NONE;
        }
        return switch (trust) {
            case INSTRUMENT ->
                    measurement != null && measurement.cutsUltraviolet()
                            ? PaperLight.NO_ULTRAVIOLET
                            : PaperLight.DAYLIGHT;
            case CALIBRATED_SCAN ->
                    calibrationFits() ? PaperLight.DAYLIGHT : PaperLight.OTHER_CALIBRATION;
            case PROFILED_SCAN, PLAIN_SCAN -> PaperLight.SCANNER;
        };
    }

    /** Whether only lightness was read, as by a grey scan: a* and b* are zero and mean nothing. */
    public boolean lightnessAlone() {
        boolean none = true;
        for (Reading reading : patches) {
            Lab lab = reading.lab() != null ? reading.lab() : reading.labRelative();
            none &= lab == null;
            if (lab != null && (lab.a() != 0 || lab.b() != 0)) {
                return false;
            }
        }
        return !none;
    }
}
