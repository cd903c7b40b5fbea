package org.printassay.cli;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.printassay.problem.Problem;

/**
 * Where a command's results go: the whole set is written to a folder beside it and then moved, so
 * that nothing half-written is ever seen, whatever happens. An interrupted run removes what it
 * began.
 */
final class OutputFolder {
    private final Path folder;
    private final List<Path> inputs;

    /**
     * A folder for results.
     *
     * @param inputs files that must not be written over
     */
    OutputFolder(Path folder, List<Path> inputs) {
        this.folder = folder.toAbsolutePath().normalize();
        this.inputs = List.copyOf(inputs);
    }

    /** The folder, absolute. */
    Path path() {
        return folder;
    }

    /** Writes files into the folder it is given. */
    @FunctionalInterface
    interface Writer {
        void write(Path folder) throws IOException, Problem;
    }

    /** Names the files that an earlier run wrote into a folder. */
    @FunctionalInterface
    interface Earlier {
        List<Path> in(Path folder) throws IOException;
    }

    /** As {@link #write(Earlier, Writer)}, for results that always are the same files. */
    void write(Writer writer) throws Problem {
        write(there -> List.of(), writer);
    }

    /**
     * Lets {@code writer} write the whole set, then moves it into place. What an earlier run left
     * and this one does not make is removed: it would pass for a part of these results.
     *
     * @throws Problem output, when it cannot be written or would replace an input; nothing is then
     *     removed, and the folder as it was unless moving failed half-way
     */
    void write(Earlier earlier, Writer writer) throws Problem {
        Path parent = folder.getParent();
        if (parent == null) {
            throw Problem.output(folder.toString(), "results need a folder of their own.");
        }
        refuseFile();
        Path part = null;
        try {
            Files.createDirectories(parent);
            part = Unfinished.begin(parent, "." + folder.getFileName() + "-part-");
            writer.write(part);
            List<Path> made = targets(part);
            List<Path> left = new ArrayList<>(earlier.in(folder));
            left.removeAll(made);
            refuseInputs(made, "written over");
            refuseInputs(left, "removed");
            Path whole = part;
            Unfinished.finish(
                    whole,
                    () -> {
                        moveIntoPlace(whole);
                        remove(left);
                    });
        } catch (IOException e) {
            throw unwritable(reason(e));
        } catch (UncheckedIOException e) {
            throw unwritable(String.valueOf(e.getMessage()));
        } finally {
            if (part != null) {
                Unfinished.end(part);
            }
        }
    }

    /**
     * Refuses a place where nothing can be written, before long work is done. Leaves nothing
     * behind.
     *
     * @throws Problem output
     */
    void refuseUnwritable() throws Problem {
        refuseFile();
        Path there = folder;
        while (!Files.exists(there) && there.getParent() != null) {
            there = there.getParent();
        }
        try {
            if (!Files.isDirectory(there)) {
                throw new FileAlreadyExistsException(there.toString());
            }
            // Writing is tried, for permissions do not tell all. Its name is as long as it will be.
            boolean direct = there.equals(folder.getParent()) || there.equals(folder);
            String name = "." + folder.getFileName() + "-part-";
            Unfinished.end(Unfinished.begin(there, direct ? name : ".printassay-part-"));
        } catch (IOException e) {
            throw unwritable(reason(e));
        }
    }

    private void refuseFile() throws Problem {
        if (Files.exists(folder) && !Files.isDirectory(folder)) {
            throw Problem.output(folder.toString(), "is a file. Name a folder with --out.");
        }
    }

    private Problem unwritable(String why) {
        return Problem.output(
                folder.toString(),
                "cannot be written (" + why + "). Name another folder with --out.");
    }

    private static String reason(IOException e) {
        if (e instanceof AccessDeniedException) {
            return "permission denied";
        }
        if (e instanceof FileAlreadyExistsException) {
            return "a file stands where a folder is needed";
        }
        String message = e.getMessage();
        return message == null ? e.getClass().getSimpleName() : message;
    }

    /** Where the files of a part will be. */
    private List<Path> targets(Path part) throws IOException {
        return files(part).stream()
                .map(made -> folder.resolve(part.relativize(made).toString()))
                .toList();
    }

    /** Refuses to write over or remove, or write through a link to, a file that was read. */
    private void refuseInputs(List<Path> targets, String become) throws IOException, Problem {
        for (Path target : targets) {
            for (Path input : inputs) {
                if (Files.exists(target) && Files.isSameFile(target, input)) {
                    throw Problem.output(
                            target.toString(),
                            "is one of the inputs and would be "
                                    + become
                                    + ". Name another folder with --out.");
                }
            }
        }
    }

    /** Removes files, and the folders in this one that are empty then. */
    private void remove(List<Path> left) throws IOException {
        for (Path file : left) {
            Files.deleteIfExists(file);
            Path inside = file.getParent();
            while (inside != null && !inside.equals(folder) && isEmpty(inside)) {
                Files.delete(inside);
                inside = inside.getParent();
            }
        }
    }

    private static boolean isEmpty(Path folder) throws IOException {
        try (Stream<Path> inside = Files.list(folder)) {
            return inside.findAny().isEmpty();
        }
    }

    private void moveIntoPlace(Path part) throws IOException {
        if (!Files.exists(folder)) {
            openToOthers(part);
            Files.move(part, folder, StandardCopyOption.ATOMIC_MOVE);
            return;
        }
        for (Path made : files(part)) {
            Path target = folder.resolve(part.relativize(made).toString());
            Files.createDirectories(target.getParent());
            try {
                Files.move(
                        made,
                        target,
                        StandardCopyOption.ATOMIC_MOVE,
                        StandardCopyOption.REPLACE_EXISTING);
            } catch (AtomicMoveNotSupportedException e) {
                Files.move(made, target, StandardCopyOption.REPLACE_EXISTING);
            }
        }
    }

    /** A temporary folder is for its owner alone; the finished one is like any new folder. */
    private static void openToOthers(Path part) throws IOException {
        Path like = Files.createDirectory(part.resolve(".like"));
        try {
            Files.setPosixFilePermissions(part, Files.getPosixFilePermissions(like));
        } catch (UnsupportedOperationException e) {
            // No such permissions on this file system.
        } finally {
            Files.delete(like);
        }
    }

    private static List<Path> files(Path root) throws IOException {
        try (Stream<Path> walk = Files.walk(root)) {
            return new ArrayList<>(walk.filter(Files::isRegularFile).sorted().toList());
        }
    }
}
