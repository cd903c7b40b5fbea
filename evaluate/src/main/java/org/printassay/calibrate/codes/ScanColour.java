package org.printassay.calibrate.codes;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;
import org.printassay.colour.LinearRgb;
import org.printassay.colour.RgbSpace;
import org.printassay.colour.Xyz;
import org.printassay.colour.icc.DeviceModel;
import org.printassay.colour.icc.IccException;
import org.printassay.colour.icc.IccProfile;
import org.printassay.colour.icc.TableModel;
import org.printassay.problem.Problem;
import org.printassay.reading.Trust;
import org.printassay.reading.Warning;
import org.printassay.reading.WarningCode;
import org.printassay.scan.CodeLight;
import org.printassay.scan.ScanInfo;
import org.printassay.scannermodel.ScannerCalibration;

/**
 * What a scan's codes mean: light per channel (for averaging, evening out and stray light) and the
 * colour of that light. With an ICC profile that suits the scan, colour is absolute; without one,
 * codes are taken as sRGB-encoded (IEC 61966-2-1), or by the exponent that the file says, and only
 * colour relative to the paper means anything.
 */
public final class ScanColour {
    private static final int CODES = 65536;

    private final @Nullable IccProfile profile;
    private final @Nullable ScannerCalibration calibration;
    private final boolean grey;
    private final List<Warning> warnings;
    private final float[][] curves;

    private ScanColour(IccProfile profile, boolean grey) {
        this(profile, grey, List.of(), OptionalDouble.empty());
    }

    private ScanColour(
            @Nullable IccProfile profile,
            boolean grey,
            List<Warning> warnings,
            OptionalDouble gamma) {
        this.profile = profile;
        this.calibration = null;
        this.grey = grey;
        this.warnings = List.copyOf(warnings);
        this.curves = curves(profile, gamma);
    }

    private ScanColour(
            @Nullable ScannerCalibration calibration, CodeLight codes, List<Warning> warnings) {
        this.profile = null;
        this.calibration = calibration;
        this.grey = false;
        this.warnings = List.copyOf(warnings);
        this.curves = new float[][] {codes.curve(0), codes.curve(1), codes.curve(2)};
    }

    /**
     * By the profile in the scan file; a missing, damaged or unsuitable one makes it a plain scan,
     * with a warning.
     */
    public static ScanColour embedded(ScanInfo info) {
        boolean grey = info.channels() == 1;
        Optional<byte[]> bytes = info.iccProfile();
        if (bytes.isEmpty()) {
            return plain(info);
        }
        try {
            return new ScanColour(suitable(bytes.get(), grey), grey);
        } catch (IccException e) {
            Warning unusable =
                    new Warning(
                            WarningCode.PROFILE_UNUSABLE,
                            "The colour profile in "
                                    + info.name()
                                    + " cannot be used ("
                                    + (bytes.get().length == 0
                                            ? "its compressed data are damaged"
                                            : e.getMessage())
                                    + "); it was read as a scan without profile.");
            return new ScanColour(null, grey, List.of(unusable, PLAIN), info.gamma());
        }
    }

    /** Without any profile, whatever is in the scan file; a plain scan. */
    public static ScanColour plain(ScanInfo info) {
        return new ScanColour(null, info.channels() == 1, List.of(PLAIN), info.gamma());
    }

    /** Of a photograph: a plain scan, for no profile tells of light that was not controlled. */
    public static ScanColour photographed(ScanInfo info) {
        Warning relative =
                new Warning(
                        WarningCode.PLAIN_SCAN,
                        "A profile tells nothing of the light on a photograph: results hold relative"
                                + " to the paper; no absolute lightness, density or colour difference"
                                + " is stated. Scan the sheet on a flatbed, with the scanner's profile"
                                + " embedded, to get them.");
        return new ScanColour(null, info.channels() == 1, List.of(relative), info.gamma());
    }

    /**
     * By a profile that the user names, whatever is in the scan file.
     *
     * @param name of the profile file, for messages
     * @throws Problem input, when the profile is damaged or does not suit the scan
     */
    public static ScanColour given(String name, byte[] profile, ScanInfo info) throws Problem {
        boolean grey = info.channels() == 1;
        try {
            return new ScanColour(suitable(profile, grey), grey);
        } catch (IccException e) {
            throw Problem.input(
                    name,
                    "not a profile for "
                            + info.name()
                            + " ("
                            + e.getMessage()
                            + "). Give the scanner's own ICC profile.",
                    e);
        }
    }

    /**
     * By a calibration, whatever profile is in the scan file.
     *
     * @param name of the calibration file, for messages
     * @throws Problem input, when the scan is grey
     */
    public static ScanColour calibrated(String name, ScannerCalibration calibration, ScanInfo info)
            throws Problem {
        if (info.channels() != 3) {
            throw Problem.input(
                    info.name(), "is grey, and " + name + " is for colour scans. Scan in colour.");
        }
        return new ScanColour(calibration, calibration.curves(), List.of());
    }

    /**
     * A colour scan whose light is known and whose colour is not yet: while a calibration is made.
     */
    public static ScanColour straightened(CodeLight codes) {
        return new ScanColour(null, codes, List.of());
    }

    private static final Warning PLAIN =
            new Warning(
                    WarningCode.PLAIN_SCAN,
                    "The scan has no colour profile: results hold relative to the paper; no absolute"
                            + " lightness, density or colour difference is stated. Scan with the"
                            + " scanner's profile embedded to get them.");

    private static IccProfile suitable(byte[] bytes, boolean grey) throws IccException {
        IccProfile profile = IccProfile.parse(bytes);
        IccProfile.Space wanted = grey ? IccProfile.Space.GREY : IccProfile.Space.RGB;
        if (profile.space() != wanted) {
            throw new IccException(
                    16,
                    profile.space().channels == wanted.channels
                            ? "it is for "
                                    + (profile.space() == IccProfile.Space.LAB ? "Lab" : "XYZ")
                                    + " codes, the scan has RGB"
                            : "it is for "
                                    + profile.space().channels
                                    + " channels, the scan has "
                                    + wanted.channels);
        }
        if (profile.deviceClass() == IccProfile.DeviceClass.OUTPUT) {
            throw new IccException(
                    12, "it is a printer's, and tells nothing of what a scanner's codes mean");
        }
        DeviceModel model = profile.model();
        for (int c = 0; c < wanted.channels; c++) {
            if (!(model.linear(c, 1) > model.linear(c, 0) + 0.01)) {
                throw new IccException(128, "more code does not mean more light");
            }
        }
        Xyz white = profile.absolute(whiteOf(profile));
        if (!(Math.min(white.x(), Math.min(white.y(), white.z())) > 1)) {
            throw new IccException(128, "its white is black, or lacks a colour");
        }
        return profile;
    }

    private static Xyz whiteOf(IccProfile profile) {
        double[] ones = new double[profile.space().channels];
        Arrays.fill(ones, 1);
        return profile.toXyz(ones);
    }

    /** The light curves are made once: 65536 codes for each channel, held to rise. */
    private static float[][] curves(@Nullable IccProfile profile, OptionalDouble gamma) {
        float[][] curves = new float[3][];
        for (int c = 0; c < 3; c++) {
            boolean shared =
                    c > 0
                            && (profile == null
                                    || profile.space() == IccProfile.Space.GREY
                                    || profile.model() instanceof TableModel);
            curves[c] = shared ? curves[0] : curve(profile, gamma, c);
        }
        return curves;
    }

    private static float[] curve(@Nullable IccProfile profile, OptionalDouble gamma, int channel) {
        float[] curve = new float[CODES];
        float reached = 0;
        for (int i = 0; i < CODES; i++) {
            double code = i / (CODES - 1.0);
            double light =
                    profile == null
                            ? plainLight(gamma, code)
                            : profile.model().linear(channel, code);
            reached = Math.max(reached, (float) light);
            curve[i] = reached;
        }
        return curve;
    }

    private static double plainLight(OptionalDouble gamma, double code) {
        return gamma.isPresent() ? Math.pow(code, gamma.getAsDouble()) : RgbSpace.SRGB.decode(code);
    }

    /** How the results may be called. */
    public Trust trust() {
        if (calibration != null) {
            return Trust.CALIBRATED_SCAN;
        }
        return profile == null ? Trust.PLAIN_SCAN : Trust.PROFILED_SCAN;
    }

    /** The calibration, where there is one. */
    public Optional<ScannerCalibration> calibration() {
        return Optional.ofNullable(calibration);
    }

    /** Whether the scan has one channel, so that only lightness is known. */
    public boolean grey() {
        return grey;
    }

    /** What the user must know about the profile. */
    public List<Warning> warnings() {
        return warnings;
    }

    /** Light of codes, for the samplers. */
    public CodeLight codeLight() {
        return channel -> curves[channel];
    }

    /**
     * Absolute colour of linear device light, Y = 100 for the perfect diffuser. The media white of
     * input profiles is applied, that of display profiles and encodings is not ({@link
     * IccProfile#absolute}). Without a profile: colour as if sRGB-encoded, to be used relative to
     * paper only.
     */
    public Xyz toXyz(LinearRgb light) {
        if (calibration != null) {
            return calibration.model().xyz(light);
        }
        if (profile == null) {
            return RgbSpace.SRGB.linearToXyz(light.r(), light.g(), light.b());
        }
        return profile.absolute(
                grey
                        ? profile.model().lightToXyz(light.g())
                        : profile.model().lightToXyz(light.r(), light.g(), light.b()));
    }
}
