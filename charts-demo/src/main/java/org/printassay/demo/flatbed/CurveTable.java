package org.printassay.demo.flatbed;

/**
 * An encoding curve as a table over the binary logarithm of light, so that it is as exact in black
 * as in white; straight lines between entries err by less than 1e-6 of the light.
 */
final class CurveTable {
    private static final int LOWEST_EXPONENT = -18;
    private static final int STEPS_BITS = 10;
    private static final int DROPPED = 23 - STEPS_BITS;
    private static final int FIRST = (127 + LOWEST_EXPONENT) << STEPS_BITS;
    private static final float LOWEST = (float) Math.pow(2, LOWEST_EXPONENT);
    private static final float PART = 1f / (1 << DROPPED);

    private final float[] table;

    /** A table of an encoding up to light 1, in units of the highest code. */
    CurveTable(Encoding encoding, int highestCode) {
        int size = (-LOWEST_EXPONENT << STEPS_BITS) + 2;
        table = new float[size];
        for (int i = 0; i < size; i++) {
            float light = Float.intBitsToFloat((FIRST + i) << DROPPED);
            table[i] = (float) (highestCode * encoding.encode(light));
        }
    }

    /** Code of a light, a fraction; light is held within 0 and 1. */
    float code(float light) {
        if (!(light > LOWEST)) {
            return light <= 0 ? 0 : table[0] * (light / LOWEST);
        }
        if (light >= 1) {
            return table[table.length - 2];
        }
        int bits = Float.floatToRawIntBits(light);
        int at = (bits >> DROPPED) - FIRST;
        float share = (bits & ((1 << DROPPED) - 1)) * PART;
        return table[at] + share * (table[at + 1] - table[at]);
    }
}
