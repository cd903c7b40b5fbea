package org.printassay.acceptance;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.Optional;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.printassay.calibrate.codes.ScanColour;
import org.printassay.demo.PrintRoom;
import org.printassay.demo.flatbed.Dirt;
import org.printassay.demo.flatbed.Exposure;
import org.printassay.demo.flatbed.Flatbed;
import org.printassay.demo.flatbed.Frame;
import org.printassay.demo.flatbed.Placing;
import org.printassay.demo.print.Print;
import org.printassay.demo.print.Printing;
import org.printassay.locate.LocatedSheet;
import org.printassay.locate.LocatingImage;
import org.printassay.locate.Locator;
import org.printassay.locate.PointPx;
import org.printassay.scan.ScanFiles;
import org.printassay.scan.ScanImage;
import org.printassay.sheet.Patch;
import org.printassay.sheet.PointMm;

/** Where the sheet is held to lie, against where the simulated flatbed put it. */
class PlacementTest {
    @TempDir Path dir;

    /** A carriage that runs 0.3 mm off, in periods from 60 mm, at any turn. */
    @ParameterizedTest
    @CsvSource({"200, 0.3, 60, 0", "150, 0.3, 75, 201", "300, 0.3, 110, 33", "200, 0, 100, 90"})
    void patchesArePlacedToFiveHundredths(
            double samplesPerInch, double wobbleMm, double periodMm, double degrees)
            throws Exception {
        Placing placing =
                Placing.STRAIGHT
                        .withDegrees(degrees)
                        .withOffset(1.2, -0.7)
                        .withBorder(8)
                        .withWobble(wobbleMm, periodMm);
        Flatbed flatbed =
                SimulatedPrint.flatbed()
                        .withSamplesPerInch(samplesPerInch)
                        .withPlacing(placing)
                        .withDirt(new Dirt(150, 3));
        Print print = SimulatedPrint.print(SimulatedPrint.goodPaper(), Printing.scaled(0.98), 21);
        Path file = dir.resolve("scan.tif");
        PrintRoom.scan(print, flatbed, 21, file);
        Frame frame = new Exposure(print, flatbed, 21).frame();
        ScanImage scan = ScanFiles.open(file);
        LocatingImage image = LocatingImage.of(scan, ScanColour.embedded(scan.info()).codeLight());
        LocatedSheet located = Locator.locate(scan.info(), image, Optional.empty());
        double squares = 0;
        for (Patch patch : located.sheet().patches()) {
            PointMm centre = patch.area().centre();
            PointMm real = frame.inScan(print.onSheet(centre));
            PointPx placed = located.placement().toScan(centre);
            squares += Math.pow(placed.x() - real.x(), 2) + Math.pow(placed.y() - real.y(), 2);
            PointMm back = located.placement().toPage(placed);
            assertEquals(centre.x(), back.x(), 0.01);
            assertEquals(centre.y(), back.y(), 0.01);
        }
        double perMm = samplesPerInch / 25.4;
        double rms = Math.sqrt(squares / located.sheet().patches().size()) / perMm;
        assertTrue(rms < 0.05, "root mean square error " + rms + " mm");
    }
}
