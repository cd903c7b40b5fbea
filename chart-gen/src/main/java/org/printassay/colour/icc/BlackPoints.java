package org.printassay.colour.icc;

import java.util.Arrays;
import java.util.function.UnaryOperator;
import org.printassay.colour.Lab;
import org.printassay.colour.Xyz;

/**
 * Black points for black point compensation (ISO 18619:2015, clause 4.2): media-relative neutrals.
 * A device's darkest colour is often not its black value; printing profiles are asked by going
 * there and back.
 */
final class BlackPoints {
    /** Black of the reference medium of version 4 (ISO 15076-1, 6.3.3), as L*. */
    private static final Xyz REFERENCE_MEDIUM = new Xyz(0.336, 0.34731, 0.287);

    private static final Lab PURE = new Lab(0, 0, 0);

    private static final Xyz NONE = new Xyz(0, 0, 0);

    /** No medium is as light as this where it is darkest: the profile says something else. */
    private static final double LIGHTEST_BLACK = 50;

    private BlackPoints() {}

    /** Black of the colours that come out of a profile. */
    static Xyz source(IccProfile profile, Intent intent) throws IccException {
        if (profile.version() == 4 && intent.rerenders()) {
            return profile.ways().hasCurves()
                    ? darkest(profile, Intent.RELATIVE)
                    : REFERENCE_MEDIUM;
        }
        boolean inks =
                profile.deviceClass() == IccProfile.DeviceClass.OUTPUT
                        && profile.space() == IccProfile.Space.CMYK;
        // All inks together may never be printed: ask which black the profile itself would print.
        return intent == Intent.RELATIVE && inks ? printed(profile) : darkest(profile, intent);
    }

    /** Black of the colours that go into a profile. */
    static Xyz destination(IccProfile profile, Intent intent) throws IccException {
        boolean device =
                switch (profile.space()) {
                    case GREY, RGB, CMYK -> true;
                    case LAB, XYZ -> false;
                };
        boolean reference = profile.version() == 4 && intent.rerenders();
        if (reference || !device || !profile.ways().hasTableFromPcs(intent)) {
            return source(profile, intent);
        }
        Lab start =
                intent == Intent.RELATIVE ? Lab.of(source(profile, intent), Xyz.PCS_WHITE) : PURE;
        return BlackRamp.of(thereAndBack(profile, intent), start)
                .black(intent)
                .toXyz(Xyz.PCS_WHITE);
    }

    /** What the perceptual way makes of L* 0; pure black when there is no such way. */
    private static Xyz printed(IccProfile profile) throws IccException {
        Intent by = Intent.PERCEPTUAL;
        return profile.ways().tells(by) && profile.ways().hasTableFromPcs(by)
                ? neutral(thereAndBack(profile, by).apply(PURE))
                : NONE;
    }

    /** Colour of no light or of all inks; pure black when the profile does not tell. */
    private static Xyz darkest(IccProfile profile, Intent intent) throws IccException {
        double[] v = new double[profile.space().channels];
        switch (profile.space()) {
            case GREY, RGB -> {}
            case CMYK -> Arrays.fill(v, 1);
            case LAB -> Arrays.fill(v, 1, 3, PcsCode.NO_TINT);
            case XYZ -> {
                return NONE;
            }
        }
        if (!profile.ways().tells(intent)) {
            return NONE;
        }
        return neutral(IccTransform.toColour(profile, intent).lab(v));
    }

    /** Made neutral, L* held within 0-50. */
    private static Xyz neutral(Lab lab) {
        double lightness = Math.max(0, Math.min(lab.l(), LIGHTEST_BLACK));
        return new Lab(lightness, 0, 0).toXyz(Xyz.PCS_WHITE);
    }

    /**
     * To the device by an intent and back to the colour it prints. Where version 4 expects the
     * reference medium's black, that is what L* 0 becomes first: {@link IccTransform#between} has
     * compensation always on there, and so has the engine that this one agrees with.
     */
    private static UnaryOperator<Lab> thereAndBack(IccProfile profile, Intent intent)
            throws IccException {
        boolean reference = profile.version() == 4 && intent.rerenders();
        Connection first = Connection.blacks(NONE, reference ? REFERENCE_MEDIUM : NONE);
        IccTransform there = IccTransform.fromColour(profile, intent, first);
        IccTransform back = IccTransform.toColour(profile, Intent.RELATIVE);
        return lab -> back.lab(there.device(lab));
    }
}
