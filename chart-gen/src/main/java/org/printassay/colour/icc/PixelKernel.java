package org.printassay.colour.icc;

/** The inner loops of {@link PixelTransform}; lengths are checked by it. */
interface PixelKernel {
    /** Codes of 16 bits. */
    int CODES = 65536;

    void convert(byte[] from, byte[] to, int pixels);

    void convert(short[] from, short[] to, int pixels);
}
