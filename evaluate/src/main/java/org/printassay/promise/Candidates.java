package org.printassay.promise;

import java.util.ArrayList;
import java.util.List;
import org.printassay.colour.Rgb8;
import org.printassay.colour.RgbSpace;
import org.printassay.colour.icc.IccException;
import org.printassay.colour.icc.IccProfile;
import org.printassay.colour.icc.IccTransform;
import org.printassay.colour.icc.Intent;
import org.printassay.colour.icc.RgbProfiles;

/**
 * The promised route and the common mistakes beside it, each as the colours that the printer's
 * profile predicts for it: the profile knows what any device value looks like.
 */
final class Candidates {
    private final IccProfile printer;
    private final RgbSpace space;
    private final PrintRoute route;
    private final IccTransform look;
    private final List<Candidate> mistakes = new ArrayList<>();

    private Candidates(IccProfile printer, RgbSpace space, PrintRoute route) throws IccException {
        this.printer = printer;
        this.space = space;
        this.route = route;
        this.look = IccTransform.toColour(printer, Intent.ABSOLUTE);
    }

    static Candidate promised(IccProfile printer, RgbSpace space, PrintRoute route)
            throws IccException {
        Candidates candidates = new Candidates(printer, space, route);
        return candidates.once(RouteKind.PROMISED, route.words(), space, route);
    }

    /** Everything else that may have happened. */
    static List<Candidate> mistakes(IccProfile printer, RgbSpace space, PrintRoute route)
            throws IccException {
        Candidates candidates = new Candidates(printer, space, route);
        if (printer.space() == IccProfile.Space.RGB) {
            // A printer that takes inks cannot be sent RGB codes as they are.
            candidates.unmanaged();
            candidates.twice();
        }
        candidates.otherEncodings();
        candidates.otherSettings();
        return List.copyOf(candidates.mistakes);
    }

    private void unmanaged() throws IccException {
        mistakes.add(
                new Candidate(
                        RouteKind.UNMANAGED,
                        "no colour management had been at work: the file's codes went to the"
                                + " printer unconverted",
                        code -> look.lab(fractions(code))));
    }

    /** The driver takes what it gets for sRGB, or for the file's encoding, by either intent. */
    private void twice() throws IccException {
        IccTransform first = convert(space, route);
        List<RgbSpace> taken =
                space == RgbSpace.SRGB ? List.of(space) : List.of(RgbSpace.SRGB, space);
        PrintRoute perceptual = new PrintRoute(Intent.PERCEPTUAL, route.blackPointCompensation());
        List<PrintRoute> routes =
                route.intent() == Intent.PERCEPTUAL ? List.of(route) : List.of(route, perceptual);
        for (RgbSpace encoding : taken) {
            for (PrintRoute by : routes) {
                IccTransform second = convert(encoding, by);
                mistakes.add(
                        new Candidate(
                                RouteKind.TWICE,
                                "colours had been converted to the printer's profile twice, by the"
                                        + " program and again by the driver",
                                code -> look.lab(second.convert(first.convert(fractions(code))))));
            }
        }
    }

    private void otherEncodings() throws IccException {
        for (RgbSpace other : RgbSpace.values()) {
            if (other != space) {
                mistakes.add(
                        once(
                                RouteKind.OTHER_ENCODING,
                                "the file's codes had been taken for "
                                        + other.title()
                                        + " instead of "
                                        + space.title(),
                                other,
                                route));
            }
        }
    }

    private void otherSettings() throws IccException {
        for (Intent intent : Intent.values()) {
            for (boolean compensation : new boolean[] {true, false}) {
                PrintRoute other = new PrintRoute(intent, compensation);
                boolean same = other.words().equals(route.words());
                boolean again = intent == Intent.ABSOLUTE && !compensation;
                if (!same && !again) {
                    mistakes.add(
                            once(
                                    RouteKind.OTHER_SETTINGS,
                                    "it had been converted " + other.words(),
                                    space,
                                    other));
                }
            }
        }
    }

    private Candidate once(RouteKind kind, String words, RgbSpace encoding, PrintRoute by)
            throws IccException {
        IccTransform transform = convert(encoding, by);
        return new Candidate(kind, words, code -> look.lab(transform.convert(fractions(code))));
    }

    private IccTransform convert(RgbSpace encoding, PrintRoute by) throws IccException {
        return IccTransform.between(
                IccProfile.parse(RgbProfiles.of(encoding)),
                printer,
                by.intent(),
                by.blackPointCompensation());
    }

    private static double[] fractions(Rgb8 code) {
        return new double[] {code.r() / 255.0, code.g() / 255.0, code.b() / 255.0};
    }
}
