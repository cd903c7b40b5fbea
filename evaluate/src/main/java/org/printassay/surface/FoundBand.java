package org.printassay.surface;

import java.util.List;

/**
 * Periodic unevenness along one axis.
 *
 * @param along axis that it varies along
 * @param periodMm distance from one dark band to the next
 * @param amplitudeDeltaL half the range, L*, in the tints that show it
 * @param visible whether an eye sees it at the stated distance and light
 * @param overThreshold modulation against the smallest that is seen; 1 is just visible
 * @param shows ids of tints that show it
 * @param onPaper whether bare paper shows it too, so that it is no matter of ink
 */
public record FoundBand(
        Along along,
        double periodMm,
        double amplitudeDeltaL,
        boolean visible,
        double overThreshold,
        List<String> shows,
        boolean onPaper) {
    public FoundBand {
        shows = List.copyOf(shows);
    }
}
