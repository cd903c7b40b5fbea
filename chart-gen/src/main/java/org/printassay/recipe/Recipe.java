package org.printassay.recipe;

import java.util.List;
import org.printassay.colour.RgbSpace;
import org.printassay.problem.Problem;

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

    /**
     * The same recipe with every length rounded to 0.01 mm and the page called by its usual name,
     * so that equal recipes are equal however they were typed.
     *
     * @throws Problem usage, when a length is out of range
     */
    public Recipe canonical() throws Problem {
        return new Recipe(
                kind,
                PageSize.of(page.widthMm(), page.heightMm()),
                Margins.of(
                        List.of(margins.top(), margins.right(), margins.bottom(), margins.left())),
                space,
                layoutVersion);
    }

    /** Designs that come with the tool. */
    public enum Kind {
        /** The full paper sheet, A4, Letter and larger. */
        PAPER("paper", "Full paper sheet");

        private final String key;
        private final String title;

        Kind(String key, String title) {
            this.key = key;
            this.title = title;
        }

        /** Name for people, printed on the sheet. */
        public String title() {
            return title;
        }

        /** Name in files and options. */
        public String key() {
            return key;
        }
    }
}
