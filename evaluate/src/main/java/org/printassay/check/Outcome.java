package org.printassay.check;

/** What a check says, of one quantity or of a print. Later ones outweigh earlier ones. */
public enum Outcome {
    /** No change that the uncertainty lets one see; were there one, it would be inside. */
    WITHIN("within"),
    /** Surely changed, and by its best estimate inside the tolerance. */
    DRIFTED("drifted"),
    /** The uncertainty is too large to decide. */
    CANNOT_TELL("cannot tell"),
    /** Surely outside the tolerance. */
    FAILED("failed");

    private final String words;

    Outcome(String words) {
        this.words = words;
    }

    /** For readers. */
    public String words() {
        return words;
    }

    /** Name in files. */
    public String key() {
        return words.replace(' ', '-');
    }

    /** What a program ends with: 1 failed, 6 cannot tell, else 0. */
    public int exitCode() {
        return switch (this) {
            case WITHIN, DRIFTED -> 0;
            case CANNOT_TELL -> 6;
            case FAILED -> 1;
        };
    }

    /** The weightier of two. */
    public Outcome or(Outcome other) {
        return compareTo(other) >= 0 ? this : other;
    }
}
