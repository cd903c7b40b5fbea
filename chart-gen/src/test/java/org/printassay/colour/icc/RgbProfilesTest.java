package org.printassay.colour.icc;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.printassay.colour.DeltaE;
import org.printassay.colour.Lab;
import org.printassay.colour.Rgb8;
import org.printassay.colour.RgbSpace;

class RgbProfilesTest {
    /**
     * Colorants are rounded to 1/65536 and the curve to 1/65535, about 0.007 L* at black; Adobe RGB
     * has no curve to round. ROMM's blue, Y = 0.000086, suffers most: 0.025.
     */
    private static final double ROUNDING = 0.03;

    @TempDir Path folder = Path.of("");

    /** LittleCMS reads our profile as the encoding's published numbers. */
    @ParameterizedTest
    @EnumSource
    void littleCmsAgrees(RgbSpace space) throws IOException {
        Transicc.require();
        Path profile = Files.write(folder.resolve("space.icc"), RgbProfiles.of(space));
        List<double[]> codes = new ArrayList<>();
        for (int level = 0; level <= 255; level++) {
            codes.add(new double[] {level, level, level});
        }
        for (int r = 0; r <= 255; r += 51) {
            for (int g = 0; g <= 255; g += 51) {
                for (int b = 0; b <= 255; b += 51) {
                    codes.add(new double[] {r, g, b});
                }
            }
        }
        for (String intent : List.of("-t0", "-t1", "-t3")) {
            List<double[]> labs = Transicc.convert(folder, codes, intent, "-i" + profile, "-o*Lab");
            double worst = 0;
            for (int i = 0; i < codes.size(); i++) {
                double[] code = codes.get(i);
                Lab own = space.toLab(new Rgb8((int) code[0], (int) code[1], (int) code[2]));
                double[] lab = labs.get(i);
                worst = Math.max(worst, DeltaE.cie1976(own, new Lab(lab[0], lab[1], lab[2])));
            }
            assertTrue(worst < ROUNDING, space + " " + intent + " differs by dE76 " + worst);
        }
    }

    @ParameterizedTest
    @EnumSource
    void sameBytesEveryTime(RgbSpace space) {
        byte[] profile = RgbProfiles.of(space);
        assertArrayEquals(profile, RgbProfiles.of(space));
        assertEquals(0, profile.length % 4);
        assertTrue(profile.length < 3000, "small enough to embed: " + profile.length);
    }
}
