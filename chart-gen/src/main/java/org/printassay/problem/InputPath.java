package org.printassay.problem;

import java.io.IOException;
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

    /**
     * The bytes of a file that is read as a whole.
     *
     * @param where file name, for messages
     * @param kind what it should be, for messages: "profile"
     * @param most bytes that such a file may have; told before any is read
     * @throws Problem input, when it is larger, special or cannot be read
     */
    public static byte[] bytes(Path file, String where, String kind, long most) throws Problem {
        refuseSpecial(file, where);
        try {
            long size = Files.size(file);
            if (size > most) {
                throw Problem.input(
                        where,
                        "is "
                                + (size >> 20)
                                + " MB, too large to be a "
                                + kind
                                + ". Name the right file.");
            }
            return Files.readAllBytes(file);
        } catch (IOException e) {
            throw Problem.input(
                    where,
                    "the " + kind + " cannot be read. Check that it is there and readable.",
                    e);
        }
    }
}
