package org.printassay.metric;

import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.printassay.colour.Density;
import org.printassay.colour.Lab;

/**
 * Paper white or the darkest neutral.
 *
 * @param lab absolute CIELAB; null when not judged
 * @param labRelative relative to paper
 * @param density visual density (ISO 5-3), from spectra where there are any, else from L*; null
 *     when not judged
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
    private static final double STEP = 0.05;

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

    /**
     * What the uncertainty of the density is made of: that of L*, carried through the derivative of
     * density by L* (ISO/IEC Guide 98-3, 5.1.3) at the L* of that density, which spectra give
     * otherwise than L*. Empty without budgets or density.
     */
    Optional<Budget> densityBudget() {
        if (budgets.isEmpty() || lab == null || density == null) {
            return Optional.empty();
        }
        double l = Lab.lightness(Math.pow(10, -density));
        double slope = Math.abs(densityAt(l + STEP) - densityAt(l - STEP)) / (2 * STEP);
        List<Budget.Part> parts =
                budgets.get(0).parts().stream()
                        .map(p -> new Budget.Part(p.kind(), slope * p.standard(), p.freedom()))
                        .toList();
        String name = level == 255 ? "white.density" : "black.density";
        return Optional.of(new Budget(name, "density", density, parts));
    }

    private static double densityAt(double l) {
        return Density.ofFactor(Math.max(1e-4, Lab.luminanceFactor(l)));
    }
}
