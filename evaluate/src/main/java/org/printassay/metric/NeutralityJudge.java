package org.printassay.metric;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import org.printassay.colour.Lab;

/**
 * Neutrality of greys against the paper's tint fading to neutral at black (idea of ISO
 * 12647-2:2013), evenly over L*.
 */
final class NeutralityJudge {
    private static final int FEWEST_LEVELS = 6;

    /** Leans of shadows and highlights that differ by more than this are a crossover. */
    private static final double CROSSOVER = 1.5;

    private NeutralityJudge() {}

    /** Spread of a patch in a* and b*, and what is systematic in both. */
    private record Errors(
            Neutrals.Spread a, Neutrals.Spread b, double systematic, LevelData white, Lab black) {}

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
        Neutrals.Spread spreadA = neutrals.noise(Lab::a);
        Neutrals.Spread spreadB = neutrals.noise(Lab::b);
        Errors errors =
                new Errors(
                        spreadA,
                        spreadB,
                        Systematic.greys(neutrals.set().trust()),
                        neutrals.level(255).orElseThrow(),
                        black);
        double[] shares = Neutrals.shares(curve);
        int n = curve.size();
        double[] da = new double[n];
        double[] db = new double[n];
        double[] ch = new double[n];
        double[] chPaper = new double[n];
        List<Neutrality.Point> points = new ArrayList<>();
        int worst = 0;
        for (int i = 0; i < n; i++) {
            Lab lab = curve.get(i).mean();
            double share = (lab.l() - black.l()) / (white.l() - black.l());
            double fade = Math.max(0, Math.min(1, share));
            da[i] = lab.a() - fade * white.a();
            db[i] = lab.b() - fade * white.b();
            double noise =
                    Math.pow(spreadA.errorOf(curve.get(i).count()), 2)
                            + Math.pow(spreadB.errorOf(curve.get(i).count()), 2);
            // A chroma is never negative, so noise alone would look like a cast: taken off.
            ch[i] = Math.sqrt(Math.max(0, da[i] * da[i] + db[i] * db[i] - noise));
            chPaper[i] = Math.hypot(lab.a() - white.a(), lab.b() - white.b());
            worst = ch[i] > ch[worst] ? i : worst;
            points.add(
                    new Neutrality.Point(
                            curve.get(i).level(), lab.l(), lab.a(), lab.b(), da[i], db[i]));
        }
        Neutrality.Cast shadows = cast(curve, shares, da, db, errors, -1, Neutrals.SHADOWS_BELOW);
        Neutrality.Cast highlights =
                cast(curve, shares, da, db, errors, Neutrals.HIGHLIGHTS_ABOVE, 101);
        Neutrality.Cast cast = cast(curve, shares, da, db, errors, -1, 101);
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
                        cast(
                                curve,
                                shares,
                                da,
                                db,
                                errors,
                                Neutrals.SHADOWS_BELOW,
                                Neutrals.HIGHLIGHTS_ABOVE),
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
        double size = white.chroma();
        if (size < 1 && Math.max(error.a(), error.b()) < 2.5) {
            return "neutral";
        }
        if (!Derived.surelyTinted(white, error)) {
            return "neutral or tinted";
        }
        String strength = size < 3 ? "slightly " : size > 7 ? "strongly " : "";
        String temperature = HueWords.temperature(white.a(), white.b());
        return temperature.isEmpty()
                ? strength + HueWords.hue(white.a(), white.b())
                : strength + temperature;
    }

    private static Neutrality.Cast cast(
            List<LevelData> curve,
            double[] shares,
            double[] da,
            double[] db,
            Errors errors,
            double from,
            double to) {
        double[] shared = shared(curve, shares, errors, from, to);
        double a = ToneJudge.zone(curve, shares, da, from, to);
        double b = ToneJudge.zone(curve, shares, db, from, to);
        double total = 0;
        double squares = 0;
        for (int i = 0; i < da.length; i++) {
            if (curve.get(i).fileL() >= from && curve.get(i).fileL() < to) {
                total += shares[i];
                squares += shares[i] * shares[i] / curve.get(i).count();
            }
        }
        double factor = total == 0 ? 0 : Math.sqrt(squares) / total;
        Zone zone = new Zone(curve, shares, from, to);
        Budget budgetA =
                budget("a", a, factor, errors.a, shared[0], zone.calibration(Lab::a), errors);
        Budget budgetB =
                budget("b", b, factor, errors.b, shared[1], zone.calibration(Lab::b), errors);
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
            double factor,
            Neutrals.Spread spread,
            double shared,
            double calibration,
            Errors errors) {
        List<Budget.Part> parts = new ArrayList<>();
        if (spread.known()) {
            double error = factor * spread.errorOf(1);
            parts.add(new Budget.Part(Budget.Kind.RANDOM, error, spread.freedom()));
        }
        if (!errors.white.shared().isEmpty()) {
            parts.add(new Budget.Part(Budget.Kind.LIGHT, shared, null));
        }
        if (errors.white.calibration() != null) {
            parts.add(new Budget.Part(Budget.Kind.CALIBRATION, calibration, null));
        }
        parts.add(Budget.Part.stated(errors.systematic));
        return new Budget("neutrality.cast." + axis, axis + "*", value, parts);
    }

    /** Levels whose file L* lies between two bounds. */
    private record Zone(List<LevelData> curve, List<Double> shares, double from, double to) {
        Zone(List<LevelData> curve, double[] shares, double from, double to) {
            this(curve, Arrays.stream(shares).boxed().toList(), from, to);
        }

        /** Greys near each other are off alike: what the calibration is off does not average. */
        double calibration(ToDoubleFunction<Lab> value) {
            double squares = 0;
            double total = 0;
            for (int i = 0; i < curve.size(); i++) {
                LevelData data = curve.get(i);
                Lab error = data.calibration();
                if (error != null && data.fileL() >= from && data.fileL() < to) {
                    squares += shares.get(i) * Math.pow(value.applyAsDouble(error), 2);
                    total += shares.get(i);
                }
            }
            return total == 0 ? 0 : Math.sqrt(squares / total);
        }
    }

    /** Standard error of a mean cast, a* and b*, by the causes that move readings together. */
    private static double[] shared(
            List<LevelData> curve, double[] shares, Errors errors, double from, double to) {
        double a = 0;
        double b = 0;
        Lab white = errors.white.mean();
        for (int cause = 0; cause < errors.white.shared().size(); cause++) {
            Lab paper = errors.white.shared().get(cause);
            double[] da = new double[shares.length];
            double[] db = new double[shares.length];
            for (int i = 0; i < shares.length; i++) {
                Lab shift = curve.get(i).shared().get(cause);
                double share =
                        (curve.get(i).mean().l() - errors.black.l())
                                / (white.l() - errors.black.l());
                double fade = Math.max(0, Math.min(1, share));
                da[i] = shift.a() - fade * paper.a();
                db[i] = shift.b() - fade * paper.b();
            }
            a += Math.pow(ToneJudge.zone(curve, shares, da, from, to), 2);
            b += Math.pow(ToneJudge.zone(curve, shares, db, from, to), 2);
        }
        return new double[] {Math.sqrt(a), Math.sqrt(b)};
    }
}
