package org.printassay.texture;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

class JumpTest {
    private static double[] line(double before, double after, double jump) {
        double[] values = new double[40];
        for (int i = 0; i < values.length; i++) {
            // The edge lies between the values 19 and 20.
            values[i] = 7 + (i < 20 ? before : after) * (i - 19.5) + (i < 20 ? 0 : jump);
        }
        return values;
    }

    @Test
    void isTheDifferenceOfTheLinesOnBothSides() {
        assertEquals(1.5, Jump.at(line(0.2, 0.2, 1.5), 20, 2, 10), 1e-9);
        assertEquals(-0.7, Jump.at(line(0.1, -0.3, -0.7), 20, 1, 15), 1e-9);
        assertEquals(0, Jump.at(line(0.1, 0.9, 0), 20, 2, 12), 1e-9, "a knee");
    }

    /** Less than half of the values of a side may be anything. */
    @Test
    void aMarkOnOneSideDoesNotMoveIt() {
        double[] values = line(0.2, 0.1, 1.5);
        for (int i = 24; i < 28; i++) {
            values[i] += 30;
        }
        assertEquals(1.5, Jump.at(values, 20, 2, 10), 1e-9);
    }

    @Test
    void fewerValuesAreTakenWhereTheProfileEnds() {
        assertEquals(1.5, Jump.at(line(0.2, 0.2, 1.5), 20, 2, 100), 1e-9);
    }
}
