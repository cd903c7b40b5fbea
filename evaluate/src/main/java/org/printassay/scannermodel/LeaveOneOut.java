package org.printassay.scannermodel;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.printassay.colour.DeltaE;
import org.printassay.colour.Lab;

/**
 * How far a calibration is off, patch by patch, each predicted by a calibration made without any
 * patch of its colour.
 *
 * @param meanDeltaE00 mean dE00 over the patches
 * @param p95DeltaE00 95 of 100 patches are off by less
 * @param maxDeltaE00 largest dE00
 * @param patches how many patches
 * @param colours how many colours, each left out once
 */
public record LeaveOneOut(
        double meanDeltaE00, double p95DeltaE00, double maxDeltaE00, int patches, int colours) {

    /** Of measured colours and what was predicted for them. */
    static LeaveOneOut of(List<Lab> measured, List<Lab> predicted, int colours) {
        List<Double> off = new ArrayList<>();
        for (int i = 0; i < measured.size(); i++) {
            off.add(DeltaE.ciede2000(measured.get(i), predicted.get(i)));
        }
        double[] sorted = off.stream().mapToDouble(d -> d).sorted().toArray();
        // Nearest rank: no value is made up between two.
        int at = (int) Math.ceil(0.95 * sorted.length) - 1;
        return new LeaveOneOut(
                Arrays.stream(sorted).average().orElseThrow(),
                sorted[Math.max(0, at)],
                sorted[sorted.length - 1],
                sorted.length,
                colours);
    }
}
