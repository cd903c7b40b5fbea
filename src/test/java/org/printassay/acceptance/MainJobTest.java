package org.printassay.acceptance;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.printassay.colour.DeltaE;
import org.printassay.colour.Lab;
import org.printassay.colour.Rgb8;
import org.printassay.demo.PrintRoom;
import org.printassay.demo.flatbed.Flatbed;
import org.printassay.demo.paper.Cast;
import org.printassay.demo.paper.PaperModel;
import org.printassay.demo.paper.Surface;
import org.printassay.demo.paper.Tone;
import org.printassay.demo.print.Print;
import org.printassay.demo.print.PrintedPatch;
import org.printassay.demo.print.Printing;
import org.printassay.evaluation.Evaluation;
import org.printassay.evaluation.EvaluationRequest;
import org.printassay.evaluation.Evaluator;
import org.printassay.evaluation.PlacementSummary;
import org.printassay.locate.PointPx;
import org.printassay.metric.Wedge;
import org.printassay.reading.Reading;
import org.printassay.sample.SheetSamples;
import org.printassay.sheet.Marker;
import org.printassay.sheet.PointMm;

/**
 * The main job on simulated scans with known truth: 300 samples an inch, 16 bit, profile embedded,
 * one degree of rotation, realistic noise.
 */
class MainJobTest {
    private static final double THRESHOLD = 0.5;

    @TempDir Path dir;

    private record Job(Print print, Evaluator.Result result) {
        Evaluation evaluation() {
            return result.evaluation();
        }
    }

    private Job job(PaperModel paper, Printing printing, Flatbed flatbed, long seed)
            throws Exception {
        Print print = SimulatedPrint.print(paper, printing, seed);
        Path scan = dir.resolve("scan-" + seed + ".tif");
        PrintRoom.scan(print, flatbed, seed, scan);
        return new Job(print, Evaluator.evaluate(EvaluationRequest.of(scan)));
    }

    @Test
    void everyPatchIsFoundAndReadRight() throws Exception {
        Job job = job(SimulatedPrint.goodPaper(), Printing.EXACT, SimulatedPrint.flatbed(), 11);
        Map<String, Lab> truth = new HashMap<>();
        for (PrintedPatch patch : job.print.patches()) {
            truth.put(patch.patch().id(), patch.printed());
        }
        List<Reading> readings = job.evaluation().patches();
        assertEquals(SimulatedPrint.chart().sheets().get(0).patches().size(), readings.size());
        double sum = 0;
        double largest = 0;
        for (Reading reading : readings) {
            double off =
                    DeltaE.ciede2000(
                            Objects.requireNonNull(truth.get(reading.id())), reading.best());
            sum += off;
            largest = Math.max(largest, off);
        }
        assertTrue(sum / readings.size() <= 0.3, "mean dE00 " + sum / readings.size());
        assertTrue(largest <= 1.0, "largest dE00 " + largest);
    }

    @Test
    void noMarkerIsPlacedWorseThanATenthOfAMillimetre() throws Exception {
        Job job = job(SimulatedPrint.goodPaper(), Printing.EXACT, SimulatedPrint.flatbed(), 12);
        SheetSamples scan = job.result.scans().get(0);
        PlacementSummary placement = job.evaluation().placements().get(0);
        assertEquals(placement.markersExpected(), placement.markersFound());
        assertEquals(1, placement.rotationDegrees(), 0.02);
        for (Marker marker : scan.located().sheet().markers()) {
            PointMm centre = marker.area().centre();
            PointPx placed = scan.located().placement().toScan(centre);
            PointPx found = Objects.requireNonNull(scan.located().markerCentres().get(marker.id()));
            double mm =
                    Math.hypot(placed.x() - found.x(), placed.y() - found.y())
                            / scan.located().placement().samplesPerMm();
            assertTrue(mm < 0.1, "marker " + marker.id() + " is " + mm + " mm off");
        }
    }

    @Test
    void aSheetPrintedAtNinetySixPercentIsToldToATenthOfAPercent() throws Exception {
        Job job =
                job(
                        SimulatedPrint.goodPaper(),
                        Printing.scaled(0.96),
                        SimulatedPrint.flatbed(),
                        13);
        PlacementSummary placement = job.evaluation().placements().get(0);
        assertEquals(0.96, Objects.requireNonNull(placement.scaleX()), 0.001);
        assertEquals(0.96, Objects.requireNonNull(placement.scaleY()), 0.001);
        assertTrue(job.evaluation().findings().get(0).text().contains("96.0 %"));
    }

    @Test
    void castPaperTintAndToneAreRecovered() throws Exception {
        PaperModel paper =
                PaperModel.faultless(
                                "Paper T (simulated)",
                                new Lab(95.5, 0.8, 4.2),
                                new Lab(9, 0.3, 0.6))
                        .withTone(Tone.AIM.withDotGain(0.03))
                        .withCast(new Cast(1.4, -1.8, 1.4, -1.8, 1.4, -1.8))
                        .withSurface(SimulatedPrint.GOOD_SURFACE);
        Evaluation e = job(paper, Printing.EXACT, SimulatedPrint.flatbed(), 14).evaluation();
        Lab white = Objects.requireNonNull(Objects.requireNonNull(e.white()).lab());
        assertEquals(paper.white().chroma(), white.chroma(), 0.3);
        double a = 0;
        double b = 0;
        double squares = 0;
        int n = 0;
        var tone = Objects.requireNonNull(e.tone());
        for (var point : tone.points()) {
            Lab real = paper.colourOf(Rgb8.grey(point.level()));
            double fade = (real.l() - paper.black().l()) / (paper.white().l() - paper.black().l());
            a += real.a() - fade * paper.white().a();
            b += real.b() - fade * paper.white().b();
            squares += Math.pow(real.l() - point.aimL(), 2);
            n++;
        }
        var cast = Objects.requireNonNull(e.neutrality()).cast();
        assertEquals(a / n, cast.a(), 0.3);
        assertEquals(b / n, cast.b(), 0.3);
        assertEquals(Math.sqrt(squares / n), tone.rmsDeltaL(), 0.2);
    }

    /**
     * Twenty papers: sharp and soft knees at both ends, spreads 0.05 to 0.3. One seed each; {@code
     * -DlevelSeeds=10} makes the longer run of ten.
     */
    @Test
    void levelIntervalsHoldTheTruthOnScans() throws Exception {
        int inside = 0;
        int asked = 0;
        List<String> missed = new ArrayList<>();
        int seeds = Integer.getInteger("levelSeeds", 1);
        for (int run = 0; run < 20 * seeds; run++) {
            int i = run % 20;
            double spread = new double[] {0.05, 0.1, 0.15, 0.2, 0.3}[i % 5];
            boolean soft = i % 2 == 1;
            PaperModel paper =
                    PaperModel.faultless(
                                    "Paper " + i + " (simulated)",
                                    new Lab(95 + i % 3, 0.3, i % 7 - 3),
                                    new Lab(4 + (i % 4) * 4, 0.1, 0.3))
                            .withTone(
                                    Tone.AIM
                                            .withBlocked(i, soft ? 8 : 3, soft)
                                            .withMerged(255 - i / 2, soft ? 8 : 3, soft))
                            .withSurface(new Surface(spread, spread, 0.3, 0.05, 0, 0.2, 0.1));
            Evaluation e =
                    job(paper, Printing.EXACT, SimulatedPrint.flatbed(), 100 + run).evaluation();
            Wedge shadows = Objects.requireNonNull(e.shadows());
            Wedge highlights = Objects.requireNonNull(e.highlights());
            int f = firstSeparated(paper, shadows);
            int v = lastSeparated(paper, highlights);
            asked += 2;
            if (within(shadows.merged(), f, shadows.separated())) {
                inside++;
            } else {
                missed.add("shadows of " + i + ": true " + f + ", " + shadows.interval());
            }
            if (held(highlights.separated(), v, highlights.merged())) {
                inside++;
            } else {
                missed.add("highlights of " + i + ": true " + v + ", " + highlights.interval());
            }
        }
        assertTrue(inside >= 0.95 * asked, inside + " of " + asked + " " + missed);
    }

    /** Whether low < truth <= high, an unknown end counting as open. */
    private static boolean within(@Nullable Integer low, int truth, @Nullable Integer high) {
        return (low == null || low < truth) && (high == null || truth <= high);
    }

    /** The mirror: separated <= truth < merged. */
    private static boolean held(@Nullable Integer separated, int truth, @Nullable Integer merged) {
        return (separated == null || separated <= truth) && (merged == null || truth < merged);
    }

    private static int firstSeparated(PaperModel paper, Wedge wedge) {
        int first = Integer.MAX_VALUE;
        for (int i = wedge.steps().size() - 1; i >= 0; i--) {
            int level = wedge.steps().get(i).level();
            if (paper.colourOf(Rgb8.grey(level)).l() - paper.black().l() < THRESHOLD) {
                return first;
            }
            first = level;
        }
        return first;
    }

    private static int lastSeparated(PaperModel paper, Wedge wedge) {
        int last = Integer.MIN_VALUE;
        for (var step : wedge.steps()) {
            if (paper.white().l() - paper.colourOf(Rgb8.grey(step.level())).l() < THRESHOLD) {
                return last;
            }
            last = step.level();
        }
        return last;
    }
}
