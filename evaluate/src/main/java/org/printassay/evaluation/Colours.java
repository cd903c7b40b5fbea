package org.printassay.evaluation;

import org.jspecify.annotations.Nullable;
import org.printassay.metric.ColourDetail;

/**
 * Colours against their aim.
 *
 * @param meanDeltaE00 mean dE00 of the cube surface against the aim
 * @param gamutVolume cubic CIELAB units; null when the cube is incomplete
 * @param detail hue by hue and tone by tone
 */
public record Colours(
        double meanDeltaE00, @Nullable Double gamutVolume, @Nullable ColourDetail detail) {}
