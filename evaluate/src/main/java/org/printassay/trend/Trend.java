package org.printassay.trend;

import java.util.ArrayList;
import java.util.List;
import java.util.function.IntPredicate;
import java.util.function.IntToDoubleFunction;
import org.jspecify.annotations.Nullable;

/**
 * One quantity over time with what can be said about changes.
 *
 * <p>Baseline: the prints that the user named; else the first {@link ControlLimits#ENOUGH}. The
 * centre is the mean of the baseline. The spread comes from the same prints, or, where the user
 * named fewer than {@link ControlLimits#FEWEST}, from the first of the series. Prints before the
 * baseline are shown and not judged.
 *
 * <p>Two rules. A <em>jump</em> is a value beyond the limits of the individuals chart. A
 * <em>drift</em> is a running mean beyond its own limits, to which the error of the centre is
 * added; values beyond the limits count as lying on them there, so that one odd print makes no
 * drift.
 *
 * <p>False alarms with normal values: where centre and spread are known, 2.7 prints in 1000 are
 * jumps (same source). With limits told from 20 prints 11 in 1000 begin a jump and 3.5 a drift;
 * from 100 prints, 4 and 2 (simulated: {@code TrendTest}).
 *
 * @param quantity what
 * @param points in the order of time
 * @param limits null with too few prints
 * @param judgedFrom index of the first point that is judged
 * @param running running mean after each judged point; empty without limits
 * @param changes in the order of time; jumps first where both begin at once
 */
public record Trend(
        Followed quantity,
        List<Point> points,
        @Nullable ControlLimits limits,
        int judgedFrom,
        List<Double> running,
        List<Shift> changes) {
    /** What the newest print says. */
    public enum State {
        /** Too few prints. */
        UNKNOWN("unknown"),
        /** Nothing changed. */
        STEADY("steady"),
        /** The newest print is beyond the limits. */
        JUMPED("jumped"),
        /** The running mean is beyond its limits. */
        DRIFTED("drifted");

        private final String key;

        State(String key) {
            this.key = key;
        }

        /** Name in files. */
        public String key() {
            return key;
        }
    }

    public Trend {
        points = List.copyOf(points);
        running = List.copyOf(running);
        changes = List.copyOf(changes);
    }

    /** Judges points that are in the order of time. */
    public static Trend of(Followed quantity, List<Point> points) {
        List<Point> named = named(points);
        List<Point> spread = usual(points);
        if (spread.size() < ControlLimits.FEWEST) {
            return new Trend(quantity, points, null, 0, List.of(), List.of());
        }
        ControlLimits limits =
                named.isEmpty() || named.size() >= ControlLimits.FEWEST
                        ? ControlLimits.of(values(spread), quantity.step())
                        : ControlLimits.around(values(named), values(spread), quantity.step());
        int from = named.isEmpty() ? 0 : points.indexOf(named.get(0));
        List<Double> held =
                points.subList(from, points.size()).stream()
                        .map(p -> limits.held(p.value()))
                        .toList();
        List<Double> running = RunningMean.over(held, limits.centre(), RunningMean.WEIGHT);
        return new Trend(
                quantity, points, limits, from, running, changes(points, limits, from, running));
    }

    private static List<Point> named(List<Point> points) {
        return points.stream().filter(Point::baseline).toList();
    }

    /** The prints that tell the spread: the named ones where they are enough, else the first. */
    private static List<Point> usual(List<Point> points) {
        List<Point> named = named(points);
        return named.size() >= ControlLimits.FEWEST
                ? named
                : points.subList(0, Math.min(ControlLimits.ENOUGH, points.size()));
    }

    /** The prints that the spread of single values is told from. */
    public List<Point> usual() {
        return usual(points);
    }

    /** How far from the centre the running mean must be to count as a drift. */
    public static double driftReach(ControlLimits limits) {
        return Math.hypot(
                RunningMean.reach(limits.sigma(), RunningMean.WEIGHT),
                ControlLimits.WIDTH * limits.centreError());
    }

    private static List<Double> values(List<Point> points) {
        return points.stream().map(Point::value).toList();
    }

    private static List<Shift> changes(
            List<Point> points, ControlLimits limits, int from, List<Double> running) {
        double reach = driftReach(limits);
        IntToDoubleFunction off = i -> points.get(i).value() - limits.centre();
        IntToDoubleFunction runningOff = i -> running.get(i - from) - limits.centre();
        List<Shift> out = new ArrayList<>();
        int end = points.size();
        runs(from, end, i -> limits.beyond(points.get(i).value()), off)
                .forEach(r -> out.add(new Shift(Shift.Kind.JUMP, r[0], r[1], farthest(r, off))));
        runs(from, end, i -> Math.abs(runningOff.applyAsDouble(i)) > reach, runningOff)
                .forEach(
                        r ->
                                out.add(
                                        new Shift(
                                                Shift.Kind.DRIFT,
                                                r[0],
                                                r[1],
                                                runningOff.applyAsDouble(r[1]))));
        out.sort((one, other) -> Integer.compare(one.first(), other.first()));
        return out;
    }

    /** First and last index of neighbours that are out on the same side. */
    private static List<int[]> runs(int from, int end, IntPredicate out, IntToDoubleFunction off) {
        List<int[]> runs = new ArrayList<>();
        for (int i = from; i < end; i++) {
            if (!out.test(i)) {
                continue;
            }
            int before = runs.isEmpty() ? -1 : runs.get(runs.size() - 1)[1];
            if (i > from && before == i - 1 && above(off, i) == above(off, before)) {
                runs.get(runs.size() - 1)[1] = i;
            } else {
                runs.add(new int[] {i, i});
            }
        }
        return runs;
    }

    private static boolean above(IntToDoubleFunction off, int i) {
        return off.applyAsDouble(i) > 0;
    }

    private static double farthest(int[] run, IntToDoubleFunction off) {
        double most = 0;
        for (int i = run[0]; i <= run[1]; i++) {
            double here = off.applyAsDouble(i);
            most = Math.abs(here) > Math.abs(most) ? here : most;
        }
        return most;
    }

    /** What the newest print says; a jump is said before a drift. */
    public State state() {
        if (limits == null) {
            return State.UNKNOWN;
        }
        int newest = points.size() - 1;
        State state = State.STEADY;
        for (Shift change : changes) {
            if (change.last() == newest) {
                if (change.kind() == Shift.Kind.JUMP) {
                    return State.JUMPED;
                }
                state = State.DRIFTED;
            }
        }
        return state;
    }

    /** The newest point. */
    public Point newest() {
        return points.get(points.size() - 1);
    }
}
