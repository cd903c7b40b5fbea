package org.printassay.scannermodel;

import java.util.ArrayList;
import java.util.List;
import org.printassay.colour.Lab;

/**
 * How well the instrument repeats, told by twins: what a print does to them moves scan and
 * measurement alike, what the instrument does moves the measurement alone. So the variance between
 * twins as measured, less its covariance with the scan, is the instrument's.
 */
final class InstrumentNoise {
    /** Fewer degrees of freedom than this tell nothing. */
    private static final int FEWEST_FREEDOM = 20;

    private InstrumentNoise() {}

    /**
     * Mean square of one reading's dE00 by the instrument's noise; 0 where twins do not tell.
     *
     * @param model any model of the scanner: it only has to turn light into colour differences
     */
    static double meanSquare(List<TrainingColour> colours, ScannerModel model) {
        double sum = 0;
        int freedom = 0;
        for (TrainingColour colour : colours) {
            List<TrainingPatch> twins = colour.patches();
            double[][] root = LocalMetric.rootAt(colour.lab());
            List<double[]> measured = new ArrayList<>();
            List<double[]> seen = new ArrayList<>();
            for (TrainingPatch twin : twins) {
                measured.add(weighed(root, twin.lab()));
                seen.add(weighed(root, model.lab(twin.light())));
            }
            for (int axis = 0; axis < 3; axis++) {
                int at = axis;
                double meanMeasured = measured.stream().mapToDouble(v -> v[at]).average().orElse(0);
                double meanSeen = seen.stream().mapToDouble(v -> v[at]).average().orElse(0);
                for (int i = 0; i < twins.size(); i++) {
                    double own = measured.get(i)[axis] - meanMeasured;
                    sum += own * (own - (seen.get(i)[axis] - meanSeen));
                }
            }
            freedom += twins.size() - 1;
        }
        return freedom < FEWEST_FREEDOM ? 0 : Math.max(0, sum / freedom);
    }

    private static double[] weighed(double[][] root, Lab lab) {
        double[] v = {lab.l(), lab.a(), lab.b()};
        double[] weighed = new double[3];
        for (int i = 0; i < 3; i++) {
            for (int k = i; k < 3; k++) {
                weighed[i] += root[i][k] * v[k];
            }
        }
        return weighed;
    }
}
