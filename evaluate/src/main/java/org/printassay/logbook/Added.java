package org.printassay.logbook;

/**
 * What became of an evaluation that was to be added.
 *
 * @param outcome what happened
 * @param entry the entry that now stands in the logbook for this print
 */
public record Added(Outcome outcome, Entry entry) {
    /** What can happen. */
    public enum Outcome {
        /** It is new. */
        ADDED("added"),
        /** The same evaluation was there; nothing changed. */
        ALREADY_THERE("already-there"),
        /** The same print was there with other results; nothing changed. */
        OTHER_RESULTS("other-results"),
        /** It took the place of other results of the same print. */
        REPLACED("replaced");

        private final String key;

        Outcome(String key) {
            this.key = key;
        }

        /** Name in JSON. */
        public String key() {
            return key;
        }
    }
}
