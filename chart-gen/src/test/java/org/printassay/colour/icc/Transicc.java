package org.printassay.colour.icc;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** The independent colour engine LittleCMS, through its command line tool transicc. */
final class Transicc {
    private Transicc() {}

    /** Skips the test when the tool is missing, or fails it where witnesses are required. */
    static void require() {
        boolean found = false;
        for (String folder : System.getenv().getOrDefault("PATH", "").split(":", -1)) {
            found |= Files.isExecutable(Path.of(folder, "transicc"));
        }
        if (!found && "required".equals(System.getProperty("witnesses"))) {
            throw new AssertionError("transicc (LittleCMS) is required and missing");
        }
        assumeTrue(found, "witness missing: transicc (LittleCMS)");
    }

    /** The option for an intent. */
    static String intent(Intent intent) {
        return switch (intent) {
            case PERCEPTUAL -> "-t0";
            case RELATIVE -> "-t1";
            case SATURATION -> "-t2";
            case ABSOLUTE -> "-t3";
        };
    }

    /** Our fractions in the tool's units. */
    static double[] units(IccProfile.Space space, double[] fractions) {
        double[] units = fractions.clone();
        for (int c = 0; c < units.length; c++) {
            units[c] = scale(space, c) * units[c] - shift(space, c);
        }
        return units;
    }

    /** The tool's units as our fractions; what lies outside a device's range is held. */
    static double[] fractions(IccProfile.Space space, double[] units) {
        double[] fractions = units.clone();
        for (int c = 0; c < units.length; c++) {
            fractions[c] = (units[c] + shift(space, c)) / scale(space, c);
            if (space != IccProfile.Space.LAB && space != IccProfile.Space.XYZ) {
                fractions[c] = IccCurve.clamp(fractions[c]);
            }
        }
        return fractions;
    }

    private static double scale(IccProfile.Space space, int channel) {
        return switch (space) {
            case GREY, RGB -> 255;
            case CMYK -> 100;
            case LAB -> channel == 0 ? 100 : 255;
            case XYZ -> 100 * 65535.0 / 32768;
        };
    }

    private static double shift(IccProfile.Space space, int channel) {
        return space == IccProfile.Space.LAB && channel > 0 ? 128 : 0;
    }

    /**
     * Converts colours.
     *
     * @param options intent, profiles: -t1 -iin.icc -o*Lab
     */
    static List<double[]> convert(Path folder, List<double[]> colours, String... options) {
        try {
            StringBuilder lines = new StringBuilder();
            for (double[] colour : colours) {
                for (double value : colour) {
                    lines.append(String.format(Locale.ROOT, "%.6f ", value));
                }
                lines.append('\n');
            }
            Path in = Files.writeString(folder.resolve("in.txt"), lines);
            Path out = folder.resolve("out.txt");
            List<String> command = new ArrayList<>(List.of("transicc", "-n", "-c0"));
            command.addAll(List.of(options));
            Process process =
                    new ProcessBuilder(command)
                            .redirectInput(in.toFile())
                            .redirectOutput(out.toFile())
                            .redirectError(folder.resolve("err.txt").toFile())
                            .start();
            process.waitFor();
            List<double[]> result = new ArrayList<>();
            for (String line : Files.readString(out, StandardCharsets.US_ASCII).lines().toList()) {
                if (!line.isBlank()) {
                    String[] cells = line.trim().split("\\s+", -1);
                    double[] values = new double[cells.length];
                    for (int i = 0; i < cells.length; i++) {
                        values[i] = Double.parseDouble(cells[i]);
                    }
                    result.add(values);
                }
            }
            assertEquals(
                    colours.size(),
                    result.size(),
                    () -> "transicc: " + read(folder.resolve("err.txt")));
            return result;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } catch (InterruptedException e) {
            throw new AssertionError(e);
        }
    }

    private static String read(Path file) {
        try {
            return Files.readString(file, StandardCharsets.ISO_8859_1);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
