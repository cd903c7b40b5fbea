package org.printassay.prints;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.printassay.calibrate.codes.ScanColour;
import org.printassay.chart.Chart;
import org.printassay.evaluation.PrintDetails;
import org.printassay.evaluation.Progress;
import org.printassay.locate.PrintMark;
import org.printassay.problem.Problem;
import org.printassay.scan.ScanFiles;
import org.printassay.scan.ScanImage;

/**
 * Which files belong to one print. Scans in one folder do whose names agree up to a mark at their
 * end ({@link NameRule}) and whose sheet codes name the same chart and print number; one whose code
 * cannot be read goes with the others where these are of one print. Every other file is a print of
 * its own.
 *
 * @param prints in the order of their first files
 * @param skipped files that are copies of others
 */
public record Grouping(List<OnePrint> prints, List<Skipped> skipped) {
    public Grouping {
        prints = List.copyOf(prints);
        skipped = List.copyOf(skipped);
    }

    /**
     * Groups files.
     *
     * @param expected the chart that the user names
     * @param progress told how far it has come
     */
    public static Grouping of(List<NamedFile> files, Optional<Chart> expected, Progress progress) {
        return new Groups(expected).of(files, progress);
    }

    /** A file that may belong with others. */
    private record Candidate(NamedFile named, NameRule rule) {}

    private static final class Groups {
        private static final String RESULT = "evaluation.json";

        private final Optional<Chart> expected;
        private final PrintNames names = new PrintNames();
        private final List<Skipped> skipped = new ArrayList<>();
        private final Map<Candidate, PrintMark> marks = new HashMap<>();
        private final Set<Candidate> codeless = new HashSet<>();

        Groups(Optional<Chart> expected) {
            this.expected = expected;
        }

        Grouping of(List<NamedFile> files, Progress progress) {
            Map<String, List<Candidate>> alike = new LinkedHashMap<>();
            for (NamedFile named : files) {
                NameRule rule = NameRule.of(named.file());
                String folder = String.valueOf(named.file().toAbsolutePath().getParent());
                alike.computeIfAbsent(folder + '\n' + rule.rest(), k -> new ArrayList<>())
                        .add(new Candidate(named, rule));
            }
            readMarks(alike.values().stream().filter(list -> list.size() > 1).toList(), progress);
            List<OnePrint> prints = new ArrayList<>();
            for (List<Candidate> group : alike.values()) {
                prints.addAll(group.size() == 1 ? List.of(alone(group.get(0))) : prints(group));
            }
            return new Grouping(prints, skipped);
        }

        /** Sheet codes of all that could belong together, many at once. */
        private void readMarks(List<List<Candidate>> groups, Progress progress) {
            List<Candidate> all = new ArrayList<>();
            groups.forEach(all::addAll);
            List<OnePrint> scans = new ArrayList<>();
            for (Candidate one : all) {
                List<Path> file = List.of(one.named().file());
                scans.add(new OnePrint(one.named().label(), file, PrintDetails.UNKNOWN));
            }
            List<PrintOutcome<Optional<PrintMark>>> read =
                    ManyPrints.run(scans, (scan, own) -> mark(scan.files().get(0)), progress);
            for (int i = 0; i < all.size(); i++) {
                Optional<PrintMark> mark = read.get(i).result();
                if (mark != null && mark.isPresent()) {
                    marks.put(all.get(i), mark.get());
                } else if (mark != null && isScan(all.get(i))) {
                    codeless.add(all.get(i));
                }
            }
        }

        private Optional<PrintMark> mark(Path file) throws Problem {
            if (!ScanFiles.looksLikeImage(file)) {
                return Optional.empty();
            }
            ScanImage scan = ScanFiles.open(file);
            return PrintMark.of(scan, ScanColour.plain(scan.info()).codeLight(), expected);
        }

        private OnePrint alone(Candidate one) {
            return new OnePrint(
                    names.give(isResult(one) ? folder(one) : withoutEnding(one)),
                    List.of(one.named().file()),
                    PrintDetails.UNKNOWN);
        }

        /** The prints of files whose names are alike. */
        private List<OnePrint> prints(List<Candidate> group) {
            Map<PrintMark, List<Candidate>> together = new LinkedHashMap<>();
            List<Candidate> unread = new ArrayList<>();
            List<Candidate> single = new ArrayList<>();
            for (Candidate one : withoutCopies(group)) {
                PrintMark mark = marks.get(one);
                if (mark == null) {
                    unread.add(one);
                    continue;
                }
                List<Candidate> same = together.computeIfAbsent(mark, k -> new ArrayList<>());
                boolean named =
                        same.stream().anyMatch(c -> c.rule().mark().equals(one.rule().mark()));
                (named ? single : same).add(one);
            }
            if (together.size() == 1) {
                List<Candidate> only = together.values().iterator().next();
                for (Candidate one : unread) {
                    (codeless.contains(one) ? only : single).add(one);
                }
            } else {
                single.addAll(unread);
            }
            List<OnePrint> prints = new ArrayList<>();
            together.values().forEach(same -> prints.add(joined(same, together.size() == 1)));
            single.forEach(one -> prints.add(alone(one)));
            return prints;
        }

        private OnePrint joined(List<Candidate> same, boolean only) {
            if (same.size() == 1) {
                return alone(same.get(0));
            }
            Candidate first = same.get(0);
            String label = withoutEnding(first);
            int end = label.length() - first.rule().stem().length() + first.rule().rest().length();
            String name = only && end <= label.length() ? label.substring(0, end) : label;
            String given = names.give(name);
            return new OnePrint(
                    given,
                    same.stream().map(one -> one.named().file()).toList(),
                    PrintDetails.UNKNOWN,
                    same.stream().map(this::alone).toList());
        }

        private static boolean isScan(Candidate one) {
            try {
                return ScanFiles.looksLikeImage(one.named().file());
            } catch (Problem e) {
                return false;
            }
        }

        /** Whether it is an evaluation under its usual name, which says nothing. */
        private static boolean isResult(Candidate one) {
            return ScanFiles.displayName(one.named().file()).equals(RESULT);
        }

        /** The folders that tell it from the others, or the one that it is in. */
        private static String folder(Candidate one) {
            String label = one.named().label();
            Path parent = one.named().file().toAbsolutePath().normalize().getParent();
            return label.endsWith("/" + RESULT)
                    ? label.substring(0, label.length() - RESULT.length() - 1)
                    : parent == null ? label : ScanFiles.displayName(parent);
        }

        /** The label without the file's ending. */
        private static String withoutEnding(Candidate one) {
            String label = one.named().label();
            String name = ScanFiles.displayName(one.named().file());
            return label.substring(0, label.length() - name.length()) + one.rule().stem();
        }

        private List<Candidate> withoutCopies(List<Candidate> group) {
            List<Candidate> kept = new ArrayList<>();
            for (Candidate one : group) {
                Candidate same =
                        kept.stream()
                                .filter(before -> isCopy(before, one))
                                .findFirst()
                                .orElse(null);
                if (same == null) {
                    kept.add(one);
                } else {
                    skipped.add(
                            new Skipped(
                                    one.named().label(),
                                    "a copy of " + same.named().label() + "."));
                }
            }
            return kept;
        }

        private static boolean isCopy(Candidate a, Candidate b) {
            try {
                Path one = a.named().file();
                Path two = b.named().file();
                return Files.size(one) == Files.size(two) && Files.mismatch(one, two) < 0;
            } catch (IOException e) {
                return false; // told when it is read
            }
        }
    }
}
