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

    /**
     * Lets {@code writer} write the whole set, then moves it into place.
     *
     * @throws Problem output, when it cannot be written or would replace an input; the folder is
     *     then as it was
     */
    void write(Writer writer) throws Problem {
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
            refuseInputs(part);
            Path whole = part;
            Unfinished.finish(whole, () -> moveIntoPlace(whole));
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

    /** Refuses to write over, or through a link to, a file that was read. */
    private void refuseInputs(Path part) throws IOException, Problem {
        for (Path made : files(part)) {
            Path target = folder.resolve(part.relativize(made).toString());
            for (Path input : inputs) {
                if (Files.exists(target) && Files.isSameFile(target, input)) {
                    throw Problem.output(
                            target.toString(),
                            "is one of the inputs and would be written over. Name another folder"
                                    + " with --out.");
                }
            }
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
