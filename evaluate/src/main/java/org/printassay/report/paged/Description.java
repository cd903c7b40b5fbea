package org.printassay.report.paged;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDDocumentCatalog;
import org.apache.pdfbox.pdmodel.common.PDMetadata;
import org.apache.pdfbox.pdmodel.interactive.viewerpreferences.PDViewerPreferences;

/** What a document says about itself: title, language, that it is tagged (ISO 14289-1, 5 and 7). */
final class Description {
    private static final String LANGUAGE = "en-GB";

    private Description() {}

    static void add(PDDocument document, String title, long identity) throws IOException {
        document.getDocumentInformation().setTitle(title);
        document.getDocumentInformation().setProducer("printassay");
        PDDocumentCatalog catalog = document.getDocumentCatalog();
        catalog.setLanguage(LANGUAGE);
        PDViewerPreferences preferences = new PDViewerPreferences(new COSDictionary());
        preferences.setDisplayDocTitle(true);
        catalog.setViewerPreferences(preferences);
        PDMetadata metadata =
                new PDMetadata(
                        document,
                        new ByteArrayInputStream(packet(title).getBytes(StandardCharsets.UTF_8)));
        catalog.setMetadata(metadata);
        document.setDocumentId(identity);
        document.setVersion(1.7f);
    }

    /** Metadata as XMP (ISO 16684-1). */
    private static String packet(String title) {
        return "<?xpacket begin=\"\ufeff\" id=\"W5M0MpCehiHzreSzNTczkc9d\"?>\n"
                + "<x:xmpmeta xmlns:x=\"adobe:ns:meta/\">\n"
                + "<rdf:RDF xmlns:rdf=\"http://www.w3.org/1999/02/22-rdf-syntax-ns#\">\n"
                + "<rdf:Description rdf:about=\"\""
                + " xmlns:dc=\"http://purl.org/dc/elements/1.1/\""
                + " xmlns:pdf=\"http://ns.adobe.com/pdf/1.3/\""
                + " xmlns:pdfuaid=\"http://www.aiim.org/pdfua/ns/id/\">\n"
                + "<dc:format>application/pdf</dc:format>\n"
                + "<dc:language><rdf:Bag><rdf:li>"
                + LANGUAGE
                + "</rdf:li></rdf:Bag></dc:language>\n"
                + "<dc:title><rdf:Alt><rdf:li xml:lang=\"x-default\">"
                + escaped(title)
                + "</rdf:li></rdf:Alt></dc:title>\n"
                + "<pdf:Producer>printassay</pdf:Producer>\n"
                + "<pdfuaid:part>1</pdfuaid:part>\n"
                + "</rdf:Description>\n</rdf:RDF>\n</x:xmpmeta>\n<?xpacket end=\"r\"?>";
    }

    private static String escaped(String text) {
        return text.replace("&", "&amp;")
                .replace("<", "&lt;")
                .replace(">", "&gt;")
                .replaceAll("[\\uFFFE\\uFFFF]", "\ufffd");
    }
}
