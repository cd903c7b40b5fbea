package org.printassay.recipe;

import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.printassay.problem.Problem;

/**
 * Paper from a roll: its width alone is given, the length follows from what is to stand on it.
 *
 * @param mm width, millimetres
 */
public record RollWidth(double mm) {
    private static final Pattern TYPED =
            Pattern.compile("\\s*(\\d{1,4}(?:\\.\\d{1,3})?)\\s*(mm|in)\\s*");

    private static final double MM_PER_INCH = 25.4;

    /** A width as typed, {@code 610mm} or {@code 24in}; empty when it is a name or has a height. */
    public static Optional<RollWidth> parse(String text) {
        Matcher typed = TYPED.matcher(text);
        if (!typed.matches()) {
            return Optional.empty();
        }
        double number = Double.parseDouble(typed.group(1));
        return Optional.of(
                new RollWidth(typed.group(2).equals("in") ? number * MM_PER_INCH : number));
    }

    /**
     * A page of this width, as long as a page can be.
     *
     * @throws Problem usage, when no page is so narrow or wide
     */
    public PageSize longest() throws Problem {
        return PageSize.of(mm, PageSize.LONGEST_MM);
    }
}
