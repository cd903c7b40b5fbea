package org.printassay.measurement;

import java.io.StringReader;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Deque;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import javax.xml.stream.XMLInputFactory;
import javax.xml.stream.XMLStreamConstants;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamReader;
import org.jspecify.annotations.Nullable;
import org.printassay.problem.Problem;

/**
 * The bare contents of a CxF3 file (ISO 17972-1): objects with their values, specifications. Names
 * count without their namespace prefix. Document types, and with them entities of any kind, are
 * refused: CxF3 needs none.
 */
final class CxfParser {
    private static final int MAX_OBJECTS = 200_000;
    private static final int MAX_VALUES = 2000;
    private static final int MAX_DEPTH = 60;
    private static final int MAX_TEXT = 100_000;

    private static final Set<String> VALUES =
            Set.of("ReflectanceSpectrum", "ColorCIELab", "ColorCIEXYZ", "ColorRGB");

    private static final Set<String> COMPONENTS =
            Set.of("L", "A", "B", "X", "Y", "Z", "R", "G", "MaxRange");

    private static final Set<String> SAID =
            Set.of(
                    "Illuminant",
                    "Observer",
                    "DeviceIllumination",
                    "DeviceFilter",
                    "DevicePolarization",
                    "Backing",
                    "MeasurementType");

    private final String name;
    private final XMLStreamReader in;
    private final CxfContent content = new CxfContent();
    private final Set<String> ids = new HashSet<>();
    private final Deque<String> path = new ArrayDeque<>();
    private final StringBuilder text = new StringBuilder();
    private CxfContent.@Nullable Item item;
    private CxfContent.@Nullable Value value;
    private CxfContent.@Nullable Spec spec;

    private CxfParser(String name, XMLStreamReader in) {
        this.name = name;
        this.in = in;
    }

    /**
     * Takes a text apart. It is text already, because the JDK's decoder writes about bad bytes to
     * the terminal.
     */
    static CxfContent parse(String name, String xml) throws Problem {
        XMLInputFactory factory = XMLInputFactory.newDefaultFactory();
        factory.setProperty(XMLInputFactory.SUPPORT_DTD, false);
        factory.setProperty(XMLInputFactory.IS_SUPPORTING_EXTERNAL_ENTITIES, false);
        factory.setXMLReporter((message, kind, about, place) -> {});
        try {
            XMLStreamReader in = factory.createXMLStreamReader(new StringReader(xml));
            try {
                return new CxfParser(name, in).read();
            } finally {
                in.close();
            }
        } catch (XMLStreamException e) {
            int line = e.getLocation() == null ? 0 : e.getLocation().getLineNumber();
            throw Problem.input(
                    name + (line > 0 ? ", line " + line : ""),
                    "is not well-formed XML. Export it again.",
                    e);
        }
    }

    private CxfContent read() throws XMLStreamException, Problem {
        while (in.hasNext()) {
            switch (in.next()) {
                case XMLStreamConstants.DTD, XMLStreamConstants.ENTITY_REFERENCE ->
                        throw problem(
                                "has a document type or entities, which CxF3 does not need and"
                                        + " which are not read. Remove them.");
                case XMLStreamConstants.START_ELEMENT -> start(in.getLocalName());
                case XMLStreamConstants.END_ELEMENT -> end(in.getLocalName());
                case XMLStreamConstants.CHARACTERS, XMLStreamConstants.CDATA -> {
                    text.append(in.getTextCharacters(), in.getTextStart(), in.getTextLength());
                    if (text.length() > MAX_TEXT) {
                        throw problem("an element holds too much text to be a measurement.");
                    }
                }
                default -> {}
            }
        }
        return content;
    }

    private void start(String element) throws Problem {
        if (path.isEmpty() && !element.equals("CxF")) {
            throw problem("is XML, but not CxF3: its root is not CxF.");
        }
        if (path.size() >= MAX_DEPTH) {
            throw problem("elements are nested too deep for CxF3.");
        }
        path.push(element);
        text.setLength(0);
        if (element.equals("Object")) {
            item = new CxfContent.Item(attribute("Id"), attribute("Name"), type(), line());
            if (!item.id.isEmpty() && !ids.add(item.id)) {
                throw problem(
                        "object Id '"
                                + CxfContent.clean(item.id)
                                + "' stands twice. Give every object its own.");
            }
            if (content.items.size() >= MAX_OBJECTS) {
                throw problem("more than " + MAX_OBJECTS + " objects.");
            }
            content.items.add(item);
        } else if (element.equals("ColorSpecification")) {
            spec = new CxfContent.Spec(attribute("Id"));
            content.specs.put(spec.id, spec);
        } else if (element.equals("WavelengthRange") && spec != null) {
            spec.startNm = attribute("StartWL");
            spec.stepNm = attribute("Increment");
        } else if (element.equals("Tag") && item == null) {
            content.tags.putIfAbsent(attribute("Name"), attribute("Value"));
        } else if (VALUES.contains(element) && item != null) {
            value =
                    new CxfContent.Value(
                            element, attribute("ColorSpecification"), attribute("StartWL"), line());
            item.values.add(value);
        }
    }

    private void end(String element) throws Problem {
        path.pop();
        String said = text.toString().strip();
        text.setLength(0);
        if (element.equals("Object")) {
            item = null;
        } else if (element.equals("ColorSpecification")) {
            spec = null;
        } else if (spec != null && SAID.contains(element)) {
            spec.said.put(element, CxfContent.clean(said));
        } else if (item == null && element.equals("Creator")) {
            content.creator = CxfContent.clean(said);
        } else if (item == null && element.equals("Description")) {
            content.description = CxfContent.clean(said);
        } else if (value != null) {
            if (element.equals("ReflectanceSpectrum")) {
                value.numbers.addAll(numbers(said));
            } else if (COMPONENTS.contains(element)) {
                value.parts.put(element, number(said));
            }
            if (VALUES.contains(element)) {
                value = null;
            }
        }
    }

    private List<Double> numbers(String text) throws Problem {
        if (text.isEmpty()) {
            throw problem("a spectrum is empty. Measure this patch again.");
        }
        String[] words = text.split("\\s+");
        if (words.length > MAX_VALUES) {
            throw problem("a spectrum has more than " + MAX_VALUES + " values.");
        }
        List<Double> numbers = new ArrayList<>();
        for (String word : Arrays.asList(words)) {
            numbers.add(number(word));
        }
        return numbers;
    }

    private double number(String word) throws Problem {
        if (word.length() > 40 || !PatchReader.NUMBER.matcher(word).matches()) {
            throw problem(
                    "'"
                            + CxfContent.clean(word)
                            + "' is not a number. Correct it or measure again.");
        }
        double number = Double.parseDouble(word.replace(',', '.'));
        if (Math.abs(number) > 1e6) {
            throw problem(
                    "'" + CxfContent.clean(word) + "' is out of any sensible range. Correct it.");
        }
        return number;
    }

    private String type() {
        return attribute("ObjectType").toUpperCase(Locale.ROOT);
    }

    private String attribute(String wanted) {
        for (int i = 0; i < in.getAttributeCount(); i++) {
            if (in.getAttributeLocalName(i).equals(wanted)) {
                return in.getAttributeValue(i).strip();
            }
        }
        return "";
    }

    private int line() {
        return in.getLocation().getLineNumber();
    }

    private Problem problem(String what) {
        return Problem.input(name + ", line " + line(), what);
    }
}
