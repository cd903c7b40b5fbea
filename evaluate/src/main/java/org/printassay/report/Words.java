package org.printassay.report;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import java.util.stream.Collectors;
import org.printassay.colour.Lab;
import org.printassay.evaluation.Evaluation;
import org.printassay.reading.Trust;

/** Numbers and terms as people read them. */
final class Words {
    private static final String MINUS = "\u2212";

    private Words() {}

    /** A number with a true minus sign. */
    static String number(double value, int decimals) {
        BigDecimal rounded = BigDecimal.valueOf(value).setScale(decimals, RoundingMode.HALF_EVEN);
        return (rounded.signum() < 0 ? MINUS : "") + rounded.abs().toPlainString();
    }

    /** A difference: always with its sign, unless it is nothing. */
    static String signed(double value, int decimals) {
        BigDecimal rounded = BigDecimal.valueOf(value).setScale(decimals, RoundingMode.HALF_EVEN);
        return (rounded.signum() > 0 ? "+" : "") + number(value, decimals);
    }

    static String within(double value, double halfWidth, int decimals) {
        return number(value, decimals) + "\u00a0\u00b1\u00a0" + number(halfWidth, decimals);
    }

    static String lab(Lab lab) {
        return "L* "
                + number(lab.l(), 1)
                + "  a* "
                + number(lab.a(), 1)
                + "  b* "
                + number(lab.b(), 1);
    }

    static String levels(List<Integer> levels) {
        return levels.stream().map(String::valueOf).collect(Collectors.joining(", "));
    }

    /** Sentences made for every kind of output, with the signs that a page has for them. */
    static String typeset(String text) {
        return text.replace("+-", "\u00b1").replaceAll("(?<![\\w.)])-(?=\\d)", MINUS);
    }

    /** Name of a trust for people. */
    static String trust(Trust trust) {
        return switch (trust) {
            case INSTRUMENT -> "instrument";
            case CALIBRATED_SCAN -> "calibrated scan";
            case PROFILED_SCAN -> "profiled scan";
            case PLAIN_SCAN -> "plain scan";
        };
    }

    /** What the trust in an evaluation's colours allows to be said. */
    static String trustMeaning(Evaluation e) {
        return switch (e.trust()) {
            case INSTRUMENT ->
                    "Colours were measured by an instrument; they are as true as the instrument.";
            case CALIBRATED_SCAN ->
                    "Colours come from a scan, through a calibration made from an instrument's"
                            + " measurement of a print. "
                            + (e.calibrationFits()
                                    ? "It holds best for that printer and paper."
                                    : "It was made for another paper, printer or scanner, or it is"
                                            + " not said for which: colours can be off by several"
                                            + " dE00.");
            case PROFILED_SCAN ->
                    "Colours come from a scan, through the scanner's profile. Absolute lightness is"
                            + " true only if the scanner's automatic corrections were off.";
            case PLAIN_SCAN ->
                    "The scan has no profile. Separation of levels, relative tone and relative"
                            + " neutrality hold roughly; absolute colour and density are not stated.";
        };
    }
}
