package org.printassay.calibrate.light;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.apache.commons.math3.special.Erf;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.printassay.colour.LinearRgb;
import org.printassay.sample.PageImage;
import org.printassay.sheet.PointMm;

class BlurTest {
    private static final int SIDE = 160;

    /**
     * What cells of 2 mm cost, worst for an edge along their borders as here (measured: 0.0092 at a
     * width of 3 mm). It falls with the square of the width. At 3 mm it is worth up to 0.2 L* in a
     * black where there is 2 % glare.
     */
    private static double cells(double sigmaMm) {
        return 0.1 / (sigmaMm * sigmaMm);
    }

    /** Black left of x = 0, white right of it; unknown beyond {@code knownTo}. */
    private static PageImage step(double knownTo) {
        PageImage image = new PageImage(new PointMm(-80, -80), 1, SIDE, SIDE);
        for (int row = 0; row < SIDE; row++) {
            for (int column = 0; column < SIDE; column++) {
                double x = image.centre(column, row).x();
                double light = x < 0 ? 0 : 1;
                if (x < knownTo) {
                    image.set(column, row, new LinearRgb(light, light, light));
                }
            }
        }
        return image;
    }

    /** A step blurred by a Gaussian is the normal distribution function. */
    @ParameterizedTest
    @ValueSource(doubles = {3, 5, 8, 15})
    void stepBecomesNormalDistribution(double sigmaMm) {
        SurroundGrid grid = new SurroundGrid(step(100));
        float[] map = grid.values(1, 1);
        float[] blurred = new Blur(grid, sigmaMm, map).of(map);
        for (double x = -2 * sigmaMm; x <= 2 * sigmaMm; x += 0.7) {
            double expected = 0.5 * (1 + Erf.erf(x / sigmaMm / Math.sqrt(2)));
            assertEquals(expected, grid.place(x, 3.3).in(blurred), cells(sigmaMm), "at " + x);
        }
    }

    /**
     * Of a Gaussian that is longer along turned lines a step across the page sees the standard
     * deviation across the page.
     */
    @ParameterizedTest
    @ValueSource(doubles = {0, 30, -75, 90, 180, 200})
    void aLongBlurLiesAlongTheLines(double turnDegrees) {
        SurroundGrid grid = new SurroundGrid(step(100));
        LineGrid lines = new LineGrid(grid, turnDegrees);
        float[] map = lines.turned(grid.values(1, 1));
        double longer = 1.8;
        float[] blurred = new Blur(lines, 8, longer, map).of(map);
        double turn = Math.toRadians(turnDegrees);
        double sigmaMm = 8 * Math.hypot(longer * Math.cos(turn), Math.sin(turn) / longer);
        for (double x = -2 * sigmaMm; x <= 2 * sigmaMm; x += 0.7) {
            double expected = 0.5 * (1 + Erf.erf(x / sigmaMm / Math.sqrt(2)));
            double found = lines.place(grid.place(x, 3.3)).in(blurred);
            assertEquals(expected, found, cells(8 / longer), "at " + x);
        }
    }

    @Test
    void unknownCellsLookLikeTheirNeighbours() {
        SurroundGrid grid = new SurroundGrid(step(40));
        float[] map = grid.values(0, 1);
        Blur blur = new Blur(grid, 8, map);
        assertEquals(1, grid.place(39, 0).in(blur.of(map)), 0.001);
        assertEquals(0.5, grid.place(40, 0).in(blur.known()), 0.02);
    }
}
