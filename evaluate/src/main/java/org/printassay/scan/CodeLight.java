package org.printassay.scan;

/** How a scanner's codes stand for light: the inverse of its encoding curve, per channel. */
@FunctionalInterface
public interface CodeLight {
    /**
     * Linear light (0-1) of every 16 bit code of a channel.
     *
     * @param channel 0 to 2 (red, green, blue); a grey scan uses 1
     * @return 65536 values, rising; shared, not to be modified
     */
    float[] curve(int channel);
}
