package org.printassay.evaluation;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.printassay.calibrate.Unevenness;
import org.printassay.metric.Judgement;
import org.printassay.reading.ReadingSet;
import org.printassay.reading.Warning;

/** Puts judgements, findings and warnings together into an evaluation. */
final class Assembly {
    private Assembly() {}

    /**
     * What was found of the light over the sheet.
     *
     * @param falloffPercent what was evened out
     * @param whose how much of that is the scanner's; null without a repeat that was turned
     */
    record Light(double falloffPercent, @Nullable Unevenness whose) {
        static final Light EVEN = new Light(0, null);
    }

    /**
     * The evaluation of readings that were judged.
     *
     * @param known what is known about the print besides its readings
     */
    static Evaluation evaluation(
            ReadingSet set, Judgement judged, EvaluationBuilder known, Light light) {
        List<Warning> warnings = NotJudged.added(known.build(), set, judged);
        Double deltaE = judged.meanDeltaE00();
        Double twins = judged.largestTwinDifference();
        Evaluation evaluation =
                known.white(judged.white())
                        .black(judged.black())
                        .patches(set.readings())
                        .tone(judged.tone())
                        .shadows(judged.shadows())
                        .highlights(judged.highlights())
                        .neutrality(judged.neutrality())
                        .colours(
                                deltaE == null
                                        ? null
                                        : new Colours(
                                                deltaE, judged.gamutVolume(), judged.colours()))
                        .evenness(
                                twins == null
                                        ? null
                                        : new Evenness(
                                                twins,
                                                light.falloffPercent(),
                                                light.whose(),
                                                judged.gradient()))
                        .warnings(warnings)
                        .uncertainty(judged.budgets())
                        .build();
        return evaluation.toBuilder()
                .findings(Findings.told(Findings.ranked(evaluation, judged.repeats())))
                .build();
    }
}
