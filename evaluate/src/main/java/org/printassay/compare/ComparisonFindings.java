package org.printassay.compare;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import org.printassay.compare.Figure.Topic;
import org.printassay.evaluation.Finding;

/**
 * A comparison in words: the differences that would be seen first, one a topic, then what did not
 * differ and what could not be told.
 */
final class ComparisonFindings {
    private static final int MOST = 7;

    /** Places that differences leave at least to what may differ, did not or cannot be told. */
    private static final int KEPT = 2;

    /** How many figures are named that may differ. */
    private static final int NAMED = 5;

    private final Subject subject;
    private final List<Side> sides;
    private final Pairs pairs;

    ComparisonFindings(Subject subject, List<Side> sides, Pairs pairs) {
        this.subject = subject;
        this.sides = sides;
        this.pairs = pairs;
    }

    /** A difference that would be seen, with how many times over. */
    private record Seen(Figure figure, Pair pair, double times) {}

    List<Finding> all() {
        List<Seen> seen = seen();
        List<Finding> others = new ArrayList<>();
        perhaps(others);
        same(others, seen.isEmpty() && others.isEmpty());
        unsure(others);
        int room = MOST - Math.max(KEPT, others.size());
        List<Finding> findings = new ArrayList<>();
        Set<Topic> said = EnumSet.noneOf(Topic.class);
        for (Seen one : seen) {
            if (findings.size() < room && said.add(one.figure().topic())) {
                findings.add(finding(one));
            }
        }
        findings.addAll(others);
        notTold(findings);
        return findings;
    }

    private List<Seen> seen() {
        List<Seen> all = new ArrayList<>();
        for (Figure figure : Figure.values()) {
            Optional<Pair> widest =
                    Phrase.of(figure).flatMap(phrase -> pairs.widest(figure, Judged::counts));
            Optional<Judged> judged = widest.flatMap(pair -> pair.of(figure));
            if (judged.isPresent()) {
                double size = Math.abs(judged.get().difference().value());
                all.add(new Seen(figure, widest.orElseThrow(), size / figure.visible()));
            }
        }
        all.sort(Comparator.comparingDouble(Seen::times).reversed());
        return all;
    }

    private Finding finding(Seen seen) {
        Figure figure = seen.figure();
        Phrase phrase = Phrase.of(figure).orElseThrow();
        boolean rising = seen.pair().of(figure).orElseThrow().difference().value() > 0;
        Pair pair = rising ? seen.pair() : seen.pair().turned();
        Difference d = pair.of(figure).orElseThrow().difference();
        // Of many sides the outermost two may not be known to differ when others are.
        boolean outermost =
                sides.size() > 2 && pairs.widest(figure).equals(Optional.of(seen.pair()));
        String text =
                phrase.noun()
                        + ": "
                        + (outermost ? phrase.lowest() : phrase.low())
                        + " on "
                        + name(pair.one())
                        + " ("
                        + FigureText.value(figure, d.one())
                        + "), "
                        + (outermost ? phrase.highest() : phrase.high())
                        + " on "
                        + name(pair.other())
                        + " ("
                        + FigureText.value(figure, d.other())
                        + ").";
        String sureness = FigureText.interval(d) + " apart (95 %)" + alike(figure) + ".";
        return new Finding(figure.topic().label(), text, sureness, phrase.advice());
    }

    /** Sides between which this figure does not differ. */
    private String alike(Figure figure) {
        List<String> same = new ArrayList<>();
        for (Pair pair : pairs.all()) {
            DifferenceVerdict verdict =
                    pair.of(figure).map(Judged::verdict).orElse(DifferenceVerdict.NOT_TOLD);
            if (verdict == DifferenceVerdict.NOT_MEASURABLE) {
                same.add(name(pair.one()) + " and " + name(pair.other()));
            }
        }
        return same.isEmpty()
                ? ""
                : same.size() > 2
                        ? "; " + same.size() + " of the pairs do not differ measurably in it"
                        : "; no measurable difference between " + String.join(", nor ", same);
    }

    /** Figures whose own interval leaves zero out between some sides, and that differ for none. */
    private void perhaps(List<Finding> findings) {
        List<String> figures = new ArrayList<>();
        for (Figure figure : Figure.values()) {
            List<DifferenceVerdict> verdicts = verdicts(judged -> judged.figure() == figure);
            if (verdicts.contains(DifferenceVerdict.UNSURE)
                    && !verdicts.contains(DifferenceVerdict.DIFFERS)) {
                figures.add(figure.shortLabel());
            }
        }
        if (figures.isEmpty()) {
            return;
        }
        int more = figures.size() - NAMED;
        findings.add(
                new Finding(
                        "Perhaps",
                        "Perhaps different, not sure: "
                                + String.join(
                                        ", ", figures.subList(0, Math.min(NAMED, figures.size())))
                                + (more > 0 ? " and " + more + " more" : "")
                                + ".",
                        "Their own 95 % intervals leave zero out, which among "
                                + pairs.counted()
                                + " differences looked at may happen by chance.",
                        ""));
    }

    /** Topics in which no figure differs, or may differ, between any two sides. */
    private void same(List<Finding> findings, boolean nothingElse) {
        Set<String> alike = new LinkedHashSet<>();
        for (Topic topic : Topic.values()) {
            List<DifferenceVerdict> told = new ArrayList<>(verdicts(topic));
            told.removeIf(v -> v == DifferenceVerdict.NOT_TOLD);
            if (!told.isEmpty()
                    && told.stream().allMatch(v -> v == DifferenceVerdict.NOT_MEASURABLE)) {
                alike.add(topic.label().toLowerCase(Locale.ROOT));
            }
        }
        if (alike.isEmpty()) {
            return;
        }
        boolean nothing = nothingElse && alike.size() == told();
        findings.add(
                new Finding(
                        "Alike",
                        nothing
                                ? "No measurable difference between these "
                                        + subject.many()
                                        + " in anything that was judged."
                                : "No measurable difference in: " + String.join(", ", alike) + ".",
                        "Smaller differences than the intervals may be there.",
                        ""));
    }

    private int told() {
        int told = 0;
        for (Topic topic : Topic.values()) {
            told += verdicts(topic).stream().anyMatch(v -> v != DifferenceVerdict.NOT_TOLD) ? 1 : 0;
        }
        return told;
    }

    private List<DifferenceVerdict> verdicts(Topic topic) {
        return verdicts(judged -> judged.figure().topic() == topic);
    }

    private List<DifferenceVerdict> verdicts(Predicate<Judged> of) {
        return pairs.all().stream()
                .flatMap(pair -> pair.figures().stream())
                .filter(of)
                .map(Judged::verdict)
                .toList();
    }

    /** Topics whose figures have no interval, mere counts left out. */
    private void unsure(List<Finding> findings) {
        List<String> topics = new ArrayList<>();
        for (Topic topic : Topic.values()) {
            List<DifferenceVerdict> verdicts = verdicts(topic);
            boolean none = verdicts.stream().allMatch(v -> v == DifferenceVerdict.NOT_TOLD);
            if (topic != Topic.LINES && none && !verdicts.isEmpty()) {
                topics.add(topic.label().toLowerCase(Locale.ROOT));
            }
        }
        if (!topics.isEmpty()) {
            findings.add(
                    new Finding(
                            "Limits",
                            "Nothing tells how sure differences are in: "
                                    + String.join(", ", topics)
                                    + ".",
                            "Colours were read once only.",
                            "Measure twice, or use a chart that repeats its patches."));
        }
    }

    /** Fits any comparison, so it is said where there is room. */
    private void notTold(List<Finding> findings) {
        if (subject == Subject.PRINTS && findings.size() < MOST) {
            findings.add(
                    new Finding(
                            "Limits",
                            "Whether "
                                    + differing()
                                    + " differ, or only these prints, cannot be told from one print"
                                    + " each.",
                            "",
                            "Print the chart twice or more on each, and name all the"
                                    + " evaluations."));
        }
    }

    private String differing() {
        Subject differing = Subject.differing(sides);
        return differing == Subject.PRINTS ? "papers or printers" : "the " + differing.many();
    }

    private String name(int side) {
        return sides.get(side).shortName(sides);
    }
}
