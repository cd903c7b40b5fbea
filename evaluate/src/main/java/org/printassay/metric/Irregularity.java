package org.printassay.metric;

/**
 * A place on the grey scale where tone or hue does not run smoothly.
 *
 * @param kind what happens there
 * @param level where
 * @param toLevel where it ends, for a step; the same level otherwise
 * @param size L* off the smooth course for a step, a*b* units for a swing of hue
 * @param sureness size over its 95 % half-width: 1 is just significant
 */
public record Irregularity(Kind kind, int level, int toLevel, double size, double sureness) {
    /** Kinds of irregularity. */
    public enum Kind {
        /** Tone jumps: two neighbouring greys lie further apart or closer than their neighbours. */
        STEP("step"),
        /** Greys turn to another hue and back. */
        HUE_SWING("hue-swing");

        private final String key;

        Kind(String key) {
            this.key = key;
        }

        /** Name in files. */
        public String key() {
            return key;
        }
    }
}
