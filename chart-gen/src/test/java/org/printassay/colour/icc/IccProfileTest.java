package org.printassay.colour.icc;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.printassay.colour.DeltaE;
import org.printassay.colour.Lab;
import org.printassay.colour.Rgb8;
import org.printassay.colour.RgbSpace;
import org.printassay.colour.Xyz;

class IccProfileTest {
    /** Largest difference seen 0.014: rounding of 16-bit values between steps. */
    private static final double WITNESS = 0.03;

    /**
     * For tables to XYZ: LittleCMS rounds their values to 1/32768, which near black is up to 0.2 in
     * b*; largest difference seen 0.19.
     */
    private static final double WITNESS_XYZ_TABLE = 0.25;

    @TempDir Path folder = Path.of("");

    @ParameterizedTest
    @EnumSource
    void readsOurOwn(RgbSpace space) throws IccException {
        IccProfile profile = IccProfile.parse(RgbProfiles.of(space));
        assertEquals(IccProfile.DeviceClass.DISPLAY, profile.deviceClass());
        assertEquals(space.title(), profile.description());
        assertEquals(2, profile.version());
        assertInstanceOf(MatrixModel.class, profile.model());
        for (int level = 0; level <= 255; level += 5) {
            int half = level / 2;
            Rgb8 codes = new Rgb8(level, 255 - level, half);
            Xyz read = profile.toXyz(level / 255.0, (255 - level) / 255.0, half / 255.0);
            Lab lab = Lab.of(read, Xyz.PCS_WHITE);
            assertEquals(0, DeltaE.cie1976(space.toLab(codes), lab), 0.03, codes::toString);
            assertEquals(
                    space.decode(level / 255.0),
                    profile.model().linear(1, level / 255.0),
                    1e-5,
                    "level " + level);
        }
    }

    /** Kinds of table no free profile has, made up (simulated), against LittleCMS. */
    @Test
    void littleCmsAgreesOnTables() throws IOException, IccException {
        Transicc.require();
        Map<String, byte[]> profiles =
                Map.of(
                        "lut8", TestProfile.of(2, "scnrRGB Lab ", a2b(TestProfile.lut(3, 1, 7))),
                        "lut16", TestProfile.of(2, "scnrRGB Lab ", a2b(TestProfile.lut(3, 2, 9))),
                        "lut16v4", TestProfile.of(4, "scnrRGB Lab ", a2b(TestProfile.lut(3, 2, 9))),
                        "lut16xyz",
                                TestProfile.of(2, "scnrRGB XYZ ", a2b(TestProfile.lut(3, 2, 9))),
                        "lut16cmyk",
                                TestProfile.of(2, "prtrCMYKLab ", a2b(TestProfile.lut(4, 2, 6))),
                        "mAB", TestProfile.of(4, "scnrRGB Lab ", a2b(TestProfile.lutAToB(3, 2, 8))),
                        "mAB8",
                                TestProfile.of(
                                        4, "scnrRGB Lab ", a2b(TestProfile.lutAToB(3, 1, 8))),
                        "mABcmyk",
                                TestProfile.of(
                                        4, "prtrCMYKLab ", a2b(TestProfile.lutAToB(4, 2, 5))));
        for (Map.Entry<String, byte[]> entry : profiles.entrySet()) {
            Path file = Files.write(folder.resolve(entry.getKey() + ".icc"), entry.getValue());
            double worst = worstDifference(IccProfile.parse(entry.getValue()), file);
            assertTrue(
                    worst < tolerance(IccProfile.parse(entry.getValue()), entry.getValue()),
                    entry.getKey() + " differs by dE76 " + worst);
        }
    }

    /** Parametric curves of all five kinds against LittleCMS. */
    @Test
    void littleCmsAgreesOnParametricCurves() throws IOException, IccException {
        Transicc.require();
        byte[][] curves = {
            TestProfile.para(0, 2.2),
            TestProfile.para(1, 2.2, 0.95, 0.05),
            TestProfile.para(2, 2.0, 0.9, 0.05, 0.01),
            TestProfile.para(3, 2.4, 1 / 1.055, 0.055 / 1.055, 1 / 12.92, 0.04045),
            TestProfile.para(4, 1.8, 0.9, 0.1, 0.3, 0.05, 0.0, 0.001)
        };
        for (int kind = 0; kind < curves.length; kind++) {
            byte[] bytes = TestProfile.of(4, "scnrGRAYXYZ ", Map.of("kTRC", curves[kind]));
            Path file = Files.write(folder.resolve("para.icc"), bytes);
            double worst = worstDifference(IccProfile.parse(bytes), file);
            assertTrue(worst < WITNESS, "kind " + kind + " differs by dE76 " + worst);
        }
    }

    /** Averaging in light must not move a colour that is already flat. */
    @Test
    void lightGoesThereAndBack() throws IccException {
        byte[] bytes = TestProfile.of(2, "scnrRGB Lab ", a2b(TestProfile.lut(3, 2, 9)));
        TableModel model = assertInstanceOf(TableModel.class, IccProfile.parse(bytes).model());
        assertTrue(model.rises());
        for (double code = 0.02; code < 1; code += 0.02) {
            assertEquals(code, model.code(model.linear(0, code)), 1e-9);
            Xyz direct = model.toXyz(code, 0.5, 1 - code);
            Xyz split =
                    model.lightToXyz(
                            model.linear(0, code), model.linear(1, 0.5), model.linear(2, 1 - code));
            assertEquals(direct.y(), split.y(), 1e-6);
        }
    }

    /** A version 2 screen profile's own white must not tint a scan; a scanner's paper must. */
    @Test
    void whiteScalesScannersOnly() throws IccException {
        byte[] curve = TestProfile.gamma(1.8);
        Xyz white = new Xyz(96.42, 100, 82.49);
        IccProfile scanner =
                IccProfile.parse(TestProfile.of(2, "scnrGRAYXYZ ", Map.of("kTRC", curve)));
        assertEquals(100 * 56000 / 65536.0, scanner.absolute(white).y(), 1e-9);
        IccProfile screen =
                IccProfile.parse(TestProfile.of(2, "mntrGRAYXYZ ", Map.of("kTRC", curve)));
        assertEquals(white, screen.absolute(white));
    }

    @Test
    void saysWhatIsWrong() {
        byte[] good = RgbProfiles.of(RgbSpace.SRGB);
        assertMessage("byte 0: only 0 bytes", new byte[0]);
        assertMessage("byte 36: the mark 'acsp' is missing", new byte[200]);
        assertMessage("byte 0: cut off", Arrays.copyOf(good, good.length - 1));
        assertMessage("byte 128: 1000000 tags", with(good, 128, 1_000_000));
        assertMessage("byte 16: device space 'HSV '", with(good, 16, 0x48535620));
        assertMessage("byte 20: connection space", with(good, 20, 0x48535620));
        assertMessage("byte 12: a device-link profile", with(good, 12, 0x6C696E6B));
        assertMessage("byte 12: a named colour profile", with(good, 12, 0x6E6D636C));
        assertMessage("byte 12: an abstract profile", with(good, 12, 0x61627374));
        assertMessage("byte 12: profile class 'what'", with(good, 12, 0x77686174));
        assertMessage("byte 8: version 5", with(good, 8, 0x05000000));
        assertMessage("'rTRC' is missing", with(good, 132 + 12 * 6, 0x78787878));
        assertMessage("data end here", with(good, 132 + 12 * 6 + 4, good.length));
        assertMessage("data end here", with(good, 132 + 12 * 6 + 8, 0x7FFFFFFF));
        assertMessage("data end here", with(good, 132 + 12 * 6 + 4, -1));
    }

    @Test
    void namesTheTagThatIsCutOff() {
        byte[] good = RgbProfiles.of(RgbSpace.SRGB);
        String reason = "tag 'rTRC': data end here, ";
        assertMessage(
                reason,
                TestProfile.of(
                        4,
                        "mntrRGB XYZ ",
                        Map.of(
                                "rTRC", with(TestProfile.table(0, 30000, 65535), 8, 60000),
                                "gTRC", TestProfile.gamma(2),
                                "bTRC", TestProfile.gamma(2),
                                "rXYZ", TestProfile.xyz(1, 0, 0),
                                "gXYZ", TestProfile.xyz(0, 1, 0),
                                "bXYZ", TestProfile.xyz(0, 0, 1))));
        IccException behind =
                assertThrows(
                        IccException.class,
                        () -> IccProfile.parse(with(good, 132 + 12 * 6 + 4, -1)));
        assertFalse(String.valueOf(behind.getMessage()).contains("-"), behind::toString);
    }

    @Test
    void saysWhatIsWrongInElements() {
        assertMessage(
                "expected a curve, found element type 'XYZ '", grey(TestProfile.xyz(0, 0, 0)));
        byte[] table = TestProfile.table(0, 30000, 65535);
        assertMessage("2147483647 points", grey(with(table, 8, 0x7FFFFFFF)));
        assertMessage("4294967295 points", grey(with(table, 8, -1)));
        assertMessage("data end here", grey(with(table, 8, 60000)));
        assertMessage("exponent 0", grey(TestProfile.table(0)));
        assertMessage("exponent 0.0", grey(TestProfile.para(0, 0)));
        assertMessage("factor 0.0", grey(TestProfile.para(1, 2, 0, 1)));
        assertMessage("unknown kind 5", grey(TestProfile.para(5, 1, 1, 1)));
        // The power of a negative number is not a number.
        assertMessage("no number at 1", grey(TestProfile.para(3, 2.2, -1, 0.5, 0, 0)));
        assertMessage("no number at 0", grey(TestProfile.para(3, 2.2, 1, -0.5, 0, 0)));
        byte[] lut = TestProfile.lut(3, 2, 3);
        assertMessage("a table of 200 inputs", scanner(2, at(lut, 8, 200)));
        assertMessage("a table of 200 outputs", scanner(2, at(lut, 9, 200)));
        assertMessage("1 point along", scanner(2, at(lut, 10, 1)));
        assertMessage("data end here", scanner(2, at(lut, 10, 255)));
        assertMessage("fewer than 2 points", scanner(2, at(at(lut, 48, 0), 49, 1)));
        assertMessage("data end here", scanner(2, at(lut, 48, 255)));
        assertMessage("type 'mftX'", scanner(2, at(lut, 3, 'X')));
        byte[] newer = TestProfile.lutAToB(3, 2, 3);
        assertMessage("data end here", scanner(4, with(newer, 24, 0x7FFFFFFF)));
        assertMessage("without the curves", scanner(4, with(newer, 12, 0)));
        assertMessage("wrong direction", scanner(4, TestProfile.lutBToA(3, 2, 3)));
    }

    private static byte[] grey(byte[] curve) {
        return TestProfile.of(4, "scnrGRAYXYZ ", Map.of("kTRC", curve));
    }

    private static byte[] scanner(int version, byte[] table) {
        return TestProfile.of(version, "scnrRGB Lab ", a2b(table));
    }

    private static byte[] at(byte[] element, int at, int value) {
        byte[] changed = element.clone();
        changed[at] = (byte) value;
        return changed;
    }

    /** Damage never leads to anything but an IccException, nor to memory taken on a file's word. */
    @Test
    void survivesDamage() {
        Random random = new Random(1);
        List<byte[]> seeds =
                List.of(
                        RgbProfiles.of(RgbSpace.SRGB),
                        printer(2, TestProfile.lut(3, 1, 3), TestProfile.lut(3, 3, 1, 3)),
                        printer(4, TestProfile.lutAToB(3, 2, 3), TestProfile.lutBToA(3, 2, 3)));
        int refused = 0;
        for (byte[] seed : seeds) {
            for (int round = 0; round < 400; round++) {
                byte[] bytes = seed.clone();
                for (int k = 0; k < 3; k++) {
                    bytes[random.nextInt(Math.min(bytes.length, 400))] = (byte) random.nextInt(256);
                }
                if (round % 10 == 0) {
                    bytes = Arrays.copyOf(bytes, random.nextInt(bytes.length));
                }
                try {
                    IccProfile profile = IccProfile.parse(bytes);
                    double[] device = new double[profile.space().channels];
                    Arrays.fill(device, 0.4);
                    for (Intent intent : Intent.values()) {
                        IccTransform there = IccTransform.between(profile, profile, intent, true);
                        for (double value : there.convert(device)) {
                            assertTrue(Double.isFinite(value));
                        }
                        Lab lab = IccTransform.toColour(profile, intent).lab(device);
                        assertTrue(Double.isFinite(lab.l()));
                    }
                } catch (IccException e) {
                    refused++;
                }
            }
        }
        assertTrue(refused > 300, "refused " + refused);
    }

    private static byte[] printer(int version, byte[] toColour, byte[] toDevice) {
        return TestProfile.of(version, "prtrRGB Lab ", Map.of("A2B0", toColour, "B2A0", toDevice));
    }

    private static void assertMessage(String part, byte[] profile) {
        IccException e = assertThrows(IccException.class, () -> IccProfile.parse(profile));
        assertTrue(e.toString().contains(part), e::toString);
    }

    private static byte[] with(byte[] profile, int at, int value) {
        byte[] changed = profile.clone();
        ByteBuffer.wrap(changed).putInt(at, value);
        return changed;
    }

    private static double tolerance(IccProfile profile, byte[] bytes) {
        boolean toXyz = bytes[20] == 'X';
        return toXyz && profile.model() instanceof TableModel ? WITNESS_XYZ_TABLE : WITNESS;
    }

    private static Map<String, byte[]> a2b(byte[] table) {
        return Map.of("A2B0", table);
    }

    private double worstDifference(IccProfile profile, Path file) {
        int channels = profile.space().channels;
        // transicc takes RGB and grey as 0-255, CMYK as percent
        double scale = profile.space() == IccProfile.Space.CMYK ? 100 : 255;
        Random random = new Random(7);
        List<double[]> devices = new ArrayList<>();
        for (int i = 0; i < 300; i++) {
            double[] device = new double[channels];
            for (int c = 0; c < channels; c++) {
                device[c] = i < 100 ? i / 99.0 : random.nextDouble();
                device[c] = Math.round(device[c] * 65535) / 65535.0 * scale;
            }
            devices.add(device);
        }
        double worst = 0;
        for (boolean absolute : new boolean[] {false, true}) {
            List<double[]> labs =
                    Transicc.convert(
                            folder, devices, absolute ? "-t3" : "-t1", "-i" + file, "-o*Lab");
            for (int i = 0; i < devices.size(); i++) {
                double[] device = devices.get(i).clone();
                for (int c = 0; c < channels; c++) {
                    device[c] /= scale;
                }
                Xyz xyz = profile.toXyz(device);
                Lab own = Lab.of(absolute ? profile.absolute(xyz) : xyz, Xyz.PCS_WHITE);
                double[] lab = labs.get(i);
                worst = Math.max(worst, DeltaE.cie1976(own, new Lab(lab[0], lab[1], lab[2])));
            }
        }
        return worst;
    }
}
