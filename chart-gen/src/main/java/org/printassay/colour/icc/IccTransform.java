package org.printassay.colour.icc;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.printassay.colour.Lab;

/**
 * Colours through profiles: device to device, device to CIELAB, CIELAB to device (ISO 15076-1;
 * black point compensation by ISO 18619). Device values are fractions 0-1 as {@link
 * IccProfile.Space} says; inputs are held within that range. Steps, their rounding ({@link Words},
 * {@link Chain}) and the choice of black are those of LittleCMS, so that results are its own.
 * Immutable, for any number of threads.
 */
public final class IccTransform {
    private final int inputs;
    private final int outputs;
    private final Chain chain;

    /** What happens to XYZ between the two profiles. */
    private final List<Step> connection;

    private IccTransform(int inputs, int outputs, List<Step> steps, List<Step> connection) {
        this.inputs = inputs;
        this.outputs = outputs;
        this.chain = Chain.of(steps);
        this.connection = connection;
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
        Connection connection = Connection.between(from, to, intent, compensation);
        List<Step> steps = new ArrayList<>(from.ways().toPcs(intent));
        steps.addAll(connection.steps(from.ways().labPcs(), to.ways().labPcs()));
        steps.addAll(to.ways().fromPcs(intent));
        return new IccTransform(
                from.space().channels, to.space().channels, steps, connection.steps(false, false));
    }

    /**
     * From a device to colour, media-relative, or for the absolute intent relative to the perfect
     * diffuser; see {@link #lab}.
     *
     * @throws IccException when the profile has no such way or is damaged
     */
    public static IccTransform toColour(IccProfile from, Intent intent) throws IccException {
        List<Step> steps = new ArrayList<>(from.ways().toPcs(intent));
        steps.addAll(Connection.toColour(from, intent).steps(from.ways().labPcs(), true));
        return new IccTransform(from.space().channels, 3, steps, List.of());
    }

    /**
     * From colour to a device; see {@link #device}.
     *
     * @throws IccException when the profile has no such way or is damaged
     */
    public static IccTransform fromColour(IccProfile to, Intent intent) throws IccException {
        return fromColour(to, intent, Connection.fromColour(to, intent));
    }

    /** From colour to a device, through a connection. */
    static IccTransform fromColour(IccProfile to, Intent intent, Connection connection)
            throws IccException {
        List<Step> steps = new ArrayList<>(connection.steps(true, to.ways().labPcs()));
        steps.addAll(to.ways().fromPcs(intent));
        return new IccTransform(3, to.space().channels, steps, List.of());
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
        chain.run(v);
        return PcsCode.lab(v);
    }

    /** Device value of a colour, D50; for a transform made by {@link #fromColour}. */
    public double[] device(Lab lab) {
        double[] v = new double[Step.ROOM];
        PcsCode.set(v, lab);
        chain.run(v);
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
            chain.run(v);
            System.arraycopy(v, 0, to, i * outputs, outputs);
        }
    }

    /** What happens between the profiles alone, on XYZ ({@link PcsCode}) in place. */
    void connect(double[] v) {
        connection.forEach(step -> step.apply(v));
    }

    private double[] room(double[] device) {
        if (device.length != inputs) {
            throw new IllegalArgumentException(
                    "a colour of " + inputs + " numbers is needed, got " + device.length);
        }
        return Arrays.copyOf(device, Step.ROOM);
    }
}
