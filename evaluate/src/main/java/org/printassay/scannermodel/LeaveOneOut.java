package org.printassay.scannermodel;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.printassay.colour.DeltaE;
import org.printassay.colour.Lab;

/**
 * How far a calibration is off, patch by patch, each predicted by a calibration made without any
 * patch of its colour. Mean and 95 of 100 are freed from the instrument's own noise as far as twins
 * tell it, because that is no error of the calibration; the largest is as it is.
 *
 * @param meanDeltaE00 mean dE00 over the patches
 * @param p95DeltaE00 95 of 100 patches are off by less
 * @param maxDeltaE00 largest dE00
 * @param patches how many patches
 * @param colours how many colours, each left out once
 */
public record LeaveOneOut(
        double meanDeltaE00, double p95DeltaE00, double maxDeltaE00, int patches, int colours) {

    /** No more than this share of an error is taken for the instrument's noise. */
    private static final double MOST_NOISE = 0.75;

    /**
     * Of measured colours and what was predicted for them.
     *
     * @param noise mean square of one reading's dE00 by the instrument's noise
     */
    static LeaveOneOut of(List<Lab> measured, List<Lab> predicted, int colours, double noise) {
        List<Double> off = new ArrayList<>();
        for (int i = 0; i < measured.size(); i++) {
            off.add(DeltaE.ciede2000(measured.get(i), predicted.get(i)));
        }
        double[] sorted = off.stream().mapToDouble(d -> d).sorted().toArray();
        // Nearest rank: no value is made up between two.
        int at = (int) Math.ceil(0.95 * sorted.length) - 1;
        double square = Arrays.stream(sorted).map(d -> d * d).average().orElseThrow();
        double share = square > 0 ? Math.min(MOST_NOISE, noise / square) : 0;
        double less = Math.sqrt(1 - share);
        return new LeaveOneOut(
                less * Arrays.stream(sorted).average().orElseThrow(),
                less * sorted[Math.max(0, at)],
                sorted[sorted.length - 1],
                sorted.length,
                colours);
    }
}
