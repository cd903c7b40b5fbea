package org.printassay.logbook;

/** What a logbook is opened for. */
public enum Opening {
    /** Reading; it must be there, and may lie where nothing can be written. */
    READ,
    /** Changing; it must be there. */
    CHANGE,
    /** Adding; it is begun where there is none. */
    BEGIN
}
