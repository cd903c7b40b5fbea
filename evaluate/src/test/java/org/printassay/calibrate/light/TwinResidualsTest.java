package org.printassay.calibrate.light;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Arrays;
import org.junit.jupiter.api.Test;

/** Forty black twins along a page and one light patch without twins, simulated. */
class TwinResidualsTest {
    private static final int TWINS = 40;
    private static final double BLACK = 0.01;
    private static final double DEPTH = 2;

    /** Light that dies away from the first patch, that without twins, in some patches' widths. */
    private static double[] fromTheEdge() {
        double[] shape = new double[TWINS + 1];
        for (int i = 0; i < shape.length; i++) {
            shape[i] = Math.exp(-i / DEPTH);
        }
        return shape;
    }

    private static double found(double[] light) {
        int[] group = new int[light.length];
        group[0] = -1;
        TwinData data =
                new TwinData(
                        light, new double[light.length], group, 1, 0, new double[light.length][]);
        return new TwinResiduals(data, light).fit(fromTheEdge()).amount();
    }

    @Test
    void lightThatLeaksInIsFound() {
        double[] light = new double[TWINS + 1];
        Arrays.fill(light, BLACK);
        light[0] = 0.5;
        double[] shape = fromTheEdge();
        for (int i = 0; i < light.length; i++) {
            light[i] += 0.05 * shape[i] + 1e-4 * (i % 2);
        }
        assertEquals(0.05, found(light), 0.005);
    }

    /**
     * One twin lies under something grey: light that explains it leaves others with less than none.
     */
    @Test
    void aPatchCannotReadDarkerThanNothing() {
        double[] light = new double[TWINS + 1];
        Arrays.fill(light, BLACK);
        light[0] = 0.3;
        for (int i = 9; i < light.length; i++) {
            light[i] += 1e-4 * (i % 2);
        }
        light[6] = 0.2;
        int[] group = new int[light.length];
        Arrays.fill(group, 0, 6, -1);
        TwinData data =
                new TwinData(
                        light, new double[light.length], group, 1, 0, new double[light.length][]);
        assertEquals(0, new TwinResiduals(data, light).fit(fromTheEdge()).amount());
    }
}
