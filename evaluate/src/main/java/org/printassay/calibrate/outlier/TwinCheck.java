package org.printassay.calibrate.outlier;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.ToDoubleFunction;
import org.printassay.calibrate.codes.PatchColour;
import org.printassay.calibrate.light.TwinScales;
import org.printassay.colour.DeltaE;
import org.printassay.colour.Lab;
import org.printassay.colour.Rgb8;
import org.printassay.colour.Xyz;
import org.printassay.reading.LabError;
import org.printassay.reading.ReadingFlag;
import org.printassay.robust.Median;

/**
 * Finds patches that differ from their twins by more than the spread of twins explains: something
 * lies over the whole patch, evenly, so that nothing within it shows; or the print has a fault
 * there. Of three or more twins the odd one is told; of two both are flagged, for nobody knows
 * which is right. Patches that carry a flag already neither tell nor are told.
 */
public final class TwinCheck {
    /** Standard deviations; twins of a good print stay within four. */
    private static final double CUT = 5;

    /** Smaller differences, dE00, change no result. */
    private static final double LEAST_DELTA_E = 1;

    private static final List<ToDoubleFunction<Lab>> COORDINATES = List.of(Lab::l, Lab::a, Lab::b);
    private static final List<ToDoubleFunction<LabError>> ERRORS =
            List.of(LabError::l, LabError::a, LabError::b);

    private final List<PatchColour> colours;
    private final Lab[] labs;
    private final int[] zones;
    private final Map<Rgb8, List<Integer>> groups = new LinkedHashMap<>();
    private final TwinScales[] scales = new TwinScales[COORDINATES.size()];
    private final boolean[] unlike;
    private final boolean assumed;

    private TwinCheck(List<PatchColour> colours, boolean assumed) {
        int n = colours.size();
        this.colours = colours;
        this.labs = new Lab[n];
        this.zones = new int[n];
        this.unlike = new boolean[n];
        this.assumed = assumed;
        for (int i = 0; i < n; i++) {
            PatchColour colour = colours.get(i);
            Rgb8 code = colour.patch().rgb();
            labs[i] = Lab.of(colour.relative(), Xyz.PCS_WHITE);
            double reflectance = Math.max(0, colour.relative().y() / 100);
            zones[i] = TwinScales.zone(reflectance, code.equals(Rgb8.grey(255)));
            if (colour.flags().isEmpty()) {
                groups.computeIfAbsent(code, k -> new ArrayList<>()).add(i);
            }
        }
        for (int c = 0; c < scales.length; c++) {
            scales[c] = TwinScales.of(residuals(COORDINATES.get(c)), zones, 1);
        }
    }

    /**
     * The same colours, those unlike their twins flagged.
     *
     * @param assumed whether twins may be apart by stray light that could not be estimated
     */
    public static List<PatchColour> flagged(List<PatchColour> colours, boolean assumed) {
        TwinCheck check = new TwinCheck(colours, assumed);
        check.groups.values().forEach(check::judge);
        List<PatchColour> all = new ArrayList<>();
        for (int i = 0; i < check.unlike.length; i++) {
            PatchColour colour = colours.get(i);
            all.add(check.unlike[i] ? colour.flagged(ReadingFlag.UNLIKE_TWINS) : colour);
        }
        return all;
    }

    /** Distances from the mean of the twins, standardised for the mean taken out. */
    private double[] residuals(ToDoubleFunction<Lab> of) {
        double[] residuals = new double[labs.length];
        Arrays.fill(residuals, Double.NaN);
        for (List<Integer> twins : groups.values()) {
            int n = twins.size();
            double mean =
                    twins.stream().mapToDouble(i -> of.applyAsDouble(labs[i])).average().orElse(0);
            for (int i : twins) {
                if (n > 1) {
                    residuals[i] = (of.applyAsDouble(labs[i]) - mean) / Math.sqrt(1 - 1.0 / n);
                }
            }
        }
        return residuals;
    }

    /** Takes the one that is farthest from the others away until the rest agree. */
    private void judge(List<Integer> twins) {
        List<Integer> left = new ArrayList<>(twins);
        while (left.size() > 1) {
            int worst = left.get(0);
            double most = 0;
            for (int i : left) {
                double away = away(i, left);
                if (away > most) {
                    most = away;
                    worst = i;
                }
            }
            if (most <= CUT) {
                return;
            }
            unlike[worst] = true;
            left.remove(Integer.valueOf(worst));
            if (left.size() == 1) {
                unlike[left.get(0)] = true;
            }
        }
    }

    /** Standard deviations between a patch and the others; 0 when too little to matter. */
    private double away(int patch, List<Integer> twins) {
        double[] middle = new double[scales.length];
        double most = 0;
        LabError own = colours.get(patch).error();
        for (int c = 0; c < middle.length; c++) {
            ToDoubleFunction<Lab> of = COORDINATES.get(c);
            double[] others =
                    twins.stream()
                            .filter(i -> i != patch)
                            .mapToDouble(i -> of.applyAsDouble(labs[i]))
                            .toArray();
            middle[c] = Median.of(others);
            double error = ERRORS.get(c).applyAsDouble(own);
            double sigma =
                    Math.max(scales[c].zones()[zones[patch]], Double.isFinite(error) ? error : 0);
            double distance = Math.abs(of.applyAsDouble(labs[patch]) - middle[c]);
            double random = sigma * Math.sqrt(1 + 1.0 / others.length);
            double stray = assumed ? apart(patch, twins, of) : 0;
            most = Math.max(most, distance / Math.hypot(random, stray));
        }
        Lab others = new Lab(middle[0], middle[1], middle[2]);
        return DeltaE.ciede2000(labs[patch], others) > LEAST_DELTA_E ? most : 0;
    }

    /** Standard error of a patch's distance from the others by what moves each its own way. */
    private double apart(int patch, List<Integer> twins, ToDoubleFunction<Lab> of) {
        double squares = 0;
        for (int cause = 0; cause < colours.get(patch).causes().size(); cause++) {
            double others = 0;
            for (int i : twins) {
                others += i == patch ? 0 : of.applyAsDouble(colours.get(i).causes().get(cause));
            }
            double own = of.applyAsDouble(colours.get(patch).causes().get(cause));
            squares += Math.pow(own - others / (twins.size() - 1), 2);
        }
        return Math.sqrt(squares);
    }
}
