package org.printassay.scannercalibration;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.printassay.colour.Lab;
import org.printassay.problem.Problem;
import org.printassay.reading.Warning;

/** Simulated readings of equal patches: what prints, instruments and scans add is drawn by lot. */
class SamePrintTest {

    private static Lab moved(Lab from, double sigma, Random random) {
        return new Lab(
                from.l() + sigma * random.nextGaussian(),
                from.a() + sigma * random.nextGaussian(),
                from.b() + sigma * random.nextGaussian());
    }

    /**
     * Readings.
     *
     * @param print how far equal patches of a print are apart
     * @param profile what the scan's profile adds to every a*
     */
    private static List<SamePrint.Pair> pairs(
            int codes,
            int twins,
            double print,
            double instrument,
            double scan,
            double profile,
            boolean same,
            Random random) {
        List<SamePrint.Pair> pairs = new ArrayList<>();
        for (int code = 0; code < codes; code++) {
            double l = 25 + 70 * random.nextDouble();
            Lab colour = moved(new Lab(l, 0, 0), 10, random);
            for (int twin = 0; twin < twins; twin++) {
                Lab scanned = moved(colour, print, random);
                Lab measured = same ? scanned : moved(colour, print, random);
                Lab seen = new Lab(scanned.l(), scanned.a() + profile, scanned.b());
                pairs.add(
                        new SamePrint.Pair(
                                "code " + code,
                                moved(seen, scan, random),
                                moved(measured, instrument, random),
                                true));
            }
        }
        return pairs;
    }

    private static Optional<Warning> judged(List<SamePrint.Pair> pairs, boolean profiled)
            throws Problem {
        return SamePrint.of(pairs, profiled).judged("measured.txt", "scan.tif");
    }

    /** Even prints, coarse instruments, noisy scans, poor profiles, large and small charts. */
    @Test
    void theRightMeasurementIsNeverRefused() throws Problem {
        Random random = new Random(5);
        for (int run = 0; run < 4000; run++) {
            double print = 0.07 * Math.pow(8, random.nextDouble());
            double instrument = 0.02 * Math.pow(5, random.nextDouble());
            double scan = 0.03 * Math.pow(20, random.nextDouble());
            boolean profiled = random.nextBoolean();
            double profile = profiled ? 15 * random.nextDouble() : 0;
            int codes = 20 + random.nextInt(200);
            int twins = 2 + random.nextInt(3);
            // A refusal would end the test.
            judged(pairs(codes, twins, print, instrument, scan, profile, true, random), profiled);
        }
    }

    @Test
    void usualReadingsOfOnePrintRaiseNoDoubtWhateverTheProfile() throws Problem {
        for (int seed = 0; seed < 50; seed++) {
            Random random = new Random(seed);
            double far = seed % 2 == 0 ? 0 : 12;
            List<SamePrint.Pair> pairs = pairs(120, 3, 0.1, 0.05, 0.08, far, true, random);
            assertEquals(Optional.empty(), judged(pairs, true));
            assertEquals(Optional.empty(), judged(pairs, false));
        }
    }

    @Test
    void anotherPrintIsRefused() {
        int refused = 0;
        for (int seed = 0; seed < 50; seed++) {
            List<SamePrint.Pair> pairs =
                    pairs(120, 3, 0.12, 0.05, 0.08, 0, false, new Random(seed));
            try {
                assertTrue(judged(pairs, false).isPresent(), "told at least");
            } catch (Problem problem) {
                assertEquals(Problem.Kind.INPUT, problem.kind());
                assertTrue(problem.getMessage().contains("is of another print"), problem::toString);
                refused++;
            }
        }
        assertTrue(refused >= 48, "refused " + refused);
        List<SamePrint.Pair> far = pairs(120, 3, 0.12, 0.05, 0.08, 12, false, new Random(1));
        Problem problem = assertThrows(Problem.class, () -> judged(far, true));
        assertTrue(problem.getMessage().contains("agreement"), problem::toString);
    }

    /** Without twins only the profile tells, and profiles may be poor: words, no refusal. */
    @Test
    void coloursFarFromTheProfileAreToldWhereTwinsCannotTell() throws Problem {
        List<SamePrint.Pair> far = pairs(100, 1, 0.1, 0.05, 0.08, 12, true, new Random(1));
        String text = judged(far, true).orElseThrow().text();
        assertTrue(text.contains("may be of another print"), text);
        List<SamePrint.Pair> near = pairs(100, 1, 0.1, 0.05, 0.08, 1, true, new Random(1));
        assertEquals(Optional.empty(), judged(near, true));
        String plain = judged(near, false).orElseThrow().text();
        assertTrue(plain.contains("could not be told: too few patches"), plain);
        // An instrument that repeats to what it differs by: nothing is known of the print.
        List<SamePrint.Pair> even = pairs(100, 3, 0, 0.06, 0.3, 0, true, new Random(1));
        String alike = judged(even, false).orElseThrow().text();
        assertTrue(alike.contains("too much alike"), alike);
    }

    @Test
    void patchesThatWereNotMeasuredThemselvesTellNothing() throws Problem {
        List<SamePrint.Pair> means = new ArrayList<>();
        for (SamePrint.Pair pair : pairs(120, 3, 0.12, 0.05, 0.08, 0, false, new Random(2))) {
            means.add(new SamePrint.Pair(pair.colour(), pair.seen(), pair.measured(), false));
        }
        assertEquals(Optional.empty(), judged(means, true));
        assertTrue(judged(means, false).isPresent());
        assertTrue(judged(List.of(), true).isPresent(), "no patch: apart is not known");
    }
}
