package org.printassay.report.paged;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.printassay.report.draw.Drawing;
import org.printassay.report.draw.Ink;

/** Read back with PDFBox's own reader. */
class PagedDocumentTest {
    @FunctionalInterface
    private interface Content {
        void fill(PagedDocument document) throws IOException;
    }

    private static byte[] made(PageFormat format, Content content) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (PagedDocument document = new PagedDocument(format, "A title", "a note", 7)) {
            document.title("A title");
            content.fill(document);
            document.write(out);
        }
        return out.toByteArray();
    }

    private static String text(byte[] pdf) throws IOException {
        try (PDDocument document = Loader.loadPDF(pdf)) {
            return new PDFTextStripper().getText(document);
        }
    }

    private static int pages(byte[] pdf) throws IOException {
        try (PDDocument document = Loader.loadPDF(pdf)) {
            return document.getNumberOfPages();
        }
    }

    private static List<String> pagesOf(byte[] pdf) throws IOException {
        List<String> pages = new ArrayList<>();
        try (PDDocument document = Loader.loadPDF(pdf)) {
            for (int page = 1; page <= document.getNumberOfPages(); page++) {
                PDFTextStripper one = new PDFTextStripper();
                one.setStartPage(page);
                one.setEndPage(page);
                pages.add(one.getText(document));
            }
        }
        return pages;
    }

    private static Table numbers(int rows) {
        return named("row", rows);
    }

    private static Table named(String name, int rows) {
        List<List<Table.Cell>> cells = new ArrayList<>();
        for (int i = 0; i < rows; i++) {
            cells.add(List.of(Table.Cell.of(name + " " + i), Table.Cell.of("" + i)));
        }
        return new Table(
                List.of(Table.Column.text("Name", 2), Table.Column.number("Number", 1)), cells);
    }

    @ParameterizedTest
    @EnumSource
    void aLongTableGoesOnUnderItsHeads(PageFormat format) throws IOException {
        byte[] pdf = made(format, d -> d.table(numbers(150)));
        int pages = pages(pdf);
        assertTrue(pages >= 3, pages + " pages");
        String text = text(pdf);
        assertEquals(pages + 1, text.split("Name", -1).length, "heads on every page");
        for (int i = 0; i < 150; i++) {
            assertTrue(text.contains("row " + i + " "), "row " + i);
        }
        for (int i = 1; i <= pages; i++) {
            assertTrue(text.contains("page " + i + " of " + pages), text);
        }
    }

    /** Whatever its length, so also where all but the last row would just fit. */
    @Test
    void noLastRowStandsAlone() throws IOException {
        int split = 0;
        for (int rows = 30; rows < 60; rows++) {
            int count = rows;
            try (PDDocument document =
                    Loader.loadPDF(made(PageFormat.A4, d -> d.table(numbers(count))))) {
                PDFTextStripper last = new PDFTextStripper();
                last.setStartPage(document.getNumberOfPages());
                String text = last.getText(document);
                assertTrue(text.contains("row " + (rows - 1) + " "), text);
                assertTrue(text.contains("row " + (rows - 2) + " "), text);
                split += document.getNumberOfPages() - 1;
            }
        }
        assertTrue(split > 0 && split < 30, split + " of 30 tables go on");
    }

    @ParameterizedTest
    @EnumSource
    void nothingIsPaintedOutsideTheMargins(PageFormat format) throws IOException {
        String all = "word ".repeat(300) + "unbroken".repeat(300);
        byte[] pdf =
                made(
                        format,
                        d -> {
                            d.paragraph(Type.BODY, all);
                            d.points(Type.BODY, List.of(all, "short"));
                            d.entries(List.of(new NamedFigure(all, "#ff0000", all, all)));
                            d.table(numbers(3));
                        });
        List<String> outside = new ArrayList<>();
        try (PDDocument document = Loader.loadPDF(pdf)) {
            PDPage page = document.getPage(0);
            assertEquals(format.width(), page.getMediaBox().getWidth(), 0.01);
            new PDFTextStripper() {
                @Override
                protected void processTextPosition(org.apache.pdfbox.text.TextPosition at) {
                    boolean in =
                            at.getX() >= PageFormat.SIDE - 0.1
                                    && at.getX() + at.getWidth()
                                            <= format.width()
                                                    - PageFormat.SIDE
                                                    + 0.1
                                                    + at.getWidthOfSpace()
                                    && at.getY() >= PageFormat.TOP - 0.1
                                    && at.getY() <= format.height() - 20;
                    if (!in) {
                        outside.add(at.getUnicode() + " at " + at.getX() + " " + at.getY());
                    }
                }
            }.getText(document);
        }
        assertEquals(List.of(), outside);
    }

    @Test
    void theSameCallsMakeTheSameBytes() throws IOException {
        Content content =
                d -> {
                    d.part("Part");
                    Drawing drawing = new Drawing("A drawing", "a line", 100, 40);
                    drawing.line(0, 0, 100, 40, Ink.MEASURED);
                    d.figures(List.of(drawing));
                    d.table(numbers(90));
                };
        assertArrayEquals(made(PageFormat.A4, content), made(PageFormat.A4, content));
    }

    @Test
    void aTallDrawingIsMadeSmallerAndManyFiguresGoBelow() throws IOException {
        Drawing tall = new Drawing("Tall", "taller than a page", 200, 4000);
        tall.box(0, 0, 200, 4000, Ink.BAR);
        List<NamedFigure> many = new ArrayList<>();
        for (int i = 0; i < 60; i++) {
            many.add(new NamedFigure("label " + i, null, "value " + i, "detail"));
        }
        String text =
                text(
                        made(
                                PageFormat.LETTER,
                                d -> {
                                    d.figures(List.of(tall));
                                    d.beside(new Drawing("Small", "", 300, 100), many);
                                }));
        assertTrue(text.contains("value 59"), text);
    }

    /** Figures beside a drawing may be taller than it: their heading goes with all of them. */
    @Test
    void aHeadingStaysWithWhatStandsBesideItsDrawing() throws IOException {
        List<NamedFigure> facts = new ArrayList<>();
        for (int i = 0; i < 12; i++) {
            facts.add(new NamedFigure("label " + i, null, "value " + i, "detail"));
        }
        int turned = 0;
        for (int rows = 2; rows < 40; rows++) {
            int count = rows;
            Content content =
                    d -> {
                        d.table(numbers(count));
                        Drawing drawing = new Drawing("Small", "", 300, 100);
                        d.part("Heading");
                        d.beside(drawing, facts);
                    };
            try (PDDocument document = Loader.loadPDF(made(PageFormat.A4, content))) {
                PDFTextStripper last = new PDFTextStripper();
                last.setStartPage(document.getNumberOfPages());
                String text = last.getText(document);
                assertTrue(text.contains("value 11"), text);
                assertTrue(text.contains("Heading"), rows + " rows: " + text);
                turned += document.getNumberOfPages() - 1;
            }
        }
        assertTrue(turned > 0 && turned < 38, turned + " of 38 go to the next page");
    }

    /** Wherever it begins: a table that a page can hold is never parted, nor from its heading. */
    @Test
    void aTableThatFitsOnAPageStaysInOnePiece() throws IOException {
        int turned = 0;
        for (int above = 1; above < 40; above += 3) {
            int count = above;
            Content content =
                    d -> {
                        d.table(numbers(count));
                        d.part("Heading");
                        d.lead("What the table tells.");
                        d.table(named("Other", 35));
                    };
            List<String> pages = pagesOf(made(PageFormat.A4, content));
            for (String page : pages) {
                int rows = page.split("Other \\d", -1).length - 1;
                assertTrue(rows == 0 || rows == 35, above + " above: " + rows + " on a page");
                assertEquals(rows == 35, page.contains("Heading"), page);
            }
            turned += pages.size() - 1;
        }
        assertTrue(turned > 0, "none goes to the next page");
    }

    /** A table that no page can hold has its heads and three rows or more on each. */
    @Test
    void noPageGetsARowOrTwoOfALongTable() throws IOException {
        for (int rows = 45; rows < 100; rows += 5) {
            int count = rows;
            for (String page : pagesOf(made(PageFormat.A4, d -> d.table(numbers(count))))) {
                int here = page.split("row \\d", -1).length - 1;
                assertTrue(here >= 3, here + " of " + rows + " rows on a page");
                assertTrue(page.contains("Number"), "heads");
            }
        }
    }

    /** Of several ways to show something the one is taken with which the least stays empty. */
    @Test
    void theWayIsTakenThatFillsThePages() throws IOException {
        Content content =
                d -> {
                    d.table(numbers(25));
                    d.part("Heading");
                    d.either(
                            List.of(
                                    new PagedDocument.Way(0, () -> d.table(named("tall", 30))),
                                    new PagedDocument.Way(1, () -> d.table(named("low", 12)))));
                    d.part("Last");
                    d.table(named("end", 30));
                };
        List<String> pages = pagesOf(made(PageFormat.A4, content));
        assertEquals(2, pages.size());
        assertTrue(pages.get(0).contains("low 11"), pages.get(0));
        assertFalse(pages.get(0).contains("tall"), pages.get(0));
        assertTrue(pages.get(1).contains("end 29"), pages.get(1));
    }

    /** Many short figures stand in two columns; longer ones one below the other. */
    @Test
    void manyShortFiguresStandInTwoColumns() throws IOException {
        List<NamedFigure> few = new ArrayList<>();
        List<NamedFigure> longer = new ArrayList<>();
        for (int i = 0; i < 60; i++) {
            few.add(new NamedFigure("label " + i, "#808080", "value " + i, "detail " + i));
            longer.add(new NamedFigure("label " + i, null, "value " + i, "detail ".repeat(8)));
        }
        byte[] close = made(PageFormat.A4, d -> d.entries(few));
        assertEquals(1, pages(close));
        assertTrue(text(close).contains("detail 59"), text(close));
        assertEquals(2, pages(made(PageFormat.A4, d -> d.entries(longer))));
    }

    /** Every ink has a pen. */
    @ParameterizedTest
    @EnumSource
    void everyInkIsDrawn(Ink ink) throws IOException {
        Drawing drawing = new Drawing("Ink", "", 50, 50);
        drawing.box(1, 1, 10, 10, ink);
        drawing.disc(20, 20, 5, ink);
        assertEquals(1, pages(made(PageFormat.A4, d -> d.figures(List.of(drawing)))));
    }

    /** Letters of other scripts, controls, directions, halves of characters. */
    @Test
    void anyTextIsTaken() throws IOException {
        String odd =
                "\u0639\u0631\u0628\u064a \u05e2\u05d1\u05e8 (a) 12 \u7d19 \ud83d\udda8\ufe0f"
                        + " \ud83d x\u202e\u0000\u001b[31m\u0007\ufffe e\u0301";
        String text = text(made(PageFormat.A4, d -> d.paragraph(Type.BODY, odd)));
        assertTrue(text.contains("\u7d19"), "kept for searches: " + text);
        assertTrue(text.contains("\u00e9"), "composed: " + text);
        assertFalse(text.contains("\u202e"), "direction");
        assertFalse(text.contains("\u001b"), "escape");
    }

    @Test
    void visibleTextIsClean() {
        assertEquals("a b", VisibleText.of("a\nb"));
        assertEquals("ab", VisibleText.of("a\u202eb"));
        assertEquals("a\ufffd", VisibleText.of("a\ud83d"));
        assertEquals("\ud83d\udda8", VisibleText.of("\ud83d\udda8\ufe0f"));
    }
}
