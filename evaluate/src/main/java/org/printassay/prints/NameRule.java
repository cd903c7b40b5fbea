package org.printassay.prints;

import java.nio.file.Path;
import java.util.Locale;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.printassay.scan.ScanFiles;

/**
 * What a file's name says about its print. Names that agree up to a mark at their end may be scans
 * of one print: {@code baryta-1.tif} and {@code baryta-2.tif}. A mark stands after a hyphen,
 * underscore, full stop or space and is a number of one or two digits, a single letter, or one of
 * the words sheet, part, repeat and turned, with or without a number. Where nothing but a word like
 * scan or paper is left, the mark is the print's name: {@code scan-1.tif} and {@code paper-b.tif}
 * are prints of their own.
 *
 * @param stem the name without its ending
 * @param rest the stem without its mark, in small letters; what must agree
 * @param mark in small letters; empty when there is none
 */
record NameRule(String stem, String rest, String mark) {
    private static final Pattern MARK =
            Pattern.compile(
                    "(.+?)[-_. ]+((?:sheet|part|repeat|turned)[-_ ]?\\d{0,2}|\\d{1,2}|[a-z])");

    private static final Set<String> SAYS_NOTHING =
            Set.of(
                    "scan",
                    "scans",
                    "img",
                    "image",
                    "picture",
                    "print",
                    "paper",
                    "page",
                    "sheet",
                    "chart",
                    "test",
                    "file",
                    "document",
                    "untitled",
                    "new");

    static NameRule of(Path file) {
        String stem = stem(ScanFiles.displayName(file));
        String small = stem.toLowerCase(Locale.ROOT);
        Matcher matcher = MARK.matcher(small);
        if (!matcher.matches() || SAYS_NOTHING.contains(bare(matcher.group(1)))) {
            return new NameRule(stem, small, "");
        }
        return new NameRule(stem, matcher.group(1), matcher.group(2));
    }

    /** A word without the number behind it. */
    private static String bare(String word) {
        return word.replaceAll("[-_. ]*\\d*$", "");
    }

    private static String stem(String name) {
        int dot = name.lastIndexOf('.');
        return dot > 0 ? name.substring(0, dot) : name;
    }
}
