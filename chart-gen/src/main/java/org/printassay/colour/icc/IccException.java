package org.printassay.colour.icc;

/** An ICC profile that cannot be used: where, and why. */
public final class IccException extends Exception {
    private static final long serialVersionUID = 1L;

    private final long offset;

    /**
     * @param offset bytes from the start of the profile
     * @param reason what is wrong, plain words
     */
    public IccException(long offset, String reason) {
        super("ICC profile, byte " + offset + ": " + reason);
        this.offset = offset;
    }

    /** Bytes from the start of the profile. */
    public long offset() {
        return offset;
    }
}
