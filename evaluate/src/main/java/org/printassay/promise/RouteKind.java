package org.printassay.promise;

/** What may have happened to the file's codes on their way to the printer. */
public enum RouteKind {
    /** What the user says: converted once, as named. */
    PROMISED("promised"),
    /** Not converted: codes went to the printer as they were. */
    UNMANAGED("unmanaged"),
    /** Converted by the program, and once more by the driver. */
    TWICE("twice"),
    /** Converted, but the codes were taken for those of another RGB encoding. */
    OTHER_ENCODING("other-encoding"),
    /** Converted by another intent, or with black point compensation the other way. */
    OTHER_SETTINGS("other-settings");

    private final String key;

    RouteKind(String key) {
        this.key = key;
    }

    /** Name in files. */
    public String key() {
        return key;
    }
}
