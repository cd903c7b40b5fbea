package org.printassay.calibrate.outlier;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.printassay.calibrate.codes.PatchColour;
import org.printassay.calibrate.light.TwinScales;
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
 * @param tones of shadows, mid-tones, highlights and bare paper; NaN where there are too few
 */
public record TwinScatter(List<Double> tones) {
    /**
     * A single patch is off by up to twice as much in 95 of 100: by more than 2 dE00 (common
     * practice, no source).
     */
    private static final double WIDE = 1;

    /** Paper as it is made differs by less (common practice, no source). */
    private static final double WIDE_ON_PAPER = 0.5;

    /** Twins beyond the first of each code that tell of a tone. */
    private static final int ENOUGH = 12;

    private static final List<String> NAMES =
            List.of("in shadows", "in mid-tones", "in highlights", "on bare paper");

    public TwinScatter {
        tones = List.copyOf(tones);
    }

    /** Of patches that nothing else is known of. */
    public static TwinScatter of(List<PatchColour> colours) {
        Map<Rgb8, List<PatchColour>> groups = new LinkedHashMap<>();
        for (PatchColour colour : colours) {
            if (Set.of(ReadingFlag.SCATTERED).containsAll(colour.flags())) {
                groups.computeIfAbsent(colour.patch().rgb(), k -> new ArrayList<>()).add(colour);
            }
        }
        double[] squares = new double[NAMES.size()];
        int[] free = new int[NAMES.size()];
        for (List<PatchColour> twins : groups.values()) {
            List<Lab> labs = twins.stream().map(t -> Lab.of(t.relative(), Xyz.PCS_WHITE)).toList();
            Lab mean = Lab.mean(labs);
            int zone = zone(twins.get(0));
            for (Lab lab : labs) {
                squares[zone] += Math.pow(DeltaE.ciede2000(mean, lab), 2);
            }
            free[zone] += twins.size() - 1;
        }
        return new TwinScatter(
                IntStream.range(0, NAMES.size())
                        .mapToObj(
                                z ->
                                        free[z] < ENOUGH
                                                ? Double.NaN
                                                : Math.sqrt(squares[z] / free[z]))
                        .toList());
    }

    /** Whether bare paper is apart too, which no ink does. */
    public boolean onPaper() {
        return tones.get(TwinScales.PAPER) > WIDE_ON_PAPER;
    }

    /** By how much twins lie apart, tone by tone where it is much; empty where it is nowhere. */
    public String words() {
        return IntStream.range(0, NAMES.size())
                .filter(z -> tones.get(z) > WIDE)
                .mapToObj(z -> String.format(Locale.ROOT, "%.1f %s", tones.get(z), NAMES.get(z)))
                .collect(Collectors.joining(", "));
    }

    /** The same colours, those of tones whose twins lie far apart flagged. */
    public static List<PatchColour> flagged(List<PatchColour> colours) {
        List<Double> tones = of(colours).tones();
        return colours.stream()
                .map(c -> tones.get(zone(c)) > WIDE ? c.flagged(ReadingFlag.SCATTERED) : c)
                .toList();
    }

    private static int zone(PatchColour colour) {
        double reflectance = Math.max(0, colour.relative().y() / 100);
        return TwinScales.zone(reflectance, colour.patch().rgb().equals(Rgb8.grey(255)));
    }
}
