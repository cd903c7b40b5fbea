package org.printassay.colour.icc;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.printassay.colour.DeltaE;
import org.printassay.colour.Lab;
import org.printassay.colour.RgbSpace;
import org.printassay.colour.Xyz;
import org.printassay.colour.icc.IccProfile.Space;

/**
 * Both directions, four intents and black point compensation against LittleCMS (transicc), with no
 * exception: the engine takes the same steps, words of 16 bits and choices of black included.
 */
class IccTransformTest {
    /** dE76 on free profiles; largest seen over 2.7 million colours 0.0009. */
    private static final double ON_FREE_PROFILES = 0.002;

    /** On made-up tables, steeper than any that is used. */
    private static final double ON_MADE_TABLES = 0.02;

    private double agreement = ON_MADE_TABLES;

    /**
     * Code, 0-1, a seventh of an 8-bit one: roundings of light to 16 bits, there and back, where
     * curves are steepest; largest seen 5.2e-4, Adobe RGB next to black.
     */
    private static final double CODE = 6e-4;

    private static final int COLOURS = 150;

    /** Of sRGB; rounded, so that the sum is not quite the white. */
    private static final Map<String, byte[]> COLORANTS =
            Map.of(
                    "rXYZ", TestProfile.xyz(0.4361, 0.2225, 0.0139),
                    "gXYZ", TestProfile.xyz(0.3851, 0.7169, 0.0971),
                    "bXYZ", TestProfile.xyz(0.1431, 0.0606, 0.7141));

    @TempDir Path folder = Path.of("");

    private final Random random = new Random(3);

    /** Random colours through every profile of five Debian packages. */
    @Test
    void littleCmsAgreesOnFreeProfiles() throws IOException, IccException {
        Transicc.require();
        agreement = ON_FREE_PROFILES;
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
            // Which profiles are installed changes no colours that others are compared on.
            random.setSeed(Arrays.hashCode(bytes));
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
        // In their order, so that each has the same colours every time.
        for (Map.Entry<String, byte[]> entry : new TreeMap<>(profiles).entrySet()) {
            Path file = Files.write(folder.resolve(entry.getKey() + ".icc"), entry.getValue());
            compareAll(file, entry.getValue());
        }
    }

    /** Tables of curves that no free profile has, turned round by the engine's rule (simulated). */
    @Test
    void littleCmsAgreesOnOddCurves() throws IOException, IccException {
        Transicc.require();
        byte[][] curves = {
            TestProfile.table(0, 0, 0, 9000, 30000, 65535, 65535), // flat ends
            TestProfile.table(0, 20000, 20000, 20000, 65535), // flat inside
            TestProfile.table(300, 9000, 30000, 60000), // neither black nor white
            TestProfile.table(500, 9000, 30000, 60000, 60000), // and a flat end
            TestProfile.table(0, 30000, 20000, 40000, 35000, 65535), // up and down
            TestProfile.table(65535, 40000, 40000, 20000, 0), // falls
            TestProfile.table(60000, 20000, 30000, 1000), // falls and rises
            TestProfile.table(0, 65535),
        };
        for (int i = 0; i < curves.length; i++) {
            byte[] grey = TestProfile.of(2, "mntrGRAYXYZ ", Map.of("kTRC", curves[i]));
            compareAll(Files.write(folder.resolve("grey" + i + ".icc"), grey), grey);
            byte[] lab = TestProfile.of(2, "mntrGRAYLab ", Map.of("kTRC", curves[i]));
            compareAll(Files.write(folder.resolve("greyLab" + i + ".icc"), lab), lab);
            Map<String, byte[]> tags = new HashMap<>(COLORANTS);
            tags.put("rTRC", curves[i]);
            tags.put("gTRC", curves[(i + 1) % curves.length]);
            tags.put("bTRC", curves[0]);
            byte[] rgb = TestProfile.of(4, "mntrRGB XYZ ", tags);
            compareAll(Files.write(folder.resolve("rgb" + i + ".icc"), rgb), rgb);
        }
    }

    /**
     * Profiles that lack ways, or have tables and curves: which black they count as (simulated).
     */
    @Test
    void littleCmsAgreesOnBlacks() throws IOException, IccException {
        Transicc.require();
        Map<String, byte[]> both = new HashMap<>(COLORANTS);
        for (String tag : List.of("rTRC", "gTRC", "bTRC")) {
            both.put(tag, TestProfile.gamma(2.2));
        }
        both.put("A2B0", TestProfile.lutAToB(3, 2, 5));
        both.put("B2A0", TestProfile.lutBToA(3, 2, 9));
        Map<String, byte[]> perceptual =
                Map.of("A2B0", TestProfile.lutAToB(4, 2, 5), "B2A0", TestProfile.lutBToA(4, 2, 9));
        Map<String, byte[]> profiles =
                Map.of(
                        "scanner",
                        TestProfile.of(2, "scnrRGB Lab ", Map.of("A2B0", TestProfile.lut(3, 2, 9))),
                        "inks",
                        TestProfile.of(2, "prtrCMYKLab ", Map.of("A2B0", TestProfile.lut(4, 2, 9))),
                        "perceptual",
                        TestProfile.of(4, "prtrCMYKLab ", perceptual),
                        "both",
                        TestProfile.of(4, "mntrRGB XYZ ", both));
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
        IccProfile srgb = IccProfile.parse(RgbProfiles.of(RgbSpace.SRGB));
        Path other = Files.write(folder.resolve("srgb.icc"), RgbProfiles.of(RgbSpace.SRGB));
        boolean twoWay =
                profile.ways().hasCurves() || profile.ways().hasTableFromPcs(Intent.PERCEPTUAL);
        for (Intent intent : Intent.values()) {
            boolean sameAsRelative = intent.rerenders() && profile.ways().isShaper();
            if (sameAsRelative && profile.version() == 2) {
                continue;
            }
            if (!sameAsRelative) {
                toColour(file, profile, intent);
            }
            // LittleCMS compensates black on its own between two profiles of version 4, and its
            // CIELAB is one.
            if (twoWay && (profile.version() == 2 || !intent.rerenders())) {
                fromColour(file, profile, intent);
            }
            for (boolean compensation : new boolean[] {false, true}) {
                if (compensation && intent == Intent.ABSOLUTE) {
                    continue; // the same as without
                }
                between(file, profile, other, srgb, intent, compensation);
                if (twoWay) {
                    between(other, srgb, file, profile, intent, compensation);
                }
            }
        }
    }

    /**
     * As the tool takes them; a third of them dark, where words of 16 bits are coarse, a few
     * neutral.
     */
    private List<double[]> devices(IccProfile profile, double lightest) {
        List<double[]> units = new ArrayList<>();
        Space space = profile.space();
        for (int i = 0; i < COLOURS; i++) {
            double most = i % 3 == 0 ? 0.1 : lightest;
            double all = lightest * (i < 30 ? i / 29.0 : random.nextDouble());
            double[] value = new double[space.channels];
            for (int c = 0; c < value.length; c++) {
                double one = i < 30 ? all : most * random.nextDouble();
                value[c] =
                        switch (space) {
                            case GREY, RGB -> one;
                            case CMYK -> i % 3 == 0 ? 1 - one : one;
                            case LAB -> c == 0 ? one : 0.3 + 0.4 * random.nextDouble();
                            case XYZ -> most * all * (0.4 + 0.1 * random.nextDouble());
                        };
            }
            double[] written = Transicc.units(space, value);
            for (int c = 0; c < written.length; c++) {
                written[c] = Math.rint(written[c] * 1e6) / 1e6;
            }
            units.add(written);
        }
        return units;
    }

    private void toColour(Path file, IccProfile profile, Intent intent) throws IccException {
        List<double[]> devices = devices(profile, 1);
        String lab = intent.rerenders() ? "-o*Lab2" : "-o*Lab";
        List<double[]> theirs =
                Transicc.convert(folder, devices, Transicc.intent(intent), "-i" + file, lab);
        IccTransform transform = IccTransform.toColour(profile, intent);
        for (int i = 0; i < COLOURS; i++) {
            double[] their = theirs.get(i);
            assertAgree(
                    new Lab(their[0], their[1], their[2]),
                    transform.lab(Transicc.fractions(profile.space(), devices.get(i))),
                    file + " to colour, " + intent);
        }
    }

    private void fromColour(Path file, IccProfile profile, Intent intent) throws IccException {
        List<double[]> labs = new ArrayList<>();
        // Lighter than the medium's white is outside 0-1, where the witness goes on and we stop.
        double lightest = intent == Intent.ABSOLUTE ? 80 : 100;
        for (int i = 0; i < COLOURS; i++) {
            double chroma = i < 30 ? 0 : i % 3 == 0 ? 30 : 160;
            double most = i % 3 == 0 ? lightest / 10 : lightest;
            double[] lab = {
                i < 30 ? lightest * i / 29 : most * random.nextDouble(),
                chroma * (random.nextDouble() - 0.5),
                chroma * (random.nextDouble() - 0.5)
            };
            for (int c = 0; c < 3; c++) {
                lab[c] = Math.rint(lab[c] * 1e6) / 1e6;
            }
            labs.add(lab);
        }
        IccTransform transform = IccTransform.fromColour(profile, intent);
        List<double[]> own = new ArrayList<>();
        for (double[] lab : labs) {
            own.add(transform.device(new Lab(lab[0], lab[1], lab[2])));
        }
        compareDevice(
                profile,
                own,
                Transicc.convert(folder, labs, Transicc.intent(intent), "-i*Lab", "-o" + file),
                file + " from colour, " + intent);
    }

    private void between(
            Path source,
            IccProfile from,
            Path destination,
            IccProfile to,
            Intent intent,
            boolean compensation)
            throws IccException {
        IccTransform transform = IccTransform.between(from, to, intent, compensation);
        // Lighter than the medium's white is outside 0-1, where the witness goes on and we stop.
        List<double[]> devices = devices(from, intent == Intent.ABSOLUTE ? 0.8 : 1);
        List<double[]> own = new ArrayList<>();
        for (double[] device : devices) {
            own.add(transform.convert(Transicc.fractions(from.space(), device)));
        }
        List<String> options =
                new ArrayList<>(
                        List.of(Transicc.intent(intent), "-i" + source, "-o" + destination));
        if (compensation) {
            options.add("-b");
        }
        compareDevice(
                to,
                own,
                Transicc.convert(folder, devices, options.toArray(new String[0])),
                source + " to " + destination + ", " + intent + (compensation ? ", black" : ""));
    }

    /** Device values are compared by the colour the profile gives them. */
    private void compareDevice(
            IccProfile profile, List<double[]> own, List<double[]> theirs, String what)
            throws IccException {
        IccTransform colour = IccTransform.toColour(profile, Intent.RELATIVE);
        for (int i = 0; i < own.size(); i++) {
            Lab their = colour.lab(Transicc.fractions(profile.space(), theirs.get(i)));
            assertAgree(their, colour.lab(own.get(i)), what);
        }
    }

    private void assertAgree(Lab theirs, Lab own, String what) {
        double difference = DeltaE.cie1976(theirs, own);
        assertTrue(
                difference <= agreement,
                () -> what + ": dE76 " + difference + " of " + theirs + " and " + own);
    }

    /** Matrix profiles give back the codes whose colours they are asked for; all of 8 bits. */
    @Test
    void shapersAreTurnedRound() throws IccException {
        for (RgbSpace space : RgbSpace.values()) {
            IccProfile profile = IccProfile.parse(RgbProfiles.of(space));
            IccTransform there = IccTransform.toColour(profile, Intent.RELATIVE);
            IccTransform back = IccTransform.fromColour(profile, Intent.RELATIVE);
            for (int i = 0; i < 20_000; i++) {
                double most = i % 2 == 0 ? 1 : 0.1;
                double[] code = new double[3];
                Arrays.setAll(code, c -> most * random.nextDouble());
                assertArrayEquals(code, back.device(there.lab(code)), CODE, space.title());
            }
            for (int code = 0; code <= 255; code++) {
                double grey = code / 255.0;
                double[] result = back.device(there.lab(grey, grey, grey));
                assertEquals(code, Math.round(255 * result[1]), space.title());
            }
        }
    }

    /** White and black of every encoding are white and black of every other, exactly. */
    @Test
    void endsStayWhereTheyAre() throws IccException {
        for (RgbSpace from : RgbSpace.values()) {
            for (RgbSpace to : RgbSpace.values()) {
                IccTransform transform =
                        IccTransform.between(
                                IccProfile.parse(RgbProfiles.of(from)),
                                IccProfile.parse(RgbProfiles.of(to)),
                                Intent.RELATIVE,
                                true);
                for (double end : new double[] {0, 1}) {
                    double[] code = {end, end, end};
                    assertArrayEquals(code, transform.convert(code), 0, from + " to " + to);
                }
            }
        }
    }

    /**
     * All parametric kinds and odd tables: turned round, they give a code with the light asked for.
     */
    @Test
    void curvesAreTurnedRound() throws IccException {
        List<byte[]> formulas =
                List.of(
                        TestProfile.para(0, 2.2),
                        TestProfile.para(1, 2.2, 0.95, 0.05),
                        TestProfile.para(2, 2.0, 0.9, 0.05, 0.01),
                        TestProfile.para(3, 2.4, 1 / 1.055, 0.055 / 1.055, 1 / 12.92, 0.04045),
                        TestProfile.para(4, 1.8, 0.9, 0.1, 0.3, 0.05, 0.0, 0.001));
        for (byte[] element : formulas) {
            assertTurnedRound(element, 1e-6);
        }
        // Tables: a quarter of the step between 4096 points where the curve bends.
        byte[] flat = TestProfile.table(0, 0, 0, 9000, 30000, 65535, 65535);
        assertTurnedRound(flat, 1e-4);
        assertTurnedRound(TestProfile.table(65535, 40000, 20000, 0), 1e-4);
        IccCurve turned = curve(flat).turned();
        assertEquals(2 / 6.0, turned.inWords(0), 1e-5, "the last black code");
        assertEquals(1, turned.inWords(1), 0);
        double reached = 0;
        for (int word = 0; word <= 65535; word++) {
            double code = turned.inWords(word / 65535.0);
            assertTrue(code >= reached, "rises");
            reached = code;
        }
    }

    private static void assertTurnedRound(byte[] element, double tolerance) throws IccException {
        IccCurve curve = curve(element);
        IccCurve turned = curve.turned();
        for (double code = 0; code <= 1; code += 0.001) {
            double light = curve.at(code);
            assertEquals(light, curve.at(turned.at(light)), tolerance);
        }
    }

    private static IccCurve curve(byte[] element) throws IccException {
        return IccCurve.parse(IccBytes.of(element)).curve();
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
                1e-4); // single precision between steps
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
