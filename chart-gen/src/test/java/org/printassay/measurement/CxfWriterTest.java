package org.printassay.measurement;

import static java.util.Map.entry;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.printassay.colour.Lab;
import org.printassay.colour.Published;
import org.printassay.colour.Rgb8;
import org.printassay.measurement.MeasurementFile.Condition;
import org.printassay.measurement.MeasurementWriter.Row;
import org.printassay.problem.Problem;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.Node;
import org.w3c.dom.NodeList;

class CxfWriterTest {
    private static final String CORE = "http://colorexchangeformat.com/CxF3-core";

    private static final Optional<Condition> NO_MODE = Optional.empty();

    private static final Map<String, List<String>> CONTENTS =
            Map.ofEntries(
                    entry("CxF", List.of("FileInformation", "Resources", "CustomResources")),
                    entry(
                            "FileInformation",
                            List.of("Creator", "CreationDate", "Description", "Comment", "Tag")),
                    entry("Resources", List.of("ObjectCollection", "ColorSpecificationCollection")),
                    entry("ObjectCollection", List.of("Object")),
                    entry("Object", List.of("CreationDate", "ColorValues", "DeviceColorValues")),
                    entry(
                            "ColorValues",
                            List.of("ReflectanceSpectrum", "ColorCIEXYZ", "ColorCIELab")),
                    entry("ColorCIELab", List.of("L", "A", "B")),
                    entry("ColorCIEXYZ", List.of("X", "Y", "Z")),
                    entry("DeviceColorValues", List.of("ColorRGB")),
                    entry("ColorRGB", List.of("MaxRange", "R", "G", "B")),
                    entry("ColorSpecificationCollection", List.of("ColorSpecification")),
                    entry("ColorSpecification", List.of("TristimulusSpec", "MeasurementSpec")),
                    entry("TristimulusSpec", List.of("Illuminant", "Observer", "Method")),
                    entry(
                            "MeasurementSpec",
                            List.of(
                                    "MeasurementType",
                                    "GeometryChoice",
                                    "WavelengthRange",
                                    "Device")),
                    entry("GeometryChoice", List.of("SingleAngle")),
                    entry(
                            "SingleAngle",
                            List.of(
                                    "SingleAngleConfiguration",
                                    "IlluminationAngle",
                                    "MeasurementAngle")),
                    entry(
                            "Device",
                            List.of("DeviceFilter", "DeviceIllumination", "DevicePolarization")));

    /** Read back by a few lines over the JDK's DOM, which share nothing with our reader. */
    @Test
    void otherReadersFindEveryNumber() throws Exception {
        List<MeasuredPatch> patches = sample();
        Document document = dom(write(patches, Optional.of(Condition.M1)));
        NodeList objects = document.getElementsByTagNameNS(CORE, "Object");
        assertEquals(24, objects.getLength());
        for (int i = 0; i < 24; i++) {
            Element object = (Element) objects.item(i);
            MeasuredPatch patch = patches.get(i);
            assertEquals(patch.id(), object.getAttribute("Name"));
            Element lab = only(object, "ColorCIELab");
            assertEquals(patch.lab().l(), number(lab, "L"), 5e-5);
            assertEquals(patch.lab().b(), number(lab, "B"), 5e-5);
            assertEquals(patch.rgb().g(), number(only(object, "ColorRGB"), "G"));
            Element spectrum = only(object, "ReflectanceSpectrum");
            String[] factors = spectrum.getTextContent().strip().split(" ", -1);
            assertEquals(31, factors.length);
            assertEquals(
                    Objects.requireNonNull(patch.spectrum()).factors().get(30),
                    Double.parseDouble(factors[30]),
                    5.01e-7);
            assertEquals("CS1", spectrum.getAttribute("ColorSpecification"));
        }
        Element range = only(document.getDocumentElement(), "WavelengthRange");
        assertEquals("380", range.getAttribute("StartWL"));
        assertEquals("10", range.getAttribute("Increment"));
        assertEquals(
                "M1_Daylight",
                only(document.getDocumentElement(), "DeviceIllumination").getTextContent());
    }

    /** The same elements in the same order as the sample that others made. */
    @Test
    void isBuiltAsTheSampleIs() throws Exception {
        Element own = dom(write(sample(), Optional.empty())).getDocumentElement();
        Element sample =
                dom(new String(Published.bytes("cxf3-sample.cxf"), StandardCharsets.UTF_8))
                        .getDocumentElement();
        assertEquals(names(only(sample, "FileInformation")), names(only(own, "FileInformation")));
        assertEquals(names(only(sample, "Object")), names(only(own, "Object")));
        assertEquals(names(only(sample, "Resources")), names(only(own, "Resources")));
        assertEquals(names(only(sample, "TristimulusSpec")), names(only(own, "TristimulusSpec")));
    }

    /** ISO 13655 allows light at 45 degree, seen at 0, and the reverse; neither was stated. */
    @Test
    void noGeometryIsMadeUp() throws Problem {
        for (Condition mode : Condition.values()) {
            String text = write(sample(), Optional.of(mode));
            assertFalse(text.contains("Geometry") || text.contains("Angle"), mode.name());
            assertTrue(text.contains("DeviceIllumination"), mode.name());
        }
    }

    @Test
    void ourReaderReadsItBack() throws Problem {
        for (Condition mode : Condition.values()) {
            MeasurementFile back =
                    MeasurementReader.read(
                            "a.cxf",
                            write(sample(), Optional.of(mode)).getBytes(StandardCharsets.UTF_8));
            assertEquals(Optional.of(mode), back.condition());
            assertEquals(24, back.patches().size());
        }
    }

    /** Conditions come back as they were, also words for which the format has no element. */
    @Test
    void backingAndFilterComeBack() throws Problem {
        Row row = new Row("A1", new Rgb8(1, 2, 3), new Lab(50, 0, 0), null, null);
        Row other = new Row("A2", new Rgb8(4, 2, 3), new Lab(60, 0, 0), null, null);
        for (Optional<Condition> mode : List.of(Optional.of(Condition.M2), NO_MODE)) {
            for (String filter : new String[] {"none", "uv cut", "red glass"}) {
                Conditions said =
                        new Conditions(mode, Optional.of("black <matt>"), Optional.of(filter));
                String text = CxfWriter.write("x", Instant.EPOCH, said, List.of(row, other));
                byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
                assertEquals(said, MeasurementReader.read("a.cxf", bytes).conditions());
            }
        }
    }

    /**
     * Which elements may stand in which and in what order: where the sample has them as it has
     * them, the rest as the core schema of ISO 17972-1 orders them (from memory; the schema itself
     * is not at hand).
     */
    @Test
    void everyElementStandsInItsPlace() throws Exception {
        List<Row> rows = new ArrayList<>();
        for (MeasuredPatch p : sample()) {
            rows.add(new Row(p.id(), p.rgb(), p.lab(), null, null, p.spectrum()));
        }
        Conditions all =
                new Conditions(
                        Optional.of(Condition.M0), Optional.of("white"), Optional.of("none"));
        for (Conditions conditions : List.of(all, Conditions.UNKNOWN)) {
            String text = CxfWriter.write("x", Instant.EPOCH, conditions, rows);
            assertEquals(List.of(), misplaced(dom(text).getDocumentElement()));
        }
        String sample = new String(Published.bytes("cxf3-sample.cxf"), StandardCharsets.UTF_8);
        assertEquals(List.of(), misplaced(dom(sample).getDocumentElement()));
        String turned = sample.replaceFirst("(<cc:L>.*?</cc:L>)(<cc:A>.*?</cc:A>)", "$2$1");
        assertEquals(List.of("L"), misplaced(dom(turned).getDocumentElement()));
    }

    /** Names of elements that stand where they must not. */
    private static List<String> misplaced(Element element) {
        List<String> wrong = new ArrayList<>();
        List<String> allowed = CONTENTS.getOrDefault(element.getLocalName(), List.of());
        int reached = 0;
        for (Element child : children(element)) {
            int at = allowed.indexOf(child.getLocalName());
            if (at < reached || !CORE.equals(child.getNamespaceURI())) {
                wrong.add(child.getLocalName());
            } else {
                reached = at;
            }
            wrong.addAll(misplaced(child));
        }
        return wrong;
    }

    private static List<Element> children(Element element) {
        List<Element> children = new ArrayList<>();
        for (Node n = element.getFirstChild(); n != null; n = n.getNextSibling()) {
            if (n instanceof Element child) {
                children.add(child);
            }
        }
        return children;
    }

    @Test
    void namesFromOutsideStayText() throws Exception {
        String odd = "<x> & \"y\" \u001b[31m \uD800 \u00e4";
        Row row = new Row(odd, new Rgb8(1, 2, 3), new Lab(50, -0.00001, 0), null, null);
        String text = CxfWriter.write(odd, Instant.EPOCH, Conditions.UNKNOWN, List.of(row));
        Element object = only(dom(text).getDocumentElement(), "Object");
        assertEquals("<x> & \"y\"  [31m   \u00e4", object.getAttribute("Name"));
        assertEquals("0.0000", only(object, "A").getTextContent());
    }

    private static String write(List<MeasuredPatch> patches, Optional<Condition> mode) {
        List<Row> rows = new ArrayList<>();
        for (MeasuredPatch p : patches) {
            rows.add(new Row(p.id(), p.rgb(), p.lab(), null, null, p.spectrum()));
        }
        Conditions conditions = new Conditions(mode, Optional.empty(), Optional.empty());
        return CxfWriter.write(
                "24 patches", Instant.parse("2007-06-14T00:00:00Z"), conditions, rows);
    }

    private static List<MeasuredPatch> sample() throws Problem {
        byte[] bytes = Published.bytes("cgats-rgb-spectral-sample.txt");
        return MeasurementReader.read("a.txt", bytes).patches();
    }

    private static Document dom(String text) throws Exception {
        DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
        factory.setNamespaceAware(true);
        return factory.newDocumentBuilder()
                .parse(new ByteArrayInputStream(text.getBytes(StandardCharsets.UTF_8)));
    }

    private static Element only(Element within, String name) {
        return (Element) within.getElementsByTagNameNS(CORE, name).item(0);
    }

    private static double number(Element within, String name) {
        return Double.parseDouble(only(within, name).getTextContent());
    }

    private static List<String> names(Element element) {
        List<String> names = new ArrayList<>();
        NodeList all = element.getElementsByTagNameNS(CORE, "*");
        for (int i = 0; i < all.getLength(); i++) {
            if (all.item(i).getParentNode() == element) {
                names.add(all.item(i).getLocalName());
            }
        }
        return names;
    }
}
