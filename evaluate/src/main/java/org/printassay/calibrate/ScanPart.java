package org.printassay.calibrate;

import java.util.Optional;
import org.printassay.colour.Lab;
import org.printassay.sample.LinearRgb;
import org.printassay.sample.SheetSamples;
import org.printassay.scan.LossyCoding;

/**
 * One scan of a print: a whole sheet, a part of one, or a repeat.
 *
 * @param samples what was read
 * @param colour what its codes mean
 */
public record ScanPart(SheetSamples samples, ScanColour colour) {
    /**
     * Step in L*, relative to paper, in which lossy coding kept the means of grey areas; 0 without
     * it.
     *
     * @param light device light of the area
     * @param paper the same of bare paper
     */
    public double codingStep(double light, double paper) {
        Optional<LossyCoding> coding = samples.scan().coding();
        if (coding.isEmpty()) {
            return 0;
        }
        LinearRgb grey = new LinearRgb(light, light, light);
        double step = CodeErrors.meanStep(colour, coding.get(), grey)[1];
        return Lab.lightness((light + step) / paper) - Lab.lightness(light / paper);
    }
}
