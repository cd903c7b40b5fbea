package org.printassay.scan;

import java.util.Optional;

/**
 * What a scan file's header says.
 *
 * @param name file name without folders, safe to print
 * @param format TIFF, PNG, JPEG or PDF
 * @param width pixels, after the orientation tag is applied
 * @param height pixels, after the orientation tag is applied
 * @param channels 1 (grey) or 3 (RGB); alpha is dropped
 * @param bits per sample in the file, 8 or 16
 * @param samplesPerInch declared resolution, horizontal and vertical, when declared
 * @param iccProfile embedded profile, when there is one; not checked
 * @param lossy whether the file was compressed with loss
 * @param coding how coarsely, where the file says so
 */
public record ScanInfo(
        String name,
        String format,
        int width,
        int height,
        int channels,
        int bits,
        Optional<Resolution> samplesPerInch,
        Optional<byte[]> iccProfile,
        boolean lossy,
        Optional<LossyCoding> coding) {
    /** A scan of which no quantisation is known. */
    public ScanInfo(
            String name,
            String format,
            int width,
            int height,
            int channels,
            int bits,
            Optional<Resolution> samplesPerInch,
            Optional<byte[]> iccProfile,
            boolean lossy) {
        this(
                name,
                format,
                width,
                height,
                channels,
                bits,
                samplesPerInch,
                iccProfile,
                lossy,
                Optional.empty());
    }

    /** Declared samples per inch in x and y. */
    public record Resolution(double x, double y) {}
}
