package org.printassay.metric;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.printassay.colour.Lab;

/**
 * Paper white or the darkest neutral.
 *
 * @param lab absolute CIELAB; null when not judged
 * @param labRelative relative to paper
 * @param density visual density; null when not judged
 * @param uncertainty 95 % half-widths of L*, a*, b*: random part and the stated systematic part
 *     combined
 * @param systematicL stated systematic part of L* by trust, included in {@code uncertainty}
 * @param level darkest level (black) or 255 (white)
 * @param patches how many patches it was read from
 * @param budgets what the uncertainties of L*, a* and b* are made of; empty when read from a file
 */
public record Extreme(
        @Nullable Lab lab,
        Lab labRelative,
        @Nullable Double density,
        Lab uncertainty,
        double systematicL,
        int level,
        int patches,
        List<Budget> budgets) {
    public Extreme {
        budgets = List.copyOf(budgets);
    }

    /** Without budgets. */
    public Extreme(
            @Nullable Lab lab,
            Lab labRelative,
            @Nullable Double density,
            Lab uncertainty,
            double systematicL,
            int level,
            int patches) {
        this(lab, labRelative, density, uncertainty, systematicL, level, patches, List.of());
    }
}
