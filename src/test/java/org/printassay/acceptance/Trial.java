package org.printassay.acceptance;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import org.printassay.colour.DeltaE;
import org.printassay.colour.Lab;
import org.printassay.colour.Rgb8;
import org.printassay.demo.PrintRoom;
import org.printassay.demo.paper.PaperModel;
import org.printassay.demo.print.Print;
import org.printassay.demo.print.PrintedPatch;
import org.printassay.evaluation.Evaluation;
import org.printassay.evaluation.EvaluationRequest;
import org.printassay.evaluation.Evaluator;
import org.printassay.metric.Extreme;
import org.printassay.metric.LevelStep;
import org.printassay.metric.Neutrality;
import org.printassay.metric.Wedge;
import org.printassay.problem.Problem;
import org.printassay.reading.Reading;
import org.printassay.reading.WarningCode;

/**
 * One random scan, evaluated and held against what is known of its print. Truth is the paper's own
 * curve, never the departure of a single patch, but for the reading of single patches.
 *
 * @param refusal why it was refused; null when it was read
 * @param meanDeltaE00 over all patches
 * @param largestDeltaE00 of patches without flag
 * @param worstPatch where that is
 * @param flagged patches with a flag
 * @param white how paper white stands to the truth
 * @param black how black stands to it
 * @param castA mean cast, a*
 * @param castB mean cast, b*
 * @param shadowsMissed levels by which the stated interval misses the truth; 0 when it holds
 * @param highlightsMissed the same for highlights
 * @param shadowsWidth levels in the interval of shadows over what the paper's own spread allows;
 *     NaN when shadows were not judged
 * @param highlightsWidth the same for highlights
 * @param calledEnlarged whether a scan that nobody enlarged was called so
 */
record Trial(
        RandomConditions conditions,
        @Nullable String refusal,
        double meanDeltaE00,
        double largestDeltaE00,
        String worstPatch,
        int flagged,
        Interval white,
        Interval black,
        Interval castA,
        Interval castB,
        int shadowsMissed,
        int highlightsMissed,
        double shadowsWidth,
        double highlightsWidth,
        boolean calledEnlarged) {
    private static final double THRESHOLD = 0.5;

    /** Levels of an interval that has an open end: wider than any that is allowed. */
    private static final int OPEN = 99;

    /** What profiled scans state of greys by trust alone, a* and b*. */
    private static final double STATED_OF_GREYS = 1.25;

    /**
     * A result with its stated interval against the truth.
     *
     * @param error result minus truth
     * @param random stated 95 % half-width without what is stated by trust alone
     * @param half stated 95 % half-width
     */
    record Interval(double error, double random, double half) {
        static final Interval NONE = new Interval(Double.NaN, Double.NaN, Double.NaN);

        boolean judged() {
            return !Double.isNaN(error);
        }

        boolean randomHolds() {
            return Math.abs(error) <= random;
        }

        boolean holds() {
            return Math.abs(error) <= half;
        }

        @Override
        public String toString() {
            return String.format(Locale.ROOT, "%.3f,%.3f,%.3f", error, random, half);
        }
    }

    static Trial of(RandomConditions given, Path folder) throws Exception {
        Print print = SimulatedPrint.print(given.paper(), given.printing(), given.seed());
        Path scan = folder.resolve("scan-" + given.seed());
        PrintRoom.scan(print, given.flatbed(), given.seed(), scan);
        try {
            return of(given, print, Evaluator.evaluate(EvaluationRequest.of(scan)).evaluation());
        } catch (Problem e) {
            return refused(given, e.getMessage());
        } finally {
            Files.deleteIfExists(scan);
        }
    }

    private static Trial refused(RandomConditions given, String why) {
        Interval none = Interval.NONE;
        return new Trial(
                given,
                why,
                0,
                0,
                "",
                0,
                none,
                none,
                none,
                none,
                0,
                0,
                Double.NaN,
                Double.NaN,
                false);
    }

    private static Trial of(RandomConditions given, Print print, Evaluation e) {
        if (!SimulatedPrint.chart().id().equals(e.chartId())) {
            return refused(given, "WRONG CHART " + e.chartId());
        }
        Map<String, Lab> truth = new HashMap<>();
        for (PrintedPatch patch : print.patches()) {
            truth.put(patch.patch().id(), patch.printed());
        }
        double sum = 0;
        double largest = 0;
        int flagged = 0;
        String worst = "";
        for (Reading reading : e.patches()) {
            Lab real = Objects.requireNonNull(truth.get(reading.id()));
            double off = DeltaE.ciede2000(real, reading.best());
            sum += off;
            if (!reading.flags().isEmpty()) {
                flagged++;
            } else if (off > largest) {
                largest = off;
                worst = reading.id() + " " + real + " read " + reading.best();
            }
        }
        PaperModel paper = given.paper();
        double trueA = 0;
        double trueB = 0;
        Neutrality neutrality = e.neutrality();
        Interval castA = Interval.NONE;
        Interval castB = Interval.NONE;
        if (neutrality != null) {
            double[] cast = trueCast(paper, neutrality);
            trueA = cast[0];
            trueB = cast[1];
            Neutrality.Cast found = neutrality.cast();
            double systematic = STATED_OF_GREYS;
            castA = interval(found.a() - trueA, found.uncertaintyA(), systematic);
            castB = interval(found.b() - trueB, found.uncertaintyB(), systematic);
        }
        return new Trial(
                given,
                null,
                sum / e.patches().size(),
                largest,
                worst,
                flagged,
                extreme(e.white(), paper.white()),
                extreme(e.black(), paper.black()),
                castA,
                castB,
                missed(e.shadows(), paper),
                missedLight(e.highlights(), paper),
                width(e.shadows(), paper),
                width(e.highlights(), paper),
                e.warnings().stream().anyMatch(w -> w.code() == WarningCode.UPSAMPLED));
    }

    private static Interval extreme(@Nullable Extreme found, Lab truth) {
        if (found == null || found.lab() == null) {
            return Interval.NONE;
        }
        return interval(found.lab().l() - truth.l(), found.uncertainty().l(), found.systematicL());
    }

    private static Interval interval(double error, double half, double systematic) {
        double random = Math.sqrt(Math.max(0, half * half - systematic * systematic));
        return new Interval(error, random, half);
    }

    /** Cast of the paper's own curve at the levels that were judged, weighted as the result is. */
    private static double[] trueCast(PaperModel paper, Neutrality found) {
        List<Neutrality.Point> points = found.points();
        int n = points.size();
        double a = 0;
        double b = 0;
        double weights = 0;
        for (int i = 0; i < n; i++) {
            int level = points.get(i).level();
            int before = points.get(Math.max(0, i - 1)).level();
            int after = points.get(Math.min(n - 1, i + 1)).level();
            double share = fileL(after) - fileL(before);
            Lab real = paper.colourOf(Rgb8.grey(level));
            double fade = (real.l() - paper.black().l()) / (paper.white().l() - paper.black().l());
            a += share * (real.a() - fade * paper.white().a());
            b += share * (real.b() - fade * paper.white().b());
            weights += share;
        }
        return new double[] {a / weights, b / weights};
    }

    private static double fileL(int level) {
        return org.printassay.colour.RgbSpace.SRGB.toLab(Rgb8.grey(level)).l();
    }

    /** First level of a wedge from which all are visible on the paper's own curve. */
    private static int firstVisible(Wedge wedge, PaperModel paper) {
        int first = 256;
        for (int i = wedge.steps().size() - 1; i >= 0; i--) {
            int level = wedge.steps().get(i).level();
            if (paper.colourOf(Rgb8.grey(level)).l() - paper.black().l() < THRESHOLD) {
                break;
            }
            first = level;
        }
        return first;
    }

    private static int missed(@Nullable Wedge wedge, PaperModel paper) {
        if (wedge == null) {
            return 0;
        }
        int first = firstVisible(wedge, paper);
        int low = wedge.merged() == null ? Integer.MIN_VALUE : wedge.merged() + 1;
        int high = wedge.separated() == null ? Integer.MAX_VALUE : wedge.separated();
        return first < low ? low - first : first > high ? first - high : 0;
    }

    /** Last level of a wedge up to which all are visible on the paper's own curve. */
    private static int lastVisible(Wedge wedge, PaperModel paper) {
        int last = -1;
        for (var step : wedge.steps()) {
            if (paper.white().l() - paper.colourOf(Rgb8.grey(step.level())).l() < THRESHOLD) {
                break;
            }
            last = step.level();
        }
        return last;
    }

    private static int missedLight(@Nullable Wedge wedge, PaperModel paper) {
        if (wedge == null) {
            return 0;
        }
        int last = lastVisible(wedge, paper);
        int low = wedge.separated() == null ? Integer.MIN_VALUE : wedge.separated();
        int high = wedge.merged() == null ? Integer.MAX_VALUE : wedge.merged() - 1;
        return last < low ? low - last : last > high ? last - high : 0;
    }

    /**
     * Levels of an interval over those allowed: the larger of 3 and 2 + 4 s / slope, where s is the
     * standard error of a level by the spread of the paper's twins alone and slope the paper's own,
     * L* per level, at the threshold. What the scan adds is not allowed for.
     */
    private static double width(@Nullable Wedge wedge, PaperModel paper) {
        if (wedge == null || wedge.steps().isEmpty()) {
            return Double.NaN;
        }
        boolean dark = wedge.steps().get(0).level() < 128;
        int at = dark ? firstVisible(wedge, paper) : lastVisible(wedge, paper);
        if (at < 0 || at > 255) {
            return Double.NaN;
        }
        int low = Math.max(0, at - 2);
        int high = Math.min(255, at + 2);
        double slope =
                (paper.colourOf(Rgb8.grey(high)).l() - paper.colourOf(Rgb8.grey(low)).l())
                        / (high - low);
        int twins = wedge.steps().stream().mapToInt(LevelStep::twins).min().orElse(1);
        double error = paper.surface().twinL() / Math.sqrt(twins);
        Wedge.Interval interval = wedge.interval();
        int levels = interval == null ? OPEN : interval.high() - interval.low() + 1;
        return levels / Math.max(3, 2 + 4 * error / slope);
    }

    /** What a misread without notice would be; empty when there is none. */
    List<String> misreads() {
        List<String> all = new ArrayList<>();
        if (refusal != null) {
            if (refusal.startsWith("WRONG")) {
                all.add(refusal);
            }
            return all;
        }
        if (largestDeltaE00 > 3) {
            all.add("dE00 " + largestDeltaE00 + " at " + worstPatch);
        }
        if (shadowsMissed > 2) {
            all.add("shadows miss by " + shadowsMissed);
        }
        if (highlightsMissed > 2) {
            all.add("highlights miss by " + highlightsMissed);
        }
        if (calledEnlarged) {
            all.add("called enlarged");
        }
        return all;
    }

    @Override
    public String toString() {
        if (refusal != null) {
            return conditions + " REFUSED " + refusal;
        }
        return String.format(
                Locale.ROOT,
                "%s | mean %.3f largest %.2f (%s) flagged %d white %s black %s cast %s %s levels %d"
                        + " %d widths %.2f %.2f",
                conditions,
                meanDeltaE00,
                largestDeltaE00,
                worstPatch,
                flagged,
                white,
                black,
                castA,
                castB,
                shadowsMissed,
                highlightsMissed,
                shadowsWidth,
                highlightsWidth);
    }
}
