package org.printassay.prints;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import org.printassay.problem.Problem;
import org.printassay.scan.ScanFiles;

/**
 * The scans in a folder and the folders in it. Hidden files and folders are passed over, links to
 * folders are not followed, and what an earlier run wrote is not read.
 *
 * @param folder what was looked into
 * @param scans by name
 * @param skipped everything else that is not hidden
 */
public record ScanFolder(Path folder, List<NamedFile> scans, List<Skipped> skipped) {
    /** More entries than this are no folder of scans. */
    private static final int MOST_ENTRIES = 100_000;

    private static final Pattern PICTURE = Pattern.compile("(?i).+\\.(tiff?|png|jpe?g)");
    private static final Pattern RESULT =
            Pattern.compile("evaluation\\.json|report\\.(html|pdf)|readings\\.(csv|txt|cxf)");
    private static final Pattern CHECK = Pattern.compile("check\\.(json|html|pdf)");
    private static final Pattern CHART =
            Pattern.compile(
                    "chart\\.(json|pdf|txt)|chart-\\d+\\.tif|preview-\\d+\\.png|reading-order\\.txt"
                            + "|how-to-print-and-scan\\.html");

    public ScanFolder {
        scans = List.copyOf(scans);
        skipped = List.copyOf(skipped);
    }

    /**
     * Looks into a folder.
     *
     * @param leaveOut where results will be written; not looked into
     * @throws Problem input, when the folder cannot be read
     */
    public static ScanFolder of(Path folder, Path leaveOut) throws Problem {
        Walk walk = new Walk(folder, leaveOut);
        try {
            // A link that the user names is meant.
            Files.walkFileTree(folder.toRealPath(), walk);
        } catch (IOException e) {
            throw Problem.input(
                    ScanFiles.displayName(folder), "cannot be read. Check its permissions.", e);
        }
        if (walk.entries > MOST_ENTRIES) {
            throw Problem.input(
                    ScanFiles.displayName(folder),
                    "holds more than "
                            + MOST_ENTRIES
                            + " files. Name the folder that the scans are in.");
        }
        walk.scans.sort(Comparator.comparing(NamedFile::label));
        walk.skipped.sort(Comparator.comparing(Skipped::name));
        return new ScanFolder(folder, walk.scans, walk.skipped);
    }

    private static final class Walk extends SimpleFileVisitor<Path> {
        private final Path root;
        private final @Nullable Path leaveOut;
        private final List<NamedFile> scans = new ArrayList<>();
        private final List<Skipped> skipped = new ArrayList<>();
        private final Set<Path> real = new HashSet<>();
        private int entries;

        Walk(Path folder, Path leaveOut) {
            this.root = realPath(folder);
            this.leaveOut = Files.exists(leaveOut) ? realPath(leaveOut) : null;
        }

        private static Path realPath(Path path) {
            try {
                return path.toRealPath();
            } catch (IOException e) {
                return path.toAbsolutePath().normalize();
            }
        }

        @Override
        public FileVisitResult preVisitDirectory(Path folder, BasicFileAttributes attributes) {
            if (folder.equals(root)) {
                return FileVisitResult.CONTINUE;
            }
            if (isHidden(folder)) {
                return FileVisitResult.SKIP_SUBTREE;
            }
            if (folder.equals(leaveOut)
                    || isOurs(folder.resolve(Summary.JSON), "summary")
                    || isOurs(folder.resolve(CheckSummary.JSON), "checks")) {
                skip(folder, "results of an earlier run.");
                return FileVisitResult.SKIP_SUBTREE;
            }
            return counted();
        }

        @Override
        public FileVisitResult visitFile(Path file, BasicFileAttributes attributes) {
            if (isHidden(file)) {
                return counted();
            }
            if (attributes.isSymbolicLink() && Files.isDirectory(file)) {
                skip(file, "a link to a folder; name that folder to read it.");
            } else if (attributes.isSymbolicLink() && !Files.exists(file)) {
                skip(file, "a link that leads nowhere.");
            } else if (!Files.isRegularFile(file)) {
                skip(file, "neither a file nor a folder.");
            } else {
                sort(file);
            }
            return counted();
        }

        private void sort(Path file) {
            String why = whyNot(file);
            if (why != null) {
                skip(file, why);
            } else if (real.add(realPath(file))) {
                scans.add(new NamedFile(file, label(file)));
            } else {
                skip(file, "a link to a scan that is read already.");
            }
        }

        /** Null for a scan, and for what should be one by its name: that is told as broken. */
        private @Nullable String whyNot(Path file) {
            String name = String.valueOf(file.getFileName());
            if (RESULT.matcher(name).matches()
                    && isOurs(file.resolveSibling("evaluation.json"), "evaluation")) {
                return "a result of an earlier evaluation.";
            }
            if (CHECK.matcher(name).matches()
                    && isOurs(file.resolveSibling("check.json"), "check")) {
                return "a result of an earlier check.";
            }
            if (CHART.matcher(name).matches()
                    && isOurs(file.resolveSibling("chart.json"), "chart")) {
                return "a file of the chart, not a scan of its print.";
            }
            if (PICTURE.matcher(name).matches()) {
                return null;
            }
            try {
                ScanFiles.refuseUnread(file);
                if (!ScanFiles.looksLikeImage(file)) {
                    return "not a scan. Measurement files can be named in a list, with --list.";
                }
                if (name.toLowerCase(Locale.ROOT).endsWith(".pdf")) {
                    ScanFiles.open(file);
                }
                return null;
            } catch (Problem e) {
                return e.what();
            }
        }

        @Override
        public FileVisitResult visitFileFailed(Path file, IOException e) throws IOException {
            if (file.equals(root)) {
                throw e;
            }
            skip(file, "cannot be read. Check its permissions.");
            return counted();
        }

        private FileVisitResult counted() {
            return ++entries > MOST_ENTRIES ? FileVisitResult.TERMINATE : FileVisitResult.CONTINUE;
        }

        private void skip(Path file, String why) {
            skipped.add(new Skipped(label(file), why));
        }

        private String label(Path file) {
            StringBuilder name = new StringBuilder();
            for (Path part : root.relativize(file)) {
                name.append(name.length() == 0 ? "" : "/").append(ScanFiles.displayName(part));
            }
            return name.toString();
        }

        private static boolean isHidden(Path file) {
            try {
                return ScanFiles.displayName(file).startsWith(".") || Files.isHidden(file);
            } catch (IOException e) {
                return false;
            }
        }

        /** Whether a file says at its beginning that it is one of ours. */
        private static boolean isOurs(Path file, String kind) {
            if (!Files.isRegularFile(file)) {
                return false;
            }
            try (InputStream in = Files.newInputStream(file)) {
                String head = new String(in.readNBytes(256), StandardCharsets.UTF_8);
                return head.contains("\"printassay/" + kind + "/");
            } catch (IOException e) {
                return false;
            }
        }
    }
}
