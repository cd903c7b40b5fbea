package org.printassay.measurement;

import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.printassay.measurement.MeasurementFile.Condition;

/**
 * Under which conditions something was measured (ISO 13655). Measurements are averaged and compared
 * only where all three are the same.
 *
 * @param mode measurement condition M0 to M3, where the file says it
 * @param backing what lay behind the sheet, as the file says it, lower case
 * @param filter filter in the instrument, as the file says it, lower case
 */
public record Conditions(
        Optional<Condition> mode, Optional<String> backing, Optional<String> filter) {
    /** Nothing said. */
    public static final Conditions UNKNOWN =
            new Conditions(Optional.empty(), Optional.empty(), Optional.empty());

    private static final Pattern MODE = Pattern.compile("\\bM([0-3])(?=\\b|_)");

    /** Other keys may hold names that look like a mode: of a paper, a printer, an ink. */
    private static final Pattern ABOUT_MEASURING =
            Pattern.compile("MEASUR|ILLUMIN|FILTER|WEIGHTING|INSTRUMENTATION|^(MODE|CONDITIONS?)$");

    private static final List<String> MODE_KEYS =
            List.of(
                    "MEASUREMENT_CONDITION",
                    "MEASUREMENT_CONDITIONS",
                    "MEASUREMENT_SOURCE",
                    "ILLUMINATION");

    /** {@code Key=value} inside a keyword's text. */
    private static final Pattern INNER =
            Pattern.compile("\\b(BACKING|FILTER)\\s*[=:]\\s*([^\\s;,]+)");

    private static final Pattern SAYS_NOTHING =
            Pattern.compile(
                    "[\\W_]*(unknown|undefined|unspecified|n/?a|not[ _]?(stated|known|specified))?[\\W_]*");

    private static final int LONGEST = 60;

    /** With another measurement condition. */
    Conditions with(Condition other) {
        return new Conditions(Optional.of(other), backing, filter);
    }

    /** In a few words: {@code M1, backing white}. */
    public String words() {
        StringBuilder words = new StringBuilder(mode.map(Condition::name).orElse("not stated"));
        backing.ifPresent(text -> words.append(", backing ").append(text));
        filter.ifPresent(text -> words.append(", filter ").append(text));
        return words.toString();
    }

    /** What header lines say, key in upper case to value. */
    static Conditions of(Map<String, String> keywords) {
        return new Conditions(
                mode(keywords),
                value(keywords, "BACKING", "SAMPLE_BACKING", "BACKING"),
                value(keywords, "FILTER", "FILTER", "FILTER_STATUS", "MEASUREMENT_FILTER"));
    }

    /** The one condition that a text names. */
    static Set<Condition> modes(String text) {
        Set<Condition> found = EnumSet.noneOf(Condition.class);
        Matcher matcher = MODE.matcher(text.toUpperCase(Locale.ROOT));
        while (matcher.find()) {
            found.add(Condition.valueOf("M" + matcher.group(1)));
        }
        return found;
    }

    private static Optional<Condition> mode(Map<String, String> keywords) {
        for (String key : MODE_KEYS) {
            Set<Condition> found = modes(keywords.getOrDefault(key, ""));
            if (found.size() == 1) {
                return Optional.of(found.iterator().next());
            }
        }
        Set<Condition> found = EnumSet.noneOf(Condition.class);
        keywords.forEach(
                (key, value) -> {
                    if (ABOUT_MEASURING.matcher(key).find()) {
                        found.addAll(modes(value));
                    }
                });
        return found.size() == 1 ? Optional.of(found.iterator().next()) : Optional.empty();
    }

    private static Optional<String> value(
            Map<String, String> keywords, String inner, String... keys) {
        for (String key : keys) {
            Optional<String> value = said(keywords.getOrDefault(key, ""));
            if (value.isPresent()) {
                return value;
            }
        }
        for (String text : keywords.values()) {
            Matcher matcher = INNER.matcher(text.toUpperCase(Locale.ROOT));
            while (matcher.find()) {
                Optional<String> value = said(matcher.group(2));
                if (matcher.group(1).equals(inner) && value.isPresent()) {
                    return value;
                }
            }
        }
        return Optional.empty();
    }

    /**
     * What a text says of backing or filter, lower case; empty where it says that it is not known.
     * {@code None} says that there is no filter.
     */
    static Optional<String> said(String text) {
        String plain = tidy(text).replaceFirst("^filter_", "");
        return SAYS_NOTHING.matcher(plain).matches() ? Optional.empty() : Optional.of(plain);
    }

    static String tidy(String text) {
        String plain = text.replaceAll("\\p{Cntrl}", " ").strip().toLowerCase(Locale.ROOT);
        return plain.substring(0, Math.min(LONGEST, plain.length()));
    }
}
