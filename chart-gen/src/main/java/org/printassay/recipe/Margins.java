package org.printassay.recipe;

import java.util.Arrays;
import java.util.List;
import org.printassay.problem.Problem;

/** Unprinted margins of a page, millimetres, multiples of 0.01. */
public record Margins(double top, double right, double bottom, double left) {
    /** Smallest margin: the markers at the edge need white around them. */
    public static final double LEAST_MM = 3;

    /** The same margin on all four sides. */
    public static Margins all(double mm) {
        return new Margins(mm, mm, mm, mm);
    }

    /**
     * Margins of one value for all sides, or four: top, right, bottom, left.
     *
     * @throws Problem usage, for another number of values or one that is not 3 to 500 mm
     */
    public static Margins of(List<Double> mm) throws Problem {
        if (mm.size() != 1 && mm.size() != 4) {
            throw Problem.usage(
                    "margins take one value for all sides or four (top,right,bottom,left), got "
                            + mm.size()
                            + ".");
        }
        for (double value : mm) {
            if (!(value >= LEAST_MM && value <= 500)) {
                throw Problem.usage("a margin must be 3 to 500 mm, got " + value + ".");
            }
        }
        double top = PageSize.hundredths(mm.get(0));
        return mm.size() == 1
                ? all(top)
                : new Margins(
                        top,
                        PageSize.hundredths(mm.get(1)),
                        PageSize.hundredths(mm.get(2)),
                        PageSize.hundredths(mm.get(3)));
    }

    /**
     * Margins as typed: {@code 12} or {@code 12,12,35,12} (top, right, bottom, left; millimetres).
     *
     * @throws Problem usage, when these are not one or four numbers in range
     */
    public static Margins parse(String text) throws Problem {
        String[] parts = text.strip().split("\\s*,\\s*", -1);
        try {
            return of(Arrays.stream(parts).map(Double::valueOf).toList());
        } catch (NumberFormatException e) {
            throw Problem.usage(
                    "margins must be millimetres such as 12 or 12,12,35,12 (top,right,bottom,left).");
        }
    }

    /** Whether all four sides are the same. */
    public boolean isEven() {
        return top == right && top == bottom && top == left;
    }
}
