package org.printassay.colour.icc;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.printassay.colour.Xyz;

/**
 * A profile read for its way from device values to colour (ISO 15076-1, versions 2 and 4).
 *
 * @param version major version, 2 or 4
 * @param deviceClass what the profile is for
 * @param space device colour space
 * @param description the profile's name, control characters removed, at most 200 characters; empty
 *     when it has none
 * @param mediaWhite media white as the profile has it, Y = 100 for the perfect diffuser; the
 *     connection space white when it has none
 * @param model relative colorimetric way from device values to colour
 */
public record IccProfile(
        int version,
        DeviceClass deviceClass,
        Space space,
        String description,
        Xyz mediaWhite,
        DeviceModel model) {

    /** What a profile is for. */
    public enum DeviceClass {
        /** Scanner or camera. */
        INPUT,
        /** Screen, and most working spaces. */
        DISPLAY,
        /** Printer. */
        OUTPUT,
        /** An encoding. */
        COLOUR_SPACE
    }

    /** Device colour spaces that are understood. */
    public enum Space {
        GREY(1),
        RGB(3),
        CMYK(4);

        /** Device channels. */
        public final int channels;

        Space(int channels) {
            this.channels = channels;
        }
    }

    private static final int MAX_TAGS = 1000;

    /**
     * Reads a profile.
     *
     * @throws IccException when it is damaged or of a kind that is not understood
     */
    public static IccProfile parse(byte[] bytes) throws IccException {
        IccBytes in = IccBytes.of(bytes);
        if (in.size() < 132) {
            throw in.fault(0, "only " + in.size() + " bytes, shorter than a profile's header");
        }
        if (!in.ascii(36, 4).equals("acsp")) {
            throw in.fault(36, "the mark 'acsp' is missing: not an ICC profile");
        }
        long declared = in.u32(0);
        if (declared > in.size()) {
            throw in.fault(0, "cut off: it should have " + declared + " bytes, has " + in.size());
        }
        int version = in.u8(8);
        if (version != 2 && version != 4) {
            throw in.fault(8, "version " + version + "; versions 2 and 4 are understood");
        }
        DeviceClass deviceClass = deviceClass(in);
        Space space = space(in);
        boolean labPcs = labPcs(in);
        Map<String, IccBytes> tags = tags(in);
        IccBytes white = tags.get("wtpt");
        return new IccProfile(
                version,
                deviceClass,
                space,
                IccText.description(tags.get("desc")),
                white == null ? Xyz.PCS_WHITE : xyz(white).times(100),
                model(in, tags, space, labPcs));
    }

    /** Media-relative XYZ (white is {@link Xyz#PCS_WHITE}) of device values, 0-1 a channel. */
    public Xyz toXyz(double... device) {
        if (device.length != space.channels) {
            throw new IllegalArgumentException(
                    space + " has " + space.channels + " channels, got " + device.length);
        }
        return model.toXyz(device);
    }

    /**
     * The absolute colour of a media-relative one. Input and output profiles: scaled by the media
     * white (ISO 15076-1, 6.3.2.2), because there relative means relative to a paper. Display and
     * encoding profiles: unchanged. Their white stands for the perfect diffuser when a scan is
     * encoded with them, and many of version 2 carry the screen's own white (D65) in this tag,
     * which would tint a paper blue.
     */
    public Xyz absolute(Xyz relative) {
        if (deviceClass == DeviceClass.DISPLAY || deviceClass == DeviceClass.COLOUR_SPACE) {
            return relative;
        }
        Xyz white = Xyz.PCS_WHITE;
        return new Xyz(
                relative.x() * mediaWhite.x() / white.x(),
                relative.y() * mediaWhite.y() / white.y(),
                relative.z() * mediaWhite.z() / white.z());
    }

    private static DeviceClass deviceClass(IccBytes in) throws IccException {
        String name = in.ascii(12, 4);
        return switch (name) {
            case "scnr" -> DeviceClass.INPUT;
            case "mntr" -> DeviceClass.DISPLAY;
            case "prtr" -> DeviceClass.OUTPUT;
            case "spac" -> DeviceClass.COLOUR_SPACE;
            case "link" -> throw in.fault(12, "a device link, which describes no single device");
            default -> throw in.fault(12, "profile class '" + name + "' is not understood");
        };
    }

    private static Space space(IccBytes in) throws IccException {
        String name = in.ascii(16, 4);
        return switch (name) {
            case "GRAY" -> Space.GREY;
            case "RGB " -> Space.RGB;
            case "CMYK" -> Space.CMYK;
            default ->
                    throw in.fault(
                            16, "device space '" + name + "'; grey, RGB and CMYK are understood");
        };
    }

    private static boolean labPcs(IccBytes in) throws IccException {
        String name = in.ascii(20, 4);
        return switch (name) {
            case "Lab " -> true;
            case "XYZ " -> false;
            default -> throw in.fault(20, "connection space '" + name + "' is neither XYZ nor Lab");
        };
    }

    private static Map<String, IccBytes> tags(IccBytes in) throws IccException {
        long count = in.u32(128);
        if (count > MAX_TAGS) {
            throw in.fault(128, count + " tags; a profile has a few dozen");
        }
        Map<String, IccBytes> tags = new LinkedHashMap<>();
        for (int i = 0; i < count; i++) {
            long at = 132 + 12L * i;
            tags.putIfAbsent(in.ascii(at, 4), in.part(in.u32(at + 4), in.u32(at + 8)));
        }
        return tags;
    }

    private static DeviceModel model(
            IccBytes in, Map<String, IccBytes> tags, Space space, boolean labPcs)
            throws IccException {
        // Relative colorimetric first; A2B0 alone stands for every intent (ISO 15076-1, 8.10).
        IccBytes table = Optional.ofNullable(tags.get("A2B1")).orElse(tags.get("A2B0"));
        if (table != null) {
            return TableReader.read(table, space.channels, labPcs);
        }
        if (space == Space.GREY) {
            return new GreyModel(IccCurve.parse(tag(in, tags, "kTRC")).curve(), labPcs);
        }
        if (space != Space.RGB || labPcs) {
            throw in.fault(128, "no table from device values to colour (A2B0)");
        }
        List<IccCurve> curves = new ArrayList<>();
        double[] matrix = new double[9];
        for (int i = 0; i < 3; i++) {
            String channel = "rgb".substring(i, i + 1);
            curves.add(IccCurve.parse(tag(in, tags, channel + "TRC")).curve());
            Xyz colorant = xyz(tag(in, tags, channel + "XYZ"));
            matrix[i] = colorant.x();
            matrix[3 + i] = colorant.y();
            matrix[6 + i] = colorant.z();
        }
        return new MatrixModel(curves, matrix);
    }

    private static IccBytes tag(IccBytes in, Map<String, IccBytes> tags, String name)
            throws IccException {
        @Nullable IccBytes tag = tags.get(name);
        if (tag == null) {
            throw in.fault(128, "the tag '" + name + "' is missing");
        }
        return tag;
    }

    private static Xyz xyz(IccBytes tag) throws IccException {
        if (!tag.ascii(0, 4).equals("XYZ ")) {
            throw tag.fault(0, "expected XYZ values, found '" + tag.ascii(0, 4) + "'");
        }
        return new Xyz(tag.fixed(8), tag.fixed(12), tag.fixed(16));
    }
}
