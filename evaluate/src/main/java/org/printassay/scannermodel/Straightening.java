package org.printassay.scannermodel;

import java.util.ArrayList;
import java.util.List;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.QRDecomposition;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.SingularMatrixException;
import org.jspecify.annotations.Nullable;
import org.printassay.colour.Xyz;

/**
 * Makes the channels linear by the greys: what a channel should see of a grey is the mixture of its
 * measured X, Y and Z that comes nearest to what the channel sees of all colours.
 */
public final class Straightening {
    /** Fewer greys show no curve. */
    private static final int FEWEST_GREYS = 8;

    /** Cube roots that all change by less than this stay: a tenth of an L*. */
    private static final double NOTHING = 0.001;

    private static final int ROUNDS = 4;

    private final ChannelCurve[] curves;

    private Straightening(ChannelCurve[] curves) {
        this.curves = curves;
    }

    /** From patches that were scanned and measured; null when channels are straight already. */
    public static @Nullable Straightening of(List<TrainingPatch> patches) {
        List<TrainingColour> colours = TrainingColour.of(patches);
        List<TrainingColour> greys = colours.stream().filter(TrainingColour::neutral).toList();
        if (greys.size() < FEWEST_GREYS || colours.size() < ModelFit.FEWEST_COLOURS) {
            return null;
        }
        ChannelCurve[] curves = new ChannelCurve[3];
        boolean bent = false;
        for (int c = 0; c < 3; c++) {
            List<Double> from = new ArrayList<>();
            double least = 1;
            double most = 0;
            for (TrainingColour grey : greys) {
                double light = grey.light().channel(c);
                from.add(light);
                least = Math.min(least, light);
                most = Math.max(most, light);
            }
            curves[c] = curve(colours, greys, from, c);
            bent |= curves[c].largestChange(Math.max(0, least), most) > NOTHING;
        }
        return bent ? new Straightening(curves) : null;
    }

    /** What the channel should see follows from what it sees straightened: a few rounds settle. */
    private static ChannelCurve curve(
            List<TrainingColour> colours, List<TrainingColour> greys, List<Double> from, int c) {
        ChannelCurve curve = null;
        for (int round = 0; round < ROUNDS; round++) {
            double[] mixture = mixture(colours, c, curve);
            List<Double> to = new ArrayList<>();
            double lightest = 0;
            double wanted = 0;
            for (int i = 0; i < greys.size(); i++) {
                double should = Math.max(0, mixed(mixture, greys.get(i)));
                to.add(should);
                if (from.get(i) > lightest) {
                    lightest = from.get(i);
                    wanted = should;
                }
            }
            // Only the shape is wanted: what the lightest grey gives stays.
            double scale = wanted > 0 ? lightest / wanted : 1;
            to.replaceAll(light -> scale * light);
            curve = ChannelCurve.fit(from, to);
        }
        if (curve == null) {
            throw new IllegalStateException("no round was made");
        }
        return curve;
    }

    private static double[] mixture(
            List<TrainingColour> colours, int c, @Nullable ChannelCurve curve) {
        RealMatrix rows = new Array2DRowRealMatrix(colours.size(), 3);
        double[] seen = new double[colours.size()];
        for (int i = 0; i < seen.length; i++) {
            Xyz xyz = colours.get(i).lab().toXyz(Xyz.PCS_WHITE);
            double light = colours.get(i).light().channel(c);
            double weight = 1 / Math.max(1, xyz.y());
            seen[i] = weight * (curve == null ? light : curve.at(light));
            rows.setRow(i, new double[] {weight * xyz.x(), weight * xyz.y(), weight * xyz.z()});
        }
        try {
            return new QRDecomposition(rows)
                    .getSolver()
                    .solve(new Array2DRowRealMatrix(seen))
                    .getColumn(0);
        } catch (SingularMatrixException e) {
            return new double[] {0, 0.01, 0};
        }
    }

    private static double mixed(double[] mixture, TrainingColour colour) {
        Xyz xyz = colour.lab().toXyz(Xyz.PCS_WHITE);
        return mixture[0] * xyz.x() + mixture[1] * xyz.y() + mixture[2] * xyz.z();
    }

    /** Straightened light of a channel. */
    public double at(int channel, double light) {
        return curves[channel].at(light);
    }
}
