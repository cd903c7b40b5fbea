package org.printassay.metric;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.function.IntToDoubleFunction;
import org.jspecify.annotations.Nullable;
import org.printassay.colour.Lab;
import org.printassay.colour.PaperAim;
import org.printassay.reading.ReadingSet;

/**
 * Everything that readings tell about a print; null parts could not be judged.
 *
 * @param repeats whether anything was read more than once
 * @param meanDeltaE00 of the cube surface against the aim
 * @param gamutVolume cubic CIELAB units
 * @param colours the same in detail
 * @param largestTwinDifference dE00
 * @param gradient of lightness over the sheet
 * @param lostInCoding which of shadows and highlights could not be judged because lossy coding
 *     keeps them in steps that hide visible differences
 * @param budgets where the uncertainty of each headline figure comes from
 */
public record Judgement(
        @Nullable Extreme white,
        @Nullable Extreme black,
        @Nullable Tone tone,
        @Nullable Wedge shadows,
        @Nullable Wedge highlights,
        @Nullable Neutrality neutrality,
        boolean repeats,
        @Nullable Double meanDeltaE00,
        @Nullable Double gamutVolume,
        @Nullable ColourDetail colours,
        @Nullable Double largestTwinDifference,
        @Nullable Gradient gradient,
        Set<End> lostInCoding,
        List<Budget> budgets) {
    /** Ends of the tone scale. */
    public enum End {
        SHADOWS,
        HIGHLIGHTS
    }

    public Judgement {
        lostInCoding = Set.copyOf(lostInCoding);
        budgets = List.copyOf(budgets);
    }

    /**
     * Judges readings.
     *
     * @param threshold difference in L* that counts as visible
     */
    public static Judgement of(ReadingSet set, double threshold) {
        return of(set, threshold, ToneAim.PAPER);
    }

    /**
     * As {@link #of(ReadingSet, double)}, with tone held against another aim.
     *
     * @param toneAim of greys; wedges and colours keep the usual aim
     */
    public static Judgement of(ReadingSet set, double threshold, ToneAim toneAim) {
        Neutrals neutrals = Neutrals.of(set);
        Extreme white = ExtremeJudge.judge(neutrals, 255).orElse(null);
        Extreme black =
                ExtremeJudge.judge(neutrals, 0)
                        .filter(found -> white == null || found.labRelative().l() < 60)
                        .orElse(null);
        boolean repeats = neutrals.spreads().of(0, 255, Lab::l).known();
        Double twins = ColourJudge.largestTwinDifference(set).orElse(null);
        Gradient.Fit slope = Gradient.of(set).orElse(null);
        Gradient gradient = slope == null ? null : slope.gradient();
        List<Budget> evenness = new ArrayList<>();
        EvennessBudget.ofTwins(set).ifPresent(evenness::add);
        if (slope != null) {
            evenness.add(EvennessBudget.ofGradient(set, slope));
        }
        if (white == null || black == null) {
            List<Budget> budgets = new ArrayList<>(budgets(set, white, black, null, null));
            budgets.addAll(evenness);
            return new Judgement(
                    white, black, null, null, null, null, repeats, null, null, null, twins,
                    gradient, Set.of(), budgets);
        }
        Lab whiteLab = neutrals.level(255).orElseThrow().mean();
        Lab blackLab = neutrals.level(0).orElseThrow().mean();
        PaperAim aim = PaperAim.relativeColorimetric(whiteLab, blackLab);
        // An aim hangs on paper and black: where one is clipped, all of tone and all colours would
        // seem to be off.
        boolean clipped = neutrals.clipped(255) || neutrals.clipped(0);
        boolean colours = set.trust().absolute() && set.colour() && !clipped;
        Tone tone =
                clipped
                        ? null
                        : ToneJudge.judge(
                                        neutrals,
                                        aim,
                                        toneAim,
                                        SmoothnessJudge.judge(neutrals, aim, whiteLab, blackLab))
                                .orElse(null);
        Neutrality neutrality =
                neutrals.clipped(255)
                        ? null
                        : NeutralityJudge.judge(neutrals, whiteLab, blackLab, white.uncertainty())
                                .orElse(null);
        List<Budget> budgets = new ArrayList<>(budgets(set, white, black, tone, neutrality));
        if (colours) {
            Lab spread =
                    new Lab(
                            neutrals.spreads().printed(Lab::l).errorOf(1),
                            neutrals.spreads().printed(Lab::a).errorOf(1),
                            neutrals.spreads().printed(Lab::b).errorOf(1));
            ColourJudge.budget(set, aim, spread).ifPresent(budgets::add);
            ColourJudge.gamutBudget(set, spread).ifPresent(budgets::add);
        }
        Set<End> lost = EnumSet.noneOf(End.class);
        if (WedgeJudge.lost(neutrals, false, threshold)) {
            lost.add(End.SHADOWS);
        }
        if (WedgeJudge.lost(neutrals, true, threshold)) {
            lost.add(End.HIGHLIGHTS);
        }
        Wedge shadows =
                lost.contains(End.SHADOWS) ? null : wedge(set, neutrals, threshold, aim, false);
        Wedge highlights =
                lost.contains(End.HIGHLIGHTS) ? null : wedge(set, neutrals, threshold, aim, true);
        if (shadows != null) {
            LevelBudget.of(shadows, neutrals, false).ifPresent(budgets::add);
        }
        if (highlights != null) {
            LevelBudget.of(highlights, neutrals, true).ifPresent(budgets::add);
        }
        budgets.addAll(evenness);
        return new Judgement(
                white,
                black,
                tone,
                shadows,
                highlights,
                neutrality,
                repeats,
                colours ? ColourJudge.meanDeltaE00(set, aim).orElse(null) : null,
                colours ? ColourJudge.gamutVolume(set) : null,
                colours ? ColourJudge.detail(set, aim).orElse(null) : null,
                twins,
                gradient,
                lost,
                budgets);
    }

    private static @Nullable Wedge wedge(
            ReadingSet set, Neutrals neutrals, double threshold, PaperAim aim, boolean fromPaper) {
        if (neutrals.clipped(fromPaper ? 255 : 0)) {
            return null;
        }
        IntToDoubleFunction aimL = level -> ToneJudge.aimL(set, aim, level);
        return (fromPaper
                        ? WedgeJudge.highlights(neutrals, threshold, aimL)
                        : WedgeJudge.shadows(neutrals, threshold, aimL))
                .orElse(null);
    }

    /** Figures that are not stated have no budget. */
    private static List<Budget> budgets(
            ReadingSet set,
            @Nullable Extreme white,
            @Nullable Extreme black,
            @Nullable Tone tone,
            @Nullable Neutrality neutrality) {
        List<Budget> budgets = new ArrayList<>();
        for (Extreme extreme : Arrays.asList(white, black)) {
            if (extreme != null && extreme.lab() != null) {
                budgets.addAll(set.colour() ? extreme.budgets() : extreme.budgets().subList(0, 1));
                extreme.densityBudget().ifPresent(budgets::add);
            }
        }
        if (tone != null) {
            budgets.addAll(tone.budgets());
        }
        if (neutrality != null) {
            budgets.addAll(neutrality.cast().budgets());
        }
        return budgets;
    }
}
