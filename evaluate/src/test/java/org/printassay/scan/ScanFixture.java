package org.printassay.scan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.io.TempDir;
import org.printassay.problem.Problem;

/** Images made for tests, the tools that write and read them, and our own reading. */
abstract class ScanFixture {
    static final int WIDTH = 83;
    static final int HEIGHT = 61;

    @TempDir Path dir;

    /** A busy image: gradients with noise, so that predictors, filters and LZW have work. */
    static char[] image(int channels, int bits) {
        Random random = new Random(5);
        char[] samples = new char[WIDTH * HEIGHT * channels];
        for (int i = 0; i < samples.length; i++) {
            int x = i / channels % WIDTH;
            int y = i / channels / WIDTH;
            int value = x * 600 + y * 150 + i % channels * 900 + random.nextInt(300);
            samples[i] = (char) (bits == 16 ? value : (value >> 8) * 257);
        }
        return samples;
    }

    /** Writes the image as a binary portable pixmap, the simplest input for other tools. */
    Path pixmap(char[] samples, int channels, int bits) throws IOException {
        byte[] head =
                ((channels == 3 ? "P6 " : "P5 ")
                                + WIDTH
                                + " "
                                + HEIGHT
                                + (bits == 16 ? " 65535\n" : " 255\n"))
                        .getBytes(StandardCharsets.US_ASCII);
        ByteBuffer out = ByteBuffer.allocate(head.length + samples.length * bits / 8);
        out.put(head);
        for (char sample : samples) {
            if (bits == 16) {
                out.putChar(sample);
            } else {
                out.put((byte) (sample >> 8));
            }
        }
        Path file =
                dir.resolve("made-" + channels + "-" + bits + (channels == 3 ? ".ppm" : ".pgm"));
        return Files.write(file, out.array());
    }

    static char[] read(Path file) throws Problem {
        return read(file, ScanFiles.open(file).info().channels());
    }

    /** All samples of an image that must have so many channels. */
    static char[] read(Path file, int channels) throws Problem {
        ScanImage scan = ScanFiles.open(file);
        assertEquals(channels, scan.info().channels());
        char[] all = new char[scan.info().width() * scan.info().height() * channels];
        int[] rows = new int[1];
        scan.stream(
                (y, row) -> {
                    assertEquals(rows[0]++, y);
                    System.arraycopy(row, 0, all, y * row.length, row.length);
                });
        assertEquals(scan.info().height(), rows[0]);
        return all;
    }

    void tool(String... command) throws Exception {
        boolean there =
                Arrays.stream(System.getenv("PATH").split(":", -1))
                        .anyMatch(p -> Files.isExecutable(Path.of(p, command[0])));
        if (!there && "required".equals(System.getProperty("witnesses"))) {
            throw new AssertionError(command[0] + " is missing but witnesses are required");
        }
        Assumptions.assumeTrue(there, command[0] + " is not installed");
        Process process =
                new ProcessBuilder(command)
                        .directory(dir.toFile())
                        .redirectErrorStream(true)
                        .redirectOutput(dir.resolve("tool.log").toFile())
                        .start();
        assertTrue(process.waitFor(60, TimeUnit.SECONDS), command[0]);
        assertEquals(0, process.exitValue(), () -> String.join(" ", command) + ": " + log());
    }

    private String log() {
        try {
            return Files.readString(dir.resolve("tool.log"), StandardCharsets.ISO_8859_1);
        } catch (IOException e) {
            return e.toString();
        }
    }

    static void assertSame(char[] expected, char[] actual) {
        assertEquals(-1, Arrays.mismatch(expected, actual), "first sample that differs");
    }

    /** Decoders round differently: allow a few codes against another decoder of the same data. */
    static void assertClose(Path pixmap, char[] actual, int codes) throws IOException {
        byte[] bytes = Files.readAllBytes(pixmap);
        int start = bytes.length - actual.length;
        for (int i = 0; i < actual.length; i++) {
            assertEquals(bytes[start + i] & 0xff, actual[i] / 257.0, codes, "sample " + i);
        }
    }
}
