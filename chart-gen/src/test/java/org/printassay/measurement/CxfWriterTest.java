package org.printassay.measurement;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
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
import org.w3c.dom.NodeList;

class CxfWriterTest {
    private static final String CORE = "http://colorexchangeformat.com/CxF3-core";

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

    @Test
    void namesFromOutsideStayText() throws Exception {
        String odd = "<x> & \"y\" \u001b[31m \uD800 \u00e4";
        Row row = new Row(odd, new Rgb8(1, 2, 3), new Lab(50, -0.00001, 0), null, null);
        String text = CxfWriter.write(odd, Instant.EPOCH, Optional.empty(), List.of(row));
        Element object = only(dom(text).getDocumentElement(), "Object");
        assertEquals("<x> & \"y\"  [31m   \u00e4", object.getAttribute("Name"));
        assertEquals("0.0000", only(object, "A").getTextContent());
    }

    private static String write(List<MeasuredPatch> patches, Optional<Condition> mode) {
        List<Row> rows = new ArrayList<>();
        for (MeasuredPatch p : patches) {
            rows.add(new Row(p.id(), p.rgb(), p.lab(), null, null, p.spectrum()));
        }
        return CxfWriter.write("24 patches", Instant.parse("2007-06-14T00:00:00Z"), mode, rows);
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
