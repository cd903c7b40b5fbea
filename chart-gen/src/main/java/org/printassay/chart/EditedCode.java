package org.printassay.chart;

import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.printassay.problem.Problem;
import org.printassay.recipe.Recipe;

/**
 * What the 2-D code of an edited recipe's sheet says. The recipe does not fit into it: the chart
 * file is needed, and the code tells whether it is the right one. Example:
 *
 * <pre>
 * PA1E/7K3M0Q/H2N8RD/12/1/4KQ2
 * </pre>
 *
 * that is: mark, layout version and kind; id of the chart; 30 bits of the checksum of its patches
 * and markers; sheet and sheets; print number; checksum of the code as in {@link SheetCode}.
 *
 * @param chartId id of the chart
 * @param content checksum of its patches and markers
 * @param sheet from 1 to 9
 * @param sheets how many the chart has
 * @param print which print, from 1 to 9999
 */
record EditedCode(String chartId, String content, int sheet, int sheets, int print) {
    private static final Pattern START = Pattern.compile("PA\\d{1,3}E/.*");
    private static final Pattern FORM =
            Pattern.compile(
                    "PA(\\d{1,3})E/([0-9A-Z]{6})/([0-9A-Z]{6})/([1-9])([1-9])/(\\d{1,4})/([0-9A-Z]{4})");

    /** Whether a code is that of an edited recipe, readable or not. */
    static boolean isOne(String text) {
        return START.matcher(text).matches();
    }

    String encode() {
        String body =
                "PA"
                        + Recipe.Kind.EDITED.currentLayout()
                        + "E/"
                        + chartId
                        + "/"
                        + content
                        + "/"
                        + sheet
                        + sheets
                        + "/"
                        + print;
        return body + "/" + SheetCode.checksum(body, 4);
    }

    static EditedCode parse(String where, String text) throws Problem {
        Matcher form = FORM.matcher(text);
        int end = Math.max(0, text.lastIndexOf('/'));
        if (!form.matches()
                || !SheetCode.checksum(text.substring(0, end), 4).equals(form.group(7))) {
            throw Problem.chart(
                    where, "the sheet code is damaged: its checksum does not agree. Scan again.");
        }
        if (Integer.parseInt(form.group(1)) > Recipe.Kind.EDITED.currentLayout()) {
            throw Problem.chart(
                    where, "the sheet was made by a newer printassay. Update printassay.");
        }
        return new EditedCode(
                form.group(2),
                form.group(3),
                Integer.parseInt(form.group(4)),
                Integer.parseInt(form.group(5)),
                Integer.parseInt(form.group(6)));
    }
}
