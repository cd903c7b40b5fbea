package org.printassay.chart;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.zxing.BinaryBitmap;
import com.google.zxing.DecodeHintType;
import com.google.zxing.PlanarYUVLuminanceSource;
import com.google.zxing.ReaderException;
import com.google.zxing.common.HybridBinarizer;
import com.google.zxing.qrcode.QRCodeReader;
import com.google.zxing.qrcode.decoder.Decoder;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.printassay.colour.RgbSpace;
import org.printassay.problem.Problem;
import org.printassay.recipe.Margins;
import org.printassay.recipe.PageSize;
import org.printassay.recipe.Recipe;
import org.printassay.sheet.Sheet;

class SheetCodeTest {
    /** The 45 characters of the alphanumeric mode, ISO/IEC 18004:2015, table 5. */
    private static final String ALPHANUMERIC = "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ $%*+-./:";

    static List<SheetCode> codes() throws Problem {
        List<SheetCode> codes = new ArrayList<>();
        List<PageSize> pages = new ArrayList<>(PageSize.NAMED);
        pages.add(PageSize.parse("210.55x1234.56mm"));
        pages.add(PageSize.parse("1999.99x1234.56mm"));
        List<Margins> margins =
                List.of(
                        Margins.all(12),
                        Margins.all(6.35),
                        new Margins(10, 12.5, 35, 12.25),
                        new Margins(123.45, 234.56, 345.67, 456.78));
        List<RgbSpace> spaces = List.copyOf(EnumSet.allOf(RgbSpace.class));
        int i = 0;
        for (PageSize page : pages) {
            for (Margins margin : margins) {
                RgbSpace space = spaces.get(i % spaces.size());
                Recipe recipe = Recipe.paper(page, margin, space);
                codes.add(new SheetCode(recipe, 72 + i % 25, 1 + i % 9, 9, 1 + i * 200));
                i = (i + 1) % 45;
            }
        }
        return codes;
    }

    @ParameterizedTest
    @MethodSource("codes")
    void readsBackWhatItSays(SheetCode code) throws Problem {
        String text = code.encode();
        assertEquals(code, SheetCode.parse("scan.tif", text));
        assertTrue(text.chars().allMatch(character -> ALPHANUMERIC.indexOf(character) >= 0), text);
    }

    /**
     * A general-purpose reader of the symbol is the witness: module by module for every text, also
     * the longest, which leaves the least error correction.
     */
    @ParameterizedTest
    @MethodSource("codes")
    void modulesAreDecodedByAnIndependentReader(SheetCode code) throws ReaderException {
        CodeSymbol symbol = CodeSymbol.of(code.encode());
        boolean[][] modules = new boolean[29][29];
        for (int row = 0; row < 29; row++) {
            for (int column = 0; column < 29; column++) {
                modules[row][column] = symbol.dark(column, row);
            }
        }
        assertEquals(code.encode(), new Decoder().decode(modules).getText());
    }

    /** Drawn as at 150 dpi and turned over: the reader has to find it too. */
    @ParameterizedTest
    @CsvSource({"A4,12", "Letter,12", "A3,12.7", "13x19in,6.35", "Legal,10"})
    void symbolIsFoundByAnIndependentReader(String page, String margin)
            throws ReaderException, Problem {
        String text = PaperSheetFitTest.chart(page, margin).sheets().get(0).codeText();
        CodeSymbol symbol = CodeSymbol.of(text);
        assertEquals(29, symbol.size());
        int scale = 4;
        int side = (symbol.size() + 8) * scale;
        byte[] grey = new byte[side * side];
        Arrays.fill(grey, (byte) 255);
        for (int y = 0; y < side; y++) {
            for (int x = 0; x < side; x++) {
                int column = x / scale - 4;
                int row = y / scale - 4;
                boolean inside = column >= 0 && row >= 0 && column < 29 && row < 29;
                if (inside && symbol.dark(column, row)) {
                    grey[(side - 1 - y) * side + side - 1 - x] = 0;
                }
            }
        }
        var image = new PlanarYUVLuminanceSource(grey, side, side, 0, 0, side, side, false);
        var read =
                new QRCodeReader()
                        .decode(
                                new BinaryBitmap(new HybridBinarizer(image)),
                                Map.of(DecodeHintType.TRY_HARDER, Boolean.TRUE));
        assertEquals(text, read.getText());
    }

    @ParameterizedTest
    @CsvSource({"A4,12", "Letter,12", "A3,12", "13x19in,12.7", "A4,25"})
    void everySheetRebuildsItsChart(String page, String margins) throws Problem {
        Chart chart = PaperSheetFitTest.chart(page, margins);
        Chart third = Charts.create(chart.recipe(), 3);
        for (Sheet sheet : third.sheets()) {
            assertEquals(third, Charts.fromSheetCode("scan.tif", sheet.codeText()));
            assertTrue(sheet.codeText().length() <= 35, "room for the strongest correction");
        }
    }

    @Test
    void anyOneWrongCharacterIsNoticed() throws Problem {
        String text = PaperSheetFitTest.chart("A4", "12").sheets().get(0).codeText();
        for (int i = 0; i < text.length(); i++) {
            for (char other : new char[] {'0', '1', '7', 'A', 'Z', '/', '.', '-', ' '}) {
                String wrong = text.substring(0, i) + other + text.substring(i + 1);
                if (!wrong.equals(text)) {
                    Problem problem =
                            assertThrows(
                                    Problem.class, () -> Charts.fromSheetCode("scan.tif", wrong));
                    assertEquals(Problem.Kind.CHART, problem.kind());
                }
            }
        }
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                "HTTPS://EXAMPLE.ORG",
                "PA1P",
                "PA1P/../../ETC/PASSWD",
                "PA1P/A4/12/74/S11/1/0000\n",
                "PA1P/A4/12/74/S11/99999999999999999999/0000",
                "PA0P/A4/12/74/S11/1/R2XZ"
            })
    void whatIsNotASheetCodeIsRefused(String text) {
        Problem problem = assertThrows(Problem.class, () -> Charts.fromSheetCode("scan.tif", text));
        assertEquals(Problem.Kind.CHART, problem.kind());
        assertTrue(String.valueOf(problem.getMessage()).startsWith("scan.tif: "));
    }

    @Test
    void newerLayoutIsNamedAsSuch() {
        Problem problem =
                assertThrows(
                        Problem.class,
                        () -> SheetCode.parse("scan.tif", "PA9P/NEW THINGS WE DO NOT KNOW"));
        assertTrue(
                String.valueOf(problem.getMessage()).contains("made by a newer printassay"),
                problem.getMessage());
    }

    /** A correct checksum does not make a page of ours: the rest is checked too. */
    @Test
    void wellFormedCodeOfAnImpossibleChartIsRefused() throws Problem {
        Recipe tiny = Recipe.paper(PageSize.parse("A6"), Margins.all(12), RgbSpace.SRGB);
        String text = new SheetCode(tiny, 74, 1, 1, 1).encode();
        assertEquals(
                Problem.Kind.CHART,
                assertThrows(Problem.class, () -> Charts.fromSheetCode("scan.tif", text)).kind());
        Recipe a4 = Recipe.paper(PageSize.parse("A4"), Margins.all(12), RgbSpace.SRGB);
        String otherPatch = new SheetCode(a4, 90, 1, 1, 1).encode();
        assertThrows(Problem.class, () -> Charts.fromSheetCode("scan.tif", otherPatch));
        String missingSheet = new SheetCode(a4, 74, 5, 1, 1).encode();
        assertThrows(Problem.class, () -> Charts.fromSheetCode("scan.tif", missingSheet));
    }

    @Test
    void chartsDifferInIdByEveryPartOfTheRecipe() throws Problem {
        List<String> ids =
                List.of(
                        PaperSheetFitTest.chart("A4", "12").id(),
                        PaperSheetFitTest.chart("A4", "12.01").id(),
                        PaperSheetFitTest.chart("A4", "12,12,12,13").id(),
                        PaperSheetFitTest.chart("Letter", "12").id(),
                        Charts.create(
                                        Recipe.paper(
                                                PageSize.parse("A4"),
                                                Margins.all(12),
                                                RgbSpace.ROMM))
                                .id());
        assertEquals(ids.size(), ids.stream().distinct().count());
    }
}
