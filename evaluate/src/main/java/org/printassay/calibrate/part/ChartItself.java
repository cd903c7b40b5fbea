package org.printassay.calibrate.part;

import org.printassay.calibrate.codes.CodeErrors;
import org.printassay.calibrate.codes.ScanPart;
import org.printassay.colour.Rgb8;
import org.printassay.sample.PatchSample;
import org.printassay.sample.SheetSamples;
import org.printassay.scan.CodeLight;

/**
 * Whether a picture is the chart's own file, named by mistake, and not a scan of its print: there
 * every patch has the very code that it is drawn in, which no print and no scanner give.
 */
public final class ChartItself {
    /** Codes of 0 to 255 that rounding, resizing or lossy coding may move a patch by. */
    private static final double WITHIN = 0.75;

    /** Share of patches that must have their code. */
    private static final double SHARE = 0.98;

    private ChartItself() {}

    /** Whether the samples show the codes of the file. */
    public static boolean isShownBy(ScanPart part) {
        SheetSamples samples = part.samples();
        if (samples.scan().channels() < 3) {
            return false;
        }
        long same =
                samples.samples().stream()
                        .filter(sample -> hasItsCode(sample, part.colour().codeLight()))
                        .count();
        return !samples.samples().isEmpty() && same >= SHARE * samples.samples().size();
    }

    private static boolean hasItsCode(PatchSample sample, CodeLight light) {
        Rgb8 rgb = sample.patch().rgb();
        int[] drawn = {rgb.r(), rgb.g(), rgb.b()};
        boolean same = true;
        for (int c = 0; c < drawn.length; c++) {
            double code = 255 * CodeErrors.codeOf(light.curve(c), sample.linear().channel(c));
            same &= Math.abs(code - drawn[c]) <= WITHIN;
        }
        return same;
    }
}
