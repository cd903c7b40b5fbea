package org.printassay.scannermodel;

import java.util.ArrayList;
import java.util.List;
import org.apache.commons.math3.stat.correlation.SpearmansCorrelation;
import org.printassay.colour.DeltaE;
import org.printassay.colour.Lab;
import org.printassay.colour.Xyz;
import org.printassay.robust.Median;

/** Patches whose scan and measurement cannot be of the same colour. */
public final class Misfits {
    /** Off a plain model by more than this many times the median ... */
    private static final double TIMES_MEDIAN = 8;

    /** ... and by more than this, dE00: no set of inks does that to a scanner's filters. */
    private static final double LEAST = 8;

    private Misfits() {}

    /**
     * Rank correlation of measured lightness and the light of the green channel; about 1 where scan
     * and measurement show the same patches.
     */
    public static double agreement(List<TrainingPatch> patches) {
        double[] light = patches.stream().mapToDouble(p -> p.light().g()).toArray();
        double[] lightness = patches.stream().mapToDouble(p -> p.lab().l()).toArray();
        return new SpearmansCorrelation().correlation(light, lightness);
    }

    /** Those among patches; at least {@link ModelFit#FEWEST_COLOURS} colours. */
    public static List<TrainingPatch> of(List<TrainingPatch> patches) {
        RootPolynomial plain = RootPolynomialFit.fit(TrainingColour.of(patches), 2);
        List<Double> off = new ArrayList<>();
        for (TrainingPatch patch : patches) {
            Lab seen = Lab.of(plain.at(patch.light()), Xyz.PCS_WHITE);
            off.add(DeltaE.ciede2000(patch.lab(), seen));
        }
        double median = Median.upper(off.stream().mapToDouble(d -> d).toArray());
        List<TrainingPatch> misfits = new ArrayList<>();
        for (int i = 0; i < patches.size(); i++) {
            if (off.get(i) > Math.max(LEAST, TIMES_MEDIAN * median)) {
                misfits.add(patches.get(i));
            }
        }
        return misfits;
    }
}
