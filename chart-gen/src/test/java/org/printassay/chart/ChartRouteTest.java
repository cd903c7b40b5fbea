package org.printassay.chart;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.printassay.colour.RgbSpace;
import org.printassay.recipe.Margins;
import org.printassay.recipe.PageSize;
import org.printassay.recipe.Recipe;

/** The route of a print is kept in the chart file and changes nothing else. */
class ChartRouteTest {
    @TempDir Path folder = Path.of("");

    @Test
    void routeIsKept() throws Exception {
        Chart chart =
                Charts.create(
                        Recipe.paper(PageSize.parse("A4"), Margins.all(10), RgbSpace.SRGB), 1);
        String said = "relative, \"gloss\" $1 \\ dry";
        Path file =
                Files.writeString(
                        folder.resolve("chart.json"), ChartFile.write(chart, Optional.of(said)));
        assertEquals(Optional.of(said), ChartFile.route(file));
        assertEquals(chart, ChartFile.read(file));
        Files.writeString(file, ChartFile.write(chart, Optional.empty()));
        assertEquals(Optional.empty(), ChartFile.route(file));
    }
}
