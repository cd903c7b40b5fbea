package org.printassay.recipe;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.printassay.problem.Problem;

/**
 * A page as it leaves the printer, portrait or landscape.
 *
 * @param name name for people and options: {@code A4}, {@code Letter}, {@code 13x19in}, {@code
 *     200x300mm}
 * @param widthMm width, millimetres, a multiple of 0.01
 * @param heightMm height, millimetres, a multiple of 0.01
 */
public record PageSize(String name, double widthMm, double heightMm) {
    /** Shortest side that is accepted. */
    public static final double SHORTEST_MM = 50;

    /** Longest side that is accepted: more than any sheet or usual length of roll. */
    public static final double LONGEST_MM = 2000;

    /**
     * Pages with a name, smallest first. A sizes: ISO 216; Letter, Legal, Tabloid: ANSI/ASME Y14.1
     * and common practice; photo sizes by their inches.
     */
    public static final List<PageSize> NAMED =
            List.of(
                    inches("4x6in", 4, 6),
                    new PageSize("A6", 105, 148),
                    inches("5x7in", 5, 7),
                    new PageSize("A5", 148, 210),
                    inches("8x10in", 8, 10),
                    inches("Letter", 8.5, 11),
                    new PageSize("A4", 210, 297),
                    inches("Legal", 8.5, 14),
                    inches("Tabloid", 11, 17),
                    new PageSize("A3", 297, 420),
                    inches("13x19in", 13, 19),
                    new PageSize("A2", 420, 594));

    /** Digits before the comma are few, so that no number is large enough to matter. */
    private static final Pattern SIZE =
            Pattern.compile(
                    "(\\d{1,4}(?:\\.\\d{1,3})?)\\s*[x*]\\s*(\\d{1,4}(?:\\.\\d{1,3})?)\\s*(mm|in)");

    /**
     * Reads a page size: a name of {@link #NAMED} in any case, photo sizes also without their unit,
     * or {@code WxHmm}, {@code WxHin}.
     *
     * @throws Problem usage, when it is neither, or a side is not between 50 and 2000 mm
     */
    public static PageSize parse(String text) throws Problem {
        String wanted = text.strip().toLowerCase(Locale.ROOT);
        Optional<PageSize> named = named(wanted).or(() -> named(wanted + "in"));
        if (named.isPresent()) {
            return named.get();
        }
        Matcher size = SIZE.matcher(wanted);
        if (!size.matches()) {
            throw Problem.usage(
                    "page size \""
                            + shown(text)
                            + "\" is not known. Use A6 to A2, Letter, Legal, Tabloid, 4x6in, 5x7in,"
                            + " 8x10in, 13x19in, or width x height such as 200x300mm or 12x16in.");
        }
        double scale = size.group(3).equals("in") ? 25.4 : 1;
        return of(
                Double.parseDouble(size.group(1)) * scale,
                Double.parseDouble(size.group(2)) * scale);
    }

    /**
     * A page of these sides, rounded to 0.01 mm, with its usual name when it has one.
     *
     * @throws Problem usage, when a side is not between 50 and 2000 mm
     */
    public static PageSize of(double widthMm, double heightMm) throws Problem {
        double width = hundredths(widthMm);
        double height = hundredths(heightMm);
        if (!(Math.min(width, height) >= SHORTEST_MM && Math.max(width, height) <= LONGEST_MM)) {
            throw Problem.usage(
                    "each side of a page must be 50 to 2000 mm, got "
                            + plain(widthMm)
                            + " x "
                            + plain(heightMm)
                            + " mm.");
        }
        for (PageSize page : NAMED) {
            if (page.widthMm == width && page.heightMm == height) {
                return page;
            }
        }
        return new PageSize(plain(width) + "x" + plain(height) + "mm", width, height);
    }

    /** The page of a name, any case. */
    public static Optional<PageSize> named(String name) {
        return NAMED.stream().filter(page -> page.name.equalsIgnoreCase(name)).findFirst();
    }

    /** Millimetres as written in names: at most two decimals, none that are not needed. */
    public static String plain(double mm) {
        if (!Double.isFinite(mm)) {
            return "?";
        }
        return BigDecimal.valueOf(mm)
                .setScale(2, RoundingMode.HALF_UP)
                .stripTrailingZeros()
                .toPlainString();
    }

    /** Rounded to 0.01 mm, the resolution of every length in a recipe. */
    static double hundredths(double mm) {
        return Math.round(mm * 100) / 100.0;
    }

    private static PageSize inches(String name, double width, double height) {
        return new PageSize(name, hundredths(width * 25.4), hundredths(height * 25.4));
    }

    /** What was typed, fit for one line of a message. */
    private static String shown(String text) {
        String clean = text.replaceAll("[^\\x20-\\x7e]", "?");
        return clean.length() > 40 ? clean.substring(0, 40) + "..." : clean;
    }
}
