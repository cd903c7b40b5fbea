package org.printassay.measurement;

import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.printassay.problem.Problem;

/**
 * Refuses tristimulus data that say they are for another light or observer than D50, 2 degree, or
 * relative to the paper.
 */
final class StatedLight {
    private static final Pattern LIGHT =
            Pattern.compile("(?<![A-Z0-9])(D(?:50|55|65|75|93)|F\\d{1,2}|[AC])(?![A-Z0-9])");

    /** Of 1931, with 2 degree, or of 1964, with 10 (ISO/CIE 11664-1). */
    private static final Pattern OBSERVER =
            Pattern.compile("\\b(2|10)(?=[_ ]*(DEG|\\b))|(1931|1964)");

    private static final Pattern SAYS_NOTHING =
            Pattern.compile("[\\W_]*(UNKNOWN|UNDEFINED|NONE|N/?A|NOT[ _]STATED)?[\\W_]*");

    /** {@code Key=value} pairs that header lines hold in one text. */
    private static final Pattern INNER =
            Pattern.compile(
                    "\\b(ILLUMINATION|ILLUMINANT|OBSERVER(?:[ _]?ANGLE)?|WHITE[ _]?BASE)"
                            + "\\s*[=:]\\s*([^\\s;,]+)");

    /** Where such pairs name a lamp or a measurement condition, it is no light to compute with. */
    private static final Pattern COMPUTED_LIGHT =
            Pattern.compile("D\\d{2,3}.*|FL?\\d.*|[ABCE]|LED-.*|ID\\d.*");

    private static final Pattern OF_PAPER = Pattern.compile("(PAP|REL|SUBSTR|MEDIA).*");

    private static final int LONGEST = 40;

    private StatedLight() {}

    static void refuseOther(String where, Map<String, String> keywords) throws Problem {
        String weighting = keywords.getOrDefault("WEIGHTING_FUNCTION", "");
        String light = inner(keywords, "ILLUM");
        refuseOther(
                where,
                keywords.getOrDefault("ILLUMINANT", "")
                        + " "
                        + part(weighting, "ILLUMINANT")
                        + " "
                        + (COMPUTED_LIGHT.matcher(light).matches() ? light : ""),
                keywords.getOrDefault("OBSERVER", "")
                        + " "
                        + part(weighting, "OBSERVER")
                        + " "
                        + inner(keywords, "OBSERVER"));
        String white = whiteBase(keywords);
        if (isOfPaper(white)) {
            throw Problem.input(
                    where,
                    "its colours are relative to the paper (white base '"
                            + white.toLowerCase(Locale.ROOT)
                            + "'), so that every paper is white. Export them absolute, or the"
                            + " spectra.");
        }
    }

    /** A sentence on spectra that stand beside colours relative to the paper; else empty. */
    static Optional<String> noteOnSpectra(Map<String, String> keywords) {
        String white = whiteBase(keywords);
        return isOfPaper(white)
                ? Optional.of(
                        "The file names white base '"
                                + white.toLowerCase(Locale.ROOT)
                                + "'; this was taken to hold for its colours, not its spectra.")
                : Optional.empty();
    }

    private static boolean isOfPaper(String white) {
        return OF_PAPER.matcher(white).matches();
    }

    private static String whiteBase(Map<String, String> keywords) {
        String own = keywords.getOrDefault("WHITE_BASE", keywords.getOrDefault("WHITEBASE", ""));
        return own.isBlank()
                ? inner(keywords, "WHITE")
                : Conditions.tidy(own).toUpperCase(Locale.ROOT);
    }

    /** The first value in {@code MEASUREMENT_SOURCE} whose key begins so; empty where none does. */
    private static String inner(Map<String, String> keywords, String key) {
        String text = keywords.getOrDefault("MEASUREMENT_SOURCE", "");
        Matcher matcher = INNER.matcher(text.toUpperCase(Locale.ROOT));
        while (matcher.find()) {
            if (matcher.group(1).startsWith(key)) {
                return matcher.group(2);
            }
        }
        return "";
    }

    static void refuseOther(String where, String light, String observer) throws Problem {
        String otherLight = otherLight(light.toUpperCase(Locale.ROOT));
        boolean otherObserver = isOtherObserver(observer.toUpperCase(Locale.ROOT));
        if (!otherLight.isEmpty() || otherObserver) {
            throw Problem.input(
                    where,
                    "its colours are for "
                            + (otherLight.isEmpty() ? "D50" : otherLight)
                            + ", "
                            + (otherObserver ? "10" : "2")
                            + " degree. Export D50 and 2 degree, or the spectra.");
        }
    }

    /** The light that is stated where it is not D50; empty when it is, or none is stated. */
    private static String otherLight(String text) {
        Matcher known = LIGHT.matcher(text);
        while (known.find()) {
            if (!known.group(1).equals("D50")) {
                return known.group(1);
            }
        }
        if (text.contains("D50") || SAYS_NOTHING.matcher(text).matches()) {
            return "";
        }
        String plain = text.replaceAll("[^A-Z0-9.+/ -]", " ").strip();
        return "'" + plain.substring(0, Math.min(LONGEST, plain.length())) + "'";
    }

    private static boolean isOtherObserver(String text) {
        Matcher matcher = OBSERVER.matcher(text);
        while (matcher.find()) {
            if (matcher.group().equals("10") || matcher.group().equals("1964")) {
                return true;
            }
        }
        return false;
    }

    /** What follows a word in "ILLUMINANT, D50; OBSERVER, 2 degree". */
    private static String part(String weighting, String word) {
        for (String part : weighting.toUpperCase(Locale.ROOT).split(";", -1)) {
            if (part.contains(word)) {
                return part.substring(part.indexOf(word) + word.length());
            }
        }
        return "";
    }
}
