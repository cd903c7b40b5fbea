package org.printassay.calibrate.light;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.printassay.calibrate.Convolution;
import org.printassay.calibrate.SimulatedScan;
import org.printassay.colour.Lab;
import org.printassay.colour.LinearRgb;
import org.printassay.colour.Rgb8;
import org.printassay.problem.Problem;
import org.printassay.recipe.Recipe;
import org.printassay.sample.PatchSample;
import org.printassay.sample.SheetSamples;
import org.printassay.sheet.Patch;
import org.printassay.sheet.Section;

/** The short sheet, whose only black amid paper may have a mark over it (all simulated). */
class OrdinaryStrayTest {
    /** What a scan says of its other blacks, L*, green channel. */
    private record Blacks(double off, double sigma) {}

    /**
     * With blacks of one part lighter than they were printed.
     *
     * @param by how much, L*
     */
    private static Blacks blacks(double glare, long seed, Section marked, double by)
            throws Problem {
        SimulatedScan scan = new SimulatedScan(Recipe.Kind.SHORT);
        scan.glare = new double[] {glare, glare, glare};
        scan.glareKernel = Convolution.gaussian(8, SimulatedScan.STEP_MM);
        scan.dusty = 0;
        scan.seed = seed;
        SheetSamples clean = scan.scan();
        List<PatchSample> samples = new ArrayList<>();
        for (PatchSample sample : clean.samples()) {
            boolean has = isBlack(sample.patch()) && sample.patch().section() == marked;
            LinearRgb light = sample.linear();
            double more = Lab.luminanceFactor(Lab.lightness(light.g()) + by) - light.g();
            samples.add(
                    !has
                            ? sample
                            : new PatchSample(
                                    sample.patch(),
                                    new LinearRgb(
                                            light.r() + more, light.g() + more, light.b() + more),
                                    sample.standardError(),
                                    sample.blocks(),
                                    sample.flags()));
        }
        LightFit fit =
                LightFit.of(
                        new SheetSamples(
                                clean.scan(),
                                clean.located(),
                                samples,
                                clean.page(),
                                clean.preview()));
        double off = 0;
        double sigma = 0;
        int n = 0;
        double middle = scan.light(scan.sheet.page().width() / 2, scan.sheet.page().height() / 2);
        for (int i = 0; i < samples.size(); i++) {
            Patch patch = samples.get(i).patch();
            if (isBlack(patch) && patch.section() != marked) {
                double found = fit.corrected()[1][i];
                off += Lab.lightness(found) - Lab.lightness(scan.truth(patch, 1) * middle);
                double squares = 0;
                for (double[][] cause : fit.causes()) {
                    squares += cause[1][i] * cause[1][i];
                }
                double slope = (Lab.lightness(found + 1e-5) - Lab.lightness(found)) / 1e-5;
                sigma += Math.sqrt(squares) * slope;
                n++;
            }
        }
        return new Blacks(off / n, sigma / n);
    }

    private static boolean isBlack(Patch patch) {
        return patch.rgb().equals(Rgb8.grey(0));
    }

    /**
     * Wherever it can be told from stray light, it is not taken for it; else it is in the error.
     */
    @Test
    void aMarkOverTheLoneBlackIsNotTakenForStrayLight() throws Problem {
        for (double by : new double[] {6, 20}) {
            Blacks blacks = blacks(0, 1, Section.SOLID_BLACK, by);
            assertTrue(Math.abs(blacks.off) < 2 * blacks.sigma, by + " " + blacks);
            assertTrue(
                    by < 20 || (Math.abs(blacks.off) < 3 && blacks.sigma < 4), by + " " + blacks);
        }
        Blacks straying = blacks(0.01, 2, Section.SOLID_BLACK, 20);
        assertTrue(Math.abs(straying.off) < 2 * straying.sigma, straying.toString());
    }
}
