package org.printassay.metric;

/** What standard uncertainties are expanded by. */
public final class Coverage {
    /** Two-sided 95 % of the normal distribution: for many degrees of freedom. */
    public static final double NORMAL_95 = 1.96;

    /** One-sided 95 % of the normal distribution. */
    public static final double ONE_SIDED_95 = 1.645;

    private Coverage() {}
}
