package org.printassay.colour.icc;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.printassay.colour.DeltaE;
import org.printassay.colour.Lab;
import org.printassay.colour.RgbSpace;
import org.printassay.colour.Xyz;

/**
 * The 450 rows of icc-transform-checks.csv (LittleCMS; see its header): sRGB to CMYK of three
 * printing conditions and on to CIELAB. Profiles are found by the checksums of the header.
 */
class PublishedTransformsTest {
    /** Largest seen 0.0111. */
    private static final double AGREEMENT = 0.012;

    /** In percent of ink; largest seen 0.023: the witness's sRGB has no rounded curve. */
    private static final double INK = 0.03;

    /** Checksums and black points, from the header of the file. */
    private static final Map<String, Condition> CONDITIONS =
            Map.of(
                    "FOGRA39L_coated.icc",
                    new Condition(
                            "b35713ef7eff09349d4c3249e5f377736d06d8a2671c54712971a3546bf17c57",
                            9.556),
                    "ISOcoated_v2_300_bas.icc",
                    new Condition(
                            "b424c77f40c3423c925536f8ae08634985ccd0fe80eb253d5d229197ded7e886",
                            12.937),
                    "default_cmyk.icc",
                    new Condition(
                            "8472fa1493a024b800b67dee9424835ec0c41ab79490200ae8ec4a689fd1b9a9",
                            16.500));

    private record Condition(String sha256, double blackLightness) {}

    private record Row(
            String transform, List<Double> rgb, List<Double> cmyk, Lab absolute, Lab relative) {}

    @Test
    void allRowsAreThere() throws IOException {
        Map<String, List<Row>> rows = rows();
        assertEquals(CONDITIONS.keySet(), rows.keySet());
        assertEquals(450, rows.values().stream().mapToInt(List::size).sum());
    }

    @TestFactory
    Stream<DynamicTest> rowsAgree() throws IOException {
        Map<String, List<Row>> rows = rows();
        return CONDITIONS.entrySet().stream()
                .map(
                        c ->
                                DynamicTest.dynamicTest(
                                        c.getKey(),
                                        () ->
                                                check(
                                                        profile(c.getKey(), c.getValue()),
                                                        Objects.requireNonNull(
                                                                rows.get(c.getKey())))));
    }

    /** The header names the destination black its own evaluator needed; it is rounded by 0.007. */
    @TestFactory
    Stream<DynamicTest> blackPointsAgree() {
        return CONDITIONS.entrySet().stream()
                .map(
                        c ->
                                DynamicTest.dynamicTest(
                                        c.getKey(),
                                        () -> {
                                            IccProfile profile = profile(c.getKey(), c.getValue());
                                            Xyz black =
                                                    BlackPoints.destination(
                                                            profile, Intent.RELATIVE);
                                            assertEquals(
                                                    c.getValue().blackLightness,
                                                    Lab.of(black, Xyz.PCS_WHITE).l(),
                                                    0.007);
                                        }));
    }

    private static void check(IccProfile profile, List<Row> rows) throws IccException {
        IccProfile srgb = IccProfile.parse(RgbProfiles.of(RgbSpace.SRGB));
        Map<String, IccTransform> transforms =
                Map.of(
                        "relcol_bpc",
                        IccTransform.between(srgb, profile, Intent.RELATIVE, true),
                        "relcol",
                        IccTransform.between(srgb, profile, Intent.RELATIVE, false),
                        "perceptual",
                        IccTransform.between(srgb, profile, Intent.PERCEPTUAL, false));
        IccTransform absolute = IccTransform.toColour(profile, Intent.ABSOLUTE);
        IccTransform relative = IccTransform.toColour(profile, Intent.RELATIVE);
        double worst = 0;
        double worstInk = 0;
        for (Row row : rows) {
            double[] own =
                    Objects.requireNonNull(transforms.get(row.transform))
                            .convert(row.rgb.stream().mapToDouble(code -> code / 255).toArray());
            double[] cmyk = new double[4];
            for (int c = 0; c < 4; c++) {
                cmyk[c] = row.cmyk.get(c) / 100;
                worstInk = Math.max(worstInk, 100 * Math.abs(own[c] - cmyk[c]));
            }
            worst = Math.max(worst, DeltaE.cie1976(relative.lab(cmyk), row.relative));
            worst = Math.max(worst, DeltaE.cie1976(absolute.lab(cmyk), row.absolute));
            worst = Math.max(worst, DeltaE.cie1976(relative.lab(own), row.relative));
        }
        assertTrue(worst <= AGREEMENT, "dE76 " + worst);
        assertTrue(worstInk <= INK, "percent of ink " + worstInk);
    }

    private static IccProfile profile(String name, Condition condition) throws IccException {
        Path file = FreeProfiles.bySha256(condition.sha256).orElse(Path.of(""));
        FreeProfiles.require(!file.toString().isEmpty(), "the profile " + name);
        return IccProfile.parse(FreeProfiles.read(file));
    }

    private static Map<String, List<Row>> rows() throws IOException {
        Map<String, List<Row>> rows = new HashMap<>();
        try (var in =
                Objects.requireNonNull(
                        PublishedTransformsTest.class.getResourceAsStream(
                                "/published/icc-transform-checks.csv"))) {
            for (String line :
                    new String(in.readAllBytes(), StandardCharsets.UTF_8).lines().toList()) {
                if (line.startsWith("#") || line.startsWith("profile,")) {
                    continue;
                }
                String[] cells = line.split(",", -1);
                double[] n = new double[13];
                for (int i = 0; i < n.length; i++) {
                    n[i] = Double.parseDouble(cells[i + 2]);
                }
                rows.computeIfAbsent(cells[0], k -> new ArrayList<>())
                        .add(
                                new Row(
                                        cells[1],
                                        List.of(n[0], n[1], n[2]),
                                        List.of(n[3], n[4], n[5], n[6]),
                                        new Lab(n[7], n[8], n[9]),
                                        new Lab(n[10], n[11], n[12])));
            }
        }
        return rows;
    }
}
