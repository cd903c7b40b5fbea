package org.printassay.evaluation;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.FutureTask;
import org.printassay.problem.Problem;

/** Checksums of scans, taken on a thread of their own while the scans are read. */
final class Checksums implements AutoCloseable {
    private final FutureTask<List<SourceFile>> task;

    private Checksums(FutureTask<List<SourceFile>> task) {
        this.task = task;
    }

    /** Starts; {@link #close} gives up what is not finished. */
    static Checksums of(List<Path> scans) {
        FutureTask<List<SourceFile>> task = new FutureTask<>(() -> different(scans, "scan"));
        Thread thread = new Thread(task, "checksums");
        thread.setDaemon(true);
        thread.start();
        return new Checksums(task);
    }

    /**
     * Waits for all of them, in the order of the files.
     *
     * @throws Problem when a file cannot be read or two are the same
     */
    List<SourceFile> await() throws Problem {
        try {
            return task.get();
        } catch (ExecutionException e) {
            if (e.getCause() instanceof Problem problem) {
                throw problem;
            }
            throw new IllegalStateException(e.getCause());
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException("interrupted while files were read", e);
        }
    }

    @Override
    public void close() {
        task.cancel(true);
    }

    /**
     * Describes files, none of which is another under a second name.
     *
     * @param what the files are, for the message
     */
    static List<SourceFile> different(List<Path> paths, String what) throws Problem {
        Map<String, String> seen = new HashMap<>();
        List<SourceFile> files = new ArrayList<>();
        ToldApart names = ToldApart.of(paths);
        for (int i = 0; i < paths.size(); i++) {
            SourceFile described = InputFiles.describe(paths.get(i));
            String before = seen.put(described.sha256(), names.name(i));
            if (before != null) {
                throw Problem.usage(
                        names.name(i)
                                + " and "
                                + before
                                + " are the same "
                                + what
                                + ". Name each "
                                + what
                                + " once.");
            }
            files.add(described);
        }
        return files;
    }
}
