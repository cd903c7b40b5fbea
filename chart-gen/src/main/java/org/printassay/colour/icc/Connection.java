package org.printassay.colour.icc;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.printassay.colour.BlackPointCompensation;
import org.printassay.colour.Xyz;

/** What happens to colours between two profiles: straight scaling of XYZ, or nothing. */
final class Connection {
    static final Connection NOTHING = new Connection(null);

    /**
     * Changes whose gains and lifts differ from 1 and 0 by less than this in all are left out, as
     * LittleCMS does: a compensated black below L* 0.4, a white like the other.
     */
    private static final double NEXT_TO_NOTHING = 0.002;

    /** On XYZ fractions. */
    private final @Nullable Step change;

    private Connection(@Nullable Step change) {
        this.change = change;
    }

    /** See {@link IccTransform#between}. */
    static Connection between(IccProfile from, IccProfile to, Intent intent, boolean compensation)
            throws IccException {
        if (intent == Intent.ABSOLUTE) {
            return whites(white(from), white(to));
        }
        if (compensation || (to.version() == 4 && intent.rerenders())) {
            return blacks(BlackPoints.source(from, intent), BlackPoints.destination(to, intent));
        }
        return NOTHING;
    }

    /** To colours, which for the absolute intent are relative to the perfect diffuser. */
    static Connection toColour(IccProfile from, Intent intent) throws IccException {
        return intent == Intent.ABSOLUTE ? whites(white(from), Xyz.PCS_WHITE) : NOTHING;
    }

    /** From colours as above. */
    static Connection fromColour(IccProfile to, Intent intent) throws IccException {
        return intent == Intent.ABSOLUTE ? whites(Xyz.PCS_WHITE, white(to)) : NOTHING;
    }

    /** Black point compensation between two black points. */
    static Connection blacks(Xyz source, Xyz destination) {
        Xyz white = Xyz.PCS_WHITE;
        Xyz lift = BlackPointCompensation.between(source, destination).apply(new Xyz(0, 0, 0));
        Xyz gain =
                new Xyz(
                        1 - lift.x() / white.x(),
                        1 - lift.y() / white.y(),
                        1 - lift.z() / white.z());
        return of(gain, lift.times(0.01 / PcsCode.XYZ_RANGE));
    }

    private static Connection whites(Xyz from, Xyz to) {
        Xyz gain = new Xyz(from.x() / to.x(), from.y() / to.y(), from.z() / to.z());
        return of(gain, new Xyz(0, 0, 0));
    }

    private static Connection of(Xyz gain, Xyz lift) {
        double gains = Math.abs(gain.x() - 1) + Math.abs(gain.y() - 1) + Math.abs(gain.z() - 1);
        double lifts = Math.abs(lift.x()) + Math.abs(lift.y()) + Math.abs(lift.z());
        if (gains + lifts < NEXT_TO_NOTHING) {
            return NOTHING;
        }
        return new Connection(
                v -> {
                    v[0] = gain.x() * v[0] + lift.x();
                    v[1] = gain.y() * v[1] + lift.y();
                    v[2] = gain.z() * v[2] + lift.z();
                });
    }

    private static Xyz white(IccProfile profile) throws IccException {
        Xyz white = profile.absoluteWhite();
        if (!(white.x() > 0 && white.y() > 0 && white.z() > 0)) {
            throw new IccException(128, "a media white of " + white + ": no absolute colours");
        }
        return white;
    }

    /** Steps from one connection space to the other. */
    List<Step> steps(boolean fromLab, boolean toLab) {
        Step in = PcsCode::labToXyz;
        Step out = PcsCode::xyzToLab;
        if (change == null) {
            return fromLab == toLab ? List.of() : List.of(fromLab ? in : out);
        }
        if (fromLab) {
            return toLab ? List.of(in, change, out) : List.of(in, change);
        }
        return toLab ? List.of(change, out) : List.of(change);
    }
}
