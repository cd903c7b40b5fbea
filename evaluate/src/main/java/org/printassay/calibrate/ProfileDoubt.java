package org.printassay.calibrate;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.printassay.colour.Lab;
import org.printassay.reading.Warning;
import org.printassay.reading.WarningCode;

/**
 * What a profile or a calibration may be off where the scan itself tells that it was not made as
 * they need: the exposure or the colour was set by the picture, a curve was laid over it, or the
 * profile is another scanner's; and what stray light may do that no sheet shows. One standard error
 * of every colour; all are off together.
 */
final class ProfileDoubt {
    private static final Lab NONE = new Lab(0, 0, 0);

    /**
     * What automatic exposure moves in L*, and in a* and b* with it (common practice, no source).
     */
    private static final Lab EXPOSED = new Lab(3, 1, 1);

    /**
     * What a curve moves that was laid over the codes: a gamma of 1.35 moves black and mid-tones by
     * 11 to 12 L*, which is two of these (common practice, no source).
     */
    private static final Lab CURVED = new Lab(6, 2, 2);

    /** What automatic colour moves, or a foreign profile, as for a calibration used elsewhere. */
    private static final Lab FOREIGN = new Lab(3, 4, 4);

    /**
     * Blacks of prints have L* 3 to 25, and put at the end of the range all read about 0 to 5: up
     * to 20 too dark, which is two of these (common practice, no source). Paper stays or is moved
     * on its own, and what is between is moved in proportion.
     */
    private static final double BLACK_MOVED = 10;

    private static final double WHITE_L = 100;

    /**
     * Share of the light of perfect white that flatbeds add to dark patches beside light ones
     * (common practice, no source): 0 to 2 percent, a profile takes some of it off.
     */
    private static final double STRAY = 0.005;

    private ProfileDoubt() {}

    /**
     * The error to add to each colour of a profiled scan; empty where nothing speaks against it.
     *
     * @param colours absolute colours
     * @param warnings what was found in the scans
     * @param strayAllowedFor whether stray light was estimated in every scan, or is among the
     *     errors that its readings share
     */
    static List<Lab> of(
            List<@Nullable Lab> colours, List<Warning> warnings, boolean strayAllowedFor) {
        Lab doubt = of(warnings);
        if (doubt.l() == 0 && strayAllowedFor) {
            return List.of();
        }
        List<Lab> errors = new ArrayList<>();
        for (Lab colour : colours) {
            double stray = strayAllowedFor || colour == null ? 0 : veiled(colour.l());
            errors.add(new Lab(Math.hypot(doubt.l(), stray), doubt.a(), doubt.b()));
        }
        return errors;
    }

    /**
     * The errors of a calibration with what the scan itself casts doubt on. A calibration describes
     * what the scanner gave when it was made, no more than a profile does; stray light has its
     * place among its own errors.
     *
     * @param errors of the calibration, one standard error of each colour
     * @param warnings what was found in the scans
     */
    static List<Lab> added(List<Lab> errors, List<Warning> warnings) {
        Lab doubt = of(warnings);
        return errors.stream()
                .map(
                        error ->
                                new Lab(
                                        Math.hypot(error.l(), doubt.l()),
                                        Math.hypot(error.a(), doubt.a()),
                                        Math.hypot(error.b(), doubt.b())))
                .toList();
    }

    /**
     * The errors with what a black adds that was put at the end of the range.
     *
     * @param errors one standard error of each colour; may be empty for none
     * @param colours as they read
     */
    static List<Lab> blackMoved(List<Lab> errors, List<@Nullable Lab> colours) {
        List<Lab> wider = new ArrayList<>();
        for (int i = 0; i < colours.size(); i++) {
            Lab error = errors.isEmpty() ? NONE : errors.get(i);
            Lab colour = colours.get(i);
            double l = colour == null ? 0 : Math.max(0, Math.min(WHITE_L, colour.l()));
            double moved = BLACK_MOVED * (1 - l / WHITE_L);
            wider.add(new Lab(Math.hypot(error.l(), moved), error.a(), error.b()));
        }
        return wider;
    }

    private static double veiled(double l) {
        return Lab.lightness(Lab.luminanceFactor(l) + STRAY) - l;
    }

    private static Lab of(List<Warning> warnings) {
        Lab doubt = NONE;
        for (Warning warning : warnings) {
            Lab by = of(warning.code());
            doubt =
                    new Lab(
                            Math.max(doubt.l(), by.l()),
                            Math.max(doubt.a(), by.a()),
                            Math.max(doubt.b(), by.b()));
        }
        return doubt;
    }

    private static Lab of(WarningCode code) {
        return switch (code) {
            case AUTOMATIC_COLOUR, PROFILE_DOUBTFUL -> FOREIGN;
            case AUTOMATIC_EXPOSURE -> EXPOSED;
            case HISTOGRAM_GAPS -> CURVED;
            default -> NONE;
        };
    }
}
