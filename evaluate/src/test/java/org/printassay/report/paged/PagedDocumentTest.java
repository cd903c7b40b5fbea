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

    private static Table numbers(int rows) {
        List<List<Table.Cell>> cells = new ArrayList<>();
        for (int i = 0; i < rows; i++) {
            cells.add(List.of(Table.Cell.of("row " + i), Table.Cell.of("" + i)));
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
                    d.part("Part", 50);
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
                        d.part("Heading", d.height(drawing, facts));
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
