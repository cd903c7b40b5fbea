package org.printassay.metric;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.printassay.colour.DeltaE;
import org.printassay.colour.Lab;
import org.printassay.colour.PaperAim;
import org.printassay.colour.Rgb8;
import org.printassay.colour.RgbSpace;
import org.printassay.reading.Reading;
import org.printassay.reading.ReadingFlag;
import org.printassay.reading.ReadingSet;
import org.printassay.reading.Undoubted;

/** Colours of the cube's surface: distance from their aim, and the volume that they span. */
public final class ColourJudge {
    /** The aim is known everywhere, so its volume is taken finely. */
    private static final int AIM_STEPS = 17;

    /** Of the 98 colours of the surface; fewer do where all full colours are among them. */
    private static final int FEWEST_COLOURS = 20;

    /** Lightnesses at which gamuts are compared. */
    private static final double[] SLICES = {20, 35, 50, 65, 80, 90};

    private static final String[] HUES = {"red", "yellow", "green", "cyan", "blue", "magenta"};

    private static final boolean[][] FULL = {
        {true, false, false},
        {true, true, false},
        {false, true, false},
        {false, true, true},
        {false, false, true},
        {true, false, true}
    };

    /**
     * Way from paper in a*, b* that is worth having, and that a limit holds back though aimed at.
     */
    private static final double NO_GAIN = 1;

    private static final double AIMED_GAIN = 3;

    /** Way to the side in a*, b*, at no loss: another hue is more on paper too. */
    private static final double OTHER_HUE = 3;

    /** Steps between paper and full colour that must have been printed. */
    private static final int FEWEST_STEPS = 5;

    private ColourJudge() {}

    /**
     * Mean dE00 of the cube surface against the aim, each code once however often it was read;
     * empty without absolute colour or when most of the surface is missing, full colours among it.
     */
    static Optional<Double> meanDeltaE00(ReadingSet set, PaperAim aim) {
        Map<Rgb8, Lab> means = means(set);
        double[] sorted = differences(means, set.space(), aim);
        return enough(means, sorted.length)
                ? Optional.of(Arrays.stream(sorted).average().orElseThrow())
                : Optional.empty();
    }

    /** Everything about colours; empty where {@link #meanDeltaE00} is. */
    static Optional<ColourDetail> detail(ReadingSet set, PaperAim aim) {
        Map<Rgb8, Lab> means = means(set);
        RgbSpace space = set.space();
        double[] sorted = differences(means, space, aim);
        if (!enough(means, sorted.length)) {
            return Optional.empty();
        }
        CubeSurface surface = CubeSurface.of(means);
        Rgb8 worst =
                means.keySet().stream()
                        .filter(surface::holds)
                        .max(Comparator.comparingDouble(c -> difference(means, c, space, aim)))
                        .orElseThrow();
        GamutMesh print = surface.mesh().orElse(null);
        GamutMesh wanted =
                GamutMesh.of(aimEdge(), code -> aim.absoluteLab(space, code)).orElseThrow();
        return Optional.of(
                new ColourDetail(
                        sorted[(int) Math.ceil(0.95 * sorted.length) - 1],
                        sorted[sorted.length - 1],
                        worst,
                        hues(means, space, aim),
                        SkinJudge.tones(set, aim),
                        print == null ? null : print.volume(),
                        wanted.volume(),
                        slices(print, wanted)));
    }

    /** Everything about colours, with the aim made from the readings' own white and black. */
    public static @Nullable ColourDetail detail(ReadingSet set) {
        Neutrals neutrals = Neutrals.of(set);
        LevelData white = neutrals.level(255).orElse(null);
        LevelData black = neutrals.level(0).orElse(null);
        if (!set.trust().absolute() || !set.colour() || white == null || black == null) {
            return null;
        }
        boolean clipped = neutrals.clipped(255) || neutrals.clipped(0);
        if (clipped || black.mean().l() >= white.mean().l()) {
            return null;
        }
        return detail(set, PaperAim.relativeColorimetric(white.mean(), black.mean())).orElse(null);
    }

    private static int[] aimEdge() {
        int[] edge = new int[AIM_STEPS];
        for (int i = 0; i < edge.length; i++) {
            edge[i] = Math.round(255f * i / (AIM_STEPS - 1));
        }
        return edge;
    }

    private static double[] differences(Map<Rgb8, Lab> means, RgbSpace space, PaperAim aim) {
        CubeSurface surface = CubeSurface.of(means);
        return means.keySet().stream()
                .filter(surface::holds)
                .mapToDouble(code -> difference(means, code, space, aim))
                .sorted()
                .toArray();
    }

    private static double difference(
            Map<Rgb8, Lab> means, Rgb8 code, RgbSpace space, PaperAim aim) {
        Lab measured = means.get(code);
        return measured == null ? 0 : DeltaE.ciede2000(aim.absoluteLab(space, code), measured);
    }

    /** What the uncertainty of {@link #meanDeltaE00} is made of; empty where there is no mean. */
    static Optional<Budget> budget(ReadingSet set, PaperAim aim, Lab spread) {
        if (meanDeltaE00(set, aim).isEmpty()) {
            return Optional.empty();
        }
        Map<Rgb8, Lab> means = means(set);
        long colours = means.keySet().stream().filter(CubeSurface.of(means)::holds).count();
        return Optional.of(
                ColourBudget.of(
                        "colours.meanDeltaE00",
                        "dE00",
                        set,
                        moved -> meanDeltaE00(moved, aim).orElse(0.0),
                        spread,
                        (int) colours));
    }

    /** The same of {@link #gamutVolume}. */
    static Optional<Budget> gamutBudget(ReadingSet set, Lab spread) {
        return CubeSurface.of(means(set)).mesh().map(mesh -> GamutBudget.of(set, mesh, spread));
    }

    private static boolean enough(Map<Rgb8, Lab> means, int onSurface) {
        boolean full = true;
        for (int hue = 0; hue < HUES.length; hue++) {
            full &= means.containsKey(step(hue, 0));
        }
        return onSurface >= FEWEST_COLOURS || full;
    }

    private static List<ColourDetail.Hue> hues(Map<Rgb8, Lab> means, RgbSpace space, PaperAim aim) {
        List<ColourDetail.Hue> hues = new ArrayList<>();
        for (int hue = 0; hue < HUES.length; hue++) {
            Rgb8 code = step(hue, 0);
            Lab full = means.get(code);
            if (full == null) {
                continue;
            }
            Lab wanted = aim.absoluteLab(space, code);
            double turn = full.a() * wanted.b() - full.b() * wanted.a() > 0 ? -1 : 1;
            List<Integer> rests = new ArrayList<>();
            for (int rest = 255; rest >= 0; rest--) {
                if (means.containsKey(step(hue, rest))) {
                    rests.add(rest);
                }
            }
            double most = 0;
            for (int rest : rests) {
                most = Math.max(most, chroma(means, step(hue, rest)));
            }
            hues.add(
                    new ColourDetail.Hue(
                            HUES[hue],
                            full,
                            wanted,
                            DeltaE.ciede2000(wanted, full),
                            full.chroma() - wanted.chroma(),
                            turn * Math.abs(DeltaE.deltaHab(wanted, full)),
                            most,
                            noMoreFrom(hue, rests, means, space, aim)));
        }
        return hues;
    }

    private static Rgb8 step(int hue, int rest) {
        boolean[] on = FULL[hue];
        return new Rgb8(on[0] ? 255 : rest, on[1] ? 255 : rest, on[2] ? 255 : rest);
    }

    private static double chroma(Map<Rgb8, Lab> means, Rgb8 code) {
        Lab lab = means.get(code);
        return lab == null ? 0 : lab.chroma();
    }

    /**
     * First step after which none gives clearly more than any before it though the aim does. Colour
     * is counted from paper, whose own tint is none.
     */
    private static @Nullable Integer noMoreFrom(
            int hue, List<Integer> rests, Map<Rgb8, Lab> means, RgbSpace space, PaperAim aim) {
        Lab paper = means.get(Rgb8.grey(255));
        if (rests.size() < FEWEST_STEPS || paper == null) {
            return null;
        }
        List<Lab> steps = new ArrayList<>();
        for (int rest : rests) {
            steps.add(Objects.requireNonNull(means.get(step(hue, rest))));
        }
        // From the full colour back: what holds from a step on holds from every later one.
        int from = steps.size() - 1;
        while (from > 0 && !givesMore(steps, from - 1, paper)) {
            from--;
        }
        int rest = rests.get(from);
        Lab aimedPaper = aim.absoluteLab(space, Rgb8.grey(255));
        double aimedHere = apart(aim.absoluteLab(space, step(hue, rest)), aimedPaper);
        double aimedEnd = apart(aim.absoluteLab(space, step(hue, 0)), aimedPaper);
        return aimedEnd - aimedHere > AIMED_GAIN
                ? (int) Math.round(100 * (255 - rest) / 255.0)
                : null;
    }

    /** Whether any step after one has clearly more colour than it, or as much of another hue. */
    private static boolean givesMore(List<Lab> steps, int from, Lab paper) {
        Lab here = steps.get(from);
        for (Lab later : steps.subList(from + 1, steps.size())) {
            double gain = apart(later, paper) - apart(here, paper);
            double way = apart(later, here);
            double aside = Math.sqrt(Math.max(0, way * way - gain * gain));
            if (gain >= NO_GAIN || (gain > -NO_GAIN && aside >= OTHER_HUE)) {
                return true;
            }
        }
        return false;
    }

    private static double apart(Lab one, Lab other) {
        return Math.hypot(one.a() - other.a(), one.b() - other.b());
    }

    private static List<ColourDetail.Slice> slices(@Nullable GamutMesh print, GamutMesh aim) {
        List<ColourDetail.Slice> slices = new ArrayList<>();
        if (print == null) {
            return slices;
        }
        for (double lightness : SLICES) {
            slices.add(
                    new ColourDetail.Slice(
                            lightness, print.slice(lightness), aim.slice(lightness)));
        }
        return slices;
    }

    /**
     * Gamut volume of a print, cubic CIELAB units; null when a colour of the surface is missing.
     */
    static @Nullable Double gamutVolume(ReadingSet set) {
        return CubeSurface.of(means(set)).mesh().map(GamutMesh::volume).orElse(null);
    }

    /**
     * Mean absolute colour of each code, doubtful readings left out where there are others. Those
     * out of line, which have no others, may show what lies on them: such codes are not known.
     */
    static Map<Rgb8, Lab> means(ReadingSet set) {
        Map<Rgb8, List<Reading>> byCode = new LinkedHashMap<>();
        for (Reading reading : set.readings()) {
            boolean covered = reading.flags().contains(ReadingFlag.OUT_OF_LINE);
            if (reading.lab() != null && !covered) {
                byCode.computeIfAbsent(reading.rgb(), k -> new ArrayList<>()).add(reading);
            }
        }
        Map<Rgb8, Lab> means = new LinkedHashMap<>();
        byCode.forEach(
                (code, all) -> {
                    List<Lab> labs = Undoubted.of(all).stream().map(Reading::best).toList();
                    means.put(code, Lab.mean(labs));
                });
        return means;
    }

    /**
     * Largest dE00 between clean twins, those told for differing included; empty when there are
     * none.
     */
    static Optional<Double> largestTwinDifference(ReadingSet set) {
        return furthestTwins(set).map(Twins::deltaE00);
    }

    /** Two readings of one code. */
    record Twins(Reading one, Reading other, double deltaE00) {}

    /** The twins that differ most. */
    static Optional<Twins> furthestTwins(ReadingSet set) {
        Map<Rgb8, List<Reading>> byCode = new LinkedHashMap<>();
        for (Reading reading : set.readings()) {
            boolean clean =
                    Set.of(
                                    ReadingFlag.UNLIKE_TWINS,
                                    ReadingFlag.DISTURBED,
                                    ReadingFlag.SCATTERED,
                                    ReadingFlag.UNSURE)
                            .containsAll(reading.flags());
            if (clean && (reading.lab() != null || reading.labRelative() != null)) {
                byCode.computeIfAbsent(reading.rgb(), k -> new ArrayList<>()).add(reading);
            }
        }
        Twins furthest = null;
        for (List<Reading> twins : byCode.values()) {
            for (int i = 0; i < twins.size(); i++) {
                for (int k = i + 1; k < twins.size(); k++) {
                    double apart = DeltaE.ciede2000(twins.get(i).best(), twins.get(k).best());
                    if (furthest == null || apart > furthest.deltaE00) {
                        furthest = new Twins(twins.get(i), twins.get(k), apart);
                    }
                }
            }
        }
        return Optional.ofNullable(furthest);
    }
}
