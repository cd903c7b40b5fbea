package org.printassay.metric;

import java.util.List;
import java.util.stream.IntStream;
import org.printassay.colour.Lab;

/**
 * What moves a level against its anchor though twins agree, L*: the light of the scanner; what a
 * calibration is off by and what is stated for the trust, both of which grow with the distance from
 * the anchor. Of edited scans the doubt about contrast says what the calibration would.
 *
 * @param light one standard error for each cause that moves all patches
 * @param calibration standard error; 0 without a calibration
 * @param stated 95 % half-width
 */
record LevelCauses(List<Double> light, double calibration, double stated) {
    LevelCauses {
        light = List.copyOf(light);
    }

    /**
     * @param share of the whole wedge that lies between the level and its anchor
     */
    static LevelCauses of(
            Neutrals neutrals, LevelData level, LevelData anchor, double share, boolean edited) {
        List<Double> light =
                IntStream.range(0, anchor.shared().size())
                        .mapToObj(i -> level.shared().get(i).l() - anchor.shared().get(i).l())
                        .toList();
        Lab calibration = level.calibration();
        return new LevelCauses(
                light,
                calibration == null || edited ? 0 : calibration.l() * share,
                Systematic.tone(neutrals.set().trust()) * share);
    }

    /** Standard error by all of the light. */
    double lightError() {
        return Math.sqrt(light.stream().mapToDouble(l -> l * l).sum());
    }
}
