package org.printassay.sample;

/**
 * Luminance of device light by the weights of IEC 61966-2-1, which serve any scanner well enough
 * for small differences.
 */
final class Luminance {
    private Luminance() {}

    static float of(char[] row, int column, int channels, float[][] curves) {
        int at = column * channels;
        if (channels == 1) {
            return curves[0][row[at]];
        }
        return 0.2126f * curves[0][row[at]]
                + 0.7152f * curves[1][row[at + 1]]
                + 0.0722f * curves[2][row[at + 2]];
    }
}
