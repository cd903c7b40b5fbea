package org.printassay.scannercalibration;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
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
        if (Misfits.agreement(patches) < AGREE) {
            throw apart(measurement);
        }
        List<TrainingPatch> misfits = Misfits.of(patches);
        if (misfits.size() > MOST_MISFITS * patches.size()) {
            throw apart(measurement);
        }
        List<TrainingPatch> kept = new ArrayList<>(patches);
        kept.removeAll(misfits);
        return new Training(ModelFit.of(kept), misfits.stream().map(TrainingPatch::id).toList());
    }

    private static Problem apart(String measurement) {
        return Problem.input(
                measurement,
                "does not belong to the scan: lightness as measured and as scanned do not follow each"
                        + " other. Name the measurement of the print that was scanned.");
    }
}
