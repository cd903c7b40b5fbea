package org.printassay.pdf;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.util.GregorianCalendar;
import java.util.Objects;
import java.util.TimeZone;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSInteger;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.cos.COSStream;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDDocumentInformation;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDResources;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.common.PDStream;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.font.PDType0Font;
import org.apache.pdfbox.pdmodel.graphics.color.PDICCBased;
import org.apache.pdfbox.pdmodel.graphics.color.PDOutputIntent;
import org.apache.pdfbox.pdmodel.interactive.viewerpreferences.PDViewerPreferences;
import org.printassay.chart.Chart;
import org.printassay.colour.icc.RgbProfiles;
import org.printassay.sheet.Sheet;

/**
 * A chart as PDF: one page a sheet, every colour a code of one ICC-based RGB space whose profile is
 * embedded, no transparency, no scaling asked of the viewer. The same chart gives the same bytes.
 */
public final class ChartPdf {
    /** Name of the colour space in every page's resources. */
    static final COSName SPACE = COSName.getPDFName("Chart");

    /** Name of the font in every page's resources. */
    static final COSName FONT = COSName.getPDFName("Text");

    private static final float POINTS_PER_MM = 72 / 25.4f;
    private static final String TYPEFACE =
            "/org/apache/pdfbox/resources/ttf/LiberationSans-Regular.ttf";

    private ChartPdf() {}

    /** Writes a chart; the stream is left open. */
    public static void write(Chart chart, OutputStream out) throws IOException {
        try (PDDocument document = new PDDocument()) {
            byte[] profile = RgbProfiles.of(chart.space());
            PDICCBased space = space(document, profile);
            PDFont font = font(document);
            for (Sheet sheet : chart.sheets()) {
                PDPage page =
                        new PDPage(
                                new PDRectangle(
                                        (float) sheet.page().width() * POINTS_PER_MM,
                                        (float) sheet.page().height() * POINTS_PER_MM));
                PDResources resources = new PDResources();
                resources.put(SPACE, space);
                resources.put(FONT, font);
                page.setResources(resources);
                SheetDrawing drawing = new SheetDrawing(sheet, font, space, resources);
                page.setContents(
                        new PDStream(
                                document,
                                new ByteArrayInputStream(drawing.bytes()),
                                COSName.FLATE_DECODE));
                document.addPage(page);
            }
            font.subset();
            describe(document, chart, profile);
            document.save(out);
        }
    }

    private static PDICCBased space(PDDocument document, byte[] profile) throws IOException {
        COSStream stream = document.getDocument().createCOSStream();
        try (OutputStream bytes = stream.createOutputStream(COSName.FLATE_DECODE)) {
            bytes.write(profile);
        }
        stream.setItem(COSName.N, COSInteger.THREE);
        stream.setItem(COSName.ALTERNATE, COSName.DEVICERGB);
        COSArray array = new COSArray();
        array.add(COSName.ICCBASED);
        array.add(stream);
        return PDICCBased.create(array, null);
    }

    private static PDFont font(PDDocument document) throws IOException {
        try (InputStream typeface =
                Objects.requireNonNull(PDDocument.class.getResourceAsStream(TYPEFACE))) {
            return PDType0Font.load(document, typeface, true);
        }
    }

    private static void describe(PDDocument document, Chart chart, byte[] profile)
            throws IOException {
        GregorianCalendar fixed = new GregorianCalendar(TimeZone.getTimeZone("UTC"));
        fixed.setTimeInMillis(0);
        fixed.set(2026, 0, 1);
        PDDocumentInformation about = document.getDocumentInformation();
        about.setTitle(chart.recipe().title() + ", chart " + chart.id());
        about.setProducer("printassay");
        about.setCreationDate(fixed);
        about.setModificationDate(fixed);
        PDOutputIntent intent = new PDOutputIntent(document, new ByteArrayInputStream(profile));
        intent.setOutputConditionIdentifier(chart.space().title());
        intent.setInfo(chart.space().title());
        document.getDocumentCatalog().addOutputIntent(intent);
        PDViewerPreferences preferences = new PDViewerPreferences(new COSDictionary());
        preferences.setPrintScaling(PDViewerPreferences.PRINT_SCALING.None);
        document.getDocumentCatalog().setViewerPreferences(preferences);
        document.setDocumentId(1L);
        document.setVersion(1.7f);
    }
}
