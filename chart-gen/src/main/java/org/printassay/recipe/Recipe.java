package org.printassay.recipe;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
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
 * @param edited sections of the user's own, of {@link Kind#EDITED}; else null
 */
public record Recipe(
        Kind kind,
        PageSize page,
        Margins margins,
        RgbSpace space,
        int layoutVersion,
        @Nullable Design edited) {
    /** A design that comes with the tool. */
    public Recipe(Kind kind, PageSize page, Margins margins, RgbSpace space, int layoutVersion) {
        this(kind, page, margins, space, layoutVersion, null);
    }

    /** Sections of the user's own by the layout rules in force. */
    public static Recipe edited(PageSize page, Margins margins, RgbSpace space, Design design) {
        return new Recipe(Kind.EDITED, page, margins, space, Kind.EDITED.currentLayout(), design);
    }

    /** The same on another page. */
    public Recipe on(PageSize other) {
        return new Recipe(kind, other, margins, space, layoutVersion, edited);
    }

    /** The sections it is made of; nothing for designs that are laid out as a whole. */
    public Optional<Design> design() {
        return kind == Kind.SHORT
                ? Optional.of(Designs.shortSheet(page))
                : Optional.ofNullable(edited);
    }

    /** Name for people, printed on the sheet. */
    public String title() {
        return edited == null ? kind.title() : edited.title();
    }

    /** The full paper sheet by the layout rules in force. */
    public static Recipe paper(PageSize page, Margins margins, RgbSpace space) {
        return of(Kind.PAPER, page, margins, space);
    }

    /** A design by the layout rules in force. */
    public static Recipe of(Kind kind, PageSize page, Margins margins, RgbSpace space) {
        return new Recipe(kind, page, margins, space, kind.currentLayout());
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
                layoutVersion,
                edited);
    }

    /** Designs that come with the tool. */
    public enum Kind {
        /** The full paper sheet, A4, Letter and larger. */
        PAPER("paper", 'P', "Full paper sheet", 2),
        /** Lines, bands and evenness: long plain tints along and across the page; A5 and larger. */
        PRINTER("printer", 'L', "Printer sheet", 1),
        /** Few large patches for hand-held instruments, from 102 x 152 mm. */
        SHORT("short", 'S', "Short sheet", 1),
        /** Sections of the user's own; needs its chart file. */
        EDITED("edited", 'E', "Edited sheet", 1);

        private final String key;
        private final char letter;
        private final String title;
        private final int currentLayout;

        Kind(String key, char letter, String title, int currentLayout) {
            this.key = key;
            this.letter = letter;
            this.title = title;
            this.currentLayout = currentLayout;
        }

        /** The design of a {@link #key}. */
        public static Optional<Kind> ofKey(String key) {
            return Arrays.stream(values()).filter(kind -> kind.key.equals(key)).findFirst();
        }

        /** The design of a {@link #letter}. */
        public static Optional<Kind> ofLetter(char letter) {
            return Arrays.stream(values()).filter(kind -> kind.letter == letter).findFirst();
        }

        /** Its letter in the sheet code. */
        public char letter() {
            return letter;
        }

        /** Margins in millimetres where none are said: the short sheet stands on small pages. */
        public double usualMarginMm() {
            return this == SHORT ? 5 : 10;
        }

        /** Layout rules in force for new charts of this design. */
        public int currentLayout() {
            return currentLayout;
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
