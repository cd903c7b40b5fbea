package org.printassay.calibrate;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.IntStream;
import org.printassay.colour.DeltaE;
import org.printassay.colour.Lab;
import org.printassay.colour.Rgb8;
import org.printassay.colour.Xyz;
import org.printassay.reading.ReadingFlag;

/**
 * How far patches of one code lie apart over the whole sheet, root mean square dE00 from their
 * mean, corrected for the mean taken out. Grain, banding and noise of prints and scans that are in
 * order leave some tenths; a scanner whose sensor is uneven in steps, or a print with clouds, leave
 * more, and no odd one among twins tells of it. Means of many twins still hold then, single patches
 * do not.
 *
 * @param all of all patches that nothing else is known of
 * @param paper of bare paper; NaN where there is too little
 */
record TwinScatter(double all, double paper) {
    /**
     * A single patch is off by up to twice as much in 95 of 100: by more than 2 dE00 (common
     * practice, no source).
     */
    private static final double WIDE = 1;

    /** Paper as it is made differs by less (common practice, no source). */
    private static final double WIDE_ON_PAPER = 0.5;

    /** Twins beyond the first of each code that tell of a tone. */
    private static final int ENOUGH = 12;

    private static final int ZONES = 4;

    static TwinScatter of(List<PatchColour> colours) {
        double[] zones = zones(colours);
        return new TwinScatter(zones[ZONES], zones[TwinScales.PAPER]);
    }

    /** Whether single patches are unsure by it. */
    boolean wide() {
        return all > WIDE;
    }

    /** Whether bare paper is apart too, which no printer does. */
    boolean byScanner() {
        return paper > WIDE_ON_PAPER;
    }

    /** The same colours, those of tones whose twins lie far apart flagged. */
    static List<PatchColour> flagged(List<PatchColour> colours) {
        double[] zones = zones(colours);
        if (!(zones[ZONES] > WIDE)) {
            return colours;
        }
        List<PatchColour> flagged = new ArrayList<>();
        for (PatchColour colour : colours) {
            double zone = zones[zone(colour)];
            boolean wide = (Double.isNaN(zone) ? zones[ZONES] : zone) > WIDE;
            flagged.add(wide ? colour.flagged(ReadingFlag.SCATTERED) : colour);
        }
        return flagged;
    }

    /** Of each tone, and of all last; NaN where there are too few twins. */
    private static double[] zones(List<PatchColour> colours) {
        Map<Rgb8, List<PatchColour>> groups = new LinkedHashMap<>();
        for (PatchColour colour : colours) {
            if (colour.flags().isEmpty() || colour.flags().equals(Set.of(ReadingFlag.SCATTERED))) {
                groups.computeIfAbsent(colour.patch().rgb(), k -> new ArrayList<>()).add(colour);
            }
        }
        double[] squares = new double[ZONES + 1];
        int[] free = new int[ZONES + 1];
        for (List<PatchColour> twins : groups.values()) {
            List<Lab> labs = twins.stream().map(t -> Lab.of(t.relative(), Xyz.PCS_WHITE)).toList();
            Lab mean = Lab.mean(labs);
            double sum = 0;
            for (Lab lab : labs) {
                sum += Math.pow(DeltaE.ciede2000(mean, lab), 2);
            }
            for (int z : new int[] {zone(twins.get(0)), ZONES}) {
                squares[z] += sum;
                free[z] += twins.size() - 1;
            }
        }
        return IntStream.rangeClosed(0, ZONES)
                .mapToDouble(z -> free[z] < ENOUGH ? Double.NaN : Math.sqrt(squares[z] / free[z]))
                .toArray();
    }

    private static int zone(PatchColour colour) {
        double reflectance = Math.max(0, colour.relative().y() / 100);
        return TwinScales.zone(reflectance, colour.patch().rgb().equals(Rgb8.grey(255)));
    }
}
