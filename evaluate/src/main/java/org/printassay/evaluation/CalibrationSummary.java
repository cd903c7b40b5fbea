package org.printassay.evaluation;

import org.jspecify.annotations.Nullable;

/**
 * The calibration that a scan's colours come from, and how far it is off.
 *
 * @param file the calibration file
 * @param scanner scanner that it was made for; null when not said
 * @param printer printer that it was made with
 * @param paper paper that it was made on
 * @param family paper family that it was made for
 * @param meanDeltaE00 mean leave-one-out dE00
 * @param p95DeltaE00 95 of 100 patches were off by less
 * @param maxDeltaE00 largest
 * @param patches patches that it was made from
 * @param colours different colours among them
 * @param expectedDeltaE00 mean dE00 to expect on this print: what is not known of the light of two
 *     scans included, and what a calibration is off that was made for another paper, printer or
 *     scanner, or whose scan now was not made as it needs
 */
public record CalibrationSummary(
        SourceFile file,
        @Nullable String scanner,
        @Nullable String printer,
        @Nullable String paper,
        @Nullable String family,
        double meanDeltaE00,
        double p95DeltaE00,
        double maxDeltaE00,
        int patches,
        int colours,
        double expectedDeltaE00) {}
