package org.printassay.calibrate.codes;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.printassay.colour.Lab;
import org.printassay.colour.LinearRgb;
import org.printassay.colour.RgbSpace;
import org.printassay.colour.Xyz;
import org.printassay.colour.icc.RgbProfiles;
import org.printassay.problem.Problem;
import org.printassay.promise.SimulatedPrinter;
import org.printassay.reading.Trust;
import org.printassay.reading.Warning;
import org.printassay.reading.WarningCode;
import org.printassay.scan.ScanInfo;

class ScanColourTest {
    private static ScanInfo info(int channels, byte[] profile) {
        return new ScanInfo(
                "scan.tif",
                "TIFF",
                100,
                100,
                channels,
                16,
                Optional.empty(),
                Optional.ofNullable(profile.length == 0 ? null : profile),
                false);
    }

    private static List<WarningCode> codes(ScanColour colour) {
        return colour.warnings().stream().map(Warning::code).toList();
    }

    private static Lab lab(ScanColour colour, double r, double g, double b) {
        return Lab.of(colour.toXyz(new LinearRgb(r, g, b)), Xyz.PCS_WHITE);
    }

    /** 18 % reflectance is L* 49.50 (ISO/CIE 11664-4; density 0.745, ISO 5-4). */
    @ParameterizedTest
    @EnumSource(RgbSpace.class)
    void profiledGreyIsWhatTheStandardSays(RgbSpace space) {
        ScanColour colour = ScanColour.embedded(info(3, RgbProfiles.of(space)));
        assertEquals(Trust.PROFILED_SCAN, colour.trust());
        assertTrue(colour.warnings().isEmpty());
        Lab grey = lab(colour, 0.18, 0.18, 0.18);
        assertEquals(49.50, grey.l(), 0.01);
        assertEquals(0, grey.chroma(), 0.02);
    }

    /** A profile for Lab codes has three channels too. */
    @Test
    void aProfileForLabCodesIsSaidToBeOne() {
        byte[] lab = SimulatedPrinter.glossy().profile();
        System.arraycopy("spacLab ".getBytes(StandardCharsets.US_ASCII), 0, lab, 12, 8);
        Problem problem =
                assertThrows(
                        Problem.class,
                        () -> ScanColour.given("lab.icc", lab, info(3, new byte[0])));
        assertTrue(problem.getMessage().contains("it is for Lab codes"), problem::toString);
        Problem grey =
                assertThrows(
                        Problem.class,
                        () ->
                                ScanColour.given(
                                        "rgb.icc",
                                        RgbProfiles.of(RgbSpace.SRGB),
                                        info(1, new byte[0])));
        assertTrue(grey.getMessage().contains("3 channels, the scan has 1"), grey::toString);
    }

    /**
     * IEC 61966-2-1 decoding of code 128 of 255 is 0.21586; 8-bit codes are 257 times that on the
     * 16-bit scale.
     */
    @Test
    void withoutProfileCodesAreSrgb() {
        ScanColour colour = ScanColour.embedded(info(3, new byte[0]));
        assertEquals(Trust.PLAIN_SCAN, colour.trust());
        assertEquals(List.of(WarningCode.PLAIN_SCAN), codes(colour));
        float[] curve = colour.codeLight().curve(1);
        assertEquals(65536, curve.length);
        assertEquals(0, curve[0]);
        assertEquals(0.21586, curve[128 * 257], 1e-5);
        assertEquals(1, curve[65535]);
    }

    /** A PNG may say that its codes are light itself, or another power of it. */
    @Test
    void exponentThatAFileSaysReplacesSrgb() {
        byte[] damaged = {1, 2, 3};
        for (Optional<byte[]> profile : List.of(Optional.<byte[]>empty(), Optional.of(damaged))) {
            for (double gamma : new double[] {1, 1.8}) {
                ScanInfo info =
                        new ScanInfo(
                                "scan.png",
                                "PNG",
                                100,
                                100,
                                3,
                                16,
                                Optional.empty(),
                                profile,
                                false,
                                Optional.empty(),
                                OptionalDouble.of(gamma));
                for (ScanColour colour :
                        List.of(ScanColour.embedded(info), ScanColour.plain(info))) {
                    assertEquals(Trust.PLAIN_SCAN, colour.trust());
                    assertTrue(codes(colour).contains(WarningCode.PLAIN_SCAN));
                    float[] curve = colour.codeLight().curve(1);
                    assertEquals(Math.pow(128 / 255.0, gamma), curve[128 * 257], 1e-5);
                    assertEquals(1, curve[65535]);
                }
            }
        }
    }

    /** So damaged that nothing of it is left. */
    @Test
    void profileWithoutBytesIsToldAsUnusable() {
        ScanInfo info =
                new ScanInfo(
                        "scan.png",
                        "PNG",
                        100,
                        100,
                        3,
                        16,
                        Optional.empty(),
                        Optional.of(new byte[0]),
                        false);
        ScanColour colour = ScanColour.embedded(info);
        assertEquals(List.of(WarningCode.PROFILE_UNUSABLE, WarningCode.PLAIN_SCAN), codes(colour));
        String told = colour.warnings().get(0).text();
        assertTrue(told.contains("its compressed data are damaged"), told);
    }

    @Test
    void damagedProfileMakesAPlainScan() {
        byte[] profile = RgbProfiles.of(RgbSpace.SRGB);
        ScanColour colour = ScanColour.embedded(info(3, Arrays.copyOf(profile, 300)));
        assertEquals(Trust.PLAIN_SCAN, colour.trust());
        assertEquals(List.of(WarningCode.PROFILE_UNUSABLE, WarningCode.PLAIN_SCAN), codes(colour));
    }

    @Test
    void profileOfOtherChannelCountMakesAPlainScan() {
        ScanColour colour = ScanColour.embedded(info(1, RgbProfiles.of(RgbSpace.SRGB)));
        assertEquals(Trust.PLAIN_SCAN, colour.trust());
        assertTrue(codes(colour).contains(WarningCode.PROFILE_UNUSABLE));
        assertTrue(colour.grey());
    }

    /**
     * Header bytes 12 to 15 are the profile's class (ISO 15076-1, 7.2.5): here an output device.
     */
    @Test
    void aPrintersProfileIsNoScanners() {
        byte[] printers = RgbProfiles.of(RgbSpace.SRGB).clone();
        System.arraycopy("prtr".getBytes(StandardCharsets.US_ASCII), 0, printers, 12, 4);
        ScanColour colour = ScanColour.embedded(info(3, printers));
        assertEquals(Trust.PLAIN_SCAN, colour.trust());
        assertTrue(codes(colour).contains(WarningCode.PROFILE_UNUSABLE));
        Problem problem =
                assertThrows(
                        Problem.class,
                        () -> ScanColour.given("paper.icc", printers, info(3, new byte[0])));
        assertTrue(problem.getMessage().contains("printer's"), problem.getMessage());
    }

    /** The third number of each colorant is its Z (ISO 15076-1, 10.31): white without blue. */
    @Test
    void aProfileWhoseWhiteLacksBlueIsNoProfile() {
        byte[] bytes = RgbProfiles.of(RgbSpace.SRGB).clone();
        ByteBuffer buffer = ByteBuffer.wrap(bytes);
        for (int i = 0; i < buffer.getInt(128); i++) {
            int entry = 132 + 12 * i;
            if (new String(bytes, entry, 4, StandardCharsets.US_ASCII).matches("[rgb]XYZ")) {
                buffer.putInt(buffer.getInt(entry + 4) + 16, 0);
            }
        }
        ScanColour colour = ScanColour.embedded(info(3, bytes));
        assertEquals(Trust.PLAIN_SCAN, colour.trust());
        assertTrue(codes(colour).contains(WarningCode.PROFILE_UNUSABLE));
    }

    @Test
    void profileThatTheUserNamesMustFit() {
        Problem problem =
                assertThrows(
                        Problem.class,
                        () -> ScanColour.given("my.icc", new byte[200], info(3, new byte[0])));
        assertEquals(Problem.Kind.INPUT, problem.kind());
        assertTrue(problem.getMessage().startsWith("my.icc: "), problem.getMessage());
    }
}
