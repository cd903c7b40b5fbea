package org.printassay.scan;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Optional;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.contentstream.operator.Operator;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.cos.COSNumber;
import org.apache.pdfbox.cos.COSStream;
import org.apache.pdfbox.io.IOUtils;
import org.apache.pdfbox.pdfparser.PDFStreamParser;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.encryption.InvalidPasswordException;
import org.apache.pdfbox.util.Matrix;
import org.jspecify.annotations.Nullable;
import org.printassay.problem.Problem;

/**
 * The one page of a scanned PDF (ISO 32000-1): its image and how that is drawn. Only drawing of
 * images is followed; text under a scan, as recognition leaves it, is passed over.
 *
 * @param image what its dictionary tells
 * @param data the image's coded data, in a file that goes with the program
 * @param resolution samples an inch as drawn
 * @param mirrored whether it is drawn mirrored
 */
record PdfPage(
        PdfImage image, Path data, Optional<ScanInfo.Resolution> resolution, boolean mirrored) {
    private static final int LARGEST_CONTENT = 4 << 20;
    private static final int MOST_TOKENS = 200_000;
    private static final int DEEPEST = 64;
    private static final double POINTS_PER_INCH = 72;

    /** A drawn image and the matrix from its unit square to the page. */
    private record Drawn(COSStream image, Matrix matrix) {}

    static PdfPage read(Path file, String name) throws Problem {
        try (PDDocument document =
                Loader.loadPDF(file.toFile(), IOUtils.createTempFileOnlyStreamCache())) {
            if (document.isEncrypted()) {
                throw encrypted(name, null);
            }
            int pages = document.getNumberOfPages();
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
        } catch (IOException | RuntimeException | StackOverflowError e) {
            throw Problem.input(
                    name, "the PDF is damaged. Copy it again, or scan to TIFF or PNG.", e);
        } catch (OutOfMemoryError e) {
            throw Problem.input(
                    name, "the PDF unpacks to more than any scan. Scan to TIFF or PNG.", e);
        }
    }

    private static Problem encrypted(String name, @Nullable Throwable cause) {
        String text = "is encrypted. Save it without a password, or scan to TIFF or PNG.";
        return cause == null ? Problem.input(name, text) : Problem.input(name, text, cause);
    }

    private static PdfPage read(String name, PDPage page) throws Problem, IOException {
        List<Drawn> images = new ArrayList<>();
        boolean painted = drawn(name, page, images);
        if (images.isEmpty()) {
            throw painted
                    ? Problem.chart(
                            name,
                            "is a drawn page, such as the chart itself, not a scan of its print."
                                    + " Print it, scan the print, and name the scan.")
                    : Problem.input(name, "has no image on its page. Scan to TIFF or PNG.");
        }
        if (images.size() > 1) {
            throw Problem.input(
                    name,
                    "has "
                            + images.size()
                            + " images on its page; one image of the whole sheet is read. Scan to"
                            + " TIFF or PNG.");
        }
        Drawn only = images.get(0);
        PdfImage image = PdfImage.of(name, only.image);
        Matrix m = only.matrix;
        double unit = page.getUserUnit() / POINTS_PER_INCH;
        double across = Math.hypot(m.getScaleX(), m.getShearY()) * unit;
        double down = Math.hypot(m.getShearX(), m.getScaleY()) * unit;
        boolean sized = across > 0.1 && down > 0.1 && across < 1000 && down < 1000;
        double turn = m.getScaleX() * m.getScaleY() - m.getShearX() * m.getShearY();
        return new PdfPage(
                image,
                PdfImage.extracted(only.image),
                sized
                        ? Optional.of(
                                new ScanInfo.Resolution(
                                        image.width() / across, image.height() / down))
                        : Optional.empty(),
                turn < 0);
    }

    /** Follows the page's content; whether it paints anything but images and text. */
    private static boolean drawn(String name, PDPage page, List<Drawn> images)
            throws Problem, IOException {
        COSDictionary resources =
                page.getResources() == null
                        ? new COSDictionary()
                        : page.getResources().getCOSObject();
        COSDictionary objects = resources.getCOSDictionary(COSName.XOBJECT);
        PDFStreamParser parser = new PDFStreamParser(content(name, page));
        Deque<Matrix> saved = new ArrayDeque<>();
        Matrix matrix = new Matrix();
        List<COSBase> operands = new ArrayList<>();
        boolean painted = false;
        for (int tokens = 0; ; tokens++) {
            Object token = parser.parseNextToken();
            if (token == null) {
                return painted;
            }
            if (tokens > MOST_TOKENS || saved.size() > DEEPEST) {
                return true;
            }
            if (!(token instanceof Operator operator)) {
                operands.add((COSBase) token);
                continue;
            }
            switch (operator.getName()) {
                case "q" -> saved.push(matrix.clone());
                case "Q" -> matrix = saved.isEmpty() ? matrix : saved.pop();
                case "cm" -> matrix = matrix(operands).multiply(matrix);
                case "Do" -> {
                    COSStream object = object(objects, operands);
                    if (object != null
                            && COSName.IMAGE.equals(object.getCOSName(COSName.SUBTYPE))) {
                        images.add(new Drawn(object, matrix.clone()));
                    } else {
                        painted = true;
                    }
                }
                case "BI" ->
                        throw Problem.input(
                                name, "has its image inside the page text. Scan to TIFF or PNG.");
                case "f", "F", "f*", "S", "s", "B", "b", "B*", "b*", "sh" -> painted = true;
                default -> {
                    // State, text and clipping do not move the image.
                }
            }
            operands.clear();
        }
    }

    private static @Nullable COSStream object(
            @Nullable COSDictionary objects, List<COSBase> operands) {
        return objects != null
                        && !operands.isEmpty()
                        && operands.get(0) instanceof COSName key
                        && objects.getDictionaryObject(key) instanceof COSStream stream
                ? stream
                : null;
    }

    private static Matrix matrix(List<COSBase> operands) throws IOException {
        float[] values = new float[6];
        if (operands.size() != values.length) {
            throw new IOException("a matrix without six numbers");
        }
        for (int i = 0; i < values.length; i++) {
            if (!(operands.get(i) instanceof COSNumber number)) {
                throw new IOException("a matrix without six numbers");
            }
            values[i] = number.floatValue();
        }
        return new Matrix(values[0], values[1], values[2], values[3], values[4], values[5]);
    }

    private static byte[] content(String name, PDPage page) throws Problem, IOException {
        COSBase contents = page.getCOSObject().getDictionaryObject(COSName.CONTENTS);
        List<COSStream> streams = new ArrayList<>();
        if (contents instanceof COSStream one) {
            streams.add(one);
        } else if (contents instanceof COSArray several) {
            for (int i = 0; i < several.size(); i++) {
                if (several.getObject(i) instanceof COSStream one) {
                    streams.add(one);
                }
            }
        }
        ByteArrayOutputStream all = new ByteArrayOutputStream();
        for (COSStream stream : streams) {
            Optional<byte[]> bytes = PdfImage.decoded(stream, LARGEST_CONTENT - all.size());
            if (bytes.isEmpty()) {
                throw Problem.input(
                        name,
                        "the page's content is longer, or coded otherwise, than that of a scan."
                                + " Scan to TIFF or PNG.");
            }
            all.writeBytes(bytes.get());
            all.write('\n');
        }
        return all.toByteArray();
    }
}
