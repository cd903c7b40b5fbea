package org.printassay.colour;

/**
 * Differences between two CIELAB colours seen under the same white. Signed differences are second
 * minus first: call them with (aim, measured) and they read measured minus aim.
 */
public final class DeltaE {
    /** Within this many degrees of 180, hues count as exactly opposite: atan2 may be an ulp off. */
    private static final double OPPOSITE_HUE_SLACK = 1e-9;

    private static final double POW_25_7 = Math.pow(25, 7);

    private DeltaE() {}

    /** CIE 1976 difference dE*ab: distance in CIELAB. Source: ISO/CIE 11664-4, 4.3. */
    public static double cie1976(Lab one, Lab two) {
        return Math.hypot(two.l() - one.l(), deltaCh(one, two));
    }

    /**
     * Distance in the a*b* plane, dCh = sqrt(da*^2 + db*^2); what a grey is off by, lightness left
     * out. Never negative. Source: ISO 12647-7 (there for greys).
     */
    public static double deltaCh(Lab one, Lab two) {
        return Math.hypot(two.a() - one.a(), two.b() - one.b());
    }

    /** Signed chroma difference dC*ab; positive when the second is more colourful. */
    public static double deltaChroma(Lab one, Lab two) {
        return two.chroma() - one.chroma();
    }

    /**
     * Signed hue difference dH*ab in CIELAB units; positive when the second colour's hue angle lies
     * counter-clockwise of the first. 0 when either is neutral. For exactly opposite hues the sign
     * means nothing. Source: ISO/CIE 11664-4, 4.3, in the form 2 sqrt(C1 C2) sin(dh/2), which keeps
     * its accuracy for small differences.
     */
    public static double deltaHab(Lab one, Lab two) {
        double cross = one.a() * two.b() - one.b() * two.a();
        double dot = one.a() * two.a() + one.b() * two.b();
        double turn = Math.atan2(cross, dot);
        return 2 * Math.sqrt(one.chroma() * two.chroma()) * Math.sin(turn / 2);
    }

    /**
     * CIEDE2000 with kL = kC = kH = 1. Symmetric; 0 for equal colours. Meant for differences below
     * about 5; larger results rank colours but are not perceptually scaled. Shrinks lightness
     * differences near black: 1 L* at L* 5 gives 0.60.
     *
     * <p>Source: Sharma, Wu, Dalal (2005), Color Res. Appl. 30(1), doi:10.1002/col.20070, eqs.
     * 2-22; ISO/CIE 11664-6. Names follow the paper (p = prime).
     */
    public static double ciede2000(Lab one, Lab two) {
        double g = 0.5 * (1 - chromaSwitch((one.chroma() + two.chroma()) / 2)); // eqs. 3, 4
        double a1p = (1 + g) * one.a(); // eq. 5
        double a2p = (1 + g) * two.a();
        double c1p = Math.hypot(a1p, one.b()); // eq. 6
        double c2p = Math.hypot(a2p, two.b());
        double h1p = hueDegrees(a1p, one.b()); // eq. 7
        double h2p = hueDegrees(a2p, two.b());

        double dLp = two.l() - one.l(); // eq. 8
        double dCp = c2p - c1p; // eq. 9
        boolean hueless = c1p * c2p == 0;
        double dhp = hueless ? 0 : hueStep(h1p, h2p); // eq. 10
        double dHp = 2 * Math.sqrt(c1p * c2p) * Math.sin(Math.toRadians(dhp / 2)); // eq. 11

        double meanLp = (one.l() + two.l()) / 2; // eq. 12
        double meanCp = (c1p + c2p) / 2; // eq. 13
        double meanHp = hueless ? h1p + h2p : meanHue(h1p, h2p); // eq. 14
        double t =
                1
                        - 0.17 * cosDegrees(meanHp - 30)
                        + 0.24 * cosDegrees(2 * meanHp)
                        + 0.32 * cosDegrees(3 * meanHp + 6)
                        - 0.20 * cosDegrees(4 * meanHp - 63); // eq. 15
        double dTheta = 30 * Math.exp(-square((meanHp - 275) / 25)); // eq. 16
        double rC = 2 * chromaSwitch(meanCp); // eq. 17
        double fromMiddle = square(meanLp - 50);
        double sL = 1 + 0.015 * fromMiddle / Math.sqrt(20 + fromMiddle); // eq. 18
        double sC = 1 + 0.045 * meanCp; // eq. 19
        double sH = 1 + 0.015 * meanCp * t; // eq. 20
        double rT = -Math.sin(Math.toRadians(2 * dTheta)) * rC; // eq. 21

        double lTerm = dLp / sL;
        double cTerm = dCp / sC;
        double hTerm = dHp / sH;
        return Math.sqrt(
                square(lTerm) + square(cTerm) + square(hTerm) + rT * cTerm * hTerm); // eq. 22
    }

    /** sqrt(C^7 / (C^7 + 25^7)): 0 for greys, 1 for strong colours. */
    private static double chromaSwitch(double chroma) {
        double c7 = Math.pow(chroma, 7);
        return Math.sqrt(c7 / (c7 + POW_25_7));
    }

    private static double hueDegrees(double a, double b) {
        double degrees = Math.toDegrees(Math.atan2(b, a));
        return degrees < 0 ? degrees + 360 : degrees;
    }

    private static boolean within180(double h1, double h2) {
        return Math.abs(h2 - h1) <= 180 + OPPOSITE_HUE_SLACK;
    }

    private static double hueStep(double h1, double h2) {
        double step = h2 - h1;
        if (within180(h1, h2)) {
            return step;
        }
        return step > 0 ? step - 360 : step + 360;
    }

    private static double meanHue(double h1, double h2) {
        double sum = h1 + h2;
        if (within180(h1, h2)) {
            return sum / 2;
        }
        return (sum < 360 ? sum + 360 : sum - 360) / 2;
    }

    private static double cosDegrees(double degrees) {
        return Math.cos(Math.toRadians(degrees));
    }

    private static double square(double x) {
        return x * x;
    }
}
