package org.printassay.trend;

/**
 * Neighbouring prints that lie where they would not while nothing changes.
 *
 * @param kind what was seen
 * @param first index of the first such point
 * @param last index of the last one
 * @param extent how far from the centre: the farthest value of a jump, the running mean at the end
 *     of a drift; with its sign
 */
public record Shift(Kind kind, int first, int last, double extent) {
    /** What can be seen. */
    public enum Kind {
        /** Single values beyond the limits. */
        JUMP("jump"),
        /** The running mean beyond its limits. */
        DRIFT("drift");

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
