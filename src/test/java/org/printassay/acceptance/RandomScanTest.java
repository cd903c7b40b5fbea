package org.printassay.acceptance;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.Function;
import java.util.stream.DoubleStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Random scans over everything that people bring, against known truth. Sixty in the usual run;
 * {@code -DrandomScans=1000} makes the long one, {@code -DrandomScansFrom} starts elsewhere. Each
 * trial is a line of {@code target/random-scans.txt}.
 */
class RandomScanTest {
    private static final int USUAL = 60;

    /** Mean dE00 of any clean scan, and of all hard ones. */
    private static final double CLEAN_MEAN = 0.3;

    private static final double HARD_MEAN = 0.6;

    /** Of any patch without a flag, dE00; of 306 scans one had 1.91. */
    private static final double LARGEST = 2;

    @TempDir Path dir;

    @Test
    void nothingIsMisreadWithoutNotice() throws Exception {
        int scans = Integer.getInteger("randomScans", USUAL);
        int from = Integer.getInteger("randomScansFrom", 0);
        List<Trial> read = new ArrayList<>();
        List<String> lines = new ArrayList<>();
        List<String> misreads = new ArrayList<>();
        Path log = Path.of("target", "random-scans.txt");
        Files.createDirectories(log.getParent());
        for (int i = from; i < from + scans; i++) {
            Trial trial = Trial.of(RandomConditions.of(i), dir);
            lines.add(trial.toString());
            Files.write(log, lines);
            for (String misread : trial.misreads()) {
                misreads.add(i + ": " + misread);
            }
            if (trial.refusal() == null) {
                read.add(trial);
            }
        }
        lines.add(summary(read));
        Files.write(log, lines);
        assertTrue(misreads.isEmpty(), misreads.toString());
        assertTrue(read.size() >= 0.99 * scans, read.size() + " read of " + scans);
        for (Trial trial : read) {
            boolean near =
                    trial.largestDeltaE00() <= LARGEST
                            && (!trial.conditions().clean() || trial.meanDeltaE00() <= CLEAN_MEAN);
            assertTrue(near, trial::toString);
        }
        double hard =
                read.stream()
                        .filter(trial -> !trial.conditions().clean())
                        .mapToDouble(Trial::meanDeltaE00)
                        .average()
                        .orElse(0);
        assertTrue(hard <= HARD_MEAN, "mean dE00 of hard scans " + hard);
        assertTrue(exactLevels(read) >= 0.95, "level intervals hold in " + exactLevels(read));
        assertTrue(medianWidth(read) <= 1, "level intervals are wide: " + medianWidth(read));
        holdsAsOften("white", read, Trial::white);
        holdsAsOften("black", read, Trial::black);
        holdsAsOften("cast a*", read, Trial::castA);
        holdsAsOften("cast b*", read, Trial::castB);
    }

    private static double exactLevels(List<Trial> read) {
        return read.stream()
                        .mapToInt(
                                t ->
                                        (t.shadowsMissed() == 0 ? 1 : 0)
                                                + (t.highlightsMissed() == 0 ? 1 : 0))
                        .average()
                        .orElse(0)
                / 2;
    }

    /**
     * Of all judged wedges, levels of their intervals over those that the paper's spread allows.
     */
    private static double medianWidth(List<Trial> read) {
        double[] widths =
                read.stream()
                        .flatMapToDouble(
                                t -> DoubleStream.of(t.shadowsWidth(), t.highlightsWidth()))
                        .filter(width -> !Double.isNaN(width))
                        .sorted()
                        .toArray();
        return widths[widths.length / 2];
    }

    /**
     * An interval without what is stated by trust alone holds the truth in 93 to 97 of 100; of few
     * trials that share itself is known to three standard errors.
     */
    private static void holdsAsOften(
            String what, List<Trial> read, Function<Trial, Trial.Interval> of) {
        List<Trial.Interval> judged = read.stream().map(of).filter(Trial.Interval::judged).toList();
        double share =
                (double) judged.stream().filter(Trial.Interval::randomHolds).count()
                        / judged.size();
        double unsure = 3 * Math.sqrt(0.95 * 0.05 / judged.size());
        assertTrue(
                share >= 0.93 - unsure && share <= 0.97 + unsure,
                what + " holds in " + share + " of " + judged.size());
    }

    private static String summary(List<Trial> read) {
        return "read "
                + read.size()
                + " median width "
                + medianWidth(read)
                + " white "
                + share(read, Trial::white)
                + " black "
                + share(read, Trial::black)
                + " cast a* "
                + share(read, Trial::castA)
                + " cast b* "
                + share(read, Trial::castB);
    }

    private static String share(List<Trial> read, Function<Trial, Trial.Interval> of) {
        List<Trial.Interval> judged = read.stream().map(of).filter(Trial.Interval::judged).toList();
        return String.format(
                Locale.ROOT,
                "%.1f %% (all %.1f %%)",
                100.0 * judged.stream().filter(Trial.Interval::randomHolds).count() / judged.size(),
                100.0 * judged.stream().filter(Trial.Interval::holds).count() / judged.size());
    }
}
