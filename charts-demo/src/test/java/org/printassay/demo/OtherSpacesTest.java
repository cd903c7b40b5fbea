package org.printassay.demo;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.HashSet;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.printassay.chart.Chart;
import org.printassay.colour.Rgb8;
import org.printassay.colour.RgbSpace;
import org.printassay.demo.print.RenderedSheet;
import org.printassay.problem.Problem;
import org.printassay.sheet.Patch;

class OtherSpacesTest {
    /** Every patch is rendered at its own code in every encoding, sampled at its middle. */
    @ParameterizedTest
    @EnumSource(RgbSpace.class)
    void patchesKeepTheirCodes(RgbSpace space) {
        Chart chart = RealChart.chart(space);
        RenderedSheet rendered = RealChart.rendered(chart);
        Set<Rgb8> seen = new HashSet<>();
        for (Patch patch : chart.sheets().get(0).patches()) {
            int x = (int) (patch.area().centre().x() / 25.4 * rendered.dotsPerInch());
            int y = (int) (patch.area().centre().y() / 25.4 * rendered.dotsPerInch());
            Rgb8 code = rendered.code(rendered.index()[y * rendered.width() + x]);
            assertEquals(patch.rgb(), code, patch.id());
            seen.add(code);
        }
        assertTrue(seen.size() > 100, "different codes " + seen.size());
    }

    @Test
    void notAPdfIsSaidInOneLine() {
        Problem problem =
                assertThrows(Problem.class, () -> RenderedSheet.of(new byte[] {1, 2, 3}, 1, 600));
        assertTrue(!problem.getMessage().contains("\n"), problem.getMessage());
    }
}
