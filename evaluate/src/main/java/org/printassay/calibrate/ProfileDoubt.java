package org.printassay.calibrate;

import java.util.List;
import org.printassay.colour.Lab;
import org.printassay.reading.Warning;
import org.printassay.reading.WarningCode;

/**
 * What a profile may be off where the scan itself tells that it was not made as profiles need: the
 * exposure or the colour was set by the picture, or the profile is another scanner's. One standard
 * error of every colour; all are off together.
 */
final class ProfileDoubt {
    /**
     * What automatic exposure moves in L*, and in a* and b* with it (common practice, no source).
     */
    private static final Lab EXPOSED = new Lab(3, 1, 1);

    /** What automatic colour moves, or a foreign profile, as for a calibration used elsewhere. */
    private static final Lab FOREIGN = new Lab(3, 4, 4);

    private ProfileDoubt() {}

    /**
     * The error to add to every colour of a profiled scan, zero where nothing speaks against it.
     *
     * @param warnings what was found in the scans
     */
    static Lab of(List<Warning> warnings) {
        Lab doubt = new Lab(0, 0, 0);
        for (Warning warning : warnings) {
            if (warning.code() == WarningCode.AUTOMATIC_COLOUR
                    || warning.code() == WarningCode.PROFILE_DOUBTFUL) {
                return FOREIGN;
            }
            if (warning.code() == WarningCode.AUTOMATIC_EXPOSURE) {
                doubt = EXPOSED;
            }
        }
        return doubt;
    }
}
