package org.printassay.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.printassay.evaluation.Evaluation;
import org.printassay.reading.Warning;
import org.printassay.reading.WarningCode;

/** What is said of a calibration follows whether it was made for the paper at hand. */
class TrustWordsTest {
    private static Evaluation onAnotherPaper() {
        Warning paper = new Warning(WarningCode.CALIBRATION_PAPER, "made on another");
        return SampleEvaluations.gloss().toBuilder().warnings(List.of(paper)).build();
    }

    @Test
    void aCalibrationOfAnotherPaperIsNotPraised() {
        String own = Words.trustMeaning(SampleEvaluations.gloss());
        assertTrue(own.contains("holds best for that printer and paper"), own);
        String other = Words.trustMeaning(onAnotherPaper());
        assertTrue(other.contains("off by several dE00"), other);
        assertFalse(other.contains("holds best"), other);
    }

    @Test
    void itsPaperColourIsNotSaidOfDaylight() {
        assertEquals(-1, paperWords(onAnotherPaper()).indexOf("under D50"));
        assertTrue(paperWords(onAnotherPaper()).contains("as for the calibration's paper"));
        assertTrue(paperWords(SampleEvaluations.gloss()).contains("under D50"));
    }

    private static String paperWords(Evaluation e) {
        String json = EvaluationJson.write(e);
        int at = json.indexOf("paperWords");
        return json.substring(at, json.indexOf('\n', at));
    }
}
