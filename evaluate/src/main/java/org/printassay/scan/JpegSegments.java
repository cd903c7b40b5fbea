package org.printassay.scan;

import java.io.IOException;
import java.io.InputStream;
import org.printassay.problem.Problem;

/**
 * Walks the marker segments of a JPEG (ISO/IEC 10918-1, B.1.1) that stand before its image data.
 */
final class JpegSegments {
    private final InputStream in;
    private final String name;
    private long at = 2;
    private int marker;
    private long markerAt;
    private byte[] body = new byte[0];

    /**
     * From behind the first marker, SOI.
     *
     * @param name of the file, for messages
     */
    JpegSegments(InputStream in, String name) throws IOException {
        in.skipNBytes(2);
        this.in = in;
        this.name = name;
    }

    /** Reads the next segment that has a body. */
    void next() throws IOException, Problem {
        do {
            marker = in.read();
            at++;
            while (marker == 0xff) {
                marker = in.read();
                at++;
            }
            if (marker < 0) {
                throw ScanFiles.endsEarly(name, "before its image data");
            }
        } while (marker == 0 || (marker >= 0xd0 && marker <= 0xd7) || marker == 1);
        int length = (in.read() << 8) | in.read();
        body = length < 2 ? new byte[0] : in.readNBytes(length - 2);
        if (length < 2 || body.length < length - 2) {
            throw ScanFiles.endsEarly(name, "before its image data");
        }
        markerAt = at - 1;
        at += length;
    }

    /** Second byte of the segment's marker. */
    int marker() {
        return marker;
    }

    /** Place in the file of that byte. */
    long markerAt() {
        return markerAt;
    }

    /** What stands behind the marker and the length; not to be changed. */
    byte[] body() {
        return body;
    }
}
