package org.printassay.demo.flatbed;

/**
 * What a scan is written as.
 *
 * @param format file format
 * @param bits per sample, 8 or 16 (JPEG: 8)
 * @param jpegQuality 0 to 1, for JPEG
 * @param profile whether the encoding's profile is embedded
 * @param resolution how the file declares its sampling
 */
public record ScanFile(
        Format format, int bits, double jpegQuality, boolean profile, Resolution resolution) {
    /** 16 bit TIFF with profile and the right resolution. */
    public static final ScanFile TIFF16 =
            new ScanFile(Format.TIFF, 16, 0.92, true, Resolution.RIGHT);

    public ScanFile {
        if (bits != 8 && (bits != 16 || format == Format.JPEG)) {
            throw new IllegalArgumentException("8 bits, or 16 but for JPEG; got " + bits);
        }
    }

    /** File formats. */
    public enum Format {
        /** Uncompressed, strips. */
        TIFF,
        /** With iCCP and pHYs. */
        PNG,
        /** Baseline, profile in APP2. */
        JPEG
    }

    /** How a file declares its sampling. */
    public enum Resolution {
        /** As it is. */
        RIGHT,
        /** 72 per inch, whatever it is. */
        WRONG,
        /** Not at all. */
        ABSENT
    }

    /** This file in another format and depth. */
    public ScanFile withFormat(Format other, int bitsPerSample) {
        return new ScanFile(other, bitsPerSample, jpegQuality, profile, resolution);
    }

    /** This file with or without its profile. */
    public ScanFile withProfile(boolean embedded) {
        return new ScanFile(format, bits, jpegQuality, embedded, resolution);
    }

    /** This file with another declaration of its sampling. */
    public ScanFile withResolution(Resolution other) {
        return new ScanFile(format, bits, jpegQuality, profile, other);
    }

    /** This file at another JPEG quality. */
    public ScanFile withJpegQuality(double quality) {
        return new ScanFile(format, bits, quality, profile, resolution);
    }
}
