package org.printassay.reading;

/** How colour was obtained, highest trust first. */
public enum Trust {
    /** A measurement file. */
    INSTRUMENT("instrument"),
    /** A scan with a calibration made from an instrument's measurement of a print. */
    CALIBRATED_SCAN("calibrated-scan"),
    /** A scan with an input profile, embedded or given. */
    PROFILED_SCAN("profiled-scan"),
    /** A scan with no profile: only relative statements hold. */
    PLAIN_SCAN("plain-scan");

    private final String key;

    Trust(String key) {
        this.key = key;
    }

    /** Name in files. */
    public String key() {
        return key;
    }

    /** Whether absolute colour (L*, density, gamut, colour differences) may be stated. */
    public boolean absolute() {
        return this != PLAIN_SCAN;
    }
}
