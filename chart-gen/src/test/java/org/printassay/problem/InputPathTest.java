package org.printassay.problem;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.printassay.json.CheckedJson;
import org.printassay.measurement.MeasurementReader;

class InputPathTest {
    @TempDir Path dir;

    /** A pipe that nobody writes to hangs whoever opens it. */
    @Test
    void aPipeIsRefused() throws Exception {
        Path pipe = dir.resolve("pipe");
        try {
            Process made = new ProcessBuilder("mkfifo", pipe.toString()).start();
            assumeTrue(made.waitFor() == 0, "pipes cannot be made here");
        } catch (IOException e) {
            assumeTrue(false, "pipes cannot be made here");
        }
        Problem problem = assertThrows(Problem.class, () -> InputPath.refuseSpecial(pipe, "pipe"));
        assertEquals(Problem.Kind.INPUT, problem.kind());
        assertEquals(
                "pipe: is neither a file nor a folder (a pipe or a device). Save what comes from it"
                        + " as a file, and name that.",
                problem.getMessage());
    }

    @Test
    void filesFoldersAndWhatIsNotTherePass() throws Exception {
        InputPath.refuseSpecial(Files.writeString(dir.resolve("file"), "x"), "file");
        InputPath.refuseSpecial(dir, "folder");
        InputPath.refuseSpecial(dir.resolve("nowhere"), "nowhere");
        Path link = Files.createSymbolicLink(dir.resolve("link"), dir.resolve("file"));
        InputPath.refuseSpecial(link, "link");
    }

    /** A device that ends, so that a failure does not hang. */
    @Test
    void readersOfTextAskBeforeTheyOpen() {
        Path device = Path.of("/dev/null");
        assumeTrue(Files.exists(device), "there are no devices here");
        String words = "null: is neither a file nor a folder";
        Problem json = assertThrows(Problem.class, () -> CheckedJson.read(device, "recipe", 1));
        assertEquals(words, json.getMessage().substring(0, words.length()));
        Problem table = assertThrows(Problem.class, () -> MeasurementReader.read(device));
        assertEquals(words, table.getMessage().substring(0, words.length()));
    }
}
