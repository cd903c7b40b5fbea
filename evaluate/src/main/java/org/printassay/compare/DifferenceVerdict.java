package org.printassay.compare;

/** What may be said of one difference among all that are looked at together. */
public enum DifferenceVerdict {
    /** It holds though many were looked at. */
    DIFFERS("differs"),
    /** Its own interval leaves zero out, but one of so many may do that by chance. */
    UNSURE("unsure"),
    /** Its interval holds zero. */
    NOT_MEASURABLE("no-measurable-difference"),
    /** There is no interval: no repeats, or a mere count. */
    NOT_TOLD("not-told");

    private final String key;

    DifferenceVerdict(String key) {
        this.key = key;
    }

    /** Name in files. */
    public String key() {
        return key;
    }
}
