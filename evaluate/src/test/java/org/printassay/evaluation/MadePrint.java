package org.printassay.evaluation;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.function.UnaryOperator;
import org.printassay.chart.Chart;
import org.printassay.chart.Charts;
import org.printassay.colour.Lab;
import org.printassay.colour.PaperAim;
import org.printassay.colour.Rgb8;
import org.printassay.colour.RgbSpace;
import org.printassay.metric.Judgement;
import org.printassay.problem.Problem;
import org.printassay.reading.LabError;
import org.printassay.reading.Reading;
import org.printassay.reading.ReadingSet;
import org.printassay.reading.SharedError;
import org.printassay.reading.Trust;
import org.printassay.reading.WarningCode;
import org.printassay.recipe.Margins;
import org.printassay.recipe.PageSize;
import org.printassay.recipe.Recipe;
import org.printassay.sheet.Patch;
import org.printassay.sheet.Section;

/**
 * Simulated evaluations of known truth, made from readings without a scan: the patches of the paper
 * sheet on a described paper, each read with normal errors of its own, and with errors of the light
 * that all readings share. Nothing of it is real.
 *
 * @param black L* of code 0
 * @param blocked levels through this print as black
 * @param rise levels within which tone is back on its aim; 0 for a sharp knee
 * @param shadowShift levels by which the whole dark end is moved away from black
 * @param highlightShift the same from paper
 * @param noise standard deviation of one reading in L*, a* and b*
 * @param light standard deviation of what white and black are off by together, L*
 * @param change of every colour
 * @param trust how colour is said to have been obtained
 */
public record MadePrint(
        double black,
        double blocked,
        double rise,
        double shadowShift,
        double highlightShift,
        double noise,
        double light,
        UnaryOperator<Lab> change,
        Trust trust) {
    /** A usual matt paper, read well. */
    public static final MadePrint USUAL =
            new MadePrint(14, 6, 12, 0, 0, 0.15, 0.05, c -> c, Trust.CALIBRATED_SCAN);

    private static final Lab WHITE = new Lab(96, 0.4, -1.2);
    private static final double END = 48;
    private static final Chart CHART = chart();

    private static Chart chart() {
        try {
            return Charts.create(
                    Recipe.paper(PageSize.parse("A4"), Margins.all(10), RgbSpace.SRGB));
        } catch (Problem e) {
            throw new IllegalStateException(e);
        }
    }

    /** With another knee. */
    public MadePrint withKnee(double level, double width) {
        return new MadePrint(
                black, level, width, shadowShift, highlightShift, noise, light, change, trust);
    }

    /** With another black. */
    public MadePrint withBlack(double l) {
        return new MadePrint(
                l, blocked, rise, shadowShift, highlightShift, noise, light, change, trust);
    }

    /** With wedges moved, levels. */
    public MadePrint withShifts(double shadows, double highlights) {
        return new MadePrint(
                black, blocked, rise, shadows, highlights, noise, light, change, trust);
    }

    /** Read with other errors. */
    public MadePrint withErrors(double ofOne, double ofLight) {
        return new MadePrint(
                black, blocked, rise, shadowShift, highlightShift, ofOne, ofLight, change, trust);
    }

    /** With every colour changed. */
    public MadePrint withChange(UnaryOperator<Lab> other) {
        return new MadePrint(
                black, blocked, rise, shadowShift, highlightShift, noise, light, other, trust);
    }

    /** Read in another way. */
    public MadePrint withTrust(Trust other) {
        return new MadePrint(
                black, blocked, rise, shadowShift, highlightShift, noise, light, change, other);
    }

    /** Reads it; the seed decides all errors. */
    public Evaluation evaluation(long seed) {
        return evaluation(seed, false);
    }

    /** Reads every code once. */
    public Evaluation readOnce(long seed) {
        return evaluation(seed, true);
    }

    /** Its readings alone, of every patch. */
    ReadingSet readings(long seed) {
        return readings(seed, false);
    }

    private ReadingSet readings(long seed, boolean once) {
        Set<Rgb8> seen = new HashSet<>();
        Random random = new Random(seed * 7919 + 17);
        double lit = random.nextGaussian();
        List<Reading> readings = new ArrayList<>();
        List<Lab> shifts = new ArrayList<>();
        for (Patch patch : CHART.sheets().get(0).patches()) {
            if (patch.section() != Section.TINTS && (seen.add(patch.rgb()) || !once)) {
                Lab truth = change.apply(colour(patch.rgb()));
                Lab shift = new Lab(light * (truth.l() > 50 ? 0.6 : 1), 0, 0);
                Lab read =
                        new Lab(
                                truth.l() + noise * random.nextGaussian() + lit * shift.l(),
                                truth.a() + noise * random.nextGaussian(),
                                truth.b() + noise * random.nextGaussian());
                readings.add(reading(patch, read));
                shifts.add(shift);
            }
        }
        List<SharedError> shared = light > 0 ? List.of(new SharedError(shifts)) : List.of();
        return new ReadingSet(readings, RgbSpace.SRGB, trust, true, shared);
    }

    private Evaluation evaluation(long seed, boolean once) {
        String file = String.format(Locale.ROOT, "%064x", seed);
        ReadingSet set = readings(seed, once);
        return Assembly.evaluation(
                set,
                Judgement.of(set, EvaluationRequest.JUST_VISIBLE),
                Evaluation.builder(trust, RgbSpace.SRGB.key())
                        .chartId(CHART.id())
                        .sheets(List.of(1))
                        .print(1)
                        .details(new PrintDetails("Paper A (simulated)", "Printer A", null, 24.0))
                        .fromScan(trust != Trust.INSTRUMENT)
                        .files(List.of(new SourceFile("made-" + seed + ".tif", file))),
                Assembly.Light.EVEN);
    }

    /** An evaluation with lines and bands of one's own. */
    public static Evaluation withSurface(Evaluation e, PrintSurface surface) {
        boolean looked = surface.lines() != null;
        return e.toBuilder()
                .warnings(
                        e.warnings().stream()
                                .filter(w -> !looked || w.code() != WarningCode.LINES_NOT_JUDGED)
                                .toList())
                .surface(surface)
                .build();
    }

    /** An evaluation of a sheet that has a long tint too, read as this reading of it. */
    public static Evaluation withTint(Evaluation e) {
        Reading grey =
                e.patches().stream().filter(p -> p.rgb().r() == 128).findFirst().orElseThrow();
        List<Reading> patches = new ArrayList<>(e.patches());
        patches.add(
                new Reading(
                        "T1",
                        Optional.of(Section.TINTS),
                        grey.rgb(),
                        grey.lab(),
                        grey.labRelative(),
                        grey.standardError(),
                        grey.density(),
                        grey.flags(),
                        grey.centre(),
                        grey.sheet()));
        return e.toBuilder().patches(patches).build();
    }

    /** An evaluation as if it were read from another file. */
    public static Evaluation withFiles(Evaluation e, String name) {
        return e.toBuilder().files(List.of(new SourceFile(name, "a".repeat(64)))).build();
    }

    /** An evaluation of which something else is said. */
    public static Evaluation withDetails(Evaluation e, PrintDetails details) {
        return e.toBuilder().details(details).build();
    }

    private Reading reading(Patch patch, Lab read) {
        boolean absolute = trust.absolute();
        Lab relative =
                new Lab(read.l() * 100 / WHITE.l(), read.a() - WHITE.a(), read.b() - WHITE.b());
        return new Reading(
                patch.id(),
                Optional.of(patch.section()),
                patch.rgb(),
                absolute ? read : null,
                absolute ? read : relative,
                new LabError(noise, noise, noise),
                null,
                Set.of(),
                patch.area().centre(),
                1);
    }

    /** True colour of a code before any change. */
    public Lab colour(Rgb8 code) {
        PaperAim aim = PaperAim.relativeColorimetric(WHITE, new Lab(black, 0, 0));
        if (!code.isNeutral()) {
            return aim.absoluteLab(RgbSpace.SRGB, code);
        }
        double level = shifted(code.r());
        Rgb8 below = Rgb8.grey((int) Math.floor(level));
        Rgb8 above = Rgb8.grey(Math.min(255, below.r() + 1));
        double share = level - below.r();
        Lab one = aim.absoluteLab(RgbSpace.SRGB, below);
        Lab two = aim.absoluteLab(RgbSpace.SRGB, above);
        return new Lab(
                one.l() + share * (two.l() - one.l()),
                one.a() + share * (two.a() - one.a()),
                one.b() + share * (two.b() - one.b()));
    }

    /** Which level of the aim a level prints as. */
    private double shifted(int level) {
        double dark = knee(level - shadowShift * fading(level));
        double light = 255 - dark;
        return 255 - Math.max(0, light - highlightShift * fading(light));
    }

    /** The whole wedge moves alike; beyond it less and less. */
    private static double fading(double fromEnd) {
        return Math.max(0, Math.min(1, (3 * END - fromEnd) / (2 * END)));
    }

    private double knee(double level) {
        double beyond = level - blocked;
        if (beyond <= 0) {
            return 0;
        }
        double end = blocked + rise;
        if (beyond >= rise) {
            return level;
        }
        double t = beyond / rise;
        // Leaves black with no slope and joins the aim with the aim's slope.
        return end * (t * t * (3 - 2 * t) + rise / end * t * t * (t - 1));
    }
}
