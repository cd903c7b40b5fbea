package org.printassay.evaluation;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Comparator;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.printassay.colour.Lab;
import org.printassay.colour.Rgb8;
import org.printassay.metric.ColourDetail;
import org.printassay.metric.Gradient;
import org.printassay.metric.Irregularity;
import org.printassay.reading.Trust;

/** Made cases of colour, skin, smoothness and evenness; their order follows the ranking rule. */
class ColourFindingsTest {
    private static final Gradient SLOPE =
            new Gradient(8, 0, 1.6, 0.2, true, "darker towards the left");
    private static final Irregularity JUMP =
            new Irregularity(Irregularity.Kind.STEP, 120, 128, 2, 3);
    private static final Irregularity TURN =
            new Irregularity(Irregularity.Kind.HUE_SWING, 96, 96, 1.5, 2);

    private static ColourDetail colours(
            double chroma, @Nullable Integer noMoreFrom, double skinL, double skinE) {
        Lab aim = new Lab(50, 60, 30);
        Lab full = new Lab(50, 60 * chroma, 30 * chroma);
        return new ColourDetail(
                3,
                5,
                new Rgb8(255, 0, 0),
                List.of(
                        new ColourDetail.Hue(
                                "red",
                                full,
                                aim,
                                4,
                                full.chroma() - aim.chroma(),
                                0,
                                full.chroma(),
                                noMoreFrom)),
                List.of(
                        new ColourDetail.SkinTone(
                                new Rgb8(191, 153, 134),
                                new Lab(66 + skinL, 12, 16),
                                new Lab(66, 12, 16),
                                skinE,
                                skinL,
                                0,
                                0,
                                "")),
                500_000.0,
                600_000,
                List.of());
    }

    private static List<String> texts(
            Trust trust,
            @Nullable ColourDetail colours,
            List<Irregularity> irregularities,
            @Nullable Gradient gradient) {
        return texts(trust, null, colours, irregularities, gradient);
    }

    private static List<String> texts(
            Trust trust,
            @Nullable Lab unsure,
            @Nullable ColourDetail colours,
            List<Irregularity> irregularities,
            @Nullable Gradient gradient) {
        return ColourFindings.of(trust, unsure, colours, irregularities, gradient).stream()
                .sorted(Comparator.comparingDouble(Weighed::weight).reversed())
                .map(found -> found.finding().text())
                .toList();
    }

    @Test
    void whatAPictureLosesMostComesFirst() {
        List<String> texts =
                texts(Trust.INSTRUMENT, colours(0.7, 50, -2.4, 2.6), List.of(JUMP, TURN), SLOPE);
        assertEquals(
                List.of(
                        "Greys jump between levels 120 and 128.",
                        "From 50 % of full red on, more colour in the file gives no more colour on"
                                + " paper.",
                        "Greys turn to another hue near level 96.",
                        "Skin-like tones print 2.4 L* too dark.",
                        "The sheet is uneven: darker towards the left by 1.6 L*.",
                        "Full red prints dull."),
                texts);
    }

    /** What stands still jumps nowhere, and by turns is a stair. */
    @Test
    void flatsAndStairsAreNamedAsSuch() {
        Irregularity flat = new Irregularity(Irregularity.Kind.STEP, 127, 135, -4.4, 5);
        assertEquals(
                List.of("Greys hardly change between levels 127 and 135."),
                texts(Trust.INSTRUMENT, null, List.of(flat), null));
        assertEquals(
                List.of("Tone runs in stairs, most of all between levels 127 and 135."),
                texts(Trust.INSTRUMENT, null, List.of(JUMP, flat, flat, JUMP), null));
    }

    /** Black and white has no colours that could be dull, full or off. */
    @Test
    void aPrintWithoutColourIsToldAsSuchAndOfItsColoursNothingElse() {
        List<Weighed> found = new MadeFindings().withoutColour().greys(3, 1, false).ranked();
        List<FindingKind> kinds = found.stream().map(Weighed::kind).toList();
        assertTrue(kinds.contains(FindingKind.NO_COLOUR), kinds.toString());
        assertTrue(kinds.contains(FindingKind.TONED), kinds.toString());
        for (FindingKind kind :
                List.of(
                        FindingKind.DULL,
                        FindingKind.COLOUR_FULL,
                        FindingKind.SKIN,
                        FindingKind.LEAN)) {
            assertFalse(kinds.contains(kind), kinds.toString());
        }
    }

    @Test
    void nothingIsSaidOfWhatIsAsAimed() {
        assertTrue(
                texts(Trust.INSTRUMENT, colours(0.97, null, 0.3, 0.4), List.of(), null).isEmpty());
        assertTrue(texts(Trust.INSTRUMENT, null, List.of(), null).isEmpty());
    }

    @Test
    void aScanClaimsNoMoreThanItsTrust() {
        ColourDetail slightly = colours(1, null, -2, 2.1);
        assertEquals(1, texts(Trust.INSTRUMENT, slightly, List.of(), null).size());
        assertTrue(texts(Trust.PROFILED_SCAN, slightly, List.of(), null).isEmpty());
    }

    /** A scan that something speaks against shows no colour better than its paper. */
    @Test
    void aScanThatIsDoubtedAccusesNoColour() {
        ColourDetail off = colours(0.8, null, -5, 4.8);
        Lab good = new Lab(1.2, 1, 1);
        Lab exposed = new Lab(6, 2.2, 2.2);
        Lab doubted = new Lab(6, 8, 8);
        assertEquals(2, texts(Trust.PROFILED_SCAN, good, off, List.of(), null).size());
        assertEquals(1, texts(Trust.PROFILED_SCAN, exposed, off, List.of(), null).size());
        assertTrue(texts(Trust.PROFILED_SCAN, doubted, off, List.of(), null).isEmpty());
        assertEquals(2, texts(Trust.INSTRUMENT, doubted, off, List.of(), null).size());
    }

    @Test
    void aSlopeThatIsSmallOrNotSureIsNoFinding() {
        Gradient small = new Gradient(1, 0, 0.4, 0.1, true, "darker towards the left");
        Gradient unsure = new Gradient(8, 0, 1.6, 2, false, "no measurable gradient");
        assertTrue(texts(Trust.INSTRUMENT, null, List.of(), small).isEmpty());
        assertTrue(texts(Trust.INSTRUMENT, null, List.of(), unsure).isEmpty());
    }
}
