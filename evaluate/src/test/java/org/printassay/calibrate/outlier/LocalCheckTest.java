package org.printassay.calibrate.outlier;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.printassay.calibrate.PressRoutes;
import org.printassay.calibrate.SimulatedScan;
import org.printassay.calibrate.codes.PatchColour;
import org.printassay.colour.Lab;
import org.printassay.colour.Rgb8;
import org.printassay.colour.Xyz;
import org.printassay.reading.ReadingFlag;
import org.printassay.sheet.PointMm;
import org.printassay.sheet.Sheet;

/** Stains, shadows and spots of light on prints of real routes ({@link PressRoutes}), made up. */
class LocalCheckTest {
    private static final PointMm STAIN = new PointMm(90, 130);
    private static final double RADIUS_MM = 20;

    private final Sheet sheet = new SimulatedScan().chart.sheets().get(0);
    private final Map<String, Map<Rgb8, Lab>> routes = PressRoutes.all();

    LocalCheckTest() throws Exception {}

    /** Patches within the stain, and beyond twice its radius: all, and those told. */
    private record Told(int within, int ofWithin, int beyond) {}

    private Told told(PressRoutes.Change change) {
        int within = 0;
        int ofWithin = 0;
        int beyond = 0;
        long seed = 0;
        for (Map<Rgb8, Lab> route : routes.values()) {
            List<PatchColour> colours = PressRoutes.printed(sheet, route, ++seed, change);
            for (PatchColour colour : LocalCheck.flagged(colours)) {
                boolean told = colour.flags().contains(ReadingFlag.DISTURBED);
                double away = away(colour.patch().area().centre());
                within += away < 0.7 * RADIUS_MM ? 1 : 0;
                ofWithin += told && away < 0.7 * RADIUS_MM ? 1 : 0;
                beyond += told && away > 2 * RADIUS_MM ? 1 : 0;
            }
        }
        return new Told(within, ofWithin, beyond);
    }

    private static double away(PointMm place) {
        return Math.hypot(place.x() - STAIN.x(), place.y() - STAIN.y());
    }

    @Test
    void aStainIsTold() {
        Told told =
                told(
                        (place, lab) ->
                                away(place) < RADIUS_MM
                                        ? new Lab(lab.l() - 4, lab.a() + 1, lab.b() + 3)
                                        : lab);
        assertTrue(told.ofWithin() > 0.95 * told.within(), told.toString());
        assertEquals(0, told.beyond(), told.toString());
    }

    @Test
    void aSpotOfLightIsToldWhereItIsDark() {
        Told told =
                told(
                        (place, lab) -> {
                            Xyz xyz = lab.toXyz(Xyz.PCS_WHITE);
                            double more = 1.5 * Math.exp(-Math.pow(away(place) / RADIUS_MM, 2));
                            return Lab.of(
                                    new Xyz(xyz.x() + more, xyz.y() + more, xyz.z() + more),
                                    Xyz.PCS_WHITE);
                        });
        assertTrue(told.ofWithin() > 0.3 * told.within(), told.toString());
        assertEquals(0, told.beyond(), told.toString());
    }

    /** Dark tones of matte prints spread more than light ones. */
    @Test
    void darkTonesThatSpreadMoreAreNot() {
        for (double spread : new double[] {0.5, 0.8, 1.2}) {
            Random random = new Random(7);
            Told told =
                    told(
                            (place, lab) -> {
                                double dark = Math.min(1, Math.max(0, (45 - lab.l()) / 25));
                                double more = spread * dark * random.nextGaussian();
                                return new Lab(lab.l() + more, lab.a(), lab.b());
                            });
            assertTrue(told.ofWithin() + told.beyond() == 0, spread + ": " + told);
        }
    }

    @Test
    void driftAndSpreadOfAGoodPrintAreNot() {
        for (double drift : new double[] {0, 1}) {
            Told told =
                    told(
                            (place, lab) ->
                                    new Lab(
                                            lab.l() + drift * (place.x() / 210 - 0.5),
                                            lab.a(),
                                            lab.b() + drift * (place.y() / 297 - 0.5)));
            assertEquals(0, told.ofWithin() + told.beyond(), told.toString());
        }
    }
}
