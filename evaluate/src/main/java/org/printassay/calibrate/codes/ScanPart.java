package org.printassay.calibrate.codes;

import org.printassay.colour.Lab;
import org.printassay.colour.LinearRgb;
import org.printassay.sample.SheetSamples;

/**
 * One scan of a print: a whole sheet, a part of one, or a repeat.
 *
 * @param samples what was read
 * @param colour what its codes mean
 */
public record ScanPart(SheetSamples samples, ScanColour colour) {
    /**
     * Step in L*, relative to paper, in which lossy coding or an edit in 8 bits kept the means of
     * grey areas; 0 without them.
     *
     * @param light device light of the area
     * @param paper the same of bare paper
     */
    public double codingStep(double light, double paper) {
        double step = CodeErrors.meanStep(this, new LinearRgb(light, light, light))[1];
        return Lab.lightness((light + step) / paper) - Lab.lightness(light / paper);
    }
}
