package org.printassay.evaluation;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.awt.image.BufferedImage;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.function.DoubleBinaryOperator;
import org.junit.jupiter.api.Test;
import org.printassay.calibrate.codes.ScanColour;
import org.printassay.calibrate.codes.ScanPart;
import org.printassay.chart.Chart;
import org.printassay.chart.Charts;
import org.printassay.colour.Lab;
import org.printassay.colour.LinearRgb;
import org.printassay.colour.Rgb8;
import org.printassay.colour.RgbSpace;
import org.printassay.locate.CodeCensus;
import org.printassay.locate.LocatedSheet;
import org.printassay.locate.LocatingImage;
import org.printassay.locate.PixelSteps;
import org.printassay.locate.Placement;
import org.printassay.locate.PointPx;
import org.printassay.recipe.Margins;
import org.printassay.recipe.PageSize;
import org.printassay.recipe.Recipe;
import org.printassay.sample.EdgeProfile;
import org.printassay.sample.PageImage;
import org.printassay.sample.PatchSample;
import org.printassay.sample.SheetSamples;
import org.printassay.sample.SurfaceSamples;
import org.printassay.scan.ScanInfo;
import org.printassay.sheet.Artwork;
import org.printassay.sheet.Patch;
import org.printassay.sheet.PointMm;
import org.printassay.sheet.RectMm;
import org.printassay.sheet.Sheet;
import org.printassay.surface.Along;
import org.printassay.surface.TintTrace;

/** Patches and vignettes of a simulated print: L* of 10 to 94 evenly with the codes. */
class VignetteJudgeTest {
    private static final double STEP_MM = 25.4 / 300;
    private static final double PAPER_L = 94;

    private static final Placement PLACED =
            new Placement() {
                @Override
                public PointPx toScan(PointMm page) {
                    return new PointPx(page.x() / STEP_MM, page.y() / STEP_MM);
                }

                @Override
                public PointMm toPage(PointPx scan) {
                    return new PointMm(scan.x() * STEP_MM, scan.y() * STEP_MM);
                }

                @Override
                public double samplesPerMm() {
                    return 1 / STEP_MM;
                }

                @Override
                public double rotationDegrees() {
                    return 0;
                }
            };

    private static double printed(double code) {
        return 10 + (PAPER_L - 10) * code / 255;
    }

    /** In stairs of so many codes. */
    private static double inStairs(double code, double codes) {
        return printed(Math.min(255, codes * Math.round(code / codes)));
    }

    private static float light(double lightness) {
        return (float) Lab.luminanceFactor(lightness);
    }

    /**
     * Steps that are told of a vignette.
     *
     * @param lightness L* of a vignette by code and by its share of the way across
     * @param stairs codes of the stairs in which patches are printed
     */
    private static List<PrintSurface.Step> steps(
            int from, int to, DoubleBinaryOperator lightness, double stairs) throws Exception {
        Recipe.Kind kind = Recipe.Kind.PAPER;
        Chart chart =
                Charts.create(
                        new Recipe(
                                kind,
                                PageSize.parse("A4"),
                                Margins.of(List.of(10.0)),
                                RgbSpace.SRGB,
                                kind.currentLayout()));
        Sheet sheet = chart.sheets().get(0);
        List<PatchSample> samples = new ArrayList<>();
        for (Patch patch : sheet.patches()) {
            double light = light(inStairs(patch.rgb().g(), stairs));
            samples.add(
                    new PatchSample(
                            patch,
                            new LinearRgb(light, light, light),
                            new LinearRgb(1e-4, 1e-4, 1e-4),
                            16,
                            Set.of()));
        }
        RectMm area = new RectMm(80, 280, 54, 6.4);
        Random noise = new Random(3);
        float[][][] light = new float[8][3][(int) (area.width() / STEP_MM)];
        for (float[][] strip : light) {
            for (int i = 0; i < strip[0].length; i++) {
                double share = (i + 0.5) / strip[0].length;
                double code = from + share * (to - from);
                float one =
                        light(lightness.applyAsDouble(code, share) + 0.1 * noise.nextGaussian());
                for (float[] channel : strip) {
                    channel[i] = one;
                }
            }
        }
        TintTrace trace =
                new TintTrace(
                        "vignette",
                        Rgb8.grey(128),
                        Along.X,
                        area.x() + STEP_MM / 2,
                        STEP_MM,
                        area.centre().y(),
                        Double.NaN,
                        light);
        ScanInfo info =
                new ScanInfo(
                        "made.tif",
                        "TIFF",
                        2480,
                        3508,
                        3,
                        16,
                        Optional.empty(),
                        Optional.empty(),
                        false);
        SheetSamples whole =
                new SheetSamples(
                        info,
                        new LocatedSheet(
                                chart, sheet, PLACED, Map.of(), 0, 0, true, List.of(), List.of()),
                        samples,
                        new PageImage(new PointMm(0, 0), 1, 210, 297),
                        List.of(),
                        CodeCensus.empty(),
                        PixelSteps.none(),
                        EdgeProfile.NONE,
                        new LocatingImage.Preview(
                                new BufferedImage(1, 1, BufferedImage.TYPE_INT_RGB), 1),
                        new SurfaceSamples(
                                List.of(),
                                List.of(),
                                List.of(),
                                List.of(
                                        new SurfaceSamples.Gradient(
                                                new Artwork.Vignette(area, from, to), trace)),
                                List.of()));
        ScanPart part = new ScanPart(whole, ScanColour.embedded(info));
        return Objects.requireNonNull(VignetteJudge.judge(List.of(part))).get(0).steps();
    }

    @Test
    void aNoteOverOneEndOfAVignetteIsNoStep() throws Exception {
        assertEquals(
                List.of(),
                steps(0, 255, (code, share) -> share < 0.2 ? 84 : printed(code), 1),
                "a note on its dark end");
        assertEquals(
                List.of(),
                steps(255, 207, (code, share) -> share > 0.45 ? 92.9 : printed(code), 1),
                "the sheet's own back, folded over its darker end");
    }

    @Test
    void stepsOfThePrintAreStillTold() throws Exception {
        assertEquals(0, steps(0, 255, (code, share) -> printed(code), 1).size(), "smooth");
        List<PrintSurface.Step> one =
                steps(0, 48, (code, share) -> printed(code) + (share < 0.5 ? 0 : 2), 1);
        assertEquals(1, one.size(), "2 L* in the vignette alone");
        assertEquals(2, one.get(0).deltaL(), 0.3);
        assertEquals(
                13,
                steps(0, 255, (code, share) -> inStairs(code, 17), 17).size(),
                "every stair of 16 tones but those too near the ends");
    }
}
