package org.printassay.compare;

/** A difference with what may be said of it. */
public record Judged(Difference difference, DifferenceVerdict verdict) {
    /** Which figure. */
    public Figure figure() {
        return difference.figure();
    }

    /** Whether it holds, and is large enough to be seen. */
    boolean counts() {
        return verdict == DifferenceVerdict.DIFFERS
                && Math.abs(difference.value()) >= figure().visible();
    }

    Judged turned() {
        return new Judged(difference.turned(), verdict);
    }
}
