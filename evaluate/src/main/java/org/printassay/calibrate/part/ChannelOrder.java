package org.printassay.calibrate.part;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.apache.commons.math3.stat.correlation.PearsonsCorrelation;
import org.printassay.colour.Lab;
import org.printassay.colour.LinearRgb;
import org.printassay.colour.Rgb8;
import org.printassay.sample.PatchSample;
import org.printassay.sample.SheetSamples;

/**
 * Whether the channels of a scan stand in another order than red, green, blue: then differences
 * between channels of the coloured patches follow those of other channels of the chart. However far
 * a print is off, red patches reflect more red light than blue.
 */
public final class ChannelOrder {
    /** Differences between printed codes that make a patch coloured. */
    private static final int COLOURED = 64;

    /** Fewer coloured patches tell nothing. */
    private static final int FEWEST = 12;

    /**
     * Mean correlation from which an order fits, and below which one does not. A toned monochrome
     * print, whose channels all follow one curve, reaches no more than two thirds.
     */
    private static final double FITS = 0.85;

    private static final double FAILS = 0.3;

    private static final int[][] ORDERS = {{2, 1, 0}, {1, 0, 2}, {0, 2, 1}, {1, 2, 0}, {2, 0, 1}};

    private static final int[] RIGHT = {0, 1, 2};
    private static final List<String> NAMES = List.of("red", "green", "blue");

    private ChannelOrder() {}

    /** What is wrong with the order and what to do; empty where it is right or cannot be told. */
    public static Optional<String> fault(SheetSamples samples) {
        if (samples.scan().channels() != 3) {
            return Optional.empty();
        }
        List<int[]> printed = new ArrayList<>();
        List<double[]> read = new ArrayList<>();
        for (PatchSample sample : samples.samples()) {
            Rgb8 code = sample.patch().rgb();
            int most = Math.max(code.r(), Math.max(code.g(), code.b()));
            int least = Math.min(code.r(), Math.min(code.g(), code.b()));
            LinearRgb light = sample.linear();
            double sum = light.r() + light.g() + light.b();
            if (most - least >= COLOURED && Double.isFinite(sum)) {
                printed.add(new int[] {code.r(), code.g(), code.b()});
                read.add(new double[] {even(light.r()), even(light.g()), even(light.b())});
            }
        }
        if (printed.size() < FEWEST || fit(printed, read, RIGHT) > FAILS) {
            return Optional.empty();
        }
        Optional<int[]> best = Optional.empty();
        double most = FITS;
        for (int[] order : ORDERS) {
            double fit = fit(printed, read, order);
            if (fit > most) {
                most = fit;
                best = Optional.of(order);
            }
        }
        return best.map(ChannelOrder::words);
    }

    /** Steps of light that look about even. */
    private static double even(double light) {
        return Lab.lightness(Math.max(0, light));
    }

    /**
     * Mean correlation of the differences between two printed channels with those between the
     * channels of the scan that an order takes for them; 0 where any of them is the same
     * throughout.
     */
    private static double fit(List<int[]> printed, List<double[]> read, int[] order) {
        double sum = 0;
        for (int c = 0; c < 3; c++) {
            int one = c;
            int other = (c + 1) % 3;
            double[] wanted = printed.stream().mapToDouble(p -> p[one] - p[other]).toArray();
            double[] found =
                    read.stream().mapToDouble(r -> r[order[one]] - r[order[other]]).toArray();
            double fit = new PearsonsCorrelation().correlation(wanted, found);
            sum += Double.isNaN(fit) ? 0 : fit;
        }
        return sum / 3;
    }

    private static String words(int[] order) {
        List<String> moved = new ArrayList<>();
        for (int c = 0; c < 3; c++) {
            if (order[c] != c) {
                moved.add(NAMES.get(c));
            }
        }
        String which =
                moved.size() == 2
                        ? moved.get(0) + " and " + moved.get(1) + " are exchanged"
                        : "red, green and blue are in a wrong order";
        return "its "
                + which
                + ", so that its coloured patches read as others. Save the scan with red, green and"
                + " blue in this order. If the print itself looks so, check the printer's inks and"
                + " the driver's colours.";
    }
}
