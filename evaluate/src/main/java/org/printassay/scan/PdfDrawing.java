package org.printassay.scan;

import java.awt.geom.Point2D;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Optional;
import org.apache.pdfbox.contentstream.operator.Operator;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.cos.COSNumber;
import org.apache.pdfbox.cos.COSStream;
import org.apache.pdfbox.pdfparser.PDFStreamParser;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.util.Matrix;
import org.jspecify.annotations.Nullable;
import org.printassay.problem.Problem;

/**
 * What a page of a PDF draws (ISO 32000-1, 8.10 for forms). Only drawing of images is followed;
 * text under a scan, as recognition leaves it, is passed over.
 */
final class PdfDrawing {
    private static final int LARGEST_CONTENT = 4 << 20;
    private static final int MOST_TOKENS = 200_000;
    private static final int DEEPEST = 64;

    /** Forms in forms; scanning programs make one or two. */
    private static final int DEEPEST_FORM = 8;

    private static final int MOST_FORMS = 64;

    /** A drawn image and the matrix from its unit square to the page. */
    record Drawn(COSStream image, Matrix matrix) {
        /** Corner of the image; x runs right, y up. */
        Point2D corner(int x, int y) {
            return matrix.transformPoint(x, y);
        }
    }

    private final String name;
    private final List<Drawn> images = new ArrayList<>();
    private boolean painted;
    private boolean incomplete;
    private int tokens;
    private int forms;
    private int left = LARGEST_CONTENT;

    private PdfDrawing(String name) {
        this.name = name;
    }

    /** Follows the page's content. */
    static PdfDrawing of(String name, PDPage page) throws Problem, IOException {
        PdfDrawing drawing = new PdfDrawing(name);
        COSDictionary resources =
                page.getResources() == null
                        ? new COSDictionary()
                        : page.getResources().getCOSObject();
        drawing.follow(drawing.content(page), resources, new Matrix(), 0);
        return drawing;
    }

    /** Every image, in the order of drawing. */
    List<Drawn> images() {
        return images;
    }

    /** Whether anything is painted but images and text. */
    boolean painted() {
        return painted;
    }

    /** Whether something that is drawn is missing from the file. */
    boolean incomplete() {
        return incomplete;
    }

    private void follow(byte[] content, COSDictionary resources, Matrix start, int depth)
            throws Problem, IOException {
        COSDictionary objects = resources.getCOSDictionary(COSName.XOBJECT);
        PDFStreamParser parser = new PDFStreamParser(content);
        Deque<Matrix> saved = new ArrayDeque<>();
        Matrix matrix = start.clone();
        List<COSBase> operands = new ArrayList<>();
        Object token = parser.parseNextToken();
        for (; token != null; token = parser.parseNextToken()) {
            if (++tokens > MOST_TOKENS || saved.size() > DEEPEST) {
                painted = true;
                return;
            }
            if (!(token instanceof Operator operator)) {
                operands.add((COSBase) token);
                continue;
            }
            switch (operator.getName()) {
                case "q" -> saved.push(matrix.clone());
                case "Q" -> matrix = saved.isEmpty() ? matrix : saved.pop();
                case "cm" -> matrix = matrix(operands).multiply(matrix);
                case "Do" -> draw(object(objects, operands), resources, matrix, depth);
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

    private void draw(@Nullable COSStream object, COSDictionary resources, Matrix matrix, int depth)
            throws Problem, IOException {
        if (object == null) {
            incomplete = true;
        } else if (COSName.IMAGE.equals(object.getCOSName(COSName.SUBTYPE))) {
            images.add(new Drawn(object, matrix.clone()));
        } else if (!COSName.FORM.equals(object.getCOSName(COSName.SUBTYPE))) {
            painted = true;
        } else if (depth >= DEEPEST_FORM || ++forms > MOST_FORMS) {
            throw Problem.input(
                    name,
                    "draws its page from more forms than that of a scan has. Scan to TIFF or PNG.");
        } else {
            form(object, resources, matrix, depth);
        }
    }

    private void form(COSStream form, COSDictionary outer, Matrix matrix, int depth)
            throws Problem, IOException {
        COSDictionary own = form.getCOSDictionary(COSName.RESOURCES);
        COSArray moved = form.getCOSArray(COSName.MATRIX);
        List<COSBase> numbers = new ArrayList<>();
        for (int i = 0; moved != null && i < moved.size(); i++) {
            numbers.add(moved.getObject(i));
        }
        ByteArrayOutputStream content = new ByteArrayOutputStream();
        decode(form, content);
        follow(
                content.toByteArray(),
                own == null ? outer : own,
                moved == null ? matrix : matrix(numbers).multiply(matrix),
                depth + 1);
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

    private byte[] content(PDPage page) throws Problem, IOException {
        COSBase contents = page.getCOSObject().getDictionaryObject(COSName.CONTENTS);
        List<COSBase> parts = new ArrayList<>();
        if (contents instanceof COSArray several) {
            for (int i = 0; i < several.size(); i++) {
                parts.add(several.getObject(i));
            }
        } else if (page.getCOSObject().containsKey(COSName.CONTENTS)) {
            parts.add(contents);
        }
        ByteArrayOutputStream all = new ByteArrayOutputStream();
        for (COSBase part : parts) {
            if (part instanceof COSStream stream) {
                decode(stream, all);
            } else {
                incomplete = true;
            }
        }
        return all.toByteArray();
    }

    private void decode(COSStream stream, ByteArrayOutputStream to) throws Problem, IOException {
        Optional<byte[]> bytes = PdfImage.decoded(stream, left);
        if (bytes.isEmpty()) {
            throw Problem.input(
                    name,
                    "the page's content is longer, or coded otherwise, than that of a scan. Scan to"
                            + " TIFF or PNG.");
        }
        left -= bytes.get().length;
        to.writeBytes(bytes.get());
        to.write('\n');
    }
}
