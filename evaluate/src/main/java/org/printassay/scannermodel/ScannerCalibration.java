package org.printassay.scannermodel;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.printassay.colour.DeltaE;
import org.printassay.colour.Lab;
import org.printassay.colour.LinearRgb;

/**
 * A scanner calibrated with one print: how its codes become colour, how far that is off, and what
 * it was made with.
 *
 * @param curves light of its codes
 * @param model colour of that light
 * @param error leave-one-out error
 * @param colours what it was made from
 * @param paper light of the print's bare paper
 * @param leftOut names of patches that did not fit all others and were left out
 * @param strayLightKnown whether stray light was estimated in the scan; a reference target has no
 *     twins that tell
 * @param lightDeltaE00 mean dE00 by which its own patches may be off together, one standard error,
 *     because the light of its scan is known no better; null where it could not be estimated
 * @param made what it was made with
 */
public record ScannerCalibration(
        CodeCurves curves,
        ScannerModel model,
        LeaveOneOut error,
        List<FittedColour> colours,
        LinearRgb paper,
        List<String> leftOut,
        boolean strayLightKnown,
        @Nullable Double lightDeltaE00,
        Circumstances made) {
    /** The error of a colour is that of as many like it. */
    private static final int NEIGHBOURS = 12;

    public ScannerCalibration {
        colours = List.copyOf(colours);
        leftOut = List.copyOf(leftOut);
    }

    /**
     * Mean dE00 to expect on another print, scanned anew: the leave-one-out error, and what is not
     * known of the light of the two scans, which leaving out a colour cannot show.
     */
    public double expectedDeltaE00() {
        double light = lightDeltaE00 == null ? 0 : lightDeltaE00;
        return Math.sqrt(error.meanDeltaE00() * error.meanDeltaE00() + 2 * light * light);
    }

    /**
     * Standard error (one sigma) of L*, a* and b* of a colour by the calibration: root mean square
     * of what the nearest training colours were off by when they were left out.
     */
    public Lab errorNear(Lab lab) {
        List<FittedColour> near = new ArrayList<>(colours);
        near.sort(Comparator.comparingDouble(colour -> DeltaE.cie1976(lab, colour.lab())));
        near = near.subList(0, Math.min(NEIGHBOURS, near.size()));
        double l = 0;
        double a = 0;
        double b = 0;
        for (FittedColour colour : near) {
            l += colour.off().l() * colour.off().l() / near.size();
            a += colour.off().a() * colour.off().a() / near.size();
            b += colour.off().b() * colour.off().b() / near.size();
        }
        return new Lab(Math.sqrt(l), Math.sqrt(a), Math.sqrt(b));
    }

    /** How far colours lie outside those that the calibration was made from, CIELAB; 0 inside. */
    public List<Double> outside(List<Lab> labs) {
        Hull hull = new Hull(colours.stream().map(FittedColour::lab).toList());
        return labs.stream().map(hull::outside).toList();
    }
}
