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
        List<Path> full = files.stream().map(file -> file.toAbsolutePath().normalize()).toList();
        List<Path> different = full.stream().distinct().toList();
        List<String> names = shortest(different);
        return new ToldApart(
                files, full.stream().map(file -> names.get(different.indexOf(file))).toList());
    }

    private static List<String> shortest(List<Path> different) {
        int deepest = different.stream().mapToInt(Path::getNameCount).max().orElse(0);
        List<String> names = tails(different, 1);
        for (int length = 2; length <= deepest && hasTwins(names); length++) {
            List<String> longer = tails(different, length);
            for (int i = 0; i < names.size(); i++) {
                if (occurs(names.get(i), names) == 1) {
                    longer.set(i, names.get(i));
                }
            }
            names = longer;
        }
        return names;
    }

    /** What a message calls the file of this number, from 0. */
    public String name(int i) {
        return names.get(i);
    }

    /** A problem with the file of this number, which calls it by its bare name. */
    Problem told(Problem problem, int i) {
        String bare = ScanFiles.displayName(files.get(i));
        String where = problem.where();
        boolean itself = where.equals(bare) || where.startsWith(bare + ", ");
        return itself && !bare.equals(names.get(i))
                ? problem.at(names.get(i) + where.substring(bare.length()))
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
        for (Path full : files) {
            List<String> parts = new ArrayList<>();
            for (int k = Math.max(0, full.getNameCount() - length); k < full.getNameCount(); k++) {
                parts.add(ScanFiles.displayName(full.getName(k)));
            }
            tails.add(parts.isEmpty() ? full.toString() : String.join("/", parts));
        }
        return tails;
    }
}
