package org.printassay.colour;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.printassay.colour.Published.number;
import static org.printassay.colour.Published.text;

import java.util.HashMap;
import java.util.Map;
import java.util.Objects;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class RgbSpaceTest {
    private static final Map<String, RgbSpace> NAMES =
            Map.of(
                    "sRGB", RgbSpace.SRGB,
                    "AdobeRGB1998", RgbSpace.ADOBE_RGB,
                    "DisplayP3", RgbSpace.DISPLAY_P3,
                    "ROMM", RgbSpace.ROMM);

    /** IEC 61966-2-1, Adobe RGB (1998), SMPTE EG 432-1, ISO 22028-2: 18 worked colours each. */
    @Test
    void workedColours() {
        Map<RgbSpace, Integer> seen = new HashMap<>();
        for (Map<String, String> row : Published.rows("rgb-spaces.csv")) {
            RgbSpace space = Objects.requireNonNull(NAMES.get(text(row, "space")));
            Rgb8 codes =
                    new Rgb8(
                            (int) number(row, "R"), (int) number(row, "G"), (int) number(row, "B"));
            Xyz xyz = space.toXyz(codes);
            assertEquals(number(row, "X"), xyz.x() / 100, 1e-6, row::toString);
            assertEquals(number(row, "Y"), xyz.y() / 100, 1e-6, row::toString);
            assertEquals(number(row, "Z"), xyz.z() / 100, 1e-6, row::toString);
            Lab lab = space.toLab(codes);
            assertEquals(number(row, "L"), lab.l(), 1e-4, row::toString);
            assertEquals(number(row, "a"), lab.a(), 1e-4, row::toString);
            assertEquals(number(row, "b"), lab.b(), 1e-4, row::toString);
            seen.merge(space, 1, Integer::sum);
        }
        assertEquals(4, seen.size());
        seen.forEach((space, count) -> assertEquals(18, count, space.title()));
    }

    @ParameterizedTest
    @EnumSource
    void encodingUndoesDecoding(RgbSpace space) {
        for (int code = 0; code <= 255; code++) {
            double encoded = code / 255.0;
            assertEquals(encoded, space.encode(space.decode(encoded)), 1e-7, space + " " + code);
        }
        assertEquals(space, RgbSpace.ofKey(space.key()).orElseThrow());
    }

    @ParameterizedTest
    @EnumSource
    void neutralsStayNeutral(RgbSpace space) {
        for (int level = 0; level <= 255; level += 5) {
            assertEquals(0, space.toLab(Rgb8.grey(level)).chroma(), 1e-9, space + " " + level);
        }
    }
}
