package org.printassay.metric;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import org.printassay.colour.Lab;
import org.printassay.colour.ToneZone;

/**
 * Neutrality of greys against the paper's tint fading to neutral at black (idea of ISO
 * 12647-2:2013), evenly over L*.
 */
final class NeutralityJudge {
    private static final int FEWEST_LEVELS = 6;

    /** Leans of shadows and highlights that differ by more than this are a crossover. */
    private static final double CROSSOVER = 1.5;

    private NeutralityJudge() {}

    /** Spread of a grey patch and of one of bare paper. */
    private record Scatter(TwinSpread greys, TwinSpread paper) {
        static Scatter of(Neutrals neutrals, ToDoubleFunction<Lab> value) {
            return new Scatter(neutrals.spreads().printed(value), neutrals.spreads().paper(value));
        }

        /** What both do to a mean cast; one spread that stands for both has its freedom once. */
        Budget.Part of(CastZone zone) {
            return greys.equals(paper)
                    ? greys.part(Math.hypot(zone.scatterOfGreys(), zone.scatterOfPaper()))
                    : greys.part(zone.scatterOfGreys()).with(paper.part(zone.scatterOfPaper()));
        }
    }

    /** Scatter in a* and b*, and what is systematic in both. */
    private record Errors(Scatter a, Scatter b, double systematic, LevelData white) {}

    /**
     * Judges.
     *
     * @param tintError 95 % half-widths of the paper's colour
     */
    static Optional<Neutrality> judge(Neutrals neutrals, Lab white, Lab black, Lab tintError) {
        List<LevelData> curve = neutrals.curve();
        if (curve.size() < FEWEST_LEVELS || !neutrals.set().colour()) {
            return Optional.empty();
        }
        Scatter scatterA = Scatter.of(neutrals, Lab::a);
        Scatter scatterB = Scatter.of(neutrals, Lab::b);
        Errors errors =
                new Errors(
                        scatterA,
                        scatterB,
                        Systematic.greys(neutrals.set().trust()),
                        neutrals.level(255).orElseThrow());
        double[] shares = Neutrals.shares(curve);
        int n = curve.size();
        List<Double> fades = new ArrayList<>();
        List<Double> da = new ArrayList<>();
        List<Double> db = new ArrayList<>();
        double[] ch = new double[n];
        double[] chPaper = new double[n];
        List<Neutrality.Point> points = new ArrayList<>();
        int worst = 0;
        for (int i = 0; i < n; i++) {
            Lab lab = curve.get(i).mean();
            double share = (lab.l() - black.l()) / (white.l() - black.l());
            double fade = Math.max(0, Math.min(1, share));
            double a = lab.a() - fade * white.a();
            double b = lab.b() - fade * white.b();
            double noise =
                    Math.pow(scatterA.greys.errorOf(curve.get(i).count()), 2)
                            + Math.pow(scatterB.greys.errorOf(curve.get(i).count()), 2);
            // A chroma is never negative, so noise alone would look like a cast: taken off.
            ch[i] = Math.sqrt(Math.max(0, a * a + b * b - noise));
            chPaper[i] = Math.hypot(lab.a() - white.a(), lab.b() - white.b());
            worst = ch[i] > ch[worst] ? i : worst;
            fades.add(fade);
            da.add(a);
            db.add(b);
            points.add(new Neutrality.Point(curve.get(i).level(), lab.l(), lab.a(), lab.b(), a, b));
        }
        List<Double> ofCurve = Arrays.stream(shares).boxed().toList();
        Function<Set<ToneZone>, Neutrality.Cast> within =
                zones ->
                        cast(
                                new CastZone(curve, errors.white, ofCurve, fades, zones),
                                da,
                                db,
                                errors);
        Neutrality.Cast shadows = within.apply(EnumSet.of(ToneZone.SHADOWS));
        Neutrality.Cast mid = within.apply(EnumSet.of(ToneZone.MIDTONES));
        Neutrality.Cast highlights = within.apply(EnumSet.of(ToneZone.HIGHLIGHTS));
        Neutrality.Cast cast = within.apply(EnumSet.allOf(ToneZone.class));
        boolean absolute = neutrals.set().trust().absolute();
        double apart = Math.hypot(shadows.a() - highlights.a(), shadows.b() - highlights.b());
        double against = shadows.a() * highlights.a() + shadows.b() * highlights.b();
        return Optional.of(
                new Neutrality(
                        Neutrals.weighted(shares, ch),
                        ch[worst],
                        curve.get(worst).level(),
                        cast,
                        shadows,
                        mid,
                        highlights,
                        shadows.significant()
                                && highlights.significant()
                                && against < 0
                                && apart > CROSSOVER,
                        Neutrals.weighted(shares, chPaper),
                        Arrays.stream(chPaper).max().orElse(0),
                        absolute ? tint(white, tintError) : null,
                        cast.significant() && Math.abs(cast.b()) > 0.5 ? -cast.b() : null,
                        points));
    }

    private static String tint(Lab white, Lab error) {
        PaperTint tint = PaperTint.of(white, error);
        String temperature = HueWords.temperature(white.a(), white.b());
        return switch (tint) {
            case NEUTRAL -> "neutral";
            case NOT_TOLD -> "neutral or tinted";
            default ->
                    tint.strength()
                            + (temperature.isEmpty()
                                    ? HueWords.hue(white.a(), white.b())
                                    : temperature);
        };
    }

    private static Neutrality.Cast cast(
            CastZone zone, List<Double> da, List<Double> db, Errors errors) {
        double a = zone.mean(da);
        double b = zone.mean(db);
        Budget budgetA = budget("a", a, errors.a, zone, Lab::a, errors);
        Budget budgetB = budget("b", b, errors.b, zone, Lab::b, errors);
        double ua = budgetA.halfWidth();
        double ub = budgetB.halfWidth();
        boolean significant = Math.abs(a) > ua || Math.abs(b) > ub;
        return new Neutrality.Cast(
                a,
                b,
                ua,
                ub,
                significant,
                HueWords.words(a, b, significant),
                List.of(budgetA, budgetB));
    }

    private static Budget budget(
            String axis,
            double value,
            Scatter scatter,
            CastZone zone,
            ToDoubleFunction<Lab> part,
            Errors errors) {
        List<Budget.Part> parts = new ArrayList<>();
        if (scatter.greys.known()) {
            parts.add(scatter.of(zone));
        }
        if (!errors.white.shared().isEmpty()) {
            parts.add(new Budget.Part(Budget.Kind.LIGHT, zone.shared(part), null));
        }
        if (errors.white.calibration() != null) {
            parts.add(new Budget.Part(Budget.Kind.CALIBRATION, zone.calibration(part), null));
        }
        parts.add(Budget.Part.stated(errors.systematic));
        return new Budget("neutrality.cast." + axis, axis + "*", value, parts);
    }
}
