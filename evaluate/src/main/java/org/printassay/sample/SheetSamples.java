package org.printassay.sample;

import java.util.List;
import org.printassay.locate.LocatedSheet;
import org.printassay.locate.LocatingImage;
import org.printassay.scan.ScanInfo;

/**
 * Everything that one scan tells about one sheet, before colour.
 *
 * @param scan header of the scan file
 * @param located where the sheet is
 * @param samples one for each patch that was read, in sheet order
 * @param page the sheet's neighbourhood in linear light
 * @param preview the scan made small, for people
 */
public record SheetSamples(
        ScanInfo scan,
        LocatedSheet located,
        List<PatchSample> samples,
        PageImage page,
        LocatingImage.Preview preview) {
    public SheetSamples {
        samples = List.copyOf(samples);
    }
}
