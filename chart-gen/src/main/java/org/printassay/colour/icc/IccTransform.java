package org.printassay.colour.icc;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.printassay.colour.BlackPointCompensation;
import org.printassay.colour.Lab;
import org.printassay.colour.Xyz;

/**
 * Colours through profiles: device to device, device to CIELAB, CIELAB to device (ISO 15076-1;
 * black point compensation by ISO 18619). Device values are fractions 0-1 as {@link
 * IccProfile.Space} says; inputs are held within that range. Computed in double precision, so that
 * only the profiles' own rounding remains. Immutable, for any number of threads.
 */
public final class IccTransform {
    private static final Step NOTHING = v -> {};

    private final int inputs;
    private final int outputs;
    private final Step[] steps;

    /** What happens to colours between the two profiles. */
    private final Step connection;

    private IccTransform(int inputs, int outputs, List<Step> steps, Step connection) {
        this.inputs = inputs;
        this.outputs = outputs;
        this.connection = connection;
        this.steps = steps.toArray(new Step[0]);
    }

    /**
     * From one device to another.
     *
     * @param compensation whether black point compensation is wished for. It never applies to the
     *     absolute intent, and always to perceptual and saturation into a profile of version 4,
     *     whose tables expect the black of the reference medium (common practice of colour engines)
     * @throws IccException when a profile has no such way or is damaged
     */
    public static IccTransform between(
            IccProfile from, IccProfile to, Intent intent, boolean compensation)
            throws IccException {
        List<Step> steps = new ArrayList<>(from.ways().toPcs(intent));
        Step connection = connection(from, to, intent, compensation);
        steps.add(connection);
        steps.addAll(to.ways().fromPcs(intent));
        return new IccTransform(from.space().channels, to.space().channels, steps, connection);
    }

    private static Step connection(
            IccProfile from, IccProfile to, Intent intent, boolean compensation)
            throws IccException {
        if (intent == Intent.ABSOLUTE) {
            return scale(white(from), white(to));
        }
        if (compensation || (to.version() == 4 && intent.rerenders())) {
            return compensate(
                    BlackPoints.source(from, intent), BlackPoints.destination(to, intent));
        }
        return NOTHING;
    }

    /**
     * From a device to colour: media-relative XYZ (Y = 1 for white), or for the absolute intent
     * relative to the perfect diffuser; see {@link #lab}.
     *
     * @throws IccException when the profile has no such way or is damaged
     */
    public static IccTransform toColour(IccProfile from, Intent intent) throws IccException {
        List<Step> steps = new ArrayList<>(from.ways().toPcs(intent));
        if (intent == Intent.ABSOLUTE) {
            steps.add(scale(white(from), Xyz.PCS_WHITE));
        }
        return new IccTransform(from.space().channels, 3, steps, NOTHING);
    }

    /**
     * From colour to a device; see {@link #device}.
     *
     * @throws IccException when the profile has no such way or is damaged
     */
    public static IccTransform fromColour(IccProfile to, Intent intent) throws IccException {
        List<Step> steps = new ArrayList<>();
        if (intent == Intent.ABSOLUTE) {
            steps.add(scale(Xyz.PCS_WHITE, white(to)));
        }
        steps.addAll(to.ways().fromPcs(intent));
        return new IccTransform(3, to.space().channels, steps, NOTHING);
    }

    /** Numbers a colour takes going in. */
    public int inputs() {
        return inputs;
    }

    /** Numbers a colour takes coming out. */
    public int outputs() {
        return outputs;
    }

    /** One colour, device to device. */
    public double[] convert(double... device) {
        double[] result = new double[outputs];
        convert(device, result, 1);
        return result;
    }

    /** Colour of a device value, D50; for a transform made by {@link #toColour}. */
    public Lab lab(double... device) {
        double[] v = room(device);
        run(v);
        return PcsCode.toLab(v);
    }

    /** Device value of a colour, D50; for a transform made by {@link #fromColour}. */
    public double[] device(Lab lab) {
        double[] v = new double[Step.ROOM];
        PcsCode.set(v, lab.toXyz(Xyz.PCS_WHITE));
        run(v);
        return Arrays.copyOf(v, outputs);
    }

    /**
     * Many colours, one after the other.
     *
     * @param from {@link #inputs} numbers a colour; not modified
     * @param to {@link #outputs} numbers a colour; modified
     * @param colours how many
     */
    public void convert(double[] from, double[] to, int colours) {
        if (from.length < (long) colours * inputs || to.length < (long) colours * outputs) {
            throw new IllegalArgumentException(
                    colours + " colours need " + inputs + " numbers each in, " + outputs + " out");
        }
        double[] v = new double[Step.ROOM];
        for (int i = 0; i < colours; i++) {
            System.arraycopy(from, i * inputs, v, 0, inputs);
            run(v);
            System.arraycopy(v, 0, to, i * outputs, outputs);
        }
    }

    /** The step between the profiles alone, on XYZ with Y = 1; in place. */
    void connect(double[] v) {
        connection.apply(v);
    }

    private double[] room(double[] device) {
        if (device.length != inputs) {
            throw new IllegalArgumentException(
                    "a colour of " + inputs + " numbers is needed, got " + device.length);
        }
        return Arrays.copyOf(device, Step.ROOM);
    }

    private void run(double[] v) {
        for (Step step : steps) {
            step.apply(v);
        }
    }

    private static Xyz white(IccProfile profile) throws IccException {
        Xyz white = profile.absoluteWhite();
        if (!(white.x() > 0 && white.y() > 0 && white.z() > 0)) {
            throw new IccException(128, "a media white of " + white + ": no absolute colours");
        }
        return white;
    }

    private static Step scale(Xyz from, Xyz to) {
        double x = from.x() / to.x();
        double y = from.y() / to.y();
        double z = from.z() / to.z();
        return v -> {
            v[0] *= x;
            v[1] *= y;
            v[2] *= z;
        };
    }

    private static Step compensate(Xyz sourceBlack, Xyz destinationBlack) {
        BlackPointCompensation compensation =
                BlackPointCompensation.between(sourceBlack, destinationBlack);
        return v -> PcsCode.set(v, compensation.apply(PcsCode.get(v)));
    }
}
