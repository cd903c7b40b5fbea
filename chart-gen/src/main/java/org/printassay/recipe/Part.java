package org.printassay.recipe;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.printassay.colour.Rgb8;

/**
 * One section of an edited recipe. Lengths are rounded to 0.01 mm.
 *
 * @param what which section
 * @param copies how often it holds each patch, 1 to 9; copies after the first stand in mixed order
 * @param patchWidthMm width of a patch, 5 to 200 mm
 * @param patchHeightMm height of a patch, 5 to 1900 mm
 * @param columns patches in a row; 0 as many as fit
 * @param amount steps of a ramp or a cube's edge, how far a wedge reaches in levels; 0 where the
 *     section has none
 * @param every distance of a wedge's levels; 0 the usual: 1 to level 24, 2 beyond
 * @param colours of {@link What#OWN}, else empty
 * @param place where it stands; null wherever there is room
 */
public record Part(
        What what,
        int copies,
        double patchWidthMm,
        double patchHeightMm,
        int columns,
        int amount,
        int every,
        List<Rgb8> colours,
        @Nullable Place place) {
    /** Smaller patches hold too little that edges, blur and placement leave alone. */
    public static final double LEAST_PATCH_MM = 5;

    public Part {
        patchWidthMm = PageSize.hundredths(patchWidthMm);
        patchHeightMm = PageSize.hundredths(patchHeightMm);
        colours = List.copyOf(colours);
    }

    /** A section of its usual size with patches of {@code patchMm}. */
    public static Part of(What what, int copies, double patchMm, int columns) {
        return new Part(what, copies, patchMm, patchMm, columns, what.amount(), 0, List.of(), null);
    }

    /** The same with another amount. */
    public Part withAmount(int other) {
        return new Part(
                what, copies, patchWidthMm, patchHeightMm, columns, other, every, colours, place);
    }

    /** The same wedge with levels so far apart. */
    public Part withEvery(int levels) {
        return new Part(
                what, copies, patchWidthMm, patchHeightMm, columns, amount, levels, colours, place);
    }

    /** The same with colours of the user's own. */
    public Part withColours(List<Rgb8> own) {
        return new Part(
                what, copies, patchWidthMm, patchHeightMm, columns, amount, every, own, place);
    }

    /**
     * A fixed place.
     *
     * @param sheet from 1
     * @param xMm from the left edge of the page to the section's left edge
     * @param yMm from the top edge of the page to the section's top edge, its caption included
     */
    public record Place(int sheet, double xMm, double yMm) {
        public Place {
            xMm = PageSize.hundredths(xMm);
            yMm = PageSize.hundredths(yMm);
        }
    }

    /** Sections that an edited recipe may hold. */
    public enum What {
        /** Neutrals even in L*. */
        NEUTRAL_RAMP("neutral-ramp", 33),
        /** Dark neutrals: every level to 24, every second one beyond. */
        SHADOWS("shadows", 48),
        /** Light neutrals, the mirror of the shadows. */
        HIGHLIGHTS("highlights", 48),
        /** Surface of the colour cube. */
        CUBE("cube", 5),
        /** Six ramps from paper to full colour and on to black. */
        HUE_RAMPS("hue-ramps", 0),
        /** Skin-like tones. */
        SKIN("skin", 0),
        /** Greys on black and on white; once in a design. */
        STRAY_LIGHT("stray-light", 0),
        /** Slanted edges for sharpness. */
        EDGES("edges", 0),
        /** Continuous neutral gradients: dark, light, full. */
        VIGNETTES("vignettes", 0),
        /** The fourteen long plain tints of the printer sheet. */
        TINTS("tints", 0),
        /** The three tints of the evenness grid. */
        EVENNESS("evenness", 0),
        /** Colours of the user's own. */
        OWN("own", 0);

        private final String key;
        private final int amount;

        What(String key, int amount) {
            this.key = key;
            this.amount = amount;
        }

        /** Name in files. */
        public String key() {
            return key;
        }

        /** Usual steps or reach; 0 where the section has none. */
        public int amount() {
            return amount;
        }

        /** The section of a {@link #key}. */
        public static Optional<What> ofKey(String key) {
            return Arrays.stream(values()).filter(what -> what.key.equals(key)).findFirst();
        }
    }
}
