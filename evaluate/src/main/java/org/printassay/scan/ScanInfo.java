package org.printassay.scan;

import java.util.Optional;
import java.util.OptionalDouble;

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
 * @param gamma exponent that makes light of codes (0 to 1), where the file says that instead of a
 *     profile; empty where codes are to be taken as sRGB
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
        Optional<LossyCoding> coding,
        OptionalDouble gamma) {
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

    /** A scan that says nothing of its codes without a profile. */
    public ScanInfo(
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
                coding,
                OptionalDouble.empty());
    }

    /** Declared samples per inch in x and y. */
    public record Resolution(double x, double y) {}
}
