package org.printassay.evaluation;

import org.printassay.reading.Trust;

/** What findings say of how colours were obtained. */
final class TrustWords {
    private TrustWords() {}

    /**
     * What a finding rests on.
     *
     * @param scan said of a scan that is not calibrated: what it cannot show depends on the finding
     */
    static String basis(Trust trust, String scan) {
        return switch (trust) {
            case INSTRUMENT -> "read with an instrument";
            case CALIBRATED_SCAN -> "by a calibrated scan";
            case PROFILED_SCAN, PLAIN_SCAN -> scan;
        };
    }
}
