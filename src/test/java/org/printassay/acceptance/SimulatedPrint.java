package org.printassay.acceptance;

import java.nio.file.Path;
import java.util.Optional;
import org.printassay.chart.Chart;
import org.printassay.colour.Lab;
import org.printassay.demo.PrintRoom;
import org.printassay.demo.flatbed.Dirt;
import org.printassay.demo.flatbed.Encoding;
import org.printassay.demo.flatbed.Flatbed;
import org.printassay.demo.flatbed.Light;
import org.printassay.demo.flatbed.Optics;
import org.printassay.demo.flatbed.Placing;
import org.printassay.demo.flatbed.ScanFile;
import org.printassay.demo.flatbed.Sensor;
import org.printassay.demo.paper.PaperModel;
import org.printassay.demo.paper.Surface;
import org.printassay.demo.print.Print;
import org.printassay.demo.print.Printing;
import org.printassay.evaluation.EvaluationRequest;
import org.printassay.recipe.Recipe;

/** Simulated prints and scans of the A4 paper sheet; the page is rendered once. */
final class SimulatedPrint {
    /** Spread, grain and texture as a good printer has them. */
    static final Surface GOOD_SURFACE = new Surface(0.10, 0.08, 0.3, 0.05, 0.1, 0.2, 0.1);

    private static final class Page {
        static final RenderedChart RENDERED = rendered();

        private static RenderedChart rendered() {
            try {
                return RenderedChart.of(Recipe.Kind.PAPER, "A4", 10);
            } catch (Exception e) {
                throw new IllegalStateException(e);
            }
        }
    }

    private SimulatedPrint() {}

    static Chart chart() {
        return Page.RENDERED.chart();
    }

    static Print print(PaperModel paper, Printing printing, long seed) throws Exception {
        return Page.RENDERED.print(paper, printing, seed);
    }

    static PaperModel goodPaper() {
        return PaperModel.faultless(
                        "Paper Q (simulated)", new Lab(96.5, 0.2, -1.0), new Lab(5, 0.1, 0.2))
                .withSurface(GOOD_SURFACE);
    }

    /** 300 samples an inch, 16 bit, profile embedded, turned by one degree, realistic noise. */
    static Flatbed flatbed() {
        return new Flatbed(
                300,
                Placing.STRAIGHT.withDegrees(1).withOffset(0.6, -0.4),
                Optics.CLEAR.withBlur(40),
                new Light(0, Light.Shape.SLOPE, 0),
                new Sensor(30_000, 0.0004, 1, false, Encoding.SRGB),
                Dirt.NONE,
                ScanFile.TIFF16);
    }

    /** A scan read through a profile that it does not carry itself. */
    static EvaluationRequest through(Path scan, Path profile) {
        EvaluationRequest plain = EvaluationRequest.of(scan);
        return new EvaluationRequest(
                plain.files(),
                plain.chart(),
                Optional.of(profile),
                plain.details(),
                plain.threshold(),
                plain.space());
    }

    private static Path write(Flatbed flatbed, Path file) throws Exception {
        PrintRoom.scan(print(goodPaper(), Printing.EXACT, 7), flatbed, 7, file);
        return file;
    }

    private static ScanFile png8() {
        return ScanFile.TIFF16.withFormat(ScanFile.Format.PNG, 8);
    }

    /** A good scan at 150 samples an inch, 8 bit PNG: small enough to edit in a test. */
    static Path plainGood(Path file) throws Exception {
        return write(flatbed().withSamplesPerInch(150).withFile(png8()), file);
    }

    /** The same print at 72 samples an inch. */
    static Path coarse(Path file) throws Exception {
        return write(flatbed().withSamplesPerInch(72).withFile(png8()), file);
    }

    /** The same print with a missing or a wrong resolution. */
    static Path declaring(Path file, ScanFile.Resolution resolution) throws Exception {
        return write(
                flatbed().withSamplesPerInch(200).withFile(png8().withResolution(resolution)),
                file);
    }
}
