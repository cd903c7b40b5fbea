package org.printassay.measurement;

import java.io.StringWriter;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import javax.xml.stream.XMLOutputFactory;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamWriter;
import org.jspecify.annotations.Nullable;
import org.printassay.colour.Lab;
import org.printassay.colour.Rgb8;
import org.printassay.colour.Spectrum;
import org.printassay.colour.Xyz;
import org.printassay.measurement.MeasurementFile.Condition;

/**
 * Writes CxF3 (ISO 17972-1): one object a patch, with spectrum, CIELAB and the codes that were
 * printed. Same input, same text.
 */
public final class CxfWriter {
    /** Who made a file, as it says itself. */
    public static final String CREATOR = "printassay";

    private static final String CORE = "http://colorexchangeformat.com/CxF3-core";
    private static final String COLOUR = "CS1";
    private static final String CODES = "CS2";

    private final XMLStreamWriter out;

    private CxfWriter(XMLStreamWriter out) {
        this.out = out;
    }

    /**
     * The text of a file.
     *
     * @param description what was measured, for people
     * @param created when it was measured
     * @param conditions measurement condition, backing and filter, where known
     * @param rows patches; each has a spectrum, XYZ or CIELAB, spectra all of the same wavelengths
     */
    public static String write(
            String description,
            Instant created,
            Conditions conditions,
            List<MeasurementWriter.Row> rows) {
        StringWriter text = new StringWriter();
        try {
            XMLStreamWriter xml = XMLOutputFactory.newDefaultFactory().createXMLStreamWriter(text);
            new CxfWriter(xml).file(description, created, conditions, rows);
            xml.close();
        } catch (XMLStreamException e) {
            throw new IllegalStateException("writing to memory", e);
        }
        return text.append('\n').toString();
    }

    private void file(
            String description,
            Instant created,
            Conditions conditions,
            List<MeasurementWriter.Row> rows)
            throws XMLStreamException {
        String date = created.truncatedTo(ChronoUnit.SECONDS).toString();
        out.writeStartDocument("UTF-8", "1.0");
        out.writeCharacters("\n");
        out.writeStartElement("cc", "CxF", CORE);
        out.writeNamespace("cc", CORE);
        start("FileInformation");
        element("Creator", CREATOR);
        element("CreationDate", date);
        element("Description", clean(description));
        tag(CxfContent.BACKING, conditions.backing());
        tag(CxfContent.FILTER, conditions.filter());
        end();
        start("Resources");
        start("ObjectCollection");
        Spectrum grid = rows.isEmpty() ? null : rows.get(0).spectrum();
        for (int i = 0; i < rows.size(); i++) {
            object(rows.get(i), "o" + (i + 1), date, grid);
        }
        end();
        start("ColorSpecificationCollection");
        specification(conditions, grid);
        start("ColorSpecification");
        out.writeAttribute("Id", CODES);
        end();
        end();
        end();
        end();
        out.writeEndDocument();
    }

    private void object(MeasurementWriter.Row row, String id, String date, @Nullable Spectrum grid)
            throws XMLStreamException {
        Spectrum spectrum = row.spectrum();
        if ((spectrum == null) != (grid == null)
                || (spectrum != null
                        && grid != null
                        && !MeasurementWriter.sameGrid(grid, spectrum))) {
            throw new IllegalArgumentException("spectra of different wavelengths");
        }
        start("Object");
        out.writeAttribute("ObjectType", "Target");
        out.writeAttribute("Name", clean(row.id()));
        out.writeAttribute("Id", id);
        element("CreationDate", date);
        start("ColorValues");
        if (spectrum != null) {
            start("ReflectanceSpectrum");
            out.writeAttribute("ColorSpecification", COLOUR);
            out.writeAttribute("StartWL", String.valueOf(spectrum.startNm()));
            out.writeCharacters(
                    spectrum.factors().stream()
                            .map(factor -> String.format(Locale.ROOT, "%.6f", factor))
                            .collect(Collectors.joining(" ")));
            end();
        }
        Xyz xyz = row.xyz();
        if (xyz != null) {
            values("ColorCIEXYZ", "X", xyz.x(), "Y", xyz.y(), "Z", xyz.z());
        }
        Lab lab = row.lab();
        if (lab != null) {
            values("ColorCIELab", "L", lab.l(), "A", lab.a(), "B", lab.b());
        }
        end();
        start("DeviceColorValues");
        Rgb8 rgb = row.rgb();
        start("ColorRGB");
        out.writeAttribute("ColorSpecification", CODES);
        element("R", String.valueOf(rgb.r()));
        element("G", String.valueOf(rgb.g()));
        element("B", String.valueOf(rgb.b()));
        end();
        end();
        end();
    }

    private void values(
            String kind, String x, double one, String y, double two, String z, double three)
            throws XMLStreamException {
        start(kind);
        out.writeAttribute("ColorSpecification", COLOUR);
        element(x, number(one));
        element(y, number(two));
        element(z, number(three));
        end();
    }

    private void specification(Conditions conditions, @Nullable Spectrum grid)
            throws XMLStreamException {
        start("ColorSpecification");
        out.writeAttribute("Id", COLOUR);
        start("TristimulusSpec");
        element("Illuminant", "D50");
        element("Observer", "2_Degree");
        if (grid != null) {
            element("Method", "E308_Table5");
        }
        end();
        if (grid != null || conditions.mode().isPresent() || deviceFilter(conditions).isPresent()) {
            measurement(conditions, grid);
        }
        end();
    }

    private void measurement(Conditions conditions, @Nullable Spectrum grid)
            throws XMLStreamException {
        Optional<Condition> mode = conditions.mode();
        Optional<String> filter = deviceFilter(conditions);
        start("MeasurementSpec");
        element(
                "MeasurementType",
                grid == null ? "Colorimetric_Reflectance" : "Spectrum_Reflectance");
        // No geometry: ISO 13655 allows several, and the readings do not say which was used.
        if (grid != null) {
            start("WavelengthRange");
            out.writeAttribute("StartWL", String.valueOf(grid.startNm()));
            out.writeAttribute("Increment", String.valueOf(grid.stepNm()));
            end();
        }
        if (mode.isPresent() || filter.isPresent()) {
            start("Device");
            if (filter.isPresent()) {
                element("DeviceFilter", filter.get());
            }
            if (mode.isPresent()) {
                element("DeviceIllumination", illumination(mode.get()));
                element("DevicePolarization", String.valueOf(mode.get() == Condition.M3));
            }
            end();
        }
        end();
    }

    /** The format's words for the conditions of ISO 13655 (from memory). */
    private static String illumination(Condition mode) {
        return switch (mode) {
            case M0 -> "M0_Incandescent";
            case M1 -> "M1_Daylight";
            case M2 -> "M2_UVExcluded";
            case M3 -> "M3_Polarized";
        };
    }

    /** The format's word for a filter (from memory), where it has one. */
    private static Optional<String> deviceFilter(Conditions conditions) {
        return conditions
                .filter()
                .flatMap(
                        said ->
                                said.matches("no|none")
                                        ? Optional.of("Filter_None")
                                        : said.matches("uv|uv[ -]?(cut|excluded)")
                                                ? Optional.of("Filter_UVExcluded")
                                                : Optional.empty());
    }

    /** What the format has no element for stands in its free tags, in the file's own words. */
    private void tag(String name, Optional<String> value) throws XMLStreamException {
        if (value.isPresent()) {
            out.writeEmptyElement("cc", "Tag", CORE);
            out.writeAttribute("Name", name);
            out.writeAttribute("Value", clean(value.get()));
        }
    }

    private void start(String element) throws XMLStreamException {
        out.writeStartElement("cc", element, CORE);
    }

    private void end() throws XMLStreamException {
        out.writeEndElement();
    }

    private void element(String name, String text) throws XMLStreamException {
        start(name);
        out.writeCharacters(text);
        end();
    }

    private static String number(double value) {
        String text = String.format(Locale.ROOT, "%.4f", value);
        return text.equals("-0.0000") ? "0.0000" : text;
    }

    /** Without characters that XML cannot hold. */
    private static String clean(String text) {
        return text.replaceAll("[\\p{Cc}\\p{Cs}\\uFFFE\\uFFFF]", " ");
    }
}
