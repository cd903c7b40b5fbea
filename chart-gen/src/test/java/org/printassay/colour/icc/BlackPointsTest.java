package org.printassay.colour.icc;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.printassay.colour.Lab;
import org.printassay.colour.Xyz;

/**
 * Black points against a second implementation, written from the description in ISO 18619:2015
 * (clause 4.2) with other means: a polynomial fitted about its centre by orthogonal functions, its
 * root found by bisection. That the rows of icc-transform-checks.csv agree, and LittleCMS with
 * compensation on, checks the same from outside.
 */
class BlackPointsTest {
    /** L*; both are double precision, the bisection stops here. */
    private static final double SAME = 1e-6;

    @Test
    void secondImplementationAgreesOnPrintingProfiles() throws IccException {
        List<Path> files = FreeProfiles.all();
        int compared = 0;
        for (Path file : files) {
            IccProfile profile;
            try {
                profile = IccProfile.parse(FreeProfiles.read(file));
            } catch (IccException e) {
                continue; // classes that describe no device
            }
            boolean prints =
                    profile.space() == IccProfile.Space.CMYK
                            && profile.version() == 2
                            && profile.ways().hasTableFromPcs(Intent.RELATIVE);
            if (prints) {
                for (Intent intent :
                        List.of(Intent.PERCEPTUAL, Intent.RELATIVE, Intent.SATURATION)) {
                    Xyz black = BlackPoints.destination(profile, intent);
                    assertEquals(
                            again(profile, intent),
                            Lab.of(black, Xyz.PCS_WHITE).l(),
                            SAME,
                            file + " " + intent);
                    compared++;
                }
            }
        }
        FreeProfiles.require(compared >= 9, "printing profiles (five Debian packages)");
    }

    /** Made-up printers (simulated): flat black, soft and hard bends, a straight line. */
    @ParameterizedTest
    @CsvSource({"8,0.5", "8,3", "15,8", "20,1", "3,12", "30,6"})
    void secondImplementationAgreesOnRamps(double black, double softness) {
        DoubleUnaryOperator printer =
                l -> {
                    double above = l - black;
                    return black + (above + Math.sqrt(above * above + softness * softness)) / 2;
                };
        for (Intent intent : List.of(Intent.PERCEPTUAL, Intent.RELATIVE)) {
            Lab found =
                    BlackRamp.of(
                                    lab -> new Lab(printer.applyAsDouble(lab.l()), 0, 0),
                                    new Lab(0, 0, 0))
                            .black(intent);
            assertEquals(again(printer, intent, 0), found.l(), SAME, intent.words());
        }
    }

    /** With a hard bend the black is where the bend is. */
    @Test
    void hardBendIsFound() {
        Lab found =
                BlackRamp.of(lab -> new Lab(Math.max(lab.l(), 14), 0, 0), new Lab(0, 0, 0))
                        .black(Intent.PERCEPTUAL);
        assertEquals(14, found.l(), 0.2);
    }

    /** A ramp that says nothing gives pure black. */
    @Test
    void flatRampTellsNothing() {
        Lab found = BlackRamp.of(lab -> new Lab(40, 0, 0), new Lab(9, 0, 0)).black(Intent.RELATIVE);
        assertEquals(0, found.l());
    }

    /** ISO 15076-1 names the black of the reference medium of version 4: L* 3.1373. */
    @Test
    void referenceMedium() throws IccException {
        byte[] toColour = TestProfile.lutAToB(3, 2, 3);
        IccProfile profile =
                IccProfile.parse(
                        TestProfile.of(
                                4,
                                "prtrRGB Lab ",
                                Map.of("A2B0", toColour, "B2A0", TestProfile.lutBToA(3, 2, 3))));
        Xyz black = BlackPoints.destination(profile, Intent.PERCEPTUAL);
        assertEquals(3.1373, Lab.of(black, Xyz.PCS_WHITE).l(), 1e-4);
    }

    private static double again(IccProfile profile, Intent intent) throws IccException {
        IccTransform there = IccTransform.fromColour(profile, intent);
        IccTransform back = IccTransform.toColour(profile, Intent.RELATIVE);
        double start = 0;
        if (intent == Intent.RELATIVE) {
            IccTransform perceptual = IccTransform.fromColour(profile, Intent.PERCEPTUAL);
            start = Math.min(50, back.lab(perceptual.device(new Lab(0, 0, 0))).l());
        }
        return again(l -> back.lab(there.device(new Lab(l, 0, 0))).l(), intent, start);
    }

    private static double again(DoubleUnaryOperator printer, Intent intent, double start) {
        double[] ramp = new double[256];
        for (int i = 255; i >= 0; i--) {
            double printed = printer.applyAsDouble(i / 2.55);
            ramp[i] = i == 255 || i == 0 ? printed : Math.min(printed, ramp[i + 1]);
        }
        double low = ramp[0];
        double span = ramp[255] - low;
        boolean relative = intent == Intent.RELATIVE;
        boolean straight = relative;
        List<double[]> shadow = new ArrayList<>();
        for (int i = 0; i < 256; i++) {
            double l = i / 2.55;
            straight &= l <= low + 0.2 * span || Math.abs(l - ramp[i]) < 4;
            double share = (ramp[i] - low) / span;
            if (share >= (relative ? 0.1 : 0.03) && share < (relative ? 0.5 : 0.25)) {
                shadow.add(new double[] {l, share});
            }
        }
        return straight ? start : foot(shadow);
    }

    /** Orthogonal polynomials on the given points, then bisection to the left of the middle. */
    private static double foot(List<double[]> points) {
        int n = points.size();
        double mean = points.stream().mapToDouble(p -> p[0]).sum() / n;
        double square = points.stream().mapToDouble(p -> Math.pow(p[0] - mean, 2)).sum() / n;
        double skew = points.stream().mapToDouble(p -> Math.pow(p[0] - mean, 3)).sum() / n / square;
        double c0 = 0;
        double c1 = 0;
        double c2 = 0;
        double norm = 0;
        for (double[] p : points) {
            double x = p[0] - mean;
            double second = x * x - skew * x - square;
            c0 += p[1] / n;
            c1 += p[1] * x / n / square;
            c2 += p[1] * second;
            norm += second * second;
        }
        double k0 = c0;
        double k1 = c1;
        double k2 = c2 / norm;
        DoubleUnaryOperator fit =
                at -> {
                    double x = at - mean;
                    return k0 + k1 * x + k2 * (x * x - skew * x - square);
                };
        // The vertex bounds the search: the rising side is right of it when curved upwards.
        double vertex = mean + (skew - k1 / k2) / 2;
        double left = k2 > 0 ? vertex : mean - 1000;
        double right = mean;
        if (fit.applyAsDouble(left) >= 0) {
            return 0;
        }
        while (right - left > 1e-9) {
            double middle = (left + right) / 2;
            if (fit.applyAsDouble(middle) < 0) {
                left = middle;
            } else {
                right = middle;
            }
        }
        return Math.max(0, Math.min(50, left));
    }
}
