package org.printassay.recipe;

/** Unprinted margins of a page, millimetres. */
public record Margins(double top, double right, double bottom, double left) {
    /** The same margin on all four sides. */
    public static Margins all(double mm) {
        return new Margins(mm, mm, mm, mm);
    }
}
