package org.printassay.acceptance;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.printassay.demo.PrintRoom;
import org.printassay.demo.print.Print;
import org.printassay.demo.print.Printing;
import org.printassay.scannermodel.CalibrationFile;
import org.printassay.scannermodel.ScannerCalibration;

/**
 * What a calibration says of its error, against the true error. Leave-one-out is of the print that
 * it was made from, scanned anew; what is expected is a mean over other prints of the paper and its
 * family, so the mean of each calibration's prints is what it is held against; single prints
 * scatter. Simulated as in {@link CalibrationTest}. {@code -DcalibrationSeeds=10} makes as many
 * calibrations.
 */
class CalibrationErrorTest {
    private static final int USUAL = 3;
    private static final int CALIBRATIONS = Integer.getInteger("calibrationSeeds", USUAL);

    /** Other prints of the paper that each calibration is tried on; one of the family besides. */
    private static final int OTHERS = CALIBRATIONS > USUAL ? 4 : 2;

    private static final double FACTOR = 1.3;

    @TempDir Path dir;

    @Test
    void whatIsStatedIsTheMeanErrorOnPrints() throws Exception {
        List<Print> prints = new ArrayList<>();
        List<Path> scans = new ArrayList<>();
        List<Path> measured = new ArrayList<>();
        for (int i = 0; i < CALIBRATIONS; i++) {
            Print print = SimulatedPrint.print(CalibrationTest.ONE, Printing.EXACT, 101 + i);
            prints.add(print);
            scans.add(scan(print, "one-" + i, 101 + i));
            measured.add(dir.resolve("measured-" + i + ".txt"));
            PrintRoom.measure(print, 101 + i, measured.get(i));
        }
        Print sister = SimulatedPrint.print(CalibrationTest.SISTER, Printing.EXACT, 201);
        Path sisterScan = scan(sister, "sister", 201);
        for (int i = 0; i < CALIBRATIONS; i++) {
            Path made = dir.resolve("made-" + i);
            CommandLineRun run =
                    CommandLineRun.of(
                            "calibrate",
                            "--scan",
                            scans.get(i),
                            "--measurement",
                            measured.get(i),
                            "--family",
                            "coated",
                            "--out",
                            made);
            assertEquals(0, run.exitCode(), run.err());
            Path file = made.resolve("calibration.json");
            ScannerCalibration calibration = CalibrationFile.read(file);
            List<Double> errors = new ArrayList<>();
            for (int k = 1; k <= OTHERS; k++) {
                int other = (i + k) % CALIBRATIONS;
                errors.add(error(prints.get(other), scans.get(other), file));
            }
            errors.add(error(sister, sisterScan, file));
            Path second = scan(prints.get(i), "again", 301 + i);
            double again = error(prints.get(i), second, file);
            Files.delete(second);
            double mean = errors.stream().mapToDouble(e -> e).average().orElseThrow();
            String told =
                    String.format(
                            Locale.ROOT,
                            "calibration %d: left out %.3f, light %.3f, expected %.3f; again %.3f;"
                                    + " others %s, mean %.3f",
                            i,
                            calibration.error().meanDeltaE00(),
                            calibration.lightDeltaE00(),
                            calibration.expectedDeltaE00(),
                            again,
                            errors,
                            mean);
            if (CALIBRATIONS > USUAL) {
                System.out.println(told);
            }
            assertNear(calibration.expectedDeltaE00(), mean, told);
            assertNear(calibration.error().meanDeltaE00(), again, told);
        }
    }

    private static void assertNear(double stated, double error, String told) {
        double ratio = stated / error;
        assertTrue(ratio < FACTOR && ratio > 1 / FACTOR, told);
    }

    private static double error(Print print, Path scan, Path calibration) throws Exception {
        return CalibrationTest.Errors.of(
                        print, CalibrationTest.evaluate(scan, calibration, "coated"))
                .mean();
    }

    private Path scan(Print print, String name, long seed) throws Exception {
        Path file = dir.resolve(name + ".tif");
        PrintRoom.scan(print, CalibrationTest.flatbed(), seed, file);
        return file;
    }
}
