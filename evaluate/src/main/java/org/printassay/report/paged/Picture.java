package org.printassay.report.paged;

import org.printassay.report.draw.Drawing;

/** A photograph with a drawing over it. */
public final class Picture {
    private final byte[] jpeg;
    private final Drawing over;

    /**
     * A picture.
     *
     * @param jpeg the file's bytes, RGB; neither copied nor modified
     * @param over drawn over it, one unit a pixel; its words stand for both
     */
    public Picture(byte[] jpeg, Drawing over) {
        this.jpeg = jpeg;
        this.over = over;
    }

    byte[] jpeg() {
        return jpeg;
    }

    Drawing over() {
        return over;
    }
}
