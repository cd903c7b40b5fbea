package org.printassay.cli;

import java.io.IOException;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.HashSet;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * Folders that are being written, of any number of threads. An interrupted program removes them
 * before it ends; what is begun after that waits for the end.
 */
final class Unfinished {
    /** Others may be writing into a folder while it is removed. */
    private static final int TRIES = 50;

    private static final Set<Path> FOLDERS = new HashSet<>();
    private static boolean watching;

    private Unfinished() {}

    /**
     * Makes a new folder that an interrupted program takes away again.
     *
     * @param parent is there
     * @param prefix of its name
     */
    static Path begin(Path parent, String prefix) throws IOException {
        synchronized (FOLDERS) {
            if (!watching) {
                Runtime.getRuntime()
                        .addShutdownHook(new Thread(Unfinished::sweep, "remove unfinished output"));
                watching = true;
            }
            Path made = Files.createTempDirectory(parent, prefix);
            FOLDERS.add(made);
            return made;
        }
    }

    /** Removes what is left of a folder. */
    static void end(Path folder) {
        remove(folder);
        synchronized (FOLDERS) {
            FOLDERS.remove(folder);
        }
    }

    /** Holds the lock until the program is gone, so that nothing new begins. */
    private static void sweep() {
        synchronized (FOLDERS) {
            for (Path folder : FOLDERS) {
                for (int i = 0; i < TRIES && Files.exists(folder); i++) {
                    remove(folder);
                }
            }
        }
    }

    private static void remove(Path root) {
        if (!Files.exists(root)) {
            return;
        }
        try {
            Files.walkFileTree(
                    root,
                    new SimpleFileVisitor<>() {
                        @Override
                        public FileVisitResult visitFile(Path file, BasicFileAttributes attributes)
                                throws IOException {
                            Files.deleteIfExists(file);
                            return FileVisitResult.CONTINUE;
                        }

                        @Override
                        public FileVisitResult visitFileFailed(Path file, IOException e) {
                            return FileVisitResult.CONTINUE; // moved away meanwhile
                        }

                        @Override
                        public FileVisitResult postVisitDirectory(
                                Path folder, @Nullable IOException e) throws IOException {
                            Files.deleteIfExists(folder);
                            return FileVisitResult.CONTINUE;
                        }
                    });
        } catch (IOException e) {
            // Tried again on the way out; the folder's name says that it is a part.
        }
    }
}
