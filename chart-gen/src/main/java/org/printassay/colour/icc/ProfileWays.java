package org.printassay.colour.icc;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.printassay.colour.Xyz;
import org.printassay.colour.icc.IccProfile.Space;

/**
 * The ways a profile offers between device values and its connection space, chosen as ISO 15076-1,
 * 8.10, orders: the table of the intent, else the perceptual one (A2B0, B2A0), else matrix or grey
 * curve. The floating-point tags D2Bx and B2Dx are optional for readers and not read; a profile
 * with them carries the others too.
 */
final class ProfileWays {
    private final IccBytes in;
    private final Map<String, IccBytes> tags;
    private final Space space;
    private final boolean labPcs;

    ProfileWays(IccBytes in, Map<String, IccBytes> tags, Space space, boolean labPcs) {
        this.in = in;
        this.tags = Map.copyOf(tags);
        this.space = space;
        this.labPcs = labPcs;
    }

    Space space() {
        return space;
    }

    /** Whether the connection space is CIELAB; else it is XYZ. */
    boolean labPcs() {
        return labPcs;
    }

    /** Whether the profile has a table of its own for the way to the device by this intent. */
    boolean hasTableFromPcs(Intent intent) {
        return tags.containsKey("B2A" + intent.table());
    }

    /** Whether it tells colours by this intent itself: by a table of its own or by curves. */
    boolean tells(Intent intent) {
        return tags.containsKey("A2B" + intent.table()) || hasCurves();
    }

    /** Whether it has curves, and colorants where they are needed, beside tables or alone. */
    boolean hasCurves() {
        return switch (space) {
            case GREY -> tags.containsKey("kTRC");
            case RGB ->
                    tags.keySet()
                            .containsAll(List.of("rTRC", "gTRC", "bTRC", "rXYZ", "gXYZ", "bXYZ"));
            case CMYK, LAB, XYZ -> false;
        };
    }

    /** Whether it has no table for the way to colour, so that every intent is the same. */
    boolean isShaper() {
        return !tags.containsKey("A2B0") && !tags.containsKey("A2B1");
    }

    /** Relative colorimetric way to colour. */
    DeviceModel model() throws IccException {
        IccBytes table = table("A2B", Intent.RELATIVE);
        if (table == null) {
            return shaper();
        }
        List<Step> steps = new ArrayList<>(TableReader.exactToPcs(table, space, labPcs));
        if (labPcs) {
            steps.add(PcsCode::labToXyz);
        }
        return new TableModel(space.channels, steps);
    }

    /** Steps from device values, fractions 0-1, to the connection space ({@link PcsCode}). */
    List<Step> toPcs(Intent intent) throws IccException {
        IccBytes table = table("A2B", intent);
        if (table != null) {
            return TableReader.toPcs(table, space, labPcs);
        }
        DeviceModel shaper = shaper();
        return shaper instanceof MatrixModel matrix ? matrix.toPcs() : ((GreyModel) shaper).toPcs();
    }

    /** Steps from the connection space to device values, held within 0-1. */
    List<Step> fromPcs(Intent intent) throws IccException {
        IccBytes table = table("B2A", intent);
        if (table != null) {
            return TableReader.fromPcs(table, space, labPcs);
        }
        if (!isShaper() && !tags.containsKey("kTRC") && !tags.containsKey("rTRC")) {
            throw in.fault(
                    128,
                    "it only tells what device values look like, not which values give a colour"
                            + " (no B2A0)");
        }
        DeviceModel shaper = shaper();
        if (shaper instanceof GreyModel grey) {
            return grey.fromPcs();
        }
        MatrixModel matrix = (MatrixModel) shaper;
        if (!matrix.hasInverse()) {
            throw in.fault(128, "its three colorants are not independent: no way back to RGB");
        }
        return matrix.fromPcs();
    }

    private @Nullable IccBytes table(String way, Intent intent) {
        IccBytes own = tags.get(way + intent.table());
        return own == null ? tags.get(way + "0") : own;
    }

    private DeviceModel shaper() throws IccException {
        if (space == Space.GREY) {
            return new GreyModel(IccCurve.parse(tag("kTRC")).curve(), labPcs);
        }
        if (space != Space.RGB || labPcs) {
            throw in.fault(128, "no table from device values to colour (A2B0)");
        }
        List<IccCurve> curves = new ArrayList<>();
        double[] matrix = new double[9];
        for (int i = 0; i < 3; i++) {
            String channel = "rgb".substring(i, i + 1);
            curves.add(IccCurve.parse(tag(channel + "TRC")).curve());
            Xyz colorant = xyz(tag(channel + "XYZ"));
            matrix[i] = colorant.x();
            matrix[3 + i] = colorant.y();
            matrix[6 + i] = colorant.z();
        }
        return new MatrixModel(curves, matrix);
    }

    private IccBytes tag(String name) throws IccException {
        IccBytes tag = tags.get(name);
        if (tag == null) {
            throw in.fault(128, "the tag '" + name + "' is missing");
        }
        return tag;
    }

    static Xyz xyz(IccBytes tag) throws IccException {
        if (!tag.ascii(0, 4).equals("XYZ ")) {
            throw tag.fault(0, "expected XYZ values, found '" + tag.ascii(0, 4) + "'");
        }
        return new Xyz(tag.fixed(8), tag.fixed(12), tag.fixed(16));
    }
}
