package org.printassay.scan;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.printassay.problem.Problem;

/**
 * One image that a PDF draws in strips.
 *
 * @param strips from the top, all as wide
 * @param info of the whole
 */
record PdfStrips(List<ScanImage> strips, ScanInfo info) implements ScanImage {
    /**
     * The first strip tells of all but height and coding, which is as coarse as the coarsest.
     *
     * @throws Problem when they were made in different ways
     */
    static PdfStrips of(List<ScanImage> strips) throws Problem {
        ScanInfo first = strips.get(0).info();
        Optional<LossyCoding> coding = first.coding();
        for (ScanImage strip : strips) {
            ScanInfo info = strip.info();
            byte[] none = {};
            boolean alike =
                    info.lossy() == first.lossy()
                            && info.coding()
                                    .map(LossyCoding::ofRgb)
                                    .equals(first.coding().map(LossyCoding::ofRgb))
                            && Arrays.equals(
                                    info.iccProfile().orElse(none),
                                    first.iccProfile().orElse(none));
            if (!alike) {
                throw Problem.input(
                        first.name(),
                        "its image is in strips that are coded in different ways. Scan to TIFF or"
                                + " PNG.");
            }
            coding = coding.map(one -> one.coarser(info.coding().orElse(one)));
        }
        int height = strips.stream().mapToInt(strip -> strip.info().height()).sum();
        ScanInfo whole =
                new ScanInfo(
                        first.name(),
                        first.format(),
                        first.width(),
                        height,
                        first.channels(),
                        first.bits(),
                        first.samplesPerInch(),
                        first.iccProfile(),
                        first.lossy(),
                        coding);
        return new PdfStrips(strips, whole);
    }

    @Override
    public void stream(RowSink sink) throws Problem {
        int top = 0;
        for (ScanImage strip : strips) {
            int above = top;
            strip.stream((y, row) -> sink.row(above + y, row));
            top += strip.info().height();
        }
    }
}
