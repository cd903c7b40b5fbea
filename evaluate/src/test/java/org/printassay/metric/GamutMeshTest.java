package org.printassay.metric;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.printassay.colour.Lab;
import org.printassay.colour.Rgb8;

/** Meshes of bodies whose volume and section are known by elementary geometry. */
class GamutMeshTest {
    private static final int[] EDGE = {0, 64, 128, 191, 255};

    /** An upright box, 80 by 60 in a* and b*, 100 high. */
    private static Lab box(Rgb8 code) {
        return new Lab(
                100 * code.g() / 255.0, 80 * code.r() / 255.0 - 40, 60 * code.b() / 255.0 - 30);
    }

    @Test
    void volumeOfABox() {
        assertEquals(480_000, mesh().volume(), 1e-6);
    }

    private static GamutMesh mesh() {
        return GamutMesh.of(EDGE, GamutMeshTest::box).orElseThrow();
    }

    @Test
    void sectionOfABoxIsOneClosedOutlineWithItsArea() {
        List<List<GamutMesh.Place>> outlines = mesh().slice(37);
        assertEquals(1, outlines.size());
        List<GamutMesh.Place> outline = outlines.get(0);
        double twice = 0;
        for (int i = 0; i < outline.size(); i++) {
            GamutMesh.Place one = outline.get(i);
            GamutMesh.Place two = outline.get((i + 1) % outline.size());
            twice += one.a() * two.b() - two.a() * one.b();
        }
        assertEquals(4800, Math.abs(twice) / 2, 1e-6);
    }

    @Test
    void nothingIsCutOutsideTheBody() {
        assertTrue(mesh().slice(101).isEmpty());
        assertTrue(mesh().slice(-1).isEmpty());
    }

    @Test
    void aMissingColourGivesNoMesh() {
        assertTrue(GamutMesh.of(EDGE, code -> code.r() == 64 ? null : box(code)).isEmpty());
    }
}
