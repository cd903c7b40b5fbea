package org.printassay.evaluation;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.printassay.problem.Problem;
import org.printassay.scan.ScanFiles;

/**
 * Names of files for messages: as short as tells them apart. Files of one name in different folders
 * carry as many of their folders as it takes. Reports carry file names alone.
 */
public final class ToldApart {
    private final List<Path> files;
    private final List<String> names;

    private ToldApart(List<Path> files, List<String> names) {
        this.files = files;
        this.names = names;
    }

    /** Names of these files. */
    public static ToldApart of(List<Path> files) {
        int deepest =
                files.stream()
                        .mapToInt(file -> file.toAbsolutePath().normalize().getNameCount())
                        .max()
                        .orElse(0);
        List<String> names = tails(files, 1);
        for (int length = 2; length <= deepest && hasTwins(names); length++) {
            List<String> longer = tails(files, length);
            for (int i = 0; i < names.size(); i++) {
                if (occurs(names.get(i), names) == 1) {
                    longer.set(i, names.get(i));
                }
            }
            names = longer;
        }
        return new ToldApart(files, names);
    }

    /** What a message calls the file of this number, from 0. */
    public String name(int i) {
        return names.get(i);
    }

    /** A problem with the file of this number, which calls it by its bare name. */
    Problem told(Problem problem, int i) {
        String bare = ScanFiles.displayName(files.get(i));
        String message = problem.getMessage();
        return message.startsWith(bare) && !bare.equals(names.get(i))
                ? problem.reworded(names.get(i) + message.substring(bare.length()))
                : problem;
    }

    private static boolean hasTwins(List<String> names) {
        Set<String> seen = new HashSet<>(names);
        return seen.size() < names.size();
    }

    private static long occurs(String name, List<String> names) {
        return names.stream().filter(name::equals).count();
    }

    /** The last parts of each path. */
    private static List<String> tails(List<Path> files, int length) {
        List<String> tails = new ArrayList<>();
        for (Path file : files) {
            Path full = file.toAbsolutePath().normalize();
            List<String> parts = new ArrayList<>();
            for (int k = Math.max(0, full.getNameCount() - length); k < full.getNameCount(); k++) {
                parts.add(ScanFiles.displayName(full.getName(k)));
            }
            tails.add(parts.isEmpty() ? file.toString() : String.join("/", parts));
        }
        return tails;
    }
}
