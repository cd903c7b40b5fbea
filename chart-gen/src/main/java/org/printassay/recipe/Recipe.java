package org.printassay.recipe;

import org.printassay.colour.RgbSpace;

/**
 * What a chart is made from. Everything that decides the layout is here: same recipe, same bytes.
 *
 * @param kind which of the designs
 * @param page page size
 * @param margins unprinted margins
 * @param space RGB encoding of the patches
 * @param layoutVersion version of the layout rules; released versions never change
 */
public record Recipe(Kind kind, PageSize page, Margins margins, RgbSpace space, int layoutVersion) {
    /** Layout rules in force for new charts. */
    public static final int CURRENT_LAYOUT = 1;

    /** The full paper sheet by the layout rules in force. */
    public static Recipe paper(PageSize page, Margins margins, RgbSpace space) {
        return new Recipe(Kind.PAPER, page, margins, space, CURRENT_LAYOUT);
    }

    /** Designs that come with the tool. */
    public enum Kind {
        /** The full paper sheet, A4, Letter and larger. */
        PAPER("paper");

        private final String key;

        Kind(String key) {
            this.key = key;
        }

        /** Name in files and options. */
        public String key() {
            return key;
        }
    }
}
