package org.printassay.compare;

import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.printassay.colour.Lab;
import org.printassay.evaluation.Evaluation;
import org.printassay.evaluation.MeasurementSummary;
import org.printassay.evaluation.PlacementSummary;
import org.printassay.evaluation.PrintDetails;
import org.printassay.evaluation.SourceFile;
import org.printassay.metric.Budget;
import org.printassay.metric.Extreme;
import org.printassay.metric.LevelStep;
import org.printassay.metric.Wedge;
import org.printassay.reading.MadeReadings;
import org.printassay.reading.Reading;
import org.printassay.reading.Trust;

/** Simulated evaluations with little in them, made by hand. */
final class SimplePrints {
    private final String paper;
    private @Nullable String printer;
    private @Nullable String route;
    private @Nullable String scanner = "Scanner A";
    private @Nullable String instrument = "Instrument A";
    private @Nullable String profile = "0".repeat(64);
    private @Nullable String condition = "M1";
    private @Nullable String chart = "paper-a4";
    private @Nullable Double dried = 24.0;
    private Trust trust = Trust.INSTRUMENT;
    private int[] levels = {};
    private double threshold = 0.5;
    private double whiteL = 95;
    private double blackL = 8;
    private double random = 0.1;
    private boolean once;
    private char sum;

    private SimplePrints(String paper) {
        this.paper = paper;
        this.sum = paper.isEmpty() ? 'e' : "abcdef".charAt(paper.charAt(0) % 6);
    }

    static SimplePrints print(String paper) {
        return new SimplePrints(paper);
    }

    SimplePrints printer(@Nullable String said) {
        printer = said;
        return this;
    }

    SimplePrints route(@Nullable String said) {
        route = said;
        return this;
    }

    SimplePrints scanner(@Nullable String said) {
        scanner = said;
        return this;
    }

    SimplePrints instrument(@Nullable String said) {
        instrument = said;
        return this;
    }

    SimplePrints profile(char digit) {
        profile = String.valueOf(digit).repeat(64);
        return this;
    }

    SimplePrints condition(@Nullable String said) {
        condition = said;
        return this;
    }

    SimplePrints chart(@Nullable String id) {
        chart = id;
        return this;
    }

    /** Neutral codes that were read. */
    SimplePrints levels(int... codes) {
        levels = codes;
        return this;
    }

    SimplePrints dried(@Nullable Double hours) {
        dried = hours;
        return this;
    }

    SimplePrints trust(Trust how) {
        trust = how;
        return this;
    }

    SimplePrints threshold(double deltaL) {
        threshold = deltaL;
        return this;
    }

    SimplePrints white(double l) {
        whiteL = l;
        return this;
    }

    SimplePrints black(double l) {
        blackL = l;
        return this;
    }

    /** What reading again would change, L*. */
    SimplePrints random(double standard) {
        random = standard;
        return this;
    }

    /** Every colour once: nothing random is known. */
    SimplePrints readOnce() {
        once = true;
        return this;
    }

    /** What its checksum is made of. */
    SimplePrints sum(char digit) {
        sum = digit;
        return this;
    }

    Evaluation evaluation() {
        boolean measured = trust == Trust.INSTRUMENT;
        return Evaluation.builder(trust, "srgb")
                .chartId(chart)
                .sheets(List.of(1))
                .print(1)
                .details(
                        new PrintDetails(
                                paper.isEmpty() ? null : paper,
                                printer,
                                route,
                                dried,
                                measured ? null : scanner,
                                null))
                .fromScan(!measured)
                .files(List.of(new SourceFile("input.tif", String.valueOf(sum).repeat(64))))
                .placements(
                        trust == Trust.PROFILED_SCAN
                                ? List.of(
                                        new PlacementSummary(
                                                "input.tif",
                                                1,
                                                12,
                                                12,
                                                0.1,
                                                null,
                                                null,
                                                0,
                                                24,
                                                profile))
                                : List.of())
                .white(extreme(whiteL, 255))
                .black(extreme(blackL, 0))
                .patches(Arrays.stream(levels).mapToObj(this::reading).toList())
                .shadows(wedge())
                .measurement(
                        measured
                                ? new MeasurementSummary(
                                        condition,
                                        null,
                                        null,
                                        instrument,
                                        1,
                                        null,
                                        List.of(),
                                        List.of())
                                : null)
                .uncertainty(List.of(budget("white.lab.l", whiteL), budget("black.lab.l", blackL)))
                .build();
    }

    private Reading reading(int level) {
        return MadeReadings.neutral("N" + level, level, blackL + level * (whiteL - blackL) / 255);
    }

    private static Extreme extreme(double l, int level) {
        Lab lab = new Lab(l, 0, 0);
        return new Extreme(lab, lab, null, new Lab(0.5, 0.5, 0.5), 0.2, level, 8);
    }

    private Budget budget(String figure, double value) {
        return new Budget(
                figure,
                "L*",
                value,
                once
                        ? List.of(new Budget.Part(Budget.Kind.SYSTEMATIC, 0.4, null))
                        : List.of(
                                new Budget.Part(Budget.Kind.RANDOM, random, 30),
                                new Budget.Part(Budget.Kind.SYSTEMATIC, 0.4, null)));
    }

    private Wedge wedge() {
        return new Wedge(
                threshold,
                2,
                5,
                4,
                new Wedge.Interval(3, 5),
                40,
                50,
                null,
                List.of(),
                Arrays.stream(levels)
                        .mapToObj(
                                level ->
                                        new LevelStep(
                                                level,
                                                level,
                                                level,
                                                level,
                                                level,
                                                org.printassay.metric.Verdict.SEPARATED,
                                                new Lab(level, 0, 0),
                                                2))
                        .toList());
    }
}
