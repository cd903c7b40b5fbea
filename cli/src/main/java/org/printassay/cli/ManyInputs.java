package org.printassay.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import org.jspecify.annotations.Nullable;
import org.printassay.chart.Chart;
import org.printassay.prints.Grouping;
import org.printassay.prints.ListFile;
import org.printassay.prints.NamedFile;
import org.printassay.prints.OnePrint;
import org.printassay.prints.ScanFolder;
import org.printassay.prints.Skipped;
import org.printassay.problem.Problem;
import org.printassay.scan.ScanFiles;

/**
 * What a command over many prints is to read.
 *
 * @param prints grouped into prints
 * @param skipped what was passed over
 */
record ManyInputs(List<OnePrint> prints, List<Skipped> skipped) {
    /** As a list says. */
    static ManyInputs listed(Path list) throws Problem {
        return new ManyInputs(ListFile.read(list), List.of());
    }

    /**
     * Files, and what is in folders.
     *
     * @param expected the chart that the user names
     * @param results where results will be written; not read
     */
    static ManyInputs named(List<Path> arguments, Optional<Chart> expected, Path results)
            throws Problem {
        return named(arguments, expected, results, file -> false, /* evaluations= */ false);
    }

    /**
     * As {@link #named}, with evaluations of folders that evaluate has written.
     *
     * @param baseline what prints are held against, which is none of them; null when none is named
     */
    static ManyInputs toCheck(
            List<Path> arguments, Optional<Chart> expected, Path results, @Nullable Path baseline)
            throws Problem {
        return named(
                arguments,
                expected,
                results,
                file -> isSame(file, baseline),
                /* evaluations= */ true);
    }

    private static ManyInputs named(
            List<Path> arguments,
            Optional<Chart> expected,
            Path results,
            Predicate<Path> isBaseline,
            boolean evaluations)
            throws Problem {
        List<Path> plain = new ArrayList<>();
        List<NamedFile> files = new ArrayList<>();
        List<Skipped> skipped = new ArrayList<>();
        List<Path> folders = arguments.stream().filter(Files::isDirectory).toList();
        for (Path argument : arguments) {
            if (!Files.isDirectory(argument)) {
                plain.add(argument);
                continue;
            }
            ScanFolder folder = ScanFolder.of(argument, results);
            String before =
                    folders.size() < 2
                            ? ""
                            : ScanFiles.displayName(argument.toAbsolutePath().normalize()) + "/";
            List<Path> read =
                    evaluations && folder.scans().isEmpty()
                            ? EvaluationFolders.in(argument)
                            : List.of();
            if (!read.isEmpty()) {
                for (Path one : read) {
                    if (isBaseline.test(one)) {
                        skipped.add(
                                new Skipped(before + argument.relativize(one), "the baseline."));
                    } else {
                        plain.add(one);
                    }
                }
                continue;
            }
            for (NamedFile file : folder.scans()) {
                if (isBaseline.test(file.file())) {
                    skipped.add(new Skipped(before + file.label(), "the baseline."));
                } else {
                    files.add(new NamedFile(file.file(), before + file.label()));
                }
            }
            for (Skipped one : folder.skipped()) {
                skipped.add(new Skipped(before + one.name(), one.why()));
            }
        }
        files.addAll(NamedFile.of(plain.stream().distinct().toList()));
        if (files.isEmpty()) {
            throw Problem.input(
                    ScanFiles.displayName(folders.get(0).toAbsolutePath().normalize()),
                    (evaluations ? "holds no scan and no evaluation" : "holds no scan")
                            + (skipped.isEmpty()
                                    ? ""
                                    : " ("
                                            + skipped.size()
                                            + " other files, such as "
                                            + skipped.get(0).name()
                                            + ")")
                            + ". Name a folder of TIFF, PNG, JPEG or PDF scans.");
        }
        try (ProgressLine progress = new ProgressLine("Sorting")) {
            Grouping grouping = Grouping.of(files, expected, progress);
            skipped.addAll(grouping.skipped());
            return new ManyInputs(grouping.prints(), skipped);
        }
    }

    private static boolean isSame(Path file, @Nullable Path baseline) {
        try {
            return baseline != null && Files.exists(baseline) && Files.isSameFile(file, baseline);
        } catch (IOException e) {
            return false; // told when it is read
        }
    }
}
