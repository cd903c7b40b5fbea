package org.printassay.colour.icc;

import java.util.Arrays;
import java.util.List;
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

    /** No medium is as light as this where it is darkest: the profile says something else. */
    private static final double LIGHTEST_BLACK = 50;

    private BlackPoints() {}

    /** Black of the colours that come out of a profile. */
    static Xyz source(IccProfile profile, Intent intent) throws IccException {
        if (profile.version() == 4 && intent.rerenders()) {
            return profile.ways().isShaper() ? darkest(profile, Intent.RELATIVE) : REFERENCE_MEDIUM;
        }
        boolean inks =
                profile.deviceClass() == IccProfile.DeviceClass.OUTPUT
                        && profile.space() == IccProfile.Space.CMYK;
        // All inks together may never be printed: ask which black the profile itself would print.
        return intent == Intent.RELATIVE && inks && canPrint(profile)
                ? printed(profile)
                : darkest(profile, intent);
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

    private static boolean canPrint(IccProfile profile) {
        return profile.ways().hasTableFromPcs(Intent.PERCEPTUAL);
    }

    /** What the perceptual way makes of L* 0. */
    private static Xyz printed(IccProfile profile) throws IccException {
        return neutral(thereAndBack(profile, Intent.PERCEPTUAL).apply(PURE), LIGHTEST_BLACK);
    }

    /** Colour of no light or of all inks. */
    private static Xyz darkest(IccProfile profile, Intent intent) throws IccException {
        double[] v = new double[Step.ROOM];
        switch (profile.space()) {
            case GREY, RGB -> {}
            case CMYK -> Arrays.fill(v, 0, 4, 1);
            case LAB, XYZ -> {
                return new Xyz(0, 0, 0);
            }
        }
        for (Step step : profile.ways().toPcs(intent)) {
            step.apply(v);
        }
        return neutral(PcsCode.toLab(v), 0);
    }

    /** Made neutral; a lightness no black can have is replaced. */
    private static Xyz neutral(Lab lab, double instead) {
        boolean possible = lab.l() >= 0 && lab.l() <= LIGHTEST_BLACK;
        double lightness = possible ? lab.l() : lab.l() < 0 ? 0 : instead;
        return new Lab(lightness, 0, 0).toXyz(Xyz.PCS_WHITE);
    }

    /** To the device by an intent and back to the colour it prints. */
    private static UnaryOperator<Lab> thereAndBack(IccProfile profile, Intent intent)
            throws IccException {
        List<Step> there = profile.ways().fromPcs(intent);
        List<Step> back = profile.ways().toPcs(Intent.RELATIVE);
        return lab -> {
            double[] v = new double[Step.ROOM];
            PcsCode.set(v, lab.toXyz(Xyz.PCS_WHITE));
            there.forEach(step -> step.apply(v));
            back.forEach(step -> step.apply(v));
            return PcsCode.toLab(v);
        };
    }
}
