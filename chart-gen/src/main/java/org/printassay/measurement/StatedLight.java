package org.printassay.measurement;

import java.util.Locale;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.printassay.problem.Problem;

/** Refuses tristimulus data that say they are for another light or observer than D50, 2 degree. */
final class StatedLight {
    private static final Pattern LIGHT =
            Pattern.compile("\\b(D50|D55|D65|D75|A|C|F2|F7|F11|F12)\\b");
    private static final Pattern OBSERVER = Pattern.compile("\\b(2|10)(?=[_ ]*(DEG|\\b))");

    private StatedLight() {}

    static void refuseOther(String where, Map<String, String> keywords) throws Problem {
        String weighting = keywords.getOrDefault("WEIGHTING_FUNCTION", "");
        refuseOther(
                where,
                keywords.getOrDefault("ILLUMINANT", "") + " " + part(weighting, "ILLUMINANT"),
                keywords.getOrDefault("OBSERVER", "") + " " + part(weighting, "OBSERVER"));
    }

    static void refuseOther(String where, String light, String observer) throws Problem {
        String wrongLight = first(LIGHT, light);
        String wrongObserver = first(OBSERVER, observer);
        if ((!wrongLight.isEmpty() && !wrongLight.equals("D50"))
                || (!wrongObserver.isEmpty() && !wrongObserver.equals("2"))) {
            throw Problem.input(
                    where,
                    "its colours are for "
                            + (wrongLight.isEmpty() ? "D50" : wrongLight)
                            + ", "
                            + (wrongObserver.isEmpty() ? "2" : wrongObserver)
                            + " degree. Export D50 and 2 degree, or the spectra.");
        }
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

    private static String first(Pattern pattern, String text) {
        Matcher matcher = pattern.matcher(text.toUpperCase(Locale.ROOT));
        return matcher.find() ? matcher.group(1) : "";
    }
}
