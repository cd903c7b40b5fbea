package org.printassay.scan;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSStream;
import org.apache.pdfbox.io.IOUtils;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.encryption.InvalidPasswordException;
import org.apache.pdfbox.util.Matrix;
import org.jspecify.annotations.Nullable;
import org.printassay.problem.Problem;

/**
 * The one page of a scanned PDF (ISO 32000-1): its image and how that is drawn, or one of the
 * strips in which office scanners write it.
 *
 * @param image what its dictionary tells
 * @param data the image's coded data, in a file that goes with the program
 * @param resolution samples an inch as drawn, of all strips together
 * @param mirrored whether it is drawn mirrored
 */
record PdfPage(
        PdfImage image, Path data, Optional<ScanInfo.Resolution> resolution, boolean mirrored) {
    private static final double POINTS_PER_INCH = 72;

    /** More strips than this are no strips. */
    private static final int MOST_STRIPS = 512;

    /** The image, or its strips from the top. */
    static List<PdfPage> read(Path file, String name) throws Problem {
        try (PDDocument document =
                Loader.loadPDF(file.toFile(), IOUtils.createTempFileOnlyStreamCache())) {
            if (document.isEncrypted()) {
                throw encrypted(name, null);
            }
            int pages = document.getNumberOfPages();
            if (pages == 0) {
                throw damaged(name, null);
            }
            if (pages != 1) {
                throw Problem.input(
                        name,
                        "holds "
                                + pages
                                + " pages. Save the page with the sheet as a file of its own, or"
                                + " scan to TIFF or PNG.");
            }
            return read(name, document.getPage(0));
        } catch (InvalidPasswordException e) {
            throw encrypted(name, e);
        } catch (IOException e) {
            refuseWithoutRoom(name);
            throw damaged(name, e);
        } catch (RuntimeException | StackOverflowError e) {
            throw damaged(name, e);
        } catch (OutOfMemoryError e) {
            throw Problem.input(
                    name, "the PDF unpacks to more than any scan. Scan to TIFF or PNG.", e);
        }
    }

    private static Problem damaged(String name, @Nullable Throwable cause) {
        String text = "the PDF is damaged. Copy it again, or scan to TIFF or PNG.";
        return cause == null ? Problem.input(name, text) : Problem.input(name, text, cause);
    }

    /** The library keeps what it unpacks in temporary files. */
    private static void refuseWithoutRoom(String name) throws Problem {
        Path file = PdfImage.temporary(name);
        try {
            PdfImage.fill(name, file);
        } finally {
            delete(file);
        }
    }

    private static void delete(Path file) {
        try {
            Files.deleteIfExists(file);
        } catch (IOException e) {
            // It was written, which is what matters here; it goes when the program ends.
        }
    }

    private static Problem encrypted(String name, @Nullable Throwable cause) {
        String text = "is encrypted. Save it without a password, or scan to TIFF or PNG.";
        return cause == null ? Problem.input(name, text) : Problem.input(name, text, cause);
    }

    private static List<PdfPage> read(String name, PDPage page) throws Problem, IOException {
        PdfDrawing drawing = PdfDrawing.of(name, page);
        List<PdfDrawing.Drawn> images = drawing.images();
        if (images.isEmpty() && drawing.incomplete()) {
            throw Problem.input(
                    name,
                    "what its page draws is not in the file: it is cut off or damaged. Copy it"
                            + " again, or scan to TIFF or PNG.");
        }
        if (images.isEmpty()) {
            throw drawing.painted()
                    ? Problem.chart(
                            name,
                            "is a drawn page, such as the chart itself, not a scan of its print."
                                    + " Print it, scan the print, and name the scan.")
                    : Problem.input(name, "has no image on its page. Scan to TIFF or PNG.");
        }
        List<PdfImage> dictionaries = new ArrayList<>();
        long rows = 0;
        Set<COSStream> streams = Collections.newSetFromMap(new IdentityHashMap<>());
        boolean strips = images.size() <= MOST_STRIPS;
        for (int i = 0; strips && i < images.size(); i++) {
            PdfImage image = image(name, images, i);
            rows += image.height();
            strips = streams.add(images.get(i).image());
            dictionaries.add(image);
        }
        PdfStack stack = strips ? PdfStack.of(images, dictionaries) : new PdfStack(List.of(), 0, 0);
        if (stack.strips().isEmpty()) {
            throw severalImages(name, images.size());
        }
        ScanFiles.checkSize(name, dictionaries.get(0).width(), rows);
        Optional<ScanInfo.Resolution> resolution =
                resolution(page, stack, dictionaries.get(0).width(), rows);
        List<PdfPage> pages = new ArrayList<>();
        try {
            for (PdfStack.Strip strip : stack.strips()) {
                Path data = PdfImage.extracted(name, strip.drawn().image());
                boolean mirrored = isMirrored(strip.drawn().matrix());
                pages.add(new PdfPage(strip.image(), data, resolution, mirrored));
            }
        } catch (IOException | RuntimeException | Problem e) {
            pages.forEach(done -> delete(done.data));
            throw e;
        }
        return pages;
    }

    /** One of several that is not read is a layer of the page, which no words about it explain. */
    private static PdfImage image(String name, List<PdfDrawing.Drawn> images, int i)
            throws Problem, IOException {
        try {
            return PdfImage.of(name, images.get(i).image());
        } catch (Problem e) {
            throw images.size() > 1 ? severalImages(name, images.size()) : e;
        }
    }

    private static Problem severalImages(String name, int images) {
        return Problem.input(
                name,
                "has "
                        + images
                        + " images on its page that do not make up one; one image of the whole sheet"
                        + " is read. Scan to TIFF or PNG.");
    }

    private static Optional<ScanInfo.Resolution> resolution(
            PDPage page, PdfStack stack, int width, long rows) {
        double unit = page.getUserUnit() / POINTS_PER_INCH;
        double across = stack.acrossPt() * unit;
        double down = stack.downPt() * unit;
        boolean sized = across > 0.1 && down > 0.1 && across < 1000 && down < 1000;
        return sized
                ? Optional.of(new ScanInfo.Resolution(width / across, rows / down))
                : Optional.empty();
    }

    private static boolean isMirrored(Matrix m) {
        return m.getScaleX() * m.getScaleY() - m.getShearX() * m.getShearY() < 0;
    }
}
