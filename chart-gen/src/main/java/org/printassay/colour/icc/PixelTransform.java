package org.printassay.colour.icc;

import org.printassay.colour.icc.IccProfile.Space;

/**
 * A transform for pictures: many pixels of 8 or 16 bits a channel, fast. Two matrix profiles become
 * curves and one matrix; everything else becomes a table whose points are spaced evenly in
 * lightness, 33 along each of three inputs, 17 along each of four, interpolated as tables of device
 * values are. Against {@link IccTransform} results differ by rounding and by what lies between the
 * table's points: on average half an 8-bit code, more where colours leave the reach of the
 * destination and bend. Immutable, for any number of threads.
 */
public final class PixelTransform {
    private final int inputs;
    private final int outputs;
    private final PixelKernel kernel;

    private PixelTransform(int inputs, int outputs, PixelKernel kernel) {
        this.inputs = inputs;
        this.outputs = outputs;
        this.kernel = kernel;
    }

    /**
     * From one device to another; arguments as in {@link IccTransform#between}.
     *
     * @throws IccException when a profile has no such way, is damaged, or is not of grey, RGB or
     *     CMYK, whose pixels mean the same to everybody
     */
    public static PixelTransform between(
            IccProfile from, IccProfile to, Intent intent, boolean compensation)
            throws IccException {
        for (IccProfile profile : new IccProfile[] {from, to}) {
            if (profile.space() == Space.LAB || profile.space() == Space.XYZ) {
                throw new IccException(16, "pixels of " + profile.space() + " are not converted");
            }
        }
        IccTransform exact = IccTransform.between(from, to, intent, compensation);
        PixelKernel kernel =
                from.model() instanceof MatrixModel source
                                && to.model() instanceof MatrixModel destination
                        ? ShaperKernel.of(source, exact, destination)
                        : TableKernel.of(from.model(), exact);
        return new PixelTransform(exact.inputs(), exact.outputs(), kernel);
    }

    /** Channels of a pixel going in. */
    public int inputs() {
        return inputs;
    }

    /** Channels of a pixel coming out. */
    public int outputs() {
        return outputs;
    }

    /**
     * Pixels of 8 bits a channel, channels side by side; ink codes rise with ink.
     *
     * @param from not modified
     * @param to modified
     * @param pixels how many, from the start of both
     */
    public void convert(byte[] from, byte[] to, int pixels) {
        check(from.length, to.length, pixels);
        kernel.convert(from, to, pixels);
    }

    /** Pixels of 16 bits a channel, unsigned; else as with bytes. */
    public void convert(short[] from, short[] to, int pixels) {
        check(from.length, to.length, pixels);
        kernel.convert(from, to, pixels);
    }

    private void check(int from, int to, int pixels) {
        if (from < (long) pixels * inputs || to < (long) pixels * outputs) {
            throw new IllegalArgumentException(
                    pixels + " pixels need " + inputs + " channels in, " + outputs + " out");
        }
    }
}
