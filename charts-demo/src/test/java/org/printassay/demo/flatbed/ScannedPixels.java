package org.printassay.demo.flatbed;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.Arrays;
import org.printassay.colour.Lab;
import org.printassay.colour.Xyz;
import org.printassay.demo.print.Print;
import org.printassay.sheet.PointMm;
import org.printassay.sheet.RectMm;

/** A scan in memory, and what its codes mean. */
final class ScannedPixels {
    final Exposure exposure;
    final byte[] bytes;
    private final Flatbed flatbed;

    ScannedPixels(Print print, Flatbed flatbed, long seed) {
        this.flatbed = flatbed;
        this.exposure = new Exposure(print, flatbed, seed);
        int size = 3 * exposure.frame().width() * exposure.frame().height();
        this.bytes = new byte[size * flatbed.file().bits() / 8];
        int[] next = {0};
        try {
            exposure.run(
                    (samples, length) -> {
                        System.arraycopy(samples, 0, bytes, next[0], length);
                        next[0] += length;
                    });
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    double light(int x, int y, int channel) {
        int at = 3 * (y * exposure.frame().width() + x) + channel;
        Encoding encoding = flatbed.sensor().encoding();
        if (flatbed.file().bits() == 8) {
            return encoding.decode((bytes[at] & 255) / 255.0);
        }
        return encoding.decode(
                (((bytes[2 * at] & 255) << 8) | (bytes[2 * at + 1] & 255)) / 65535.0);
    }

    /** Mean light of the middle half of a rectangle of an upright sheet. */
    double[] meanLight(RectMm onSheet) {
        PointMm from =
                exposure.frame()
                        .toScan(
                                new PointMm(
                                        onSheet.x() + onSheet.width() / 4,
                                        onSheet.y() + onSheet.height() / 4));
        PointMm to =
                exposure.frame()
                        .toScan(
                                new PointMm(
                                        onSheet.right() - onSheet.width() / 4,
                                        onSheet.bottom() - onSheet.height() / 4));
        double[] sum = new double[3];
        int n = 0;
        for (int y = (int) from.y(); y < to.y(); y++) {
            for (int x = (int) from.x(); x < to.x(); x++) {
                for (int c = 0; c < 3; c++) {
                    sum[c] += light(x, y, c);
                }
                n++;
            }
        }
        int count = n;
        return Arrays.stream(sum).map(value -> value / count).toArray();
    }

    Lab meanLab(RectMm onSheet) {
        double[] rgb = meanLight(onSheet);
        double[] m = flatbed.sensor().encoding().toXyz();
        return Lab.of(
                new Xyz(
                        100 * (m[0] * rgb[0] + m[1] * rgb[1] + m[2] * rgb[2]),
                        100 * (m[3] * rgb[0] + m[4] * rgb[1] + m[5] * rgb[2]),
                        100 * (m[6] * rgb[0] + m[7] * rgb[1] + m[8] * rgb[2])),
                Xyz.PCS_WHITE);
    }
}
