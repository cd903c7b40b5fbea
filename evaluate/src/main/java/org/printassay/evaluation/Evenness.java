package org.printassay.evaluation;

import org.jspecify.annotations.Nullable;
import org.printassay.calibrate.Unevenness;
import org.printassay.metric.Gradient;

/**
 * How even a print is.
 *
 * @param maxDeltaE00 largest dE00 between twins after evening out (print and scanner together)
 * @param lightFalloffPercent what was evened out, percent
 * @param whose how much of that is the scanner's and how much the print's; null without a repeat
 *     that was turned
 * @param gradient of lightness over the sheet; null with too few equal patches
 */
public record Evenness(
        double maxDeltaE00,
        double lightFalloffPercent,
        @Nullable Unevenness whose,
        @Nullable Gradient gradient) {}
