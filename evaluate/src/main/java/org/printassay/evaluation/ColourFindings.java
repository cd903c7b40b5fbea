package org.printassay.evaluation;

import static org.printassay.evaluation.Say.say;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.printassay.colour.Lab;
import org.printassay.metric.ColourDetail;
import org.printassay.metric.Gradient;
import org.printassay.metric.Irregularity;
import org.printassay.metric.Systematic;
import org.printassay.reading.Trust;

/** What colours, skin-like tones, the smoothness of greys and evenness tell, in words. */
final class ColourFindings {
    /** Difference in dE00 that is seen between prints side by side (common practice, no source). */
    private static final double SEEN = 1.5;

    /** Chroma that a full colour must miss to be worth a line, share of its aim. */
    private static final double DULL_SHARE = 0.12;

    /** Fuller than this, percent, a limit hardly matters to pictures. */
    private static final int NEARLY_FULL = 85;

    /** Full colours of a print, or what a scanner makes of them, differ by more, a* and b*. */
    private static final double NO_PRINT = 0.01;

    /** So many places where greys jump or stand still are stairs. */
    private static final int STAIRS = 4;

    /** A gradient over the sheet that is seen on an even tone, L* (common practice, no source). */
    private static final double SEEN_GRADIENT = 1;

    private ColourFindings() {}

    /**
     * What there is to say.
     *
     * @param unsure half-widths that paper is known by, with all that speaks against the scan; null
     *     where they are not known. No colour is known better.
     */
    static List<Weighed> of(
            Trust trust,
            @Nullable Lab unsure,
            @Nullable ColourDetail colours,
            List<Irregularity> irregularities,
            @Nullable Gradient gradient) {
        List<Weighed> found = new ArrayList<>();
        if (colours != null && colours.isWithoutColour()) {
            found.add(noColour(colours));
        } else if (colours != null) {
            dull(trust, doubtOfChroma(trust, unsure), colours).ifPresent(found::add);
            full(trust, colours).ifPresent(found::add);
            skin(trust, doubtOfColour(trust, unsure), colours).ifPresent(found::add);
        }
        for (Irregularity.Kind kind : Irregularity.Kind.values()) {
            irregularities.stream()
                    .filter(i -> i.kind() == kind)
                    .max(Comparator.comparingDouble(i -> Math.abs(i.size())))
                    .ifPresent(worst -> found.add(rough(worst, irregularities)));
        }
        if (gradient != null && gradient.significant() && gradient.overSheet() > SEEN_GRADIENT) {
            found.add(uneven(gradient));
        }
        return found;
    }

    private static Weighed noColour(ColourDetail colours) {
        if (colours.spreadOfHues() < NO_PRINT) {
            return FindingKind.NO_COLOUR.weighed(
                    "colours",
                    "The scan has no colours: red, green and blue are one in all of it.",
                    "No print is as grey as that.",
                    "Scan in colour.");
        }
        double least =
                colours.hues().stream().mapToDouble(h -> h.aim().chroma()).min().orElseThrow();
        return FindingKind.NO_COLOUR.weighed(
                "colours",
                "The print has no colours: red, green, blue and what lies between print as one tone.",
                say(
                        "Full colours lie within %.0f of their mean in a* and b*, where the least"
                                + " chroma of the aim is %.0f.",
                        Math.ceil(colours.spreadOfHues()), least),
                "If black and white is meant, go by tone, shadows, highlights and greys. If not, switch"
                        + " the driver's black and white mode off.");
    }

    private static Optional<Weighed> dull(Trust trust, double doubt, ColourDetail colours) {
        List<ColourDetail.Hue> dull =
                colours.hues().stream()
                        .filter(
                                h ->
                                        -h.deltaChroma()
                                                > Math.max(
                                                        4 * doubt, DULL_SHARE * h.aim().chroma()))
                        .sorted(Comparator.comparingDouble(ColourDetail.Hue::deltaChroma))
                        .toList();
        if (dull.isEmpty()) {
            return Optional.empty();
        }
        ColourDetail.Hue worst = dull.get(0);
        String names = join(dull.stream().map(ColourDetail.Hue::name).toList());
        return Optional.of(
                FindingKind.DULL.weighed(
                        -worst.deltaChroma(),
                        "colours",
                        "Full " + names + (dull.size() == 1 ? " prints" : " print") + " dull.",
                        say(
                                "Most of all %s: chroma %.0f where the aim has %.0f, %s.",
                                worst.name(),
                                worst.full().chroma(),
                                worst.aim().chroma(),
                                basis(trust)),
                        "Look at saturated parts in a proof with this paper's profile, or choose a"
                                + " paper that reaches more."));
    }

    private static Optional<Weighed> full(Trust trust, ColourDetail colours) {
        ColourDetail.Hue first = null;
        for (ColourDetail.Hue hue : colours.hues()) {
            Integer from = hue.noMoreFromPercent();
            Integer least = first == null ? null : first.noMoreFromPercent();
            if (from != null && from < NEARLY_FULL && (least == null || from < least)) {
                first = hue;
            }
        }
        if (first == null || first.noMoreFromPercent() == null) {
            return Optional.empty();
        }
        return Optional.of(
                FindingKind.COLOUR_FULL.weighed(
                        100 - first.noMoreFromPercent(),
                        "colours",
                        say(
                                "From %d %% of full %s on, more colour in the file gives no more"
                                        + " colour on paper.",
                                first.noMoreFromPercent(), first.name()),
                        say(
                                "The largest chroma is %.0f, the aim goes on to %.0f, %s.",
                                first.mostChroma(), first.aim().chroma(), basis(trust)),
                        "Detail in strongly coloured parts merges there, or differs in lightness alone:"
                                + " lower their saturation."));
    }

    private static Optional<Weighed> skin(Trust trust, double doubt, ColourDetail colours) {
        List<ColourDetail.SkinTone> skin = colours.skin();
        if (skin.isEmpty()) {
            return Optional.empty();
        }
        double mean = mean(skin.stream().map(ColourDetail.SkinTone::deltaE00).toList());
        if (mean < SEEN + doubt) {
            return Optional.empty();
        }
        double light = mean(skin.stream().map(ColourDetail.SkinTone::deltaL).toList());
        double chroma = mean(skin.stream().map(ColourDetail.SkinTone::deltaChroma).toList());
        double hue = mean(skin.stream().map(ColourDetail.SkinTone::hueShiftDegrees).toList());
        List<String> parts = new ArrayList<>();
        if (Math.abs(light) >= 1) {
            parts.add(say("%.1f L* too %s", Math.abs(light), light < 0 ? "dark" : "light"));
        }
        if (Math.abs(hue) >= 3) {
            parts.add(say("%.0f\u00b0 too %s", Math.abs(hue), hue < 0 ? "red" : "yellow"));
        }
        if (Math.abs(chroma) >= 1.5) {
            parts.add(chroma < 0 ? "too dull" : "too colourful");
        }
        return Optional.of(
                FindingKind.SKIN.weighed(
                        mean,
                        "skin",
                        "Skin-like tones print "
                                + (parts.isEmpty()
                                        ? "off their aim, each another way"
                                        : join(parts))
                                + ".",
                        say(
                                "dE00 %.1f in the mean of %d tones, %s.",
                                mean, skin.size(), basis(trust)),
                        "See the table of tones below before you correct portraits for it."));
    }

    private static Weighed rough(Irregularity worst, List<Irregularity> all) {
        long alike = all.stream().filter(i -> i.kind() == worst.kind()).count();
        String others = alike > 1 ? say(" %d such places in all.", alike) : "";
        if (worst.kind() == Irregularity.Kind.STEP) {
            boolean jumps = worst.size() > 0;
            String text =
                    alike >= STAIRS
                            ? "Tone runs in stairs, most of all between levels %d and %d."
                            : jumps
                                    ? "Greys jump between levels %d and %d."
                                    : "Greys hardly change between levels %d and %d.";
            return FindingKind.TONE_JUMP.weighed(
                    Math.abs(worst.size()),
                    "tone",
                    say(text, worst.level(), worst.toLevel()),
                    say(
                            "These lie %.1f L* %s than their neighbours do; more than chance."
                                    + others,
                            Math.abs(worst.size()),
                            jumps ? "further apart" : "closer together"),
                    "Smooth gradients will show edges"
                            + (alike >= STAIRS ? "" : jumps ? " there" : " beside it")
                            + ": have the profile made anew, or print through another route.");
        }
        return FindingKind.HUE_TURN.weighed(
                worst.size(),
                "neutrality",
                say("Greys turn to another hue near level %d.", worst.level()),
                say("By %.1f in a*, b* against their neighbours; more than chance.", worst.size())
                        + others,
                "Black and white pictures will show it: have the profile made anew.");
    }

    private static Weighed uneven(Gradient gradient) {
        return FindingKind.UNEVEN.weighed(
                gradient.overSheet(),
                "evenness",
                say("The sheet is uneven: %s by %.1f L*.", gradient.words(), gradient.overSheet()),
                say("± %.1f, from equal patches at different places.", gradient.uncertainty()),
                "Scan it once more, turned by half: what stays at the same edge of the sheet is the"
                        + " print's.");
    }

    /** What a scan's colours may be off; gains in L* move chroma far less than L* itself. */
    private static double doubtOfChroma(Trust trust, @Nullable Lab unsure) {
        double stated = Systematic.lightness(trust);
        return trust == Trust.INSTRUMENT || unsure == null
                ? stated
                : Math.max(stated, Math.max(unsure.a(), unsure.b()));
    }

    private static double doubtOfColour(Trust trust, @Nullable Lab unsure) {
        return trust == Trust.INSTRUMENT || unsure == null
                ? Systematic.lightness(trust)
                : Math.max(doubtOfChroma(trust, unsure), unsure.l());
    }

    private static String basis(Trust trust) {
        return TrustWords.basis(trust, "as far as a profiled scan can tell");
    }

    private static double mean(List<Double> values) {
        return values.stream().mapToDouble(v -> v).average().orElse(0);
    }

    private static String join(List<String> parts) {
        int last = parts.size() - 1;
        return last < 1
                ? String.join("", parts)
                : String.join(", ", parts.subList(0, last)) + " and " + parts.get(last);
    }
}
