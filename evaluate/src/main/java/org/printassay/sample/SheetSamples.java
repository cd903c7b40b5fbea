package org.printassay.sample;

import java.util.List;
import java.util.OptionalDouble;
import org.printassay.locate.CodeCensus;
import org.printassay.locate.LocatedSheet;
import org.printassay.locate.LocatingImage;
import org.printassay.locate.PixelSteps;
import org.printassay.scan.ScanInfo;

/**
 * Everything that one scan tells about one sheet, before colour.
 *
 * @param scan header of the scan file
 * @param located where the sheet is
 * @param samples one for each patch that was read, in sheet order
 * @param page the sheet's neighbourhood in linear light
 * @param markers how dark its markers were read
 * @param census how often each code occurs in the scan
 * @param steps how pixels step along rows
 * @param edges how the scanner drew sharp edges
 * @param preview the scan made small, for people
 * @param surface what it tells about lines, grain, edges and vignettes
 */
public record SheetSamples(
        ScanInfo scan,
        LocatedSheet located,
        List<PatchSample> samples,
        PageImage page,
        List<MarkerBlack> markers,
        CodeCensus census,
        PixelSteps steps,
        EdgeProfile edges,
        LocatingImage.Preview preview,
        SurfaceSamples surface) {
    public SheetSamples {
        samples = List.copyOf(samples);
        markers = List.copyOf(markers);
    }

    /** A scan of which neither codes nor edges nor markers were looked at. */
    public SheetSamples(
            ScanInfo scan,
            LocatedSheet located,
            List<PatchSample> samples,
            PageImage page,
            LocatingImage.Preview preview) {
        this(
                scan,
                located,
                samples,
                page,
                List.of(),
                CodeCensus.empty(),
                PixelSteps.none(),
                EdgeProfile.NONE,
                preview,
                SurfaceSamples.NONE);
    }

    /** The same with other light on its patches and around them; markers stay as they were read. */
    public SheetSamples withLight(List<PatchSample> patches, PageImage around) {
        return new SheetSamples(
                scan, located, patches, around, markers, census, steps, edges, preview, surface);
    }

    /**
     * The period in which a scan's pixels were computed between others, so that they hold less
     * detail; empty when they were not. Blocks of lossy coding look alike and tell nothing.
     */
    public OptionalDouble enlargement() {
        return scan.lossy() ? OptionalDouble.empty() : steps.interpolationPeriod();
    }
}
