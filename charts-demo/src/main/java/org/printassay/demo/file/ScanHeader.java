package org.printassay.demo.file;

import org.jspecify.annotations.Nullable;

/**
 * What a scan file's header declares.
 *
 * @param width pixels
 * @param height pixels
 * @param bits per sample, 8 or 16
 * @param samplesPerInch declared; null for none
 * @param profile ICC profile; null for none
 */
@SuppressWarnings("ArrayRecordComponent") // Read once, straight into the file.
record ScanHeader(
        int width,
        int height,
        int bits,
        @Nullable Double samplesPerInch,
        byte @Nullable [] profile) {
    long pixelBytes() {
        return 3L * width * height * bits / 8;
    }
}
