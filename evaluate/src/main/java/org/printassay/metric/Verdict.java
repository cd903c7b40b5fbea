package org.printassay.metric;

/** Whether a level can be told from black (or paper) at the threshold, by its 95 % interval. */
public enum Verdict {
    /** The lower bound of the difference reaches the threshold. */
    SEPARATED("separated"),
    /** The upper bound of the difference stays below the threshold. */
    MERGED("merged"),
    /** Neither. */
    UNCERTAIN("uncertain");

    private final String key;

    Verdict(String key) {
        this.key = key;
    }

    /** Name in files. */
    public String key() {
        return key;
    }
}
