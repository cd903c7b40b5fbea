package org.printassay.locate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.function.Predicate;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.printassay.chart.Chart;
import org.printassay.chart.Charts;
import org.printassay.colour.Rgb8;
import org.printassay.colour.RgbSpace;
import org.printassay.problem.Problem;
import org.printassay.recipe.Margins;
import org.printassay.recipe.PageSize;
import org.printassay.recipe.Recipe;
import org.printassay.sheet.Patch;
import org.printassay.sheet.PointMm;

/** Sheets are simulated: what a patch looks like is its code, changed by some printer. */
class CodeOrderTest {
    /** Printers that do a lot to codes, 0-255. */
    enum Printer {
        TRUE,
        BLOCKED,
        CAST,
        SWAPPED,
        BLACK_AND_WHITE,
        DULL,
        NEGATIVE;

        double[] print(double r, double g, double b) {
            double grey = 0.25 * r + 0.65 * g + 0.1 * b;
            return switch (this) {
                case TRUE -> new double[] {r, g, b};
                case BLOCKED -> new double[] {blocked(r), blocked(g), blocked(b)};
                case CAST -> new double[] {r, 0.6 * g + 30, 0.3 * b + 20};
                case SWAPPED -> new double[] {b, r, g};
                case BLACK_AND_WHITE -> new double[] {grey, grey, grey};
                case DULL -> new double[] {150 + 0.15 * r, 150 + 0.15 * g, 150 + 0.15 * b};
                case NEGATIVE -> new double[] {255 - r, 255 - g, 255 - b};
            };
        }

        private static double blocked(double code) {
            return Math.max(0, code - 90) * 255 / 165;
        }
    }

    private static Chart chart(double marginMm, RgbSpace space) throws Problem {
        Recipe.Kind kind = Recipe.Kind.PAPER;
        return Charts.create(
                new Recipe(
                        kind,
                        PageSize.parse("A4"),
                        Margins.of(List.of(marginMm)),
                        space,
                        kind.currentLayout()));
    }

    /**
     * Patches of a chart that is named where another was printed, as markers place them: by their
     * share of the way across and down.
     */
    private static List<CodeOrder.Look> looks(
            Chart named, Chart printed, Printer printer, Predicate<PointMm> covered) {
        Random noise = new Random(5);
        List<Patch> patches = printed.sheets().get(0).patches();
        List<PointMm> places = shares(patches);
        List<Patch> wanted = named.sheets().get(0).patches();
        List<PointMm> wantedPlaces = shares(wanted);
        List<CodeOrder.Look> looks = new ArrayList<>();
        for (int i = 0; i < wanted.size(); i++) {
            PointMm at = wantedPlaces.get(i);
            int nearest = 0;
            for (int k = 1; k < places.size(); k++) {
                nearest = off(places.get(k), at) < off(places.get(nearest), at) ? k : nearest;
            }
            Rgb8 rgb = patches.get(nearest).rgb();
            double[] codes =
                    covered.test(at)
                            ? new double[] {90, 140, 120}
                            : printer.print(rgb.r(), rgb.g(), rgb.b());
            for (int c = 0; c < 3; c++) {
                codes[c] += noise.nextGaussian() * (covered.test(at) ? 40 : 1);
            }
            looks.add(new CodeOrder.Look(wanted.get(i), codes));
        }
        return looks;
    }

    private static double off(PointMm one, PointMm other) {
        return Math.hypot(one.x() - other.x(), one.y() - other.y());
    }

    private static List<PointMm> shares(List<Patch> all) {
        var x = all.stream().mapToDouble(p -> p.area().centre().x()).summaryStatistics();
        var y = all.stream().mapToDouble(p -> p.area().centre().y()).summaryStatistics();
        return all.stream()
                .map(p -> p.area().centre())
                .map(
                        at ->
                                new PointMm(
                                        (at.x() - x.getMin()) / (x.getMax() - x.getMin()),
                                        (at.y() - y.getMin()) / (y.getMax() - y.getMin())))
                .toList();
    }

    private static CodeOrder.Result order(
            Chart named, Chart printed, Printer printer, Predicate<PointMm> covered) {
        return CodeOrder.of(looks(named, printed, printer, covered));
    }

    @ParameterizedTest
    @EnumSource(Printer.class)
    void aChartIsItselfWhateverThePrinterDoes(Printer printer) throws Exception {
        Chart chart = chart(10, RgbSpace.SRGB);
        CodeOrder.Result whole = order(chart, chart, printer, at -> false);
        assertEquals(0, whole.odd(), "" + whole);
        CodeOrder.Result third = order(chart, chart, printer, at -> at.x() < 1 / 3.0);
        assertFalse(third.isOtherChart(), "a third covered: " + third);
    }

    @ParameterizedTest
    @EnumSource(Printer.class)
    void anotherChartOfTheSamePlacesIsFoundOut(Printer printer) throws Exception {
        Chart printed = chart(10, RgbSpace.SRGB);
        for (Chart named : List.of(chart(10, RgbSpace.ADOBE_RGB), chart(12, RgbSpace.SRGB))) {
            CodeOrder.Result order = order(named, printed, printer, at -> false);
            assertTrue(order.isOtherChart(), named.id() + ": " + order);
        }
    }

    @Test
    void fewPatchesTellNothing() throws Exception {
        Chart printed = chart(10, RgbSpace.SRGB);
        List<CodeOrder.Look> looks =
                looks(chart(10, RgbSpace.ADOBE_RGB), printed, Printer.TRUE, at -> false);
        assertFalse(CodeOrder.of(looks.subList(0, 25)).isOtherChart());
        assertFalse(CodeOrder.of(List.of()).isOtherChart());
    }
}
