package org.printassay.problem;

import java.nio.file.Files;
import java.nio.file.Path;

/** What may be opened for reading. */
public final class InputPath {
    private InputPath() {}

    /**
     * Refuses pipes, devices and sockets before they are opened: they may never end, or never
     * begin. Files, folders and what is not there pass, to be told by whoever reads them.
     *
     * @param where file name, for the message
     * @throws Problem input, when it is neither a file nor a folder
     */
    public static void refuseSpecial(Path path, String where) throws Problem {
        if (Files.exists(path) && !Files.isRegularFile(path) && !Files.isDirectory(path)) {
            throw Problem.input(
                    where,
                    "is neither a file nor a folder (a pipe or a device). Save what comes from it"
                            + " as a file, and name that.");
        }
    }
}
