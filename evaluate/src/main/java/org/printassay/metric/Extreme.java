package org.printassay.metric;

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
 */
public record Extreme(
        @Nullable Lab lab,
        Lab labRelative,
        @Nullable Double density,
        Lab uncertainty,
        double systematicL,
        int level,
        int patches) {}
