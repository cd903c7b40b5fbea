package org.printassay.compare;

import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.printassay.evaluation.Evaluation;
import org.printassay.evaluation.Finding;
import org.printassay.evaluation.PrintDetails;
import org.printassay.problem.Problem;

/**
 * Prints side by side: what may be compared, every difference with its interval, who comes first in
 * which question, and what of it matters most in words.
 *
 * @param subject what may be spoken of: papers, say, or only these prints
 * @param sides prints that are repeats of each other, together
 * @param against the side, from 0, that others are shown against
 * @param comparability what readers must know first
 * @param known spread between prints that was known beforehand, and where from
 * @param pairs every difference
 * @param rankings one for each {@link Question}
 * @param findings at most seven, most consequential first
 */
public record Comparison(
        Subject subject,
        List<Side> sides,
        int against,
        Comparability comparability,
        KnownSpread known,
        Pairs pairs,
        List<Ranking> rankings,
        List<Finding> findings) {
    /** More sides than this are not readable on one page. */
    public static final int MOST_SIDES = 8;

    public Comparison {
        sides = List.copyOf(sides);
        rankings = List.copyOf(rankings);
        findings = List.copyOf(findings);
    }

    /**
     * Compares.
     *
     * @param prints two or more, of at least two papers, printers or routes
     * @param known spread between prints from elsewhere; {@link KnownSpread#NONE} where none
     * @param against name or number, from 1, of the side to show others against; empty for the
     *     first
     * @throws Problem input, when a comparison would mislead; usage, when there is nothing to
     *     compare
     */
    public static Comparison of(List<NamedPrint> prints, KnownSpread known, String against)
            throws Problem {
        if (prints.size() < 2) {
            throw Problem.usage("One print cannot be compared. Name two evaluations or more.");
        }
        List<Evaluation> evaluations = prints.stream().map(NamedPrint::evaluation).toList();
        Comparability comparability = Comparability.of(evaluations);
        if (comparability.refusal().isPresent()) {
            throw Problem.input(
                    "these prints cannot be compared", comparability.refusal().get().text());
        }
        List<Side> sides = Sides.of(prints);
        if (sides.size() < 2) {
            throw Problem.usage(
                    "All these prints have the same paper, printer and route ("
                            + sides.get(0).name()
                            + "), so there are no two sides to compare. Evaluate them with what"
                            + " differs: --paper, --printer or --route.");
        }
        if (sides.size() > MOST_SIDES) {
            throw Problem.usage(
                    "At most "
                            + MOST_SIDES
                            + " sides can be compared at once; these are "
                            + sides.size()
                            + ". Leave some out.");
        }
        Comparability all = Subject.mixture(sides).map(comparability::with).orElse(comparability);
        return of(sides, all, known, place(sides, against));
    }

    private static Comparison of(
            List<Side> sides, Comparability comparability, KnownSpread known, int against) {
        Pairs pairs = Pairs.of(sides, known.spread(), comparability.readAlike());
        boolean spreadKnown = sides.stream().anyMatch(Side::repeated) || known.known();
        Subject subject = Subject.of(sides, spreadKnown);
        List<Ranking> rankings =
                Arrays.stream(Question.values()).map(q -> Ranking.of(q, pairs)).toList();
        return new Comparison(
                subject,
                sides,
                against,
                comparability,
                known,
                pairs,
                rankings,
                new ComparisonFindings(subject, sides, pairs).all());
    }

    private static int place(List<Side> sides, String against) throws Problem {
        if (against.isBlank()) {
            return 0;
        }
        String wanted = against.strip();
        for (int i = 0; i < sides.size(); i++) {
            boolean number = wanted.equals(String.valueOf(i + 1));
            if (number || PrintDetails.same(sides.get(i).name(), wanted)) {
                return i;
            }
        }
        List<Integer> begun =
                IntStream.range(0, sides.size())
                        .filter(i -> PrintDetails.same(sides.get(i).shortName(sides), wanted))
                        .boxed()
                        .toList();
        if (begun.size() == 1) {
            return begun.get(0);
        }
        throw Problem.usage(
                "--against: there is no side \""
                        + wanted
                        + "\". Give a number from 1 to "
                        + sides.size()
                        + ", or one of: "
                        + String.join("; ", sides.stream().map(Side::name).toList())
                        + ".");
    }

    /** The ranking of a question. */
    public Ranking ranking(Question question) {
        return rankings.stream()
                .filter(ranking -> ranking.question() == question)
                .findFirst()
                .orElseThrow();
    }

    /** Name of a side, short where that is clear. */
    public String shortName(int side) {
        return sides.get(side).shortName(sides);
    }

    /** "these two prints", "these three papers". */
    public String these() {
        return "these " + number(sides.size()) + " " + subject.many();
    }

    private static String number(int n) {
        List<String> words =
                List.of("no", "one", "two", "three", "four", "five", "six", "seven", "eight");
        return n < words.size() ? words.get(n) : String.valueOf(n);
    }
}
