package org.printassay.scannermodel;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What a calibration was made with, and so what it holds for.
 *
 * @param scanner name of the scanner; null when not said
 * @param printer name of the printer
 * @param paper name of the paper
 * @param family paper family that it was meant for
 * @param samplesPerInch declared resolution of the scan; null when it does not say
 * @param bits bits a channel of the scan
 * @param profileSha256 checksum of the profile embedded in the scan, hexadecimal; null without
 * @param condition measurement condition (M0 to M3) of the instrument; null when not said
 * @param files what it was made from: scans first, the measurement last
 */
public record Circumstances(
        @Nullable String scanner,
        @Nullable String printer,
        @Nullable String paper,
        @Nullable String family,
        @Nullable Double samplesPerInch,
        int bits,
        @Nullable String profileSha256,
        @Nullable String condition,
        List<Source> files) {
    public Circumstances {
        files = List.copyOf(files);
    }

    /** A file: name without folders, SHA-256 in hexadecimal. */
    public record Source(String name, String sha256) {}
}
