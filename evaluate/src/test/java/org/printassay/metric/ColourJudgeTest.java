package org.printassay.metric;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.stream.IntStream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.printassay.colour.RgbSpace;

/**
 * Gamut volumes of RGB encodings against the mesh volumes of reference data computed from IEC
 * 61966-2-1, Adobe RGB (1998), SMPTE EG 432-1 and ISO 22028-2 with another program; 0.2 %.
 */
class ColourJudgeTest {
    @ParameterizedTest
    @CsvSource({"SRGB, 833101", "ADOBE_RGB, 1208913", "DISPLAY_P3, 1233235", "ROMM, 2880206"})
    void volumesOfEncodings(RgbSpace space, double mesh) {
        // 52 codes an edge: steps of 5, so that all are whole codes.
        int[] edge = IntStream.rangeClosed(0, 51).map(i -> 5 * i).toArray();
        double volume = GamutMesh.of(edge, space::toLab).orElseThrow().volume();
        assertEquals(mesh, volume, 0.002 * mesh);
    }
}
