package org.printassay.metric;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.printassay.colour.Lab;
import org.printassay.colour.PaperAim;

/**
 * Finds where greys do not run smoothly. What a smooth printer can do is taken out first: a grey is
 * compared with a straight line through its neighbours' departures from the aim, so that a curve
 * that merely bends is none.
 */
final class SmoothnessJudge {
    /** Levels nearer than this are taken together: steps between them are for the wedges. */
    private static final int APART = 6;

    private static final int FEWEST = 7;

    /** Levels to both sides whose twins tell the spread. */
    private static final int AROUND = 40;

    /** Half-width of an interval that holds 95 %, for all levels together. */
    private static final double TOGETHER_95 = 3.1;

    /** Less than this is not seen in a gradient (common practice, no source). */
    private static final double LEAST_L = 0.8;

    private static final double LEAST_HUE = 1.2;

    /** A step is one when the gap to the next grey differs from its neighbours' by this share. */
    private static final double GAP_SHARE = 0.5;

    /** So near to black and paper a knee is usual, and the wedges look level by level. */
    private static final int ENDS = 24;

    private SmoothnessJudge() {}

    /**
     * A group of neighbouring levels.
     *
     * @param error random, of L*
     * @param coded the same of L* by lossy coding, which neighbours share
     * @param sharedHue of a* and b* together, by what twins have in common: lossy coding keeps
     *     colour in steps, and two greys that fall on different ones differ by chance
     * @param assumed of L*, one standard error of each cause that was not estimated
     */
    @SuppressWarnings("ArrayRecordComponent") // numbers on their way, never compared
    private record Grey(
            int level,
            double aimL,
            double offL,
            double a,
            double b,
            double error,
            double coded,
            double sharedHue,
            double[] assumed) {

        /** Error of L*, random and shared. */
        double errorL() {
            return Math.hypot(error, coded);
        }
    }

    static List<Irregularity> judge(Neutrals neutrals, PaperAim aim, Lab white, Lab black) {
        List<Irregularity> found = new ArrayList<>();
        TwinSpread spreadL = neutrals.spreads().of(0, 255, Lab::l);
        List<Grey> greys = greys(neutrals, aim, white, black);
        if (greys.size() < FEWEST || !spreadL.known()) {
            return found;
        }
        steps(greys, found);
        if (neutrals.set().colour()) {
            double ratio =
                    Math.max(
                                    neutrals.spreads().of(0, 255, Lab::a).errorOf(1),
                                    neutrals.spreads().of(0, 255, Lab::b).errorOf(1))
                            / spreadL.errorOf(1);
            swings(greys, ratio, found);
        }
        found.sort(Comparator.comparingDouble(Irregularity::sureness).reversed());
        return found;
    }

    private static List<Grey> greys(Neutrals neutrals, PaperAim aim, Lab white, Lab black) {
        List<Grey> greys = new ArrayList<>();
        List<LevelData> near = new ArrayList<>();
        List<LevelData> curve = neutrals.curve();
        for (int i = 0; i < curve.size(); i++) {
            near.add(curve.get(i));
            boolean last = i + 1 == curve.size();
            if (last || curve.get(i + 1).level() - near.get(0).level() >= APART) {
                greys.add(grey(near, neutrals, aim, white, black));
                near.clear();
            }
        }
        return greys;
    }

    private static Grey grey(
            List<LevelData> near, Neutrals neutrals, PaperAim aim, Lab white, Lab black) {
        double n = near.size();
        double aimL = 0;
        double off = 0;
        double a = 0;
        double b = 0;
        double level = 0;
        double shared = 0;
        int count = 0;
        double[] assumed = new double[neutrals.assumed(near.get(0)).length];
        for (LevelData data : near) {
            double[] own = neutrals.assumed(data);
            for (int cause = 0; cause < own.length; cause++) {
                assumed[cause] += own[cause] / n;
            }
            double wanted = ToneJudge.aimL(neutrals.set(), aim, data.level());
            double share = (data.mean().l() - black.l()) / (white.l() - black.l());
            double fade = Math.max(0, Math.min(1, share));
            aimL += wanted / n;
            off += (data.mean().l() - wanted) / n;
            a += (data.mean().a() - fade * white.a()) / n;
            b += (data.mean().b() - fade * white.b()) / n;
            level += data.level() / n;
            shared += Math.hypot(data.sharedError(Lab::a), data.sharedError(Lab::b)) / n;
            count += data.count();
        }
        int middle = (int) Math.round(level);
        TwinSpread spread = neutrals.spreads().of(middle - AROUND, middle + AROUND, Lab::l);
        return new Grey(
                middle,
                aimL,
                off,
                a,
                b,
                spread.errorOf(count),
                neutrals.codingError(near.get(near.size() / 2).level()),
                shared,
                assumed);
    }

    /**
     * A step shows in the differences of neighbours: one that stands out from those before and
     * after it, by size and in share of what the aim rises there.
     */
    private static void steps(List<Grey> greys, List<Irregularity> found) {
        for (int i = 1; i + 2 < greys.size(); i++) {
            double before = slope(greys, i - 1);
            double here = slope(greys, i);
            double after = slope(greys, i + 1);
            double rise = greys.get(i + 1).aimL - greys.get(i).aimL;
            // A curve that bends has slopes in order: only what leaves their range is a step.
            double nearest =
                    Math.max(Math.min(before, after), Math.min(here, Math.max(before, after)));
            double size = (here - nearest) * rise;
            double error =
                    Math.hypot(
                            Math.hypot(greys.get(i).errorL(), greys.get(i + 1).errorL()) * 1.5,
                            rise
                                    / 2
                                    * Math.hypot(
                                            greys.get(i - 1).errorL()
                                                    / (greys.get(i).aimL - greys.get(i - 1).aimL),
                                            greys.get(i + 2).errorL()
                                                    / (greys.get(i + 2).aimL
                                                            - greys.get(i + 1).aimL)));
            error = Math.hypot(error, unestimated(greys, i));
            double sureness = Math.abs(size) / (TOGETHER_95 * error);
            boolean atEnd = greys.get(i).level < ENDS || greys.get(i + 1).level > 255 - ENDS;
            if (!atEnd
                    && sureness > 1
                    && Math.abs(size) > LEAST_L
                    && Math.abs(size) > GAP_SHARE * rise) {
                found.add(
                        new Irregularity(
                                Irregularity.Kind.STEP,
                                greys.get(i).level,
                                greys.get(i + 1).level,
                                size,
                                sureness));
            }
        }
    }

    /** Standard error of a step by what could not be estimated. */
    private static double unestimated(List<Grey> greys, int i) {
        double rise = greys.get(i + 1).aimL - greys.get(i).aimL;
        double before = greys.get(i).aimL - greys.get(i - 1).aimL;
        double after = greys.get(i + 2).aimL - greys.get(i + 1).aimL;
        double squares = 0;
        for (int cause = 0; cause < greys.get(i).assumed.length; cause++) {
            double[] l = new double[4];
            for (int k = 0; k < l.length; k++) {
                l[k] = greys.get(i - 1 + k).assumed[cause];
            }
            double beside = ((l[1] - l[0]) / before + (l[3] - l[2]) / after) / 2;
            squares += Math.pow(l[2] - l[1] - rise * beside, 2);
        }
        return Math.sqrt(squares);
    }

    private static double slope(List<Grey> greys, int i) {
        double rise = greys.get(i + 1).aimL - greys.get(i).aimL;
        return 1 + (greys.get(i + 1).offL - greys.get(i).offL) / rise;
    }

    private static void swings(List<Grey> greys, double ratio, List<Irregularity> found) {
        for (int i = 1; i + 1 < greys.size(); i++) {
            Grey low = greys.get(i - 1);
            Grey here = greys.get(i);
            Grey high = greys.get(i + 1);
            double share = (here.aimL - low.aimL) / (high.aimL - low.aimL);
            double a = here.a - (low.a + share * (high.a - low.a));
            double b = here.b - (low.b + share * (high.b - low.b));
            double size = Math.hypot(a, b);
            double random =
                    ratio
                            * Math.hypot(
                                    here.error,
                                    Math.hypot((1 - share) * low.error, share * high.error));
            double shared =
                    Math.hypot(
                            here.sharedHue,
                            Math.hypot((1 - share) * low.sharedHue, share * high.sharedHue));
            double error = Math.hypot(random, shared);
            double sureness = size / (TOGETHER_95 * error);
            boolean atEnd = greys.get(i).level < ENDS || greys.get(i + 1).level > 255 - ENDS;
            if (!atEnd && sureness > 1 && size > LEAST_HUE) {
                found.add(
                        new Irregularity(
                                Irregularity.Kind.HUE_SWING,
                                here.level,
                                here.level,
                                size,
                                sureness));
            }
        }
    }
}
