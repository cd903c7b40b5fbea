package org.printassay.calibrate;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.printassay.calibrate.light.LightSurface;
import org.printassay.calibrate.light.PrintGradient;
import org.printassay.calibrate.part.PartResult;
import org.printassay.sample.PatchSample;

/**
 * Whose the unevenness is, told by a repeat that was turned by about 180 degrees: what stays with
 * the bed is the scanner's, what turns with the sheet is the print's, and so is what inks do and
 * bare paper does not ({@link PrintGradient}). Of the rest only the part that is opposite at
 * opposite places of the sheet can be told so; what is alike at both, such as falling off towards
 * all sides, looks the same either way.
 *
 * @param scannerPercent largest difference over the sheet of the scanner's part, percent of light
 * @param printPercent the same of the print's part, in a mid-tone
 * @param undecidedPercent the same of what is alike either way
 */
public record Unevenness(double scannerPercent, double printPercent, double undecidedPercent) {
    private static final double TURNED = 150;

    /** From the first two scans of one sheet that are turned against each other; null without. */
    static @Nullable Unevenness of(List<PartResult> results) {
        for (int i = 0; i < results.size(); i++) {
            for (int j = i + 1; j < results.size(); j++) {
                if (turned(results.get(i), results.get(j))) {
                    return between(results.get(i), results.get(j));
                }
            }
        }
        return null;
    }

    /** Whether two scans of one sheet are turned against each other. */
    static boolean turned(PartResult a, PartResult b) {
        double difference =
                a.part().samples().located().placement().rotationDegrees()
                        - b.part().samples().located().placement().rotationDegrees();
        double apart = Math.abs(Math.IEEEremainder(difference, 360));
        int sheetA = a.part().samples().located().sheet().number();
        return apart > TURNED && sheetA == b.part().samples().located().sheet().number();
    }

    private static Unevenness between(PartResult a, PartResult b) {
        Range scanner = new Range();
        Range print = new Range();
        Range alike = new Range();
        LightSurface surface = new LightSurface(a.part().samples().located().sheet().page());
        double[] one = green(a);
        double[] two = green(b);
        for (PatchSample sample : a.part().samples().samples()) {
            double x = sample.patch().area().centre().x();
            double y = sample.patch().area().centre().y();
            double[] here = surface.terms(x, y);
            double[] there = surface.opposite(here);
            // Light over the middle of the page, so near 1 that differences are as good as ratios.
            // Where inks were not told apart they are part of the surface.
            double oddOne =
                    (LightSurface.at(one, here) - LightSurface.at(one, there)) / 2 + ofInk(a, here);
            double oddTwo =
                    (LightSurface.at(two, here) - LightSurface.at(two, there)) / 2 + ofInk(b, here);
            double evenOne = (LightSurface.at(one, here) + LightSurface.at(one, there)) / 2;
            double evenTwo = (LightSurface.at(two, here) + LightSurface.at(two, there)) / 2;
            scanner.add((oddOne - oddTwo) / 2);
            print.add((oddOne + oddTwo) / 2);
            alike.add((evenOne + evenTwo) / 2);
        }
        return new Unevenness(scanner.percent(), print.percent(), alike.percent());
    }

    /** What is the print's by its inks alone, and so is in no surface. */
    private static double ofInk(PartResult result, double[] here) {
        int green = result.light().surfaces().length / 2;
        return result.light().print().map(print -> print.ofMidTone(green, here)).orElse(0.0);
    }

    private static double[] green(PartResult result) {
        double[][] surfaces = result.light().surfaces();
        return surfaces[surfaces.length / 2];
    }

    private static final class Range {
        private double least = Double.POSITIVE_INFINITY;
        private double most = Double.NEGATIVE_INFINITY;

        void add(double value) {
            least = Math.min(least, value);
            most = Math.max(most, value);
        }

        double percent() {
            return most < least ? 0 : 100 * (most - least);
        }
    }
}
