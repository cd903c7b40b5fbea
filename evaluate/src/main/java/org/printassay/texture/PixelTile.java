package org.printassay.texture;

/**
 * A rectangle of pixels of a flat area, linear light, row by row.
 *
 * @param columns pixels across
 * @param rows pixels down
 * @param samplesPerMm pixels per millimetre
 */
public record PixelTile(int columns, int rows, double samplesPerMm, Pixels light) {
    /** Values, shared, not to be modified. */
    public static final class Pixels {
        private final float[] values;

        /** Takes values; not copied. */
        public Pixels(float[] values) {
            this.values = values;
        }

        /** One value. */
        public float at(int index) {
            return values[index];
        }

        /** How many. */
        public int count() {
            return values.length;
        }
    }

    public PixelTile {
        if (light.count() < columns * rows) {
            throw new IllegalArgumentException(columns + " x " + rows + " pixels are not there");
        }
    }

    /** A rectangle of its pixels, copied. */
    public PixelTile part(int left, int top, int width, int height) {
        float[] values = new float[width * height];
        for (int y = 0; y < height; y++) {
            for (int x = 0; x < width; x++) {
                values[y * width + x] = (float) at(left + x, top + y);
            }
        }
        return new PixelTile(width, height, samplesPerMm, new Pixels(values));
    }

    double at(int column, int row) {
        return light.at(row * columns + column);
    }

    /** Mean light. */
    public double mean() {
        double sum = 0;
        for (int i = 0; i < columns * rows; i++) {
            sum += light.at(i);
        }
        return sum / (columns * rows);
    }
}
