package org.printassay.chart;

import java.math.BigInteger;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.printassay.colour.RgbSpace;
import org.printassay.problem.Problem;
import org.printassay.recipe.Margins;
import org.printassay.recipe.PageSize;
import org.printassay.recipe.Recipe;

/**
 * What the 2-D code of a sheet says: enough to rebuild the chart, nothing else. Characters of the
 * alphanumeric mode of ISO/IEC 18004 only. Example:
 *
 * <pre>
 * PA1P/A4/12/74/S11/1/4KQ2
 * </pre>
 *
 * that is: mark and layout version, kind; page (name or width x height in mm); margins (one, or
 * four joined by a hyphen: top, right, bottom, left; mm); side of a patch (1/300 inch); encoding,
 * sheet, sheets; print number; checksum (first 20 bits of SHA-256 over what stands before it).
 *
 * @param recipe what the chart is made from
 * @param patchDots side of a patch, 1/300 inch
 * @param sheet from 1 to 9
 * @param sheets how many the chart has
 * @param print which print, from 1 to 9999
 */
public record SheetCode(Recipe recipe, int patchDots, int sheet, int sheets, int print) {
    /** Highest print number that the code has room for. */
    public static final int MOST_PRINTS = 9999;

    private static final String DIGITS = "0123456789ABCDEFGHJKMNPQRSTVWXYZ";
    private static final Map<String, RgbSpace> SPACES =
            Map.of(
                    "S", RgbSpace.SRGB,
                    "A", RgbSpace.ADOBE_RGB,
                    "D", RgbSpace.DISPLAY_P3,
                    "R", RgbSpace.ROMM);
    private static final String MM = "\\d{1,4}(?:\\.\\d{1,2})?";

    private static final Pattern FORM =
            Pattern.compile(
                    "PA(\\d{1,3})([A-Z])/([0-9A-Z.]{2,15})/("
                            + MM
                            + "(?:-"
                            + MM
                            + "){0,3})/(\\d{1,3})/([A-Z])([1-9])([1-9])/(\\d{1,4})/([0-9A-Z]{4})");

    private static final Pattern START = Pattern.compile("PA(\\d{1,3})([A-Z])/.*");

    /** The text to be written as a 2-D code. */
    public String encode() {
        Margins margins = recipe.margins();
        String edges =
                margins.isEven()
                        ? PageSize.plain(margins.top())
                        : String.join(
                                "-",
                                PageSize.plain(margins.top()),
                                PageSize.plain(margins.right()),
                                PageSize.plain(margins.bottom()),
                                PageSize.plain(margins.left()));
        String body =
                "PA"
                        + recipe.layoutVersion()
                        + recipe.kind().letter()
                        + "/"
                        + page(recipe.page())
                        + "/"
                        + edges
                        + "/"
                        + patchDots
                        + "/"
                        + letter(recipe.space())
                        + sheet
                        + sheets
                        + "/"
                        + print;
        return body + "/" + checksum(body, 4);
    }

    /**
     * Reads the text of a sheet code. It comes from outside: every part is checked.
     *
     * @param where the scan, for messages
     * @throws Problem chart, when it is not ours, damaged or made by newer layout rules
     */
    public static SheetCode parse(String where, String text) throws Problem {
        Matcher start = START.matcher(text);
        if (!start.matches()) {
            throw Problem.chart(where, "the 2-D code is not the sheet code of a chart made here.");
        }
        Optional<Recipe.Kind> kind = Recipe.Kind.ofLetter(start.group(2).charAt(0));
        if (kind.isEmpty() || kind.get() == Recipe.Kind.EDITED) {
            throw Problem.chart(
                    where,
                    "the sheet code names a design that this printassay lacks. Update printassay.");
        }
        int newest = kind.get().currentLayout();
        if (Integer.parseInt(start.group(1)) > newest) {
            throw Problem.chart(
                    where,
                    "the sheet was made by a newer printassay (layout version "
                            + start.group(1)
                            + ", this one knows up to "
                            + newest
                            + "). Update printassay.");
        }
        Matcher form = FORM.matcher(text);
        int end = text.lastIndexOf('/');
        if (!form.matches() || !checksum(text.substring(0, end), 4).equals(form.group(10))) {
            throw Problem.chart(
                    where, "the sheet code is damaged: its checksum does not agree. Scan again.");
        }
        int version = Integer.parseInt(form.group(1));
        RgbSpace space = SPACES.get(form.group(6));
        if (version < 1 || space == null) {
            throw Problem.chart(where, "the sheet code names a chart that this version lacks.");
        }
        Recipe recipe =
                new Recipe(
                        kind.get(),
                        parsePage(where, form.group(3)),
                        parseMargins(where, form.group(4)),
                        space,
                        version);
        return new SheetCode(
                recipe,
                Integer.parseInt(form.group(5)),
                Integer.parseInt(form.group(7)),
                Integer.parseInt(form.group(8)),
                Integer.parseInt(form.group(9)));
    }

    /** The short name of a recipe's chart: 30 bits of SHA-256 over its parts. */
    static String chartId(Recipe recipe, int patchDots) {
        String body = new SheetCode(recipe, patchDots, 1, 1, 1).encode();
        return checksum("chart " + body, 6);
    }

    private static String letter(RgbSpace space) {
        for (Map.Entry<String, RgbSpace> entry : SPACES.entrySet()) {
            if (entry.getValue() == space) {
                return entry.getKey();
            }
        }
        throw new IllegalArgumentException("no letter for " + space);
    }

    private static String page(PageSize page) {
        for (PageSize named : PageSize.NAMED) {
            if (named.equals(page)) {
                return page.name().toUpperCase(Locale.ROOT);
            }
        }
        return PageSize.plain(page.widthMm()) + "X" + PageSize.plain(page.heightMm());
    }

    private static PageSize parsePage(String where, String text) throws Problem {
        try {
            boolean bare = text.matches(MM + "X" + MM);
            return PageSize.parse(bare ? text + "mm" : text);
        } catch (Problem e) {
            throw Problem.chart(where, "the sheet code: " + e.getMessage());
        }
    }

    private static Margins parseMargins(String where, String text) throws Problem {
        try {
            return Margins.of(List.of(text.split("-", -1)).stream().map(Double::valueOf).toList());
        } catch (Problem e) {
            throw Problem.chart(where, "the sheet code: " + e.getMessage());
        }
    }

    static String checksum(String body, int characters) {
        try {
            MessageDigest sha = MessageDigest.getInstance("SHA-256");
            byte[] digest = sha.digest(body.getBytes(StandardCharsets.UTF_8));
            BigInteger number = new BigInteger(1, digest);
            StringBuilder text = new StringBuilder();
            for (int i = 0; i < characters; i++) {
                int bits = number.shiftRight(256 - 5 * (i + 1)).intValue() & 31;
                text.append(DIGITS.charAt(bits));
            }
            return text.toString();
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java has SHA-256", e);
        }
    }
}
