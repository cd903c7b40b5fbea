package org.printassay.evaluation;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.printassay.metric.Budget;
import org.printassay.metric.Extreme;
import org.printassay.metric.Neutrality;
import org.printassay.metric.Tone;
import org.printassay.metric.Wedge;
import org.printassay.promise.Promise;
import org.printassay.reading.Reading;
import org.printassay.reading.StrayLight;
import org.printassay.reading.Trust;
import org.printassay.reading.Warning;

/**
 * An evaluation in the making: what is not set is not known, or was not judged. Components are
 * described at {@link Evaluation}.
 */
public final class EvaluationBuilder {
    private @Nullable String chartId;
    private List<Integer> sheets = List.of();
    private @Nullable Integer print;
    private PrintDetails details = PrintDetails.UNKNOWN;
    private boolean fromScan;
    private Trust trust;
    private String spaceKey;
    private List<SourceFile> files = List.of();
    private List<PlacementSummary> placements = List.of();
    private @Nullable Extreme white;
    private @Nullable Extreme black;
    private List<Reading> patches = List.of();
    private @Nullable Tone tone;
    private @Nullable Wedge shadows;
    private @Nullable Wedge highlights;
    private @Nullable Neutrality neutrality;
    private @Nullable Colours colours;
    private @Nullable Evenness evenness;
    private @Nullable StrayLight strayLight;
    private List<Warning> warnings = List.of();
    private List<Finding> findings = List.of();
    private @Nullable CalibrationSummary calibration;
    private @Nullable MeasurementSummary measurement;
    private List<Budget> uncertainty = List.of();
    private @Nullable PrintSurface surface;
    private @Nullable Promise promise;

    EvaluationBuilder(Trust trust, String spaceKey) {
        this.trust = trust;
        this.spaceKey = spaceKey;
    }

    EvaluationBuilder(Evaluation e) {
        chartId = e.chartId();
        sheets = e.sheets();
        print = e.print();
        details = e.details();
        fromScan = e.fromScan();
        trust = e.trust();
        spaceKey = e.spaceKey();
        files = e.files();
        placements = e.placements();
        white = e.white();
        black = e.black();
        patches = e.patches();
        tone = e.tone();
        shadows = e.shadows();
        highlights = e.highlights();
        neutrality = e.neutrality();
        colours = e.colours();
        evenness = e.evenness();
        strayLight = e.strayLight();
        warnings = e.warnings();
        findings = e.findings();
        calibration = e.calibration();
        measurement = e.measurement();
        uncertainty = e.uncertainty();
        surface = e.surface();
        promise = e.promise();
    }

    public EvaluationBuilder chartId(@Nullable String chartId) {
        this.chartId = chartId;
        return this;
    }

    public EvaluationBuilder sheets(List<Integer> sheets) {
        this.sheets = sheets;
        return this;
    }

    public EvaluationBuilder print(@Nullable Integer print) {
        this.print = print;
        return this;
    }

    public EvaluationBuilder details(PrintDetails details) {
        this.details = details;
        return this;
    }

    public EvaluationBuilder fromScan(boolean fromScan) {
        this.fromScan = fromScan;
        return this;
    }

    public EvaluationBuilder trust(Trust trust) {
        this.trust = trust;
        return this;
    }

    public EvaluationBuilder files(List<SourceFile> files) {
        this.files = files;
        return this;
    }

    public EvaluationBuilder placements(List<PlacementSummary> placements) {
        this.placements = placements;
        return this;
    }

    public EvaluationBuilder white(@Nullable Extreme white) {
        this.white = white;
        return this;
    }

    public EvaluationBuilder black(@Nullable Extreme black) {
        this.black = black;
        return this;
    }

    public EvaluationBuilder patches(List<Reading> patches) {
        this.patches = patches;
        return this;
    }

    public EvaluationBuilder tone(@Nullable Tone tone) {
        this.tone = tone;
        return this;
    }

    public EvaluationBuilder shadows(@Nullable Wedge shadows) {
        this.shadows = shadows;
        return this;
    }

    public EvaluationBuilder highlights(@Nullable Wedge highlights) {
        this.highlights = highlights;
        return this;
    }

    public EvaluationBuilder neutrality(@Nullable Neutrality neutrality) {
        this.neutrality = neutrality;
        return this;
    }

    public EvaluationBuilder colours(@Nullable Colours colours) {
        this.colours = colours;
        return this;
    }

    public EvaluationBuilder evenness(@Nullable Evenness evenness) {
        this.evenness = evenness;
        return this;
    }

    public EvaluationBuilder strayLight(@Nullable StrayLight strayLight) {
        this.strayLight = strayLight;
        return this;
    }

    public EvaluationBuilder warnings(List<Warning> warnings) {
        this.warnings = warnings;
        return this;
    }

    public EvaluationBuilder findings(List<Finding> findings) {
        this.findings = findings;
        return this;
    }

    public EvaluationBuilder calibration(@Nullable CalibrationSummary calibration) {
        this.calibration = calibration;
        return this;
    }

    public EvaluationBuilder measurement(@Nullable MeasurementSummary measurement) {
        this.measurement = measurement;
        return this;
    }

    public EvaluationBuilder uncertainty(List<Budget> uncertainty) {
        this.uncertainty = uncertainty;
        return this;
    }

    public EvaluationBuilder surface(@Nullable PrintSurface surface) {
        this.surface = surface;
        return this;
    }

    public EvaluationBuilder promise(@Nullable Promise promise) {
        this.promise = promise;
        return this;
    }

    public Evaluation build() {
        return new Evaluation(
                chartId,
                sheets,
                print,
                details,
                fromScan,
                trust,
                spaceKey,
                files,
                placements,
                white,
                black,
                patches,
                tone,
                shadows,
                highlights,
                neutrality,
                colours,
                evenness,
                strayLight,
                warnings,
                findings,
                calibration,
                measurement,
                uncertainty,
                surface,
                promise);
    }
}
