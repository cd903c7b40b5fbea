package org.printassay.colour.icc;

import org.printassay.colour.Xyz;

/**
 * How a profile turns device values into colour, split where averaging has to happen: {@link
 * #linear} takes a code to light, one channel at a time; light may be averaged, evened out, freed
 * of stray light; {@link #lightToXyz} turns it into colour. {@code toXyz(code)} does both.
 *
 * <p>Codes are fractions 0-1. All XYZ are media-relative, Y = 100 for the white of the connection
 * space (relative colorimetric intent); {@link IccProfile#absolute} makes them absolute.
 */
public sealed interface DeviceModel permits MatrixModel, GreyModel, TableModel {
    /** Channels: 1 grey, 3 RGB, 4 CMYK. */
    int channels();

    /**
     * Light of one channel's code, rising from about 0 to about 1. Matrix and grey profiles: the
     * channel's own curve, exact. Table profiles: the profile's luminance along its neutral axis,
     * the same for every channel; a good place to average in, no more.
     */
    double linear(int channel, double code);

    /**
     * Colour of linear light, one number a channel. Values somewhat outside 0-1 are continued where
     * the model is a matrix, held at its ends where it is a table.
     */
    Xyz lightToXyz(double... light);

    /** Colour of a device value, codes 0-1, one a channel. */
    Xyz toXyz(double... code);
}
