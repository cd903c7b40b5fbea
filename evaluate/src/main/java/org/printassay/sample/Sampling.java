package org.printassay.sample;

import java.util.List;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import org.printassay.chart.Chart;
import org.printassay.locate.LocatedSheet;
import org.printassay.locate.LocatingImage;
import org.printassay.locate.Locator;
import org.printassay.locate.MarkerSearch;
import org.printassay.problem.Problem;
import org.printassay.scan.CodeLight;
import org.printassay.scan.ScanImage;

/** From a scan to the samples of its sheet, in two passes over the file. */
public final class Sampling {
    private Sampling() {}

    /**
     * Finds the sheet and samples its patches.
     *
     * @param codes how the scanner's codes stand for light
     * @param expected the chart that the user names; without it the sheet code tells
     * @throws Problem when the scan cannot be read or no sheet can be placed
     */
    public static SheetSamples read(ScanImage scan, CodeLight codes, Optional<Chart> expected)
            throws Problem {
        return read(scan, codes, expected, Locator.LEAST_PATCHES);
    }

    /**
     * Finds the sheet, or a part of it, and samples its patches.
     *
     * @param leastShare share of the sheet's patches that must lie in the scan
     */
    public static SheetSamples read(
            ScanImage scan, CodeLight codes, Optional<Chart> expected, double leastShare)
            throws Problem {
        CompletableFuture<Void> ready = CompletableFuture.runAsync(MarkerSearch::warmUp);
        LocatingImage image = LocatingImage.of(scan, codes);
        ready.join();
        LocatedSheet located = Locator.locate(scan.info(), image, expected, leastShare);
        List<EdgeWindow> edges = EdgeWindow.of(located, scan.info());
        // The small image has all that the neighbourhood needs: made while the file is read again.
        CompletableFuture<PageImage> page =
                CompletableFuture.supplyAsync(
                        () ->
                                PageImageBuilder.build(
                                        image, located.placement(), located.sheet().page()));
        CompletableFuture<LocatingImage.Preview> preview =
                CompletableFuture.supplyAsync(image::preview);
        SurfaceWindows surface = SurfaceWindows.of(located, scan.info());
        double blurMm = BlurReach.sigmaMm(located, image);
        List<PatchSample> samples =
                PatchSampler.sample(scan, codes, located, edges, surface.all(), blurMm);
        return new SheetSamples(
                scan.info(),
                located,
                samples,
                page.join(),
                MarkerBlack.of(located, image),
                image.census(),
                image.steps(),
                EdgeWindow.profile(edges),
                preview.join(),
                surface.result());
    }
}
