package org.printassay.demo.print;

import java.awt.RenderingHints;
import java.awt.image.BufferedImage;
import java.awt.image.DataBufferInt;
import java.io.IOException;
import java.util.Locale;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.rendering.ImageType;
import org.apache.pdfbox.rendering.PDFRenderer;
import org.printassay.colour.Rgb8;
import org.printassay.problem.Problem;

/**
 * A page of a PDF as a printer's raster image processor sees it: one RGB code a dot, no
 * anti-aliasing, so that edges carry no invented codes. Codes are those of the file's own RGB
 * encoding, not converted. Immutable; one rendering serves any number of prints and scans.
 */
public final class RenderedSheet {
    /** Dots per inch that serve scans up to 600 samples per inch well. */
    public static final int USUAL_DOTS_PER_INCH = 600;

    /** An A2 page at 600 dots per inch is 140 million dots; beyond this a page is refused. */
    private static final long MOST_DOTS = 200_000_000;

    private final int dotsPerInch;
    private final int width;
    private final int height;
    private final int[] index;
    private final Palette palette;

    private RenderedSheet(int dotsPerInch, int width, int height, int[] dots) {
        this.dotsPerInch = dotsPerInch;
        this.width = width;
        this.height = height;
        this.palette = Palette.indexInPlace(dots);
        this.index = dots;
    }

    /**
     * Renders one page.
     *
     * @param pdf the whole file
     * @param page page number from 1
     * @param dotsPerInch 72 to 1200
     * @throws Problem when the file is no PDF, has no such page, or the page is too large
     */
    public static RenderedSheet of(byte[] pdf, int page, int dotsPerInch) throws Problem {
        if (dotsPerInch < 72 || dotsPerInch > 1200) {
            throw Problem.usage("A page is rendered at 72 to 1200 dots per inch.");
        }
        try (PDDocument document = Loader.loadPDF(pdf)) {
            if (page < 1 || page > document.getNumberOfPages()) {
                throw Problem.input(
                        "PDF",
                        String.format(
                                Locale.ROOT,
                                "has %d pages, page %d was asked for.",
                                document.getNumberOfPages(),
                                page));
            }
            PDPage sheet = document.getPage(page - 1);
            double dots = dotsPerInch / 72.0;
            double area = sheet.getCropBox().getWidth() * dots * sheet.getCropBox().getHeight();
            if (area * dots > MOST_DOTS) {
                throw Problem.input("PDF", "page too large to render; take fewer dots per inch.");
            }
            DeviceCodes.keep(sheet);
            PDFRenderer renderer = new PDFRenderer(document);
            renderer.setRenderingHints(
                    new RenderingHints(
                            RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_OFF));
            BufferedImage image = renderer.renderImageWithDPI(page - 1, dotsPerInch, ImageType.RGB);
            int[] codes = ((DataBufferInt) image.getRaster().getDataBuffer()).getData();
            return new RenderedSheet(dotsPerInch, image.getWidth(), image.getHeight(), codes);
        } catch (IOException e) {
            throw Problem.input("PDF", "cannot be rendered: " + e.getMessage(), e);
        }
    }

    /** Dots per inch of the raster. */
    public int dotsPerInch() {
        return dotsPerInch;
    }

    /** Dots across. */
    public int width() {
        return width;
    }

    /** Dots down. */
    public int height() {
        return height;
    }

    /** Width of the page, millimetres. */
    public double widthMm() {
        return width * 25.4 / dotsPerInch;
    }

    /** Height of the page, millimetres. */
    public double heightMm() {
        return height * 25.4 / dotsPerInch;
    }

    /** Number of different codes on the page. */
    public int codes() {
        return palette.size();
    }

    /** One of the different codes. */
    public Rgb8 code(int number) {
        return palette.code(number);
    }

    /** How many dots have a code. */
    public long dotsOf(int number) {
        return palette.count(number);
    }

    /** Code number of every dot, row by row; shared, not to be modified. */
    public int[] index() {
        return index;
    }
}
