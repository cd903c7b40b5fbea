package org.printassay.colour.icc;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.printassay.colour.DeltaE;
import org.printassay.colour.Lab;
import org.printassay.colour.RgbSpace;
import org.printassay.colour.Xyz;
import org.printassay.colour.icc.IccProfile.Space;

/** Both directions, four intents and black point compensation against LittleCMS (transicc). */
class IccTransformTest {
    /** dE76, as ordered; largest seen 0.0199. */
    private static final double AGREEMENT = 0.02;

    /**
     * dE76 on the way into the profiles of {@link WitnessRoundingTest#TURNED_CURVES}, which is held
     * to {@link #AGREEMENT} there; largest seen 0.083.
     */
    private static final double TURNED_CURVES = 0.1;

    /**
     * XYZ of {@link WitnessRoundingTest#XYZ_TABLES}: three of the 1/32768 that the witness rounds
     * to between its steps, 0.003 on this scale.
     */
    private static final double XYZ_STEPS = 0.009;

    private static final int COLOURS = 150;

    @TempDir Path folder = Path.of("");

    private final Random random = new Random(3);

    /** Random colours through every profile of five Debian packages. */
    @Test
    void littleCmsAgreesOnFreeProfiles() throws IOException, IccException {
        Transicc.require();
        List<Path> files = FreeProfiles.all();
        int compared = 0;
        for (Path file : files) {
            byte[] bytes = FreeProfiles.read(file);
            String profileClass =
                    new String(bytes, 12, 4, java.nio.charset.StandardCharsets.US_ASCII);
            if (profileClass.equals("nmcl") || profileClass.equals("abst")) {
                assertThrows(IccException.class, () -> IccProfile.parse(bytes));
                continue;
            }
            compareAll(file, bytes);
            compared++;
        }
        FreeProfiles.require(compared >= 50, "free profiles (five Debian packages)");
    }

    /** Kinds of table that no free profile has (simulated). */
    @Test
    void littleCmsAgreesOnTables() throws IOException, IccException {
        Transicc.require();
        Map<String, byte[]> profiles =
                Map.of(
                        "lut8", made(2, "prtrRGB Lab ", 3, TestProfile.lut(3, 3, 1, 9)),
                        "lut8ink", made(2, "prtrCMYKLab ", 4, TestProfile.lut(3, 4, 1, 9)),
                        "lut16v4", made(4, "prtrRGB Lab ", 3, TestProfile.lut(3, 3, 2, 9)),
                        "lut16ink", made(2, "prtrCMYKLab ", 4, TestProfile.lut(3, 4, 2, 9)),
                        "lutBToA", made(4, "prtrRGB Lab ", 3, TestProfile.lutBToA(3, 2, 9)),
                        "lutBToA8", made(4, "prtrRGB Lab ", 3, TestProfile.lutBToA(3, 1, 9)),
                        "lutBToAink", made(4, "prtrCMYKLab ", 4, TestProfile.lutBToA(4, 2, 9)));
        for (Map.Entry<String, byte[]> entry : profiles.entrySet()) {
            Path file = Files.write(folder.resolve(entry.getKey() + ".icc"), entry.getValue());
            compareAll(file, entry.getValue());
        }
    }

    private static byte[] made(int version, String kind, int channels, byte[] toDevice) {
        byte[] toColour =
                version == 4
                        ? TestProfile.lutAToB(channels, 2, 5)
                        : TestProfile.lut(channels, 2, 5);
        return TestProfile.of(
                version,
                kind,
                Map.of(
                        "A2B0", toColour, "A2B1", toColour, "A2B2", toColour, "B2A0", toDevice,
                        "B2A1", toDevice, "B2A2", toDevice));
    }

    private void compareAll(Path file, byte[] bytes) throws IOException, IccException {
        IccProfile profile = IccProfile.parse(bytes);
        boolean xyzTables = WitnessRoundingTest.XYZ_TABLES.contains(name(file));
        for (Intent intent : Intent.values()) {
            if (intent.rerenders() && profile.ways().isShaper()) {
                continue; // no tables: the same as relative
            }
            toColour(file, profile, intent, xyzTables);
            // LittleCMS compensates black on its own between two profiles of version 4, and its
            // CIELAB is one.
            if (profile.version() == 2 || !intent.rerenders()) {
                fromColour(file, profile, intent, xyzTables);
            }
            if (intent != Intent.ABSOLUTE) {
                fromSrgb(file, profile, intent, false, xyzTables);
                // There the witness starts from another black: WitnessRoundingTest.
                boolean borrowed =
                        profile.version() == 4
                                && intent == Intent.RELATIVE
                                && profile.space() == Space.CMYK
                                && !profile.ways().hasTableFromPcs(intent);
                if (!borrowed) {
                    fromSrgb(file, profile, intent, true, xyzTables);
                }
            }
        }
    }

    private void toColour(Path file, IccProfile profile, Intent intent, boolean xyzTables)
            throws IccException {
        List<double[]> device = new ArrayList<>();
        List<double[]> units = new ArrayList<>();
        for (int i = 0; i < COLOURS; i++) {
            double[] value = new double[profile.space().channels];
            for (int c = 0; c < value.length; c++) {
                value[c] = i < 30 ? i / 29.0 : random.nextDouble();
            }
            device.add(value);
            units.add(Transicc.units(profile.space(), value));
        }
        String lab = intent.rerenders() ? "-o*Lab2" : "-o*Lab";
        List<double[]> theirs =
                Transicc.convert(folder, units, Transicc.intent(intent), "-i" + file, lab);
        IccTransform transform = IccTransform.toColour(profile, intent);
        for (int i = 0; i < COLOURS; i++) {
            double[] their = theirs.get(i);
            assertAgree(
                    new Lab(their[0], their[1], their[2]),
                    transform.lab(device.get(i)),
                    AGREEMENT,
                    xyzTables,
                    file + " to colour, " + intent);
        }
    }

    private void fromColour(Path file, IccProfile profile, Intent intent, boolean xyzTables)
            throws IccException {
        List<double[]> labs = new ArrayList<>();
        // Lighter than the medium's white is outside 0-1, where the witness goes on and we stop.
        double lightest = intent == Intent.ABSOLUTE ? 80 : 100;
        for (int i = 0; i < COLOURS; i++) {
            double chroma = i < 30 ? 0 : 160;
            labs.add(
                    new double[] {
                        lightest * (i < 30 ? i / 29.0 : random.nextDouble()),
                        chroma * (random.nextDouble() - 0.5),
                        chroma * (random.nextDouble() - 0.5)
                    });
        }
        IccTransform transform = IccTransform.fromColour(profile, intent);
        List<double[]> own = new ArrayList<>();
        for (double[] lab : labs) {
            own.add(transform.device(new Lab(lab[0], lab[1], lab[2])));
        }
        compareDevice(
                file,
                profile,
                own,
                Transicc.convert(folder, labs, Transicc.intent(intent), "-i*Lab", "-o" + file),
                xyzTables,
                file + " from colour, " + intent);
    }

    private void fromSrgb(
            Path file, IccProfile profile, Intent intent, boolean compensation, boolean xyzTables)
            throws IOException, IccException {
        byte[] srgb = RgbProfiles.of(RgbSpace.SRGB);
        Path source = Files.write(folder.resolve("srgb-source.icc"), srgb);
        IccTransform transform =
                IccTransform.between(IccProfile.parse(srgb), profile, intent, compensation);
        List<double[]> codes = new ArrayList<>();
        List<double[]> own = new ArrayList<>();
        for (int i = 0; i < COLOURS; i++) {
            double[] code = {random.nextInt(256), random.nextInt(256), random.nextInt(256)};
            codes.add(code);
            own.add(transform.convert(code[0] / 255, code[1] / 255, code[2] / 255));
        }
        List<String> options =
                new ArrayList<>(List.of(Transicc.intent(intent), "-i" + source, "-o" + file));
        if (compensation) {
            options.add("-b");
        }
        compareDevice(
                file,
                profile,
                own,
                Transicc.convert(folder, codes, options.toArray(new String[0])),
                xyzTables,
                file + " from sRGB, " + intent + (compensation ? " with compensation" : ""));
    }

    /** Device values are compared by the colour the profile gives them. */
    private static void compareDevice(
            Path file,
            IccProfile profile,
            List<double[]> own,
            List<double[]> theirs,
            boolean xyzTables,
            String what)
            throws IccException {
        IccTransform colour = IccTransform.toColour(profile, Intent.RELATIVE);
        boolean turned = WitnessRoundingTest.TURNED_CURVES.contains(name(file));
        double limit = turned ? TURNED_CURVES : AGREEMENT;
        for (int i = 0; i < own.size(); i++) {
            Lab their = colour.lab(Transicc.fractions(profile.space(), theirs.get(i)));
            assertAgree(their, colour.lab(own.get(i)), limit, xyzTables, what + ", " + file);
        }
    }

    private static String name(Path file) {
        return file.getFileName().toString();
    }

    private static void assertAgree(
            Lab theirs, Lab own, double limit, boolean xyzTables, String what) {
        double difference = DeltaE.cie1976(theirs, own);
        if (xyzTables && difference > limit) {
            Xyz one = theirs.toXyz(Xyz.PCS_WHITE);
            Xyz two = own.toXyz(Xyz.PCS_WHITE);
            assertEquals(one.x(), two.x(), XYZ_STEPS, what);
            assertEquals(one.y(), two.y(), XYZ_STEPS, what);
            assertEquals(one.z(), two.z(), XYZ_STEPS, what);
            return;
        }
        assertTrue(
                difference <= limit,
                () -> what + ": dE76 " + difference + " of " + theirs + " and " + own);
    }

    /** Matrix profiles give back exactly the colours they can show. */
    @Test
    void shapersAreTurnedRoundExactly() throws IccException {
        for (RgbSpace space : RgbSpace.values()) {
            IccProfile profile = IccProfile.parse(RgbProfiles.of(space));
            IccTransform there = IccTransform.toColour(profile, Intent.RELATIVE);
            IccTransform back = IccTransform.fromColour(profile, Intent.RELATIVE);
            for (int i = 0; i < 200; i++) {
                double[] code = {random.nextDouble(), random.nextDouble(), random.nextDouble()};
                assertArrayEquals(code, back.device(there.lab(code)), 1e-9);
            }
        }
    }

    /** All parametric kinds and odd tables: the inverse gives a code with the light asked for. */
    @Test
    void curvesAreTurnedRound() throws IccException {
        List<byte[]> elements =
                List.of(
                        TestProfile.para(0, 2.2),
                        TestProfile.para(1, 2.2, 0.95, 0.05),
                        TestProfile.para(2, 2.0, 0.9, 0.05, 0.01),
                        TestProfile.para(3, 2.4, 1 / 1.055, 0.055 / 1.055, 1 / 12.92, 0.04045),
                        TestProfile.para(4, 1.8, 0.9, 0.1, 0.3, 0.05, 0.0, 0.001),
                        TestProfile.table(0, 0, 0, 9000, 30000, 65535, 65535),
                        TestProfile.table(65535, 40000, 20000, 0));
        for (byte[] element : elements) {
            IccCurve curve = IccCurve.parse(IccBytes.of(element)).curve();
            for (double code = 0; code <= 1; code += 0.01) {
                double light = curve.at(code);
                assertEquals(light, curve.at(curve.inverse(light)), 1e-6);
            }
        }
        IccCurve flat = IccCurve.parse(IccBytes.of(elements.get(5))).curve();
        assertEquals(2 / 6.0, flat.inverse(0), 1e-9, "the last black code");
    }

    @Test
    void whiteAndBlackLandWhereTheyShould() throws IccException {
        IccProfile printer =
                IccProfile.parse(made(2, "prtrRGB Lab ", 3, TestProfile.lut(3, 3, 2, 9)));
        // Absolute: the relative colour times the media white.
        Lab relative = IccTransform.toColour(printer, Intent.RELATIVE).lab(0.9, 0.8, 0.7);
        Lab absolute = IccTransform.toColour(printer, Intent.ABSOLUTE).lab(0.9, 0.8, 0.7);
        assertEquals(
                relative.toXyz(Xyz.PCS_WHITE).y() * 56000 / 65536,
                absolute.toXyz(Xyz.PCS_WHITE).y(),
                1e-9);
    }

    @Test
    void refusesWaysThatAreNotThere() throws IccException {
        IccProfile scanner =
                IccProfile.parse(
                        TestProfile.of(
                                2, "scnrRGB Lab ", Map.of("A2B0", TestProfile.lut(3, 2, 9))));
        IccException e =
                assertThrows(
                        IccException.class,
                        () -> IccTransform.fromColour(scanner, Intent.RELATIVE));
        assertTrue(e.toString().contains("which values give a colour"), e::toString);
        IccProfile flat =
                IccProfile.parse(
                        TestProfile.of(
                                2,
                                "mntrRGB XYZ ",
                                Map.of(
                                        "rTRC",
                                        TestProfile.gamma(2),
                                        "gTRC",
                                        TestProfile.gamma(2),
                                        "bTRC",
                                        TestProfile.gamma(2),
                                        "rXYZ",
                                        TestProfile.xyz(.3, .3, .3),
                                        "gXYZ",
                                        TestProfile.xyz(.3, .3, .3),
                                        "bXYZ",
                                        TestProfile.xyz(.3, .3, .3))));
        e = assertThrows(IccException.class, () -> IccTransform.fromColour(flat, Intent.RELATIVE));
        assertTrue(e.toString().contains("not independent"), e::toString);
    }
}
