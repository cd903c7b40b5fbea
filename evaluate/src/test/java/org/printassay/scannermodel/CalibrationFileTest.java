package org.printassay.scannermodel;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.printassay.colour.DeltaE;
import org.printassay.colour.LinearRgb;
import org.printassay.colour.RgbSpace;
import org.printassay.problem.Problem;
import org.printassay.scan.CodeLight;

class CalibrationFileTest {
    private static final CodeLight CODES =
            channel -> {
                float[] curve = new float[65536];
                for (int i = 0; i < curve.length; i++) {
                    curve[i] = (float) RgbSpace.SRGB.decode(i / 65535.0);
                }
                return curve;
            };

    private static ScannerCalibration made;
    private static String text;

    @BeforeAll
    static void make() {
        ModelFit fit = MadeCalibration.fit();
        made =
                new ScannerCalibration(
                        CodeCurves.of(CODES),
                        fit.model(),
                        fit.error(),
                        fit.colours(),
                        new LinearRgb(0.87, 0.86, 0.83),
                        List.of("B7"),
                        true,
                        0.04,
                        new Circumstances(
                                "Scanner 1 (simulated)",
                                null,
                                "Paper \"A\" \u2603",
                                null,
                                300.0,
                                16,
                                null,
                                "M1",
                                List.of(new Circumstances.Source("a.tif", "0".repeat(64)))));
        text = CalibrationFile.write(made);
    }

    private static ScannerCalibration read(String file) throws Problem {
        return CalibrationFile.parse("c.json", file.getBytes(StandardCharsets.UTF_8));
    }

    @Test
    void whatIsWrittenReadsTheSame() throws Exception {
        ScannerCalibration back = read(text);
        assertEquals(text, CalibrationFile.write(back));
        assertEquals(made.made(), back.made());
        LinearRgb light = new LinearRgb(0.3, 0.2, 0.1);
        assertEquals(0, DeltaE.cie1976(made.model().lab(light), back.model().lab(light)), 1e-4);
        assertEquals(made.error().meanDeltaE00(), back.error().meanDeltaE00(), 1e-8);
    }

    @Test
    void curvesKeepTheLightOfEveryCode() {
        float[] kept = made.curves().curve(0);
        float[] real = CODES.curve(0);
        for (int i = 0; i < kept.length; i++) {
            // 1e-6 of light is 0.001 L* at black, where L* is steepest (CIE 15: 903.3 an unit).
            assertEquals(real[i], kept[i], 1e-6, "code " + i);
        }
    }

    @ParameterizedTest
    @CsvSource({
        "printassay/calibration/1, printassay/calibration/2, another version",
        "printassay/calibration/1, printassay/chart/1, not a calibration file",
        "'\"order\" : 2', '\"order\" : 4', not a valid calibration file",
        "'\"order\" : 2', '\"order\" : 3', is damaged",
        "'\"bits\" : 16', '\"bits\" : \"x\"', not a valid calibration file",
        "'\"strayLightKnown\" : true', '\"strayLightKnown\" : true,', not JSON",
    })
    void newerOrDamagedFilesAreRefusedInOneLine(String was, String is, String why) {
        assertTrue(text.contains(was), was);
        Problem problem = assertThrows(Problem.class, () -> read(text.replace(was, is)));
        assertEquals(Problem.Kind.INPUT, problem.kind());
        assertTrue(problem.getMessage().contains(why), problem.getMessage());
        assertFalse(problem.getMessage().contains("\n"));
    }

    @Test
    void aCurveThatFallsIsRefused() {
        int at = text.indexOf("\"green\" : [ 0,");
        assertTrue(at > 0);
        String falling = text.substring(0, at) + "\"green\" : [ 1," + text.substring(at + 14);
        Problem problem = assertThrows(Problem.class, () -> read(falling));
        assertTrue(problem.getMessage().contains("a curve rises"), problem.getMessage());
    }
}
