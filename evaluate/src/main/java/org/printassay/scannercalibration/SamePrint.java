package org.printassay.scannercalibration;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.ToDoubleFunction;
import org.printassay.calibrate.TwinDepartures;
import org.printassay.colour.DeltaE;
import org.printassay.colour.Lab;
import org.printassay.problem.Problem;
import org.printassay.reading.Warning;
import org.printassay.reading.WarningCode;

/**
 * Whether a measurement is of the print that was scanned. Two things tell: patches of one code
 * depart from each other alike in scan and measurement of one print; and colours of a scan with a
 * profile are about those that were measured. A model fits two prints as well as one, and counts
 * what differs as the instrument's noise, so that its error tells nothing.
 *
 * <p>A right measurement must not be refused. By the rule below it is not where equal patches of
 * the print depart by 0.07 or more (standard deviation of L*, a*, b*) and the instrument repeats to
 * 0.1 or better; nor where a profile shows that colours are the same. Prints that come out more
 * alike are hardly made.
 *
 * @param departures of equal patches
 * @param apart mean dE00 relative to paper between the scan by its profile and the measurement; NaN
 *     for a scan without profile
 */
record SamePrint(TwinDepartures departures, double apart) {
    /** What an instrument repeats to in L*, a* and b* each (common practice, no source). */
    private static final double INSTRUMENT_NOISE = 0.07;

    /** Darker than this, relative to paper, instruments are noisier. */
    private static final double DARK = 20;

    /** Fewer departures tell nothing. */
    private static final int FEWEST = 180;

    /** Agreement below which, by this share of what one print would show, prints are two. */
    private static final double DIFFERENT = 0.25;

    /** Agreement from which, by this share, they are one. */
    private static final double SAME = 0.5;

    /** Mean dE00 that a scanner's own profile may be off (common practice, no source). */
    private static final double PROFILES_DIFFER = 4;

    /** Nearer than this, by a scanner's own profile, are hardly two prints. */
    private static final double PROFILE_AGREES = 1;

    private static final List<ToDoubleFunction<Lab>> COORDINATES = List.of(Lab::l, Lab::a, Lab::b);

    /**
     * A patch in both.
     *
     * @param colour what was printed there
     * @param seen in the scan, relative to paper
     * @param measured relative to paper
     * @param own whether this very patch was measured, not others of its code
     */
    record Pair(String colour, Lab seen, Lab measured, boolean own) {}

    /**
     * Compares.
     *
     * @param pairs patches that are not bare paper
     * @param profiled whether the colours of the scan are by a profile
     */
    static SamePrint of(List<Pair> pairs, boolean profiled) {
        Map<String, List<Pair>> groups = new TreeMap<>();
        double sum = 0;
        for (Pair pair : pairs) {
            sum += DeltaE.ciede2000(pair.seen, pair.measured);
            if (pair.own && pair.measured.l() > DARK) {
                groups.computeIfAbsent(pair.colour, k -> new ArrayList<>()).add(pair);
            }
        }
        return new SamePrint(
                departures(groups), profiled && !pairs.isEmpty() ? sum / pairs.size() : Double.NaN);
    }

    private static TwinDepartures departures(Map<String, List<Pair>> groups) {
        TwinDepartures departures = new TwinDepartures();
        for (List<Pair> twins : groups.values()) {
            if (twins.size() < 2) {
                continue;
            }
            double[] none = new double[twins.size()];
            double[] errors = new double[twins.size()];
            // The mean of the twins takes its share of the noise with it.
            Arrays.fill(errors, INSTRUMENT_NOISE * Math.sqrt(1 - 1.0 / twins.size()));
            for (ToDoubleFunction<Lab> of : COORDINATES) {
                departures.add(
                        twins.stream().mapToDouble(p -> of.applyAsDouble(p.seen)).toArray(),
                        twins.stream().mapToDouble(p -> of.applyAsDouble(p.measured)).toArray(),
                        none,
                        errors);
            }
        }
        return departures;
    }

    /** Whether colours are farther apart than profiles are off. */
    private boolean coloursDiffer() {
        return apart > PROFILES_DIFFER;
    }

    private double standardError() {
        return 1 / Math.sqrt(Math.max(1, departures.count()));
    }

    /** Whether equal patches surely do not agree as those of one print would. */
    private boolean otherTwins() {
        return departures.count() >= FEWEST
                && departures.agreement() + standardError()
                        < DIFFERENT * departures.leastExpected();
    }

    private boolean sameTwins() {
        return departures.count() >= FEWEST
                && departures.agreement() > 4 * standardError()
                && departures.agreement() > SAME * departures.leastExpected();
    }

    /** Whether they do not agree, as they would in one print, though not surely. */
    private boolean doubtfulTwins() {
        return departures.count() >= FEWEST
                && departures.agreement() + standardError() < SAME * departures.leastExpected();
    }

    /**
     * What the user must know; empty where both are of one print, or of prints that come out alike.
     *
     * @param measurement name of the measurement file
     * @param scan name of the scan
     * @throws Problem input, when the measurement is of another print
     */
    Optional<Warning> judged(String measurement, String scan) throws Problem {
        if (sameTwins()) {
            return Optional.empty();
        }
        if (otherTwins() && !(apart < PROFILE_AGREES)) {
            throw Problem.input(
                    measurement,
                    "is of another print than "
                            + scan
                            + " shows: "
                            + twins()
                            + (coloursDiffer() ? ", and " + colours() : "")
                            + ". Name the measurement of the print that was scanned.");
        }
        if (coloursDiffer()) {
            return doubt(
                    measurement
                            + " may be of another print than "
                            + scan
                            + " shows: "
                            + colours()
                            + ", more than scanners' own profiles are off. If it is of this print,"
                            + " the profile is not this scanner's.");
        }
        if (doubtfulTwins()) {
            return doubt(
                    measurement
                            + " may be of another print than "
                            + scan
                            + " shows: "
                            + twins()
                            + ". Make sure that it is of this print.");
        }
        if (Double.isNaN(apart)) {
            return doubt(
                    "Whether "
                            + measurement
                            + " is of the print that "
                            + scan
                            + " shows could not be told: "
                            + (departures.count() < FEWEST
                                    ? "too few patches of equal colour were measured"
                                    : "patches of equal colour come out too much alike")
                            + ", and the scan has no profile. Make sure that it is: the figures"
                            + " below do not show it.");
        }
        return Optional.empty();
    }

    private String twins() {
        return String.format(
                Locale.ROOT,
                "patches of equal colour depart from each other in other ways (agreement %.2f where"
                        + " one print gives at least about %.2f)",
                departures.agreement(),
                departures.leastExpected());
    }

    private String colours() {
        return String.format(
                Locale.ROOT,
                "its colours are %.1f dE00 in the mean from those by the scan's profile",
                apart);
    }

    private static Optional<Warning> doubt(String text) {
        return Optional.of(new Warning(WarningCode.MEASUREMENT_DOUBTFUL, text));
    }
}
