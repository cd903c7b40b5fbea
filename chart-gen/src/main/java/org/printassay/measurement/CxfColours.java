package org.printassay.measurement;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import org.printassay.colour.Lab;
import org.printassay.colour.Rgb8;
import org.printassay.colour.Xyz;
import org.printassay.problem.Problem;

/**
 * Colours of the readings in a CxF3 file. Percent or fraction is found from all of the file, since
 * one set of readings may hold dark patches alone.
 */
final class CxfColours {
    private final String name;
    private final CxfContent content;
    private final List<String> notes;
    private final ValueScale spectra = new ValueScale();
    private final ValueScale xyzs = new ValueScale();

    /**
     * @param codes of an object, where it has or shares some
     */
    CxfColours(
            String name,
            CxfContent content,
            Function<CxfContent.Item, @Nullable Rgb8> codes,
            List<String> notes) {
        this.name = name;
        this.content = content;
        this.notes = notes;
        for (CxfContent.Item item : content.items) {
            Lab lab = lab(item);
            Rgb8 rgb = codes.apply(item);
            for (CxfContent.Value value : item.values) {
                if (value.kind.equals("ReflectanceSpectrum")) {
                    spectra.add(ValueScale.middle(array(value)), lab, rgb);
                } else if (value.kind.equals("ColorCIEXYZ")) {
                    xyzs.add(value.parts.getOrDefault("Y", 0.0), lab, rgb);
                }
            }
        }
    }

    private static @Nullable Lab lab(CxfContent.Item item) {
        for (CxfContent.Value value : item.values) {
            Double l = value.parts.get("L");
            if (value.kind.equals("ColorCIELab") && l != null) {
                return new Lab(l, 0, 0);
            }
        }
        return null;
    }

    /** The readings as patches, all of one kind. */
    List<RawPatch> patches(List<CxfReader.Reading> readings) throws Problem {
        ColourMaker colours = new ColourMaker(notes);
        CxfContent.Value first = readings.get(0).spectrum();
        int start = first == null ? 0 : startNm(first);
        int step = first == null ? 0 : stepNm(first);
        if (first != null) {
            colours.grid(place(first.line), start, step, first.numbers.size());
            colours.spectralScale(Boolean.TRUE.equals(spectra.hundred()));
        } else if (readings.get(0).xyz() != null) {
            colours.xyzScale(Boolean.TRUE.equals(xyzs.hundred()));
        } else {
            colours.labAsStated();
        }
        List<RawPatch> patches = new ArrayList<>();
        for (CxfReader.Reading r : readings) {
            CxfContent.Value spectrum = r.spectrum();
            if ((spectrum == null) != (first == null)
                    || (r.xyz() == null) != (readings.get(0).xyz() == null)) {
                throw Problem.input(
                        place(r.line()),
                        "patch '"
                                + r.id()
                                + "' has other kinds of values than those before. Export all with"
                                + " spectra.");
            }
            if (spectrum != null
                    && first != null
                    && (startNm(spectrum) != start
                            || stepNm(spectrum) != step
                            || spectrum.numbers.size() != first.numbers.size())) {
                throw Problem.input(
                        place(r.line()),
                        "the spectrum of '"
                                + r.id()
                                + "' has other wavelengths ("
                                + spectrum.numbers.size()
                                + " values) than those before ("
                                + first.numbers.size()
                                + "). Measure or export this patch again.");
            }
            if (spectrum == null) {
                refuseOtherLight(r);
            }
            ColourMaker.Made made =
                    colours.make(
                            place(r.line()),
                            spectrum == null ? new double[0] : array(spectrum),
                            r.xyz() == null
                                    ? null
                                    : new Xyz(
                                            part(r.xyz(), "X"),
                                            part(r.xyz(), "Y"),
                                            part(r.xyz(), "Z")),
                            r.lab() == null
                                    ? null
                                    : new Lab(
                                            part(r.lab(), "L"),
                                            part(r.lab(), "A"),
                                            part(r.lab(), "B")));
            patches.add(
                    new RawPatch(
                            r.id(), r.rgb(), made.lab(), made.xyz(), made.spectrum(), r.line()));
        }
        colours.noteDoubts();
        return patches;
    }

    private void refuseOtherLight(CxfReader.Reading r) throws Problem {
        CxfContent.Value value = r.xyz() != null ? r.xyz() : r.lab();
        CxfContent.Spec spec = value == null ? null : content.specs.get(value.spec);
        if (spec != null) {
            StatedLight.refuseOther(
                    place(r.line()),
                    spec.said.getOrDefault("Illuminant", ""),
                    spec.said.getOrDefault("Observer", ""));
        }
    }

    private double part(CxfContent.Value value, String part) throws Problem {
        return part(name, value, part);
    }

    /** A part that a value must have. */
    static double part(String name, CxfContent.Value value, String part) throws Problem {
        Double number = value.parts.get(part);
        if (number == null) {
            throw Problem.input(
                    name + ", line " + value.line,
                    value.kind + " lacks its " + part + ". Export this patch again.");
        }
        return number;
    }

    private int startNm(CxfContent.Value value) throws Problem {
        CxfContent.Spec spec = content.specs.get(value.spec);
        String text = value.startNm.isEmpty() && spec != null ? spec.startNm : value.startNm;
        return nanometres(value, text, "the first wavelength (StartWL)");
    }

    private int stepNm(CxfContent.Value value) throws Problem {
        CxfContent.Spec spec = content.specs.get(value.spec);
        if (spec == null || spec.stepNm.isEmpty()) {
            notes.add("The file does not say the step of its spectra; 10 nm is assumed.");
            return 10;
        }
        return nanometres(value, spec.stepNm, "the step of wavelengths (Increment)");
    }

    private int nanometres(CxfContent.Value value, String text, String what) throws Problem {
        if (!text.matches("\\d{1,4}([.]0{1,6})?")) {
            throw Problem.input(
                    place(value.line),
                    what + " is not a whole number of nanometres. Export it again.");
        }
        return Integer.parseInt(text.replaceAll("[.].*", ""));
    }

    private static double[] array(CxfContent.Value value) {
        return value.numbers.stream().mapToDouble(Double::doubleValue).toArray();
    }

    private String place(int line) {
        return name + ", line " + line;
    }
}
