package org.printassay.report.paged;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSFloat;
import org.apache.pdfbox.cos.COSInteger;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDDocumentCatalog;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDMarkInfo;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureElement;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureTreeRoot;

/**
 * What the parts of a document are and in which order they are read (ISO 32000-1, 14.7 and 14.8).
 * Elements are opened and closed; tagged content belongs to the innermost open one.
 */
final class Structure {
    private static final COSName OWNER = COSName.getPDFName("O");
    private static final COSName NUMBERS = COSName.getPDFName("Nums");

    private final PDStructureTreeRoot root = new PDStructureTreeRoot();
    private final Deque<PDStructureElement> open = new ArrayDeque<>();

    Structure() {
        PDStructureElement document = new PDStructureElement("Document", root);
        root.appendKid(document);
        open.push(document);
    }

    /** Opens an element within the innermost one. */
    void open(String type) {
        PDStructureElement parent = open.element();
        PDStructureElement element = new PDStructureElement(type, parent);
        parent.appendKid(element);
        open.push(element);
    }

    /** Closes the innermost element. */
    void close() {
        open.pop();
    }

    /** Says which cells a cell of headings is for: {@code Row} or {@code Column}. */
    void scope(String scope) {
        attribute("Table", "Scope", COSName.getPDFName(scope));
    }

    /** Says how the items of a list are numbered: {@code Decimal}, {@code Disc} or {@code None}. */
    void numbering(String kind) {
        attribute("List", "ListNumbering", COSName.getPDFName(kind));
    }

    /** Says in words what a figure shows, and where it stands on its page (points, y upwards). */
    void figure(String words, double left, double bottom, double right, double top) {
        open.element().setAlternateDescription(words);
        COSArray box = new COSArray();
        for (double side : new double[] {left, bottom, right, top}) {
            box.add(new COSFloat((float) side));
        }
        attribute("Layout", "BBox", box);
    }

    private void attribute(String owner, String name, COSBase value) {
        COSDictionary attribute = new COSDictionary();
        attribute.setName(OWNER, owner);
        attribute.setItem(COSName.getPDFName(name), value);
        open.element().getCOSObject().setItem(COSName.A, attribute);
    }

    /** Begins content of the innermost element; {@link Canvas#end} ends it. */
    void begin(Canvas canvas) {
        PDStructureElement element = open.element();
        int number = canvas.elements().size();
        canvas.elements().add(element.getCOSObject());
        if (element.getPage() == null) {
            element.setPage(canvas.page());
        }
        COSDictionary kid = new COSDictionary();
        kid.setName(COSName.TYPE, "MCR");
        kid.setItem(COSName.PG, canvas.page());
        kid.setInt(COSName.MCID, number);
        boolean here = canvas.page().getCOSObject() == element.getCOSObject().getItem(COSName.PG);
        add(element.getCOSObject(), here ? COSInteger.get(number) : kid);
        canvas.beginTagged(element.getStructureType(), number);
    }

    private static void add(COSDictionary element, COSBase kid) {
        COSBase kids = element.getDictionaryObject(COSName.K);
        if (kids instanceof COSArray array) {
            array.add(kid);
        } else {
            COSArray array = new COSArray();
            if (kids != null) {
                array.add(kids);
            }
            array.add(kid);
            element.setItem(COSName.K, array);
        }
    }

    /** Puts everything into the document, whose pages are complete. */
    void finish(PDDocument document, List<Canvas> pages) {
        COSArray numbers = new COSArray();
        for (Canvas canvas : pages) {
            canvas.page().setStructParents(canvas.index());
            numbers.add(COSInteger.get(canvas.index()));
            numbers.add(canvas.elements());
        }
        COSDictionary tree = new COSDictionary();
        tree.setItem(NUMBERS, numbers);
        root.getCOSObject().setItem(COSName.PARENT_TREE, tree);
        root.setParentTreeNextKey(pages.size());
        PDDocumentCatalog catalog = document.getDocumentCatalog();
        catalog.setStructureTreeRoot(root);
        PDMarkInfo marked = new PDMarkInfo();
        marked.setMarked(true);
        catalog.setMarkInfo(marked);
    }
}
