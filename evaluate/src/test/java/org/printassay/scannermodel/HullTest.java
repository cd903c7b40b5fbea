package org.printassay.scannermodel;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.printassay.colour.Lab;

class HullTest {
    private static Hull cube() {
        List<Lab> corners = new ArrayList<>();
        for (int i = 0; i < 8; i++) {
            corners.add(
                    new Lab(
                            (i & 1) == 0 ? 20 : 80,
                            (i & 2) == 0 ? -30 : 30,
                            (i & 4) == 0 ? -30 : 30));
        }
        corners.add(new Lab(50, 1, 2));
        return new Hull(corners);
    }

    @Test
    void insideIsNotOutside() {
        assertEquals(0, cube().outside(new Lab(50, 0, 0)));
        assertEquals(0, cube().outside(new Lab(79.9, 29.9, -29.9)));
        assertEquals(0, cube().outside(new Lab(20, 0, 0)));
    }

    @Test
    void outsideIsTheDistanceToFaceEdgeOrCorner() {
        assertEquals(7, cube().outside(new Lab(87, 11, -3)), 0.1);
        assertEquals(Math.hypot(5, 8), cube().outside(new Lab(85, -38, 4)), 0.1);
        assertEquals(Math.sqrt(75), cube().outside(new Lab(15, 35, 35)), 0.1);
    }
}
