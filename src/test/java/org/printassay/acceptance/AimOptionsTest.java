package org.printassay.acceptance;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.printassay.colour.RgbSpace;
import org.printassay.colour.icc.RgbProfiles;

/** The options of evaluate that say by which profile and route a print was made. */
class AimOptionsTest {
    private static final int WRONG_USE = 2;
    private static final int INPUT = 3;

    /** Debian package scribus-data; its perceptual and relative tables differ. */
    private static final String PRINTER = "ISOcoated_v2_300_bas.icc";

    /** Standard deviation of the simulated readings; its mean dE00 is about 0.06. */
    private static final double NOISE = 0.05;

    @TempDir Path dir;

    /**
     * LittleCMS prints (simulated) by each route; held against the same route the print keeps its
     * promise, against any other it is further off.
     */
    @ParameterizedTest
    @CsvSource({
        "perceptual, true, -t0",
        "perceptual, false, -t0",
        "relative, true, -t1",
        "relative, false, -t1",
        "absolute, true, -t3"
    })
    void theRouteThatWasPrintedByFitsBest(String intent, boolean compensation, String option)
            throws Exception {
        Tool.require("transicc");
        Path profile = FreeProfile.named(PRINTER);
        boolean compensated = compensation && !intent.equals("absolute");
        Path measured = printed(profile, option + (compensated ? " -b" : ""));
        double own = distance(measured, profile, intent, compensation);
        assertTrue(own < 0.1, intent + ", " + compensation + ": " + own);
        for (String other : List.of("perceptual", "relative", "absolute")) {
            for (boolean on : new boolean[] {true, false}) {
                // Absolute ignores compensation; these perceptual tables take black to black.
                boolean same =
                        other.equals(intent) && (on == compensation || !other.equals("relative"));
                double distance = distance(measured, profile, other, on);
                assertTrue(same || distance > 2 * own, other + ", " + on + ": " + distance);
            }
        }
    }

    private double distance(Path measured, Path profile, String intent, boolean compensation)
            throws Exception {
        Path out = dir.resolve("out");
        List<Object> words =
                new ArrayList<>(
                        List.of(
                                "evaluate",
                                measured,
                                "--aim",
                                profile,
                                "--intent",
                                intent,
                                "--out",
                                out,
                                "--force"));
        if (!compensation) {
            words.add("--no-black-point-compensation");
        }
        CommandLineRun run = CommandLineRun.of(words.toArray());
        assertEquals(0, run.exitCode(), run.err());
        JsonNode aim =
                new ObjectMapper().readTree(out.resolve("evaluation.json").toFile()).at("/aim");
        assertEquals(intent, aim.get("intent").asText());
        return aim.get("meanDeltaE00").asDouble();
    }

    /** Readings of what the witness makes of codes by a route, absolute colours. */
    private Path printed(Path profile, String route) throws Exception {
        List<int[]> codes = new ArrayList<>();
        for (int level = 0; level <= 255; level += 5) {
            codes.add(new int[] {level, level, level});
        }
        int[] steps = {0, 64, 128, 191, 255};
        for (int i = 0; i < 125; i++) {
            int[] code = {steps[i / 25], steps[i / 5 % 5], steps[i % 5]};
            if (Arrays.stream(code).anyMatch(c -> c == 0 || c == 255)) {
                codes.add(code);
            }
        }
        StringBuilder lines = new StringBuilder();
        codes.forEach(c -> lines.append(c[0] + " " + c[1] + " " + c[2] + "\n"));
        Path in = Files.writeString(dir.resolve("codes.txt"), lines);
        String tool = "transicc -n -c0 ";
        String text =
                Tool.run(
                        "sh",
                        "-c",
                        tool
                                + route
                                + " '-i*sRGB' '-o"
                                + profile
                                + "' < '"
                                + in
                                + "' | "
                                + tool
                                + "-t3 '-i"
                                + profile
                                + "' '-o*Lab'");
        List<String> labs = text.lines().filter(line -> !line.isBlank()).toList();
        assertEquals(codes.size(), labs.size());
        Random random = new Random(5);
        StringBuilder rows = new StringBuilder("RGB_R RGB_G RGB_B LAB_L LAB_A LAB_B\n");
        for (int i = 0; i < labs.size(); i++) {
            int[] c = codes.get(i);
            rows.append(c[0] + " " + c[1] + " " + c[2]);
            for (String value : labs.get(i).strip().split("\\s+", -1)) {
                double noisy = Double.parseDouble(value) + NOISE * random.nextGaussian();
                rows.append(String.format(Locale.ROOT, " %.4f", noisy));
            }
            rows.append('\n');
        }
        return Files.writeString(dir.resolve("measured.txt"), rows);
    }

    @Test
    void aRouteWithoutAProfileIsWrongUse() throws Exception {
        refused(WRONG_USE, List.of("--intent", "relative"), "--aim");
        refused(WRONG_USE, List.of("--no-black-point-compensation"), "--aim");
        refused(WRONG_USE, List.of("--tone-aim", "profile"), "--aim FILE");
        refused(WRONG_USE, List.of("--tone-aim", "nice"), "even-steps");
        refused(WRONG_USE, List.of("--intent", "vivid", "--aim", "x.icc"), "vivid", "perceptual");
        refused(INPUT, List.of("--aim", dir.resolve("none.icc")), "none.icc");
    }

    /** A working space, and profiles of other things (their class alone is changed). */
    @ParameterizedTest
    @ValueSource(strings = {"mntr", "scnr", "spac", "link", "abst", "nmcl", "what"})
    void aProfileOfSomethingElseIsRefused(String deviceClass) throws Exception {
        byte[] bytes = RgbProfiles.of(RgbSpace.SRGB);
        System.arraycopy(deviceClass.getBytes(StandardCharsets.US_ASCII), 0, bytes, 12, 4);
        Path file = Files.write(dir.resolve("other.icc"), bytes);
        refused(INPUT, List.of("--aim", file), "other.icc", "not a printer's profile");
    }

    @Test
    void damagedProfilesAreRefused() throws Exception {
        byte[] whole = RgbProfiles.of(RgbSpace.SRGB);
        System.arraycopy("prtr".getBytes(StandardCharsets.US_ASCII), 0, whole, 12, 4);
        Path cut = Files.write(dir.resolve("cut.icc"), Arrays.copyOf(whole, 300));
        refused(INPUT, List.of("--aim", cut), "cut.icc", "cut off", "300");
        byte[] outside = whole.clone();
        outside[132 + 4] = 0x7F; // where the first tag begins
        Path far = Files.write(dir.resolve("far.icc"), outside);
        refused(INPUT, List.of("--aim", far), "far.icc", "not a printer's profile");
        Path text = Files.writeString(dir.resolve("text.icc"), "no profile at all".repeat(20));
        refused(INPUT, List.of("--aim", text), "text.icc", "acsp");
        Path empty = Files.write(dir.resolve("empty.icc"), new byte[0]);
        refused(INPUT, List.of("--aim", empty), "empty.icc", "0 bytes");
    }

    /** Damage to a table that the route itself does not need is told before the work, and alike. */
    @Test
    void aDamagedTableOfAnyIntentIsRefused() throws Exception {
        byte[] whole = Files.readAllBytes(FreeProfile.named(PRINTER));
        for (String tag : List.of("A2B0", "A2B1", "A2B2", "B2A0", "B2A1", "B2A2")) {
            ByteBuffer bytes = ByteBuffer.wrap(whole.clone());
            int at = 132;
            byte[] name = new byte[4];
            do {
                bytes.get(at, name);
                at += 12;
            } while (!new String(name, StandardCharsets.US_ASCII).equals(tag));
            bytes.put(bytes.getInt(at - 8) + 10, (byte) 1); // points along each input
            Path file = Files.write(dir.resolve("damaged.icc"), bytes.array());
            refused(INPUT, List.of("--aim", file), "not a printer's profile", tag, "1 point");
        }
    }

    /** One line, the code, nothing written. */
    private void refused(int code, List<?> options, String... words) throws Exception {
        Path measured =
                Files.writeString(
                        dir.resolve("grey.txt"),
                        "RGB_R RGB_G RGB_B LAB_L LAB_A LAB_B\n0 0 0 10 0 0\n255 255 255 95 0 0\n");
        Path out = dir.resolve("refused");
        List<Object> all = new ArrayList<>(List.of("evaluate", measured, "--out", out));
        all.addAll(options);
        CommandLineRun run = CommandLineRun.of(all.toArray());
        assertEquals(code, run.exitCode(), run.err());
        assertEquals(1, run.err().strip().lines().count(), run.err());
        assertEquals("", run.out());
        for (String word : words) {
            assertTrue(run.err().contains(word), () -> "\"" + word + "\" in: " + run.err());
        }
        assertFalse(Files.exists(out), "nothing half-written");
        try (Stream<Path> left = Files.list(dir)) {
            assertEquals(0, left.filter(p -> p.toString().contains("-part-")).count());
        }
    }
}
