package org.printassay.scannercalibration;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.Set;
import java.util.stream.Collectors;
import org.printassay.problem.Problem;
import org.printassay.scannermodel.Misfits;
import org.printassay.scannermodel.ModelFit;
import org.printassay.scannermodel.TrainingPatch;

/**
 * A model made from patches that belong together.
 *
 * @param fit the model and its error
 * @param leftOut names of patches that did not fit the others
 */
record Training(ModelFit fit, List<String> leftOut) {
    /** Rank correlation of lightness and light below which files do not belong together. */
    private static final double AGREE = 0.9;

    /** More misfits than this are not single damaged patches. */
    private static final double MOST_MISFITS = 0.1;

    /** Colours that are no greys: fewer say nothing about a scanner's filters. */
    private static final int FEWEST_COLOURFUL = 12;

    private static final double COLOURFUL = 10;

    /**
     * Makes a model.
     *
     * @param measurement name of the measurement file, for messages
     */
    static Training of(String measurement, List<TrainingPatch> patches) throws Problem {
        enough(measurement, patches);
        // Where all light or all lightness is alike, there is no correlation.
        if (!(Misfits.agreement(patches) >= AGREE)) {
            throw apart(measurement);
        }
        List<TrainingPatch> misfits = Misfits.of(patches);
        if (misfits.size() > MOST_MISFITS * patches.size()) {
            throw apart(measurement);
        }
        List<TrainingPatch> kept = new ArrayList<>(patches);
        kept.removeAll(misfits);
        enough(measurement, kept);
        return new Training(
                ModelFit.of(thinned(kept)), misfits.stream().map(TrainingPatch::id).toList());
    }

    private static void enough(String measurement, List<TrainingPatch> patches) throws Problem {
        Set<String> colours =
                patches.stream().map(TrainingPatch::colour).collect(Collectors.toSet());
        Set<String> colourful =
                patches.stream()
                        .filter(patch -> patch.lab().chroma() > COLOURFUL)
                        .map(TrainingPatch::colour)
                        .collect(Collectors.toSet());
        if (colours.size() < ModelFit.FEWEST_COLOURS || colourful.size() < FEWEST_COLOURFUL) {
            throw Problem.input(
                    measurement,
                    String.format(
                            Locale.ROOT,
                            "has only %d colours, %d of them no greys, that the scan shows clean; %d"
                                    + " and %d are needed. Name the measurement of the print that was"
                                    + " scanned.",
                            colours.size(),
                            colourful.size(),
                            ModelFit.FEWEST_COLOURS,
                            FEWEST_COLOURFUL));
        }
    }

    /** As many colours as a model takes: all greys, and others drawn by lot, always the same. */
    static List<TrainingPatch> thinned(List<TrainingPatch> patches) {
        Set<String> greys = new LinkedHashSet<>();
        Set<String> others = new LinkedHashSet<>();
        patches.forEach(patch -> (patch.neutral() ? greys : others).add(patch.colour()));
        if (greys.size() + others.size() <= ModelFit.MOST_COLOURS) {
            return patches;
        }
        List<String> drawn = new ArrayList<>(others);
        Collections.shuffle(drawn, new Random(1));
        List<String> order = new ArrayList<>(greys);
        order.addAll(drawn);
        Set<String> used = Set.copyOf(order.subList(0, ModelFit.MOST_COLOURS));
        return patches.stream().filter(patch -> used.contains(patch.colour())).toList();
    }

    private static Problem apart(String measurement) {
        return Problem.input(
                measurement,
                "does not belong to the scan: lightness as measured and as scanned do not follow each"
                        + " other. Name the measurement of the print that was scanned.");
    }
}
