package org.printassay.report.draw;

import java.util.ArrayList;
import java.util.List;

/** Collects the marks of one plot, first drawn first. Not for use by several threads. */
public final class Drawing {
    private final String title;
    private final String description;
    private final double width;
    private final double height;
    private final List<Mark> marks = new ArrayList<>();

    /**
     * An empty drawing.
     *
     * @param title what it shows, a few words
     * @param description what can be seen, for people who cannot see it
     */
    public Drawing(String title, String description, double width, double height) {
        this.title = title;
        this.description = description;
        this.width = width;
        this.height = height;
    }

    /** What it shows. */
    public String title() {
        return title;
    }

    /** What can be seen in it, in words. */
    public String description() {
        return description;
    }

    /** Width in units. */
    public double width() {
        return width;
    }

    /** Height in units. */
    public double height() {
        return height;
    }

    /** Everything drawn so far. */
    public List<Mark> marks() {
        return List.copyOf(marks);
    }

    /** Adds a line. */
    public void line(double x1, double y1, double x2, double y2, Ink ink) {
        marks.add(new Mark.Line(x1, y1, x2, y2, ink));
    }

    /** Adds joined lines. */
    public void path(List<Mark.Point> points, Ink ink) {
        marks.add(new Mark.Path(points, false, ink));
    }

    /** Adds a polygon. */
    public void area(List<Mark.Point> points, Ink ink) {
        marks.add(new Mark.Path(points, true, ink));
    }

    /** Adds a rectangle. */
    public void box(double x, double y, double width, double height, Ink ink) {
        marks.add(new Mark.Box(x, y, width, height, ink, null));
    }

    /** Adds a rectangle of a measured colour. */
    public void swatch(double x, double y, double width, double height, String fill) {
        marks.add(new Mark.Box(x, y, width, height, Ink.SURROUND, fill));
    }

    /** Adds a circle. */
    public void disc(double x, double y, double radius, Ink ink) {
        marks.add(new Mark.Disc(x, y, radius, ink, null));
    }

    /** Adds a circle of a measured colour with an outline. */
    public void disc(double x, double y, double radius, Ink ink, String fill) {
        marks.add(new Mark.Disc(x, y, radius, ink, fill));
    }

    /** Adds a line of text. */
    public void text(double x, double y, Mark.Anchor anchor, Ink ink, String text) {
        marks.add(new Mark.Label(x, y, anchor, ink, text));
    }
}
