package org.printassay.scannermodel;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.printassay.colour.DeltaE;
import org.printassay.colour.Rgb8;

class ModelFitTest {
    /** Errors of a model on a print that it was not made from. */
    private static double[] errors(
            ScannerModel model, SpectralPrint print, SpectralPrint.Scanner scanner, long seed) {
        List<Double> off = new ArrayList<>();
        for (Rgb8 code : SpectralPrint.codes(400, seed)) {
            double[] spectrum = print.spectrum(code);
            off.add(
                    DeltaE.ciede2000(
                            SpectralPrint.lab(spectrum), model.lab(scanner.light(spectrum))));
        }
        double[] sorted = off.stream().mapToDouble(d -> d).sorted().toArray();
        double mean = off.stream().mapToDouble(d -> d).average().orElseThrow();
        return new double[] {mean, sorted[(int) (0.95 * sorted.length)], sorted[sorted.length - 1]};
    }

    @ParameterizedTest
    @EnumSource(SpectralPrint.Scanner.class)
    void look(SpectralPrint.Scanner scanner) {
        for (int n : new int[] {30, 60, 100, 150, 300, 500}) {
            long t = System.nanoTime();
            ModelFit fit =
                    ModelFit.of(
                            new SpectralPrint(SpectralPrint.Paper.ONE)
                                    .patches(SpectralPrint.codes(n, 5), 1, scanner, 3));
            System.out.printf(
                    "%s %d order %d rest %s %s  %d ms%n",
                    scanner,
                    n,
                    fit.model().order(),
                    java.util.Optional.ofNullable(fit.model().residual())
                            .map(SmoothResidual::range)
                            .orElse(0.0),
                    fit.error(),
                    (System.nanoTime() - t) / 1000000);
            for (SpectralPrint.Paper paper : SpectralPrint.Paper.values()) {
                double[] e = errors(fit.model(), new SpectralPrint(paper), scanner, 77);
                System.out.printf("   %s %.3f %.3f %.3f%n", paper, e[0], e[1], e[2]);
            }
        }
    }

    @Test
    void nothing() {
        assertTrue(true);
    }
}
