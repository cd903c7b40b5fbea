package org.printassay.colour.icc;

import java.util.LinkedHashMap;
import java.util.Map;
import org.printassay.colour.Xyz;

/**
 * A profile (ISO 15076-1, versions 2 and 4): what it says of itself, and its way from device values
 * to colour by the relative colorimetric intent. Other intents and the way back: {@link
 * IccTransform}.
 */
public final class IccProfile {
    /** A larger file is none: those of printers have some megabytes. */
    public static final long MOST_BYTES = 64L << 20;

    private final int version;
    private final DeviceClass deviceClass;
    private final Space space;
    private final String description;
    private final Xyz mediaWhite;
    private final ProfileWays ways;
    private final DeviceModel model;

    private IccProfile(
            int version, DeviceClass deviceClass, String description, Xyz white, ProfileWays ways)
            throws IccException {
        this.version = version;
        this.deviceClass = deviceClass;
        this.space = ways.space();
        this.description = description;
        this.mediaWhite = white;
        this.ways = ways;
        this.model = ways.model();
    }

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
        /** 1 is full ink. */
        CMYK(4),
        /** L* / 100, (a* + 128) / 255, (b* + 128) / 255. */
        LAB(3),
        /** XYZ / (1 + 32767/32768), Y = 1 for white. */
        XYZ(3);

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
        IccBytes in = IccBytes.of(bytes.clone());
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
        return new IccProfile(
                version,
                deviceClass,
                IccText.description(tags.get("desc")),
                white(tags),
                new ProfileWays(in, tags, space, labPcs));
    }

    /** Major version, 2 or 4. */
    public int version() {
        return version;
    }

    /** What the profile is for. */
    public DeviceClass deviceClass() {
        return deviceClass;
    }

    /** Device colour space. */
    public Space space() {
        return space;
    }

    /**
     * The profile's name, control characters removed, at most 200 characters; empty when it has
     * none.
     */
    public String description() {
        return description;
    }

    /**
     * Media white as the profile has it, Y = 100 for the perfect diffuser; the connection space
     * white when it has none.
     */
    public Xyz mediaWhite() {
        return mediaWhite;
    }

    /** Relative colorimetric way from device values to colour. */
    public DeviceModel model() {
        return model;
    }

    ProfileWays ways() {
        return ways;
    }

    /**
     * White that the absolute intent goes by. Version 2 display profiles: the connection space
     * white, because many carry the screen's own white, to which the eye has adapted (ISO 15076-1,
     * 9.2.36, makes this the rule for version 4). The chad tag changes nothing here: it tells how
     * the white was adapted, not by how much colours are scaled (6.3.2.2).
     */
    Xyz absoluteWhite() {
        return version == 2 && deviceClass == DeviceClass.DISPLAY ? Xyz.PCS_WHITE : mediaWhite;
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
            case "link" ->
                    throw in.fault(
                            12,
                            "a device-link profile, which joins two devices and describes neither;"
                                    + " a profile of one device is needed");
            case "nmcl" ->
                    throw in.fault(
                            12,
                            "a named colour profile, which lists single inks instead of describing a"
                                    + " device; a profile of a device is needed");
            case "abst" ->
                    throw in.fault(
                            12,
                            "an abstract profile, which changes colours and describes no device; a"
                                    + " profile of a device is needed");
            default -> throw in.fault(12, "profile class '" + name + "' is not understood");
        };
    }

    private static Space space(IccBytes in) throws IccException {
        String name = in.ascii(16, 4);
        return switch (name) {
            case "GRAY" -> Space.GREY;
            case "RGB " -> Space.RGB;
            case "CMYK" -> Space.CMYK;
            case "Lab " -> Space.LAB;
            case "XYZ " -> Space.XYZ;
            default ->
                    throw in.fault(
                            16,
                            "device space '"
                                    + name
                                    + "'; grey, RGB, CMYK, Lab and XYZ are understood");
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
            String name = in.ascii(at, 4);
            tags.putIfAbsent(name, in.tag(name).part(in.u32(at + 4), in.u32(at + 8)));
        }
        return tags;
    }

    private static Xyz white(Map<String, IccBytes> tags) throws IccException {
        IccBytes tag = tags.get("wtpt");
        return tag == null ? Xyz.PCS_WHITE : ProfileWays.xyz(tag).times(100);
    }
}
