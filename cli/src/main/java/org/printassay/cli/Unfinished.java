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
 * Folders that are being written, of any number of threads. An interrupted program removes them and
 * waits a moment for those who write into them to find out; what would begin after that waits for
 * the end.
 */
final class Unfinished {
    /**
     * Whoever writes on into a folder that was removed fails, or makes it anew: so long at most.
     */
    private static final long PATIENCE_NANOS = 2_000_000_000L;

    private static final int PAUSE_MILLIS = 10;

    private static final Set<Path> FOLDERS = new HashSet<>();
    private static boolean watching;
    private static boolean closing;

    private Unfinished() {}

    /**
     * Makes a new folder that an interrupted program takes away again.
     *
     * @param parent is there
     * @param prefix of its name
     */
    static Path begin(Path parent, String prefix) throws IOException {
        synchronized (FOLDERS) {
            stopWhereClosing();
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

    /** Moves a folder that is whole to where it belongs. */
    @FunctionalInterface
    interface Move {
        void run() throws IOException;
    }

    /** Moves what is whole, or not at all: it is never taken away in the midst of it. */
    static void finish(Path folder, Move move) throws IOException {
        synchronized (FOLDERS) {
            if (closing) {
                end(folder);
            }
            stopWhereClosing();
            move.run();
        }
    }

    /** Removes what is left of a folder. */
    static void end(Path folder) {
        remove(folder);
        synchronized (FOLDERS) {
            FOLDERS.remove(folder);
            FOLDERS.notifyAll();
        }
    }

    private static void stopWhereClosing() {
        while (closing) {
            pause();
        }
    }

    private static void sweep() {
        long begin = System.nanoTime();
        synchronized (FOLDERS) {
            closing = true;
            while (!FOLDERS.isEmpty() && System.nanoTime() - begin < PATIENCE_NANOS) {
                FOLDERS.forEach(Unfinished::remove);
                pause();
            }
            FOLDERS.forEach(Unfinished::remove);
        }
    }

    /** Lets others end what they write. */
    private static void pause() {
        try {
            FOLDERS.wait(PAUSE_MILLIS);
        } catch (InterruptedException e) {
            // Nothing is left to do but to wait.
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
