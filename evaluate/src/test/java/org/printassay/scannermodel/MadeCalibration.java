package org.printassay.scannermodel;

import java.util.List;
import org.printassay.colour.LinearRgb;
import org.printassay.scan.CodeLight;

/** A calibration of a simulated scanner, made from a simulated print. */
public final class MadeCalibration {
    private MadeCalibration() {}

    /** A curve of 16 bit codes that are light as they are. */
    public static float[] straight() {
        float[] curve = new float[65536];
        for (int i = 0; i < curve.length; i++) {
            curve[i] = i / 65535F;
        }
        return curve;
    }

    /** A model fitted to a print of eighty codes under lamps. */
    static ModelFit fit() {
        return ModelFit.of(
                new SpectralPrint(SpectralPrint.Paper.ONE)
                        .patches(
                                SpectralPrint.codes(80, 5),
                                1,
                                SpectralPrint.Scanner.LAMPS,
                                0.03,
                                3));
    }

    /**
     * The calibration.
     *
     * @param codes light of the codes
     */
    public static ScannerCalibration of(CodeLight codes) {
        ModelFit fit = fit();
        return new ScannerCalibration(
                CodeCurves.of(codes),
                fit.model(),
                fit.error(),
                fit.colours(),
                new LinearRgb(0.87, 0.86, 0.83),
                List.of(),
                true,
                0.04,
                new Circumstances(
                        null, "Printer A", "Paper A", null, 300.0, 16, null, "M1", List.of()));
    }
}
