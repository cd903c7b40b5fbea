package org.printassay.recipe;

import java.util.List;
import org.printassay.colour.Rgb8;

/** Designs that come with the tool and are made of sections. */
public final class Designs {
    /** Most hand-held instruments find their mark on 9 mm: common practice, no source. */
    private static final double HAND_PATCH_MM = 9.4;

    private static final double LARGE_HAND_PATCH_MM = 12;
    private static final double LARGE_PAGE_MM = 140;
    private static final double SCAN_PATCH_MM = 6.5;

    private Designs() {}

    /**
     * The short sheet: patches large enough to set a hand-held instrument on, few enough to measure
     * one by one. Greys, the dark and the light end, the corners of the colour cube.
     */
    static Design shortSheet(PageSize page) {
        boolean large = Math.min(page.widthMm(), page.heightMm()) >= LARGE_PAGE_MM;
        double patch = large ? LARGE_HAND_PATCH_MM : HAND_PATCH_MM;
        return new Design(
                "Short sheet",
                List.of(
                        Part.of(Part.What.NEUTRAL_RAMP, 1, patch, 0).withAmount(14),
                        Part.of(Part.What.SHADOWS, 1, patch, 0).withAmount(39).withEvery(3),
                        Part.of(Part.What.HIGHLIGHTS, 1, patch, 0).withAmount(39).withEvery(3),
                        Part.of(Part.What.CUBE, 1, patch, 0).withAmount(2)));
    }

    /** A sheet for the colours of a picture: greys, both ends, and the colours; all twice. */
    public static Design ofPicture(List<Rgb8> colours) {
        return new Design(
                "Colours of a picture",
                List.of(
                        Part.of(Part.What.NEUTRAL_RAMP, 2, SCAN_PATCH_MM, 0).withAmount(17),
                        Part.of(Part.What.SHADOWS, 2, SCAN_PATCH_MM, 0),
                        Part.of(Part.What.HIGHLIGHTS, 2, SCAN_PATCH_MM, 0),
                        Part.of(Part.What.OWN, 2, SCAN_PATCH_MM, 0).withColours(colours)));
    }
}
