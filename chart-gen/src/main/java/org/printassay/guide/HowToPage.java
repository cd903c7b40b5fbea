package org.printassay.guide;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Objects;
import org.printassay.chart.Chart;
import org.printassay.recipe.Recipe;

/** Makes {@code how-to-print-and-scan.html}: one file, no network, no script. */
public final class HowToPage {
    private HowToPage() {}

    /** The page for a chart; the words in its template stand between braces. */
    public static String of(Chart chart) {
        int sheets = chart.sheets().size();
        boolean edited = chart.recipe().kind() == Recipe.Kind.EDITED;
        return template()
                .replace("{file}", edited ? " --chart chart.json" : "")
                .replace(
                        "{code}",
                        edited
                                ? "Keep chart.json: the sheet of an edited recipe cannot be read"
                                        + " without it."
                                : "The sheet code tells which chart it is.")
                .replace("{chart}", escaped(chart.id()))
                .replace("{page}", escaped(chart.recipe().page().name()))
                .replace("{space}", escaped(chart.space().title()))
                .replace("{sheets}", sheets == 1 ? "1 sheet" : sheets + " sheets")
                .replace(
                        "{tiffs}",
                        sheets == 1 ? "chart-1.tif" : "chart-1.tif to chart-" + sheets + ".tif");
    }

    private static String escaped(String text) {
        return text.replace("&", "&amp;").replace("<", "&lt;").replace("\"", "&quot;");
    }

    private static String template() {
        try (InputStream in =
                Objects.requireNonNull(
                        HowToPage.class.getResourceAsStream("how-to-print-and-scan.html"))) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
