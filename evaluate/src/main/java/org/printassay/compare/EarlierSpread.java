package org.printassay.compare;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.printassay.problem.Problem;

/**
 * How prints differed among themselves in an earlier comparison.
 *
 * @param where its file, for messages
 * @param spread what its repeats told
 * @param repeats SHA-256 of the files of prints that told it
 * @param manner how its prints were read and judged
 */
public record EarlierSpread(String where, PrintSpread spread, Set<String> repeats, Manner manner) {
    public EarlierSpread {
        repeats = Set.copyOf(repeats);
    }

    /**
     * The spread, for use with these prints.
     *
     * @throws Problem input, when it was told by figures that mean something else; usage, when
     *     repeats among these prints are counted in it already
     */
    public PrintSpread usableWith(List<NamedPrint> prints) throws Problem {
        Optional<String> other =
                manner.against(Manner.of(prints.stream().map(NamedPrint::evaluation).toList()));
        if (other.isPresent()) {
            throw Problem.input(
                    where,
                    "its prints were read or judged in another way ("
                            + other.get()
                            + "), so they do not tell how far these differ among themselves. Name"
                            + " a comparison of prints that were evaluated alike.");
        }
        for (Side side : Sides.of(prints)) {
            boolean again =
                    side.repeated()
                            && side.prints().stream()
                                    .flatMap(print -> print.files().stream())
                                    .anyMatch(file -> repeats.contains(file.sha256()));
            if (again) {
                throw Problem.usage(
                        "--spread: "
                                + where
                                + " holds the repeats of "
                                + side.name()
                                + " already, and they would count twice. Name a comparison of other"
                                + " prints, or leave --spread out.");
            }
        }
        return spread;
    }
}
