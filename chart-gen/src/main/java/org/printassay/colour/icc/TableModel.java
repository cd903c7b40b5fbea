package org.printassay.colour.icc;

import java.util.Arrays;
import java.util.List;
import org.printassay.colour.Xyz;

/** Colour by a table (lut8, lut16 or lutAToB element), as a chain of steps. */
public final class TableModel implements DeviceModel {
    /** Points of the neutral axis; fine enough for 12 bit scanners. */
    private static final int AXIS_POINTS = 4096;

    private final int channels;
    private final List<Step> steps;
    private final double[] axis;

    TableModel(int channels, List<Step> steps) {
        this.channels = channels;
        this.steps = List.copyOf(steps);
        this.axis = new double[AXIS_POINTS];
        // Ever rising, so that it can be turned round.
        double reached = Double.NEGATIVE_INFINITY;
        double[] code = new double[channels];
        for (int i = 0; i < AXIS_POINTS; i++) {
            Arrays.fill(code, i / (AXIS_POINTS - 1.0));
            reached = Math.max(reached, toXyz(code).y() / 100);
            axis[i] = reached;
        }
    }

    /** Whether the neutral axis rises, so that {@link #linear} means something; not so for inks. */
    public boolean rises() {
        return axis[AXIS_POINTS - 1] > axis[0] + 0.01;
    }

    @Override
    public int channels() {
        return channels;
    }

    @Override
    public double linear(int channel, double code) {
        double along = IccCurve.clamp(code) * (AXIS_POINTS - 1);
        int low = Math.min((int) along, AXIS_POINTS - 2);
        return axis[low] + (along - low) * (axis[low + 1] - axis[low]);
    }

    /** The code that gives this light on the neutral axis; the inverse of {@link #linear}. */
    public double code(double light) {
        int low = 0;
        int high = AXIS_POINTS - 1;
        if (!(light > axis[low])) {
            return 0;
        }
        if (light >= axis[high]) {
            return 1;
        }
        while (high - low > 1) {
            int middle = (low + high) >>> 1;
            if (axis[middle] <= light) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return (low + (light - axis[low]) / (axis[high] - axis[low])) / (AXIS_POINTS - 1);
    }

    @Override
    public Xyz lightToXyz(double... light) {
        double[] code = new double[channels];
        for (int i = 0; i < channels; i++) {
            code[i] = code(light[i]);
        }
        return toXyz(code);
    }

    @Override
    public Xyz toXyz(double... code) {
        double[] value = Arrays.copyOf(code, Step.ROOM);
        for (int i = 0; i < channels; i++) {
            value[i] = IccCurve.clamp(value[i]);
        }
        for (Step step : steps) {
            step.apply(value);
        }
        return PcsCode.xyz(value);
    }
}
