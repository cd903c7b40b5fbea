package org.printassay.layout;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.printassay.colour.Lab;
import org.printassay.colour.RgbSpace;

/**
 * The skin-like tones against 100 measured skins: C. C. Cooksey, D. W. Allen, B. K. Tsai,
 * "Reference data set of human skin reflectance", J. Res. NIST 122:26, 2017, doi:10.18434/M38597.
 */
class SkinTonesTest {
    /** The darkest and the lightest tone lie by 1 outside; rounding to codes adds up to 0.5. */
    private static final double NEAR = 1.5;

    private static final double HUE_SLACK_DEGREES = 3;

    private static List<double[]> measured() throws IOException {
        List<double[]> points = new ArrayList<>();
        try (InputStream in =
                        SkinTonesTest.class.getResourceAsStream("/published/skin-nist-lab.csv");
                BufferedReader lines =
                        new BufferedReader(new InputStreamReader(in, StandardCharsets.UTF_8))) {
            for (String line = lines.readLine(); line != null; line = lines.readLine()) {
                if (Character.isDigit(line.charAt(0))) {
                    String[] cells = line.split(",", -1);
                    points.add(
                            new double[] {
                                Double.parseDouble(cells[1]),
                                Double.parseDouble(cells[2]),
                                Double.parseDouble(cells[3])
                            });
                }
            }
        }
        return points;
    }

    private static double dot(double[] a, double[] b) {
        return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
    }

    private static double[] less(double[] a, double[] b) {
        return new double[] {a[0] - b[0], a[1] - b[1], a[2] - b[2]};
    }

    /**
     * Distance to the convex hull, by the conditional gradient method (M. Frank, P. Wolfe, Naval
     * Research Logistics Quarterly 3, 1956): towards the corner that lies furthest on the way.
     */
    private static double distance(List<double[]> corners, double[] point) {
        double[] at = corners.get(0);
        for (int step = 0; step < 20_000; step++) {
            double[] away = less(at, point);
            double[] best = corners.get(0);
            for (double[] corner : corners) {
                best = dot(corner, away) < dot(best, away) ? corner : best;
            }
            double[] way = less(best, at);
            double length = dot(way, way);
            double share = length == 0 ? 0 : Math.min(1, -dot(away, way) / length);
            if (share <= 0) {
                break;
            }
            at =
                    new double[] {
                        at[0] + share * way[0], at[1] + share * way[1], at[2] + share * way[2]
                    };
        }
        return Math.sqrt(dot(less(at, point), less(at, point)));
    }

    private static List<Lab> tones(RgbSpace space) {
        return SkinTones.twinned(space).stream()
                .map(ink -> space.toLab(ink.rgb()))
                .distinct()
                .toList();
    }

    @Test
    void theDistanceIsToldOfAKnownHull() {
        List<double[]> cube = new ArrayList<>();
        for (int i = 0; i < 8; i++) {
            cube.add(new double[] {i & 1, i >> 1 & 1, i >> 2});
        }
        assertEquals(0, distance(cube, new double[] {0.3, 0.5, 0.9}), 0.01);
        assertEquals(2, distance(cube, new double[] {0.4, 0.2, 3}), 0.01);
        assertEquals(Math.sqrt(3), distance(cube, new double[] {2, 2, 2}), 0.01);
    }

    /** As dark and as light as the measured skins are. */
    @ParameterizedTest
    @EnumSource(RgbSpace.class)
    void tonesLieWithinTheHullOfMeasuredSkins(RgbSpace space) throws IOException {
        List<double[]> skins = measured();
        assertEquals(100, skins.size());
        double darkest = skins.stream().mapToDouble(p -> p[0]).min().orElseThrow();
        double lightest = skins.stream().mapToDouble(p -> p[0]).max().orElseThrow();
        int within = 0;
        for (Lab tone : tones(space)) {
            if (tone.l() > darkest - NEAR && tone.l() < lightest + NEAR) {
                within++;
                double apart = distance(skins, new double[] {tone.l(), tone.a(), tone.b()});
                assertTrue(apart <= NEAR, tone + " is " + apart + " from the hull");
            }
        }
        assertEquals(7, within);
    }

    /** Darker and lighter than any that was measured: of their hues, and of no more chroma. */
    @ParameterizedTest
    @EnumSource(RgbSpace.class)
    void tonesBeyondKeepTheHueOfMeasuredSkins(RgbSpace space) throws IOException {
        double least = Double.POSITIVE_INFINITY;
        double most = Double.NEGATIVE_INFINITY;
        double fullest = 0;
        for (double[] skin : measured()) {
            double hue = Math.toDegrees(Math.atan2(skin[2], skin[1]));
            least = Math.min(least, hue);
            most = Math.max(most, hue);
            fullest = Math.max(fullest, Math.hypot(skin[1], skin[2]));
        }
        List<Lab> tones = tones(space);
        assertEquals(11, tones.size());
        for (Lab tone : tones) {
            double hue = Math.toDegrees(Math.atan2(tone.b(), tone.a()));
            assertTrue(hue > least - HUE_SLACK_DEGREES && hue < most + HUE_SLACK_DEGREES, "" + hue);
            assertTrue(tone.chroma() <= fullest, tone.toString());
        }
    }
}
