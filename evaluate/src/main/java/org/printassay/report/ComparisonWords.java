package org.printassay.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.printassay.compare.Comparison;
import org.printassay.compare.Difference;
import org.printassay.compare.DifferenceVerdict;
import org.printassay.compare.Figure;
import org.printassay.compare.Judged;
import org.printassay.compare.Question.Criterion;
import org.printassay.compare.Ranking;
import org.printassay.compare.Side;

/** Figures, verdicts and rules of comparisons in words. */
public final class ComparisonWords {
    private ComparisonWords() {}

    /** A figure as tables show it, its unit being in the label; means of counts get a decimal. */
    static String bare(Figure figure, double value) {
        return Words.number(value, figure.decimals(value));
    }

    /** A figure with its unit. */
    static String value(Figure figure, double value) {
        String number = bare(figure, value);
        return switch (figure.unit()) {
            case "", "levels", "steps" -> number;
            case "per mm" -> number + "\u00a0per\u00a0mm";
            default -> figure.unit() + "\u00a0" + number;
        };
    }

    /** A difference with its half-width, where it has one. */
    static String difference(Difference d) {
        Double half = d.halfWidth();
        int decimals = d.figure().decimals(d.value());
        String signed = Words.signed(d.value(), decimals);
        return half == null
                ? signed
                : signed
                        + "\u00a0\u00b1\u00a0"
                        + Words.number(half, Math.max(decimals, d.figure().decimals(half)));
    }

    /** What may be said of a difference. */
    static String verdict(DifferenceVerdict verdict) {
        return switch (verdict) {
            case DIFFERS -> "";
            case UNSURE -> "perhaps; may be chance";
            case NOT_MEASURABLE -> "no measurable difference";
            case NOT_TOLD -> "not known how sure";
        };
    }

    /** Whether a difference is shown as one. */
    static boolean differs(Judged judged) {
        return judged.verdict() == DifferenceVerdict.DIFFERS;
    }

    /** How a ranking gives its places. */
    public static String rule(Ranking ranking) {
        String asked =
                ranking.criteria().stream()
                        .map(ComparisonWords::criterion)
                        .collect(Collectors.joining("; then "));
        String rule = asked.isEmpty() ? "" : "Asked in turn: " + asked + ".";
        return rule + left(ranking);
    }

    private static String left(Ranking ranking) {
        if (ranking.left().isEmpty()) {
            return "";
        }
        return " Not asked, because not judged on every side, or not known how sure: "
                + ranking.left().stream()
                        .map(c -> c.figure().shortLabel())
                        .collect(Collectors.joining(", "))
                + ".";
    }

    private static String criterion(Criterion c) {
        Figure figure = c.figure();
        boolean counted = figure.unit().equals("levels");
        return figure.shortLabel()
                + (c.more()
                        ? ", the more the better"
                        : counted ? ", the lower the better" : ", the less the better")
                + " (from "
                + value(figure, figure.visible())
                + ")";
    }

    /** The places of a ranking in one line, as the terminal has them. */
    public static String places(Comparison c, Ranking ranking) {
        String label = ranking.question().label() + ": ";
        if (ranking.places().isEmpty()) {
            return label + "cannot be told from what was judged and how surely.";
        }
        if (ranking.undecided()) {
            return label + c.these() + " cannot be told apart.";
        }
        Map<Integer, List<Integer>> places = new TreeMap<>();
        for (Ranking.Place place : ranking.places()) {
            places.computeIfAbsent(place.place(), k -> new ArrayList<>()).add(place.side());
        }
        return label
                + places.values().stream()
                        .map(sides -> together(c, ranking, sides))
                        .collect(Collectors.joining(", then "))
                + ".";
    }

    private static String together(Comparison c, Ranking ranking, List<Integer> sides) {
        List<String> names = sides.stream().map(c::shortName).toList();
        int last = names.size() - 1;
        if (last == 0) {
            return names.get(0);
        }
        String told =
                ranking.within().stream()
                        .filter(t -> sides.contains(t.better()))
                        .map(t -> c.shortName(t.better()) + " before " + c.shortName(t.worse()))
                        .collect(Collectors.joining(", "));
        return String.join(", ", names.subList(0, last))
                + " and "
                + names.get(last)
                + (told.isEmpty() ? " alike" : " in one place, though " + told);
    }

    /** Who stands before a side that shares a place, and by what; empty when nobody does. */
    static String behind(Comparison c, Ranking ranking, int side) {
        return ranking.within().stream()
                .filter(t -> t.worse() == side)
                .map(t -> "behind " + c.shortName(t.better()) + " by " + t.decidedBy().shortLabel())
                .collect(Collectors.joining("; "));
    }

    /** How differences were judged. */
    static List<String> method(Comparison c) {
        List<String> out = new ArrayList<>();
        out.add(
                "\u00b1 is the half-width of the 95\u00a0% interval of that difference by itself."
                        + " Since "
                        + c.pairs().counted()
                        + " differences were looked at together, one is only called a difference"
                        + " where it also holds among them all: of those so called at most one in"
                        + " twenty is chance, on average (Benjamini, Hochberg 1995, J. R. Statist."
                        + " Soc. B 57, 289\u2013300). \u201cPerhaps\u201d stands where the interval"
                        + " leaves zero out but that test is not passed.");
        out.add(basis(c));
        out.add(
                c.comparability().readAlike()
                        ? "All were read alike, so what the reading of all is off by cancels in"
                                + " differences."
                        : "What each reading may be off by does not cancel between these prints and"
                                + " is in the intervals of absolute figures.");
        out.add(
                "In rankings a difference counts when it holds and is large enough to be seen side"
                        + " by side (common practice, no source). Which figures are asked, and in which"
                        + " order, is stated with each; another order may suit your pictures better.");
        out.add("Let prints dry alike, and look at them in one light (ISO 3664).");
        return out;
    }

    private static String basis(Comparison c) {
        int repeats = c.sides().stream().mapToInt(s -> s.prints().size() - 1).sum();
        if (repeats == 0 && !c.known().known()) {
            return "Intervals hold what reading each print once more would change. How prints of"
                    + " one paper differ among themselves is not known here, so nothing is said"
                    + " of papers: print the chart several times on each.";
        }
        List<String> single =
                c.sides().stream()
                        .filter(s -> !s.repeated())
                        .map(s -> s.shortName(c.sides()))
                        .toList();
        String from =
                repeats > 0
                        ? "How prints differ among themselves is pooled over all repeats ("
                                + repeats
                                + (repeats == 1 ? " degree" : " degrees")
                                + " of freedom), taking it to be alike on all (NIST/SEMATECH"
                                + " e-Handbook of Statistical Methods, 7.3.1)."
                        : "";
        String told =
                List.of(from, known(c)).stream()
                        .filter(s -> !s.isEmpty())
                        .collect(Collectors.joining(" "));
        return single.isEmpty() || repeats == 0
                ? told
                : told
                        + " There is one print only of "
                        + String.join(", ", single)
                        + ": name more to be surer.";
    }

    /**
     * Where it is known from beforehand how prints differ among themselves; empty when it is not.
     */
    public static String known(Comparison c) {
        if (!c.known().known()) {
            return "";
        }
        boolean repeats = c.sides().stream().anyMatch(Side::repeated);
        return "How prints differ among themselves is "
                + (repeats ? "also taken from " : "taken from ")
                + c.known().words()
                + ", taking it to be alike on all.";
    }

    /** Means of prints, where there are several. */
    static String value(Side side, Figure figure) {
        return side.mean(figure).map(mean -> bare(figure, mean)).orElse("not judged");
    }
}
