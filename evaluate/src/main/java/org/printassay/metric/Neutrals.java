package org.printassay.metric;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.printassay.colour.Lab;
import org.printassay.colour.Rgb8;
import org.printassay.reading.Reading;
import org.printassay.reading.ReadingFlag;
import org.printassay.reading.ReadingSet;
import org.printassay.reading.SharedError;
import org.printassay.reading.Undoubted;
import org.printassay.sheet.Section;

/**
 * The neutrals of a print, level by level, twins pooled robustly. Flagged readings count only where
 * a level has no others; of three or more twins, one far from the others is left out.
 */
final class Neutrals {
    /** Fewer levels make no ramp. */
    private static final int FEWEST_OF_RAMP = 8;

    /**
     * Share of levels that may be left out because all their readings are doubtful: a hand or a
     * stain hides a few; where more are so, the print's own dots or mottle may be.
     */
    private static final double MOST_DOUBTFUL = 0.1;

    private final ReadingSet set;
    private final int assumedCauses;
    private final TreeMap<Integer, LevelData> levels = new TreeMap<>();
    private final TreeSet<Integer> ramp = new TreeSet<>();

    private Neutrals(ReadingSet set) {
        this.set = set;
        this.assumedCauses = (int) set.shared().stream().filter(SharedError::assumed).count();
    }

    static Neutrals of(ReadingSet set) {
        Neutrals neutrals = new Neutrals(set);
        TreeMap<Integer, List<Reading>> byLevel = new TreeMap<>();
        for (Reading reading : set.readings()) {
            if (reading.rgb().isNeutral()
                    && (reading.lab() != null || reading.labRelative() != null)) {
                byLevel.computeIfAbsent(reading.rgb().r(), k -> new ArrayList<>()).add(reading);
                if (reading.section().equals(Optional.of(Section.NEUTRAL_RAMP))) {
                    neutrals.ramp.add(reading.rgb().r());
                }
            }
        }
        Map<Integer, List<Lab>> clean = new TreeMap<>();
        byLevel.forEach(
                (level, readings) ->
                        clean.put(
                                level,
                                Undoubted.of(readings).stream().map(Reading::best).toList()));
        clean.forEach(
                (level, labs) -> {
                    List<Lab> kept = TwinOutliers.without(clean, level);
                    neutrals.levels.put(
                            level,
                            new LevelData(
                                    level,
                                    set.space().toLab(Rgb8.grey(level)).l(),
                                    Lab.mean(kept),
                                    kept.size(),
                                    kept,
                                    shared(set, level),
                                    calibration(set, level)));
                });
        return neutrals;
    }

    /**
     * Whether most readings of a level are at an end of the scanner's range: they bound it only.
     */
    boolean clipped(int level) {
        return 2 * flagged(level, ReadingFlag.CLIPPED) > twins(level).count();
    }

    /**
     * Whether most twins of a level seem to have dust on them. Dust does not choose levels: what
     * was left out of them may be the print's own coarse dots, and with them the tone.
     */
    boolean covered(int level) {
        long all = twins(level).count();
        return all > 1 && 2 * flagged(level, ReadingFlag.DUSTY) > all;
    }

    private long flagged(int level, ReadingFlag flag) {
        return twins(level).filter(r -> r.flags().contains(flag)).count();
    }

    private Stream<Reading> twins(int level) {
        return set.readings().stream().filter(r -> r.rgb().equals(Rgb8.grey(level)));
    }

    /** Twins have the same colour, and the calibration is off by the same in all. */
    private static @Nullable Lab calibration(ReadingSet set, int level) {
        if (set.calibration().isEmpty()) {
            return null;
        }
        List<Lab> errors = new ArrayList<>();
        for (int i = 0; i < set.readings().size(); i++) {
            if (set.readings().get(i).rgb().equals(Rgb8.grey(level))) {
                errors.add(set.calibration().get(i));
            }
        }
        return errors.isEmpty() ? null : Lab.mean(errors);
    }

    /** What each shared cause does to the mean of a level. */
    private static List<Lab> shared(ReadingSet set, int level) {
        if (set.shared().isEmpty()) {
            return List.of();
        }
        List<Reading> all = new ArrayList<>();
        List<Integer> at = new ArrayList<>();
        for (int i = 0; i < set.readings().size(); i++) {
            Reading reading = set.readings().get(i);
            if (reading.rgb().isNeutral() && reading.rgb().r() == level) {
                all.add(reading);
                at.add(i);
            }
        }
        List<Reading> used = Undoubted.of(all);
        List<Lab> shared = new ArrayList<>();
        for (SharedError cause : set.shared()) {
            List<Lab> shifts = new ArrayList<>();
            for (int i : at) {
                if (used.contains(set.readings().get(i))) {
                    shifts.add(cause.shifts().get(i));
                }
            }
            shared.add(Lab.mean(shifts));
        }
        return shared;
    }

    /**
     * What the causes that stand for something not estimated do to L* of a level, one standard
     * error of each.
     */
    double[] assumed(LevelData data) {
        double[] shifts = new double[assumedCauses];
        int n = 0;
        for (int i = 0; i < data.shared().size(); i++) {
            if (set.shared().get(i).assumed()) {
                shifts[n++] = data.shared().get(i).l();
            }
        }
        return shifts;
    }

    /** Standard error of the distance in L* of two levels by what could not be estimated. */
    double assumedApart(LevelData one, LevelData other) {
        double[] first = assumed(one);
        double[] second = assumed(other);
        double squares = 0;
        for (int cause = 0; cause < first.length; cause++) {
            squares += Math.pow(first[cause] - second[cause], 2);
        }
        return Math.sqrt(squares);
    }

    /** Standard error of the L* of a level by lossy coding, which all its twins share. */
    double codingError(int level) {
        return CodingLoss.error(set, all(), level);
    }

    /** Levels in ascending order. */
    List<LevelData> all() {
        return List.copyOf(levels.values());
    }

    /**
     * Levels that tone and neutrality are judged over: the ramp where there is one, else all.
     * Levels that are out of line are left out, and a few of which every reading is doubtful: what
     * lies on the sheet there would pass for a fault of the print. Where many are doubtful, the
     * print may be so.
     */
    List<LevelData> curve() {
        List<LevelData> all =
                ramp.size() < FEWEST_OF_RAMP
                        ? all()
                        : levels.values().stream().filter(d -> ramp.contains(d.level())).toList();
        List<LevelData> inLine = all.stream().filter(d -> !outOfLine(d.level())).toList();
        List<LevelData> sure =
                inLine.stream().filter(d -> !only(ReadingFlag.DOUBTFUL, d.level())).toList();
        return inLine.size() - sure.size() > MOST_DOUBTFUL * inLine.size() ? inLine : sure;
    }

    /**
     * Whether something lies on all patches of a level that would pass for a fault of the print.
     */
    boolean outOfLine(int level) {
        return only(Set.of(ReadingFlag.OUT_OF_LINE), level);
    }

    /**
     * Whether all readings of a level are flagged so; never said of the ends: the aim hangs on
     * them.
     */
    private boolean only(Set<ReadingFlag> flags, int level) {
        return level != levels.firstKey()
                && level != levels.lastKey()
                && twins(level).allMatch(r -> r.flags().stream().anyMatch(flags::contains));
    }

    Optional<LevelData> level(int level) {
        return Optional.ofNullable(levels.get(level));
    }

    /**
     * Shares that add up to 1: each level stands for the span of file L* that is nearest to it, so
     * that a densely tested range does not count for more.
     */
    static double[] shares(List<LevelData> data) {
        double[] shares = new double[data.size()];
        if (shares.length == 1) {
            shares[0] = 1;
            return shares;
        }
        double span = data.get(data.size() - 1).fileL() - data.get(0).fileL();
        for (int i = 0; i < shares.length; i++) {
            double low = data.get(Math.max(0, i - 1)).fileL();
            double high = data.get(Math.min(shares.length - 1, i + 1)).fileL();
            shares[i] = (high - low) / 2 / span;
        }
        return shares;
    }

    /** How twins differ, by tone. */
    TwinSpreads spreads() {
        return new TwinSpreads(levels, set.repeats());
    }

    ReadingSet set() {
        return set;
    }

    /** Sum of products, for weighted means. */
    static double weighted(double[] shares, double[] values) {
        double sum = 0;
        double total = Arrays.stream(shares).sum();
        for (int i = 0; i < shares.length; i++) {
            sum += shares[i] * values[i];
        }
        return total == 0 ? Double.NaN : sum / total;
    }
}
