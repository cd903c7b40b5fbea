package org.printassay.surface;

/** The axis of the page that a profile runs along; what it finds lies across it. */
public enum Along {
    /** From the left edge to the right; a line found here runs down the page. */
    X("left"),
    /** From the top edge down; a line found here runs across the page. */
    Y("top");

    private final String edge;

    Along(String edge) {
        this.edge = edge;
    }

    /** The edge of the page that positions count from: left or top. */
    public String edge() {
        return edge;
    }

    /** The other axis. */
    public Along other() {
        return this == X ? Y : X;
    }
}
