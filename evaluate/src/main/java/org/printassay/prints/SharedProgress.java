package org.printassay.prints;

import java.util.List;
import org.printassay.evaluation.Progress;

/** How far many prints have come together, each counted by the size of its files. */
final class SharedProgress {
    private final double[] weights;
    private final double[] reached;
    private final Progress all;
    private double done;

    SharedProgress(List<OnePrint> prints, Progress all) {
        this.weights = prints.stream().mapToDouble(print -> Math.max(1, print.bytes())).toArray();
        double sum = 0;
        for (double weight : weights) {
            sum += weight;
        }
        for (int i = 0; i < weights.length; i++) {
            weights[i] /= sum;
        }
        this.reached = new double[weights.length];
        this.all = all;
    }

    /** For the print of this number. */
    Progress of(int i) {
        return share -> tell(i, share);
    }

    /** The work that follows reading counts too: a print is done when it says so last. */
    private synchronized void tell(int i, double share) {
        double rise = Math.max(0, share - reached[i]);
        reached[i] += rise;
        done += rise * weights[i];
        all.reached(Math.min(1, done));
    }
}
