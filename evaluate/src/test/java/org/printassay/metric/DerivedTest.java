package org.printassay.metric;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Collections;
import java.util.List;
import java.util.Objects;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.printassay.colour.Lab;
import org.printassay.reading.ReadingSet;
import org.printassay.reading.Trust;

/** Words about the paper's colour claim no more than its uncertainty allows. */
class DerivedTest {
    private static String words(Lab paper, double unsure) {
        return words(paper, unsure, PaperLight.DAYLIGHT);
    }

    private static String words(Lab paper, double unsure, PaperLight light) {
        Lab error = new Lab(0.5, unsure, unsure);
        Lab ink = new Lab(15, 0, 0);
        Extreme white = new Extreme(paper, new Lab(100, 0, 0), 0.05, error, 0.3, 255, 4);
        Extreme black = new Extreme(ink, ink, 1.7, error, 0.3, 0, 4);
        return Objects.requireNonNull(Derived.of(white, black, light)).paperWords();
    }

    @Test
    void aTintThatMayBeNoneIsNotCalledOne() {
        String words = words(new Lab(94, 0.2, -3.6), 7.9);
        assertTrue(words.startsWith("neutral or tinted, which cannot be told"), words);
        assertFalse(words.contains("clearly"), words);
        assertTrue(words.contains("3.6 towards blue, \u00b1 7.9"), words);
        assertTrue(words(new Lab(94, 0.1, 0.3), 7.9).contains("cannot be told"), "nor neutral");
    }

    @ParameterizedTest
    @CsvSource({
        "-3.6, 0.3, clearly cool",
        "-1.6, 1.0, slightly cool",
        "0.4, 1.0, neutral under D50",
        "8, 1.0, strongly warm",
        "8, 4.0, warm under D50"
    })
    void aTintThatIsSureIsNamed(double b, double unsure, String begins) {
        String words = words(new Lab(94, 0.1, b), unsure);
        assertTrue(words.startsWith(begins), words);
    }

    /** A lamp without ultraviolet shows a brightened paper as neutral that daylight makes blue. */
    @Test
    void whatAScannerSeesIsNotSaidOfDaylight() {
        Lab paper = new Lab(94, 0.1, 0.4);
        assertEquals("neutral in the scanner's light", words(paper, 1, PaperLight.SCANNER));
        assertEquals("neutral under D50", words(paper, 1, PaperLight.DAYLIGHT));
        assertEquals(
                "neutral under D50 without ultraviolet",
                words(paper, 1, PaperLight.NO_ULTRAVIOLET));
    }

    /** The words beside the paper's figures follow the same uncertainty. */
    @Test
    void theTintOfNeutralityFollowsIt() {
        ReadingSet sure = Prints.print(Prints.fault(lab -> lab), 0.1, 1);
        assertFalse(tint(sure).contains("or tinted"), tint(sure));
        ReadingSet unsure =
                new ReadingSet(
                        sure.readings(),
                        sure.space(),
                        Trust.CALIBRATED_SCAN,
                        true,
                        List.of(),
                        Collections.nCopies(sure.readings().size(), new Lab(3, 4, 4)));
        assertEquals("neutral or tinted", tint(unsure));
    }

    private static String tint(ReadingSet set) {
        Neutrality neutrality = Objects.requireNonNull(Judgement.of(set, 0.5).neutrality());
        return Objects.requireNonNull(neutrality.paperTintWords());
    }

    /** Both stand in one report: a paper must not be slightly tinted here and clearly there. */
    @ParameterizedTest
    @CsvSource({"-0.8", "-2.2", "-2.7", "-4", "-6.5", "6.5", "8"})
    void bothWordsOfTheTintSayTheSame(double b) {
        Lab tinted = new Lab(0, 0, b);
        ReadingSet print =
                Prints.print(
                        Prints.fault(
                                lab ->
                                        new Lab(
                                                lab.l(),
                                                lab.a(),
                                                lab.b() + tinted.b() * lab.l() / 100)),
                        0.02,
                        1);
        Judgement judgement = Judgement.of(print, 0.5);
        Derived derived =
                Objects.requireNonNull(
                        Derived.of(judgement.white(), judgement.black(), PaperLight.DAYLIGHT));
        String words = tint(print);
        assertTrue(
                derived.paperWords().startsWith(words + " under D50"),
                words + " / " + derived.paperWords());
    }

    @Test
    void aGreyScanKnowsNoColourOfPaper() {
        assertEquals("not known: the scan is grey", words(new Lab(94, 0, 0), 1, PaperLight.NONE));
    }
}
