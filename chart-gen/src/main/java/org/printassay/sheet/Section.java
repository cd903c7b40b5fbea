package org.printassay.sheet;

import java.util.Optional;

/** What a patch is for. */
public enum Section {
    /** 33 neutrals even in L*, twinned. */
    NEUTRAL_RAMP("neutral-ramp"),
    /** Dark neutrals, level by level. */
    SHADOWS("shadows"),
    /** Light neutrals, level by level. */
    HIGHLIGHTS("highlights"),
    /** Surface of the colour cube, five levels an edge. */
    CUBE("cube"),
    /** Primaries and secondaries from paper to full colour and on to black. */
    HUE_RAMPS("hue-ramps"),
    /** Skin-like tones. */
    SKIN("skin"),
    /** Unprinted windows, read as paper white. */
    PAPER("paper"),
    /** The same grey once on a white and once on a black surround. */
    STRAY_LIGHT("stray-light"),
    /** The largest solid black, read at its centre. */
    SOLID_BLACK("solid-black"),
    /**
     * Long plain tints, some along the page and some across it, edge to edge: for lines, bands and
     * grain. The area of such a patch is the whole tint; a reading of its colour takes the middle.
     */
    TINTS("tints"),
    /** The same few tints in many places of the sheet. */
    EVENNESS("evenness"),
    /** Colours that the user asked for. */
    OWN("own");

    private final String key;

    Section(String key) {
        this.key = key;
    }

    /** Name in files. */
    public String key() {
        return key;
    }

    /** The section of a {@link #key}. */
    public static Optional<Section> ofKey(String key) {
        for (Section section : values()) {
            if (section.key.equals(key)) {
                return Optional.of(section);
            }
        }
        return Optional.empty();
    }
}
