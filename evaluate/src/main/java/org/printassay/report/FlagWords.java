package org.printassay.report;

import java.util.List;
import java.util.TreeSet;
import org.printassay.reading.Reading;
import org.printassay.reading.ReadingFlag;

/** What the flags of readings mean, for a photographer. */
final class FlagWords {
    private FlagWords() {}

    /** The flags that any of the readings has, each with its meaning. */
    static List<Fact> of(List<Reading> readings) {
        TreeSet<ReadingFlag> seen = new TreeSet<>();
        readings.forEach(reading -> seen.addAll(reading.flags()));
        return seen.stream().map(flag -> Fact.of(flag.key(), meaning(flag), "")).toList();
    }

    private static String meaning(ReadingFlag flag) {
        return switch (flag) {
            case DUSTY ->
                    "Dust, hairs, scratches or fine lines lie on it; what they cover is left out.";
            case CLIPPED -> "At an end of the scanner's range: it may be beyond what it reads.";
            case UNEVEN -> "Not flat: its parts differ by more than noise.";
            case UNLIKE_TWINS -> "Differs from equal patches by more than their spread explains.";
            case DISTURBED ->
                    "So does all of like tone around it: a stain, a fold, a fault of the print.";
            case LIT ->
                    "Light from outside lay on it, or may have, and was taken off as well as known.";
            case OUT_OF_LINE ->
                    "Alone in its colour, and unlike what near colours lead one to expect.";
            case COARSE ->
                    "Lossy compression, or an edit in 8 bits, keeps its colour in coarse steps.";
            case SCATTERED -> "Equal patches of such tones lie far apart all over the sheet.";
            case UNSURE ->
                    "What moves many patches together, stray light or scans that disagree, may move it by more than 2 dE00.";
            case EDGE -> "Too near the edge of the scan: what lies beyond is unknown.";
        };
    }
}
