package org.printassay.scan;

/**
 * The orientation tag (TIFF 6.0 tag 274, also in Exif). Turned images are read as they are stored:
 * the markers tell the turn. Only the mirroring orientations matter, and mirroring left to right
 * undoes each of them up to a turn.
 */
final class Orientation {
    private Orientation() {}

    /** Whether a tag value says that the stored image is mirrored. */
    static boolean mirrored(long tag) {
        return tag == 2 || tag == 4 || tag == 5 || tag == 7;
    }
}
