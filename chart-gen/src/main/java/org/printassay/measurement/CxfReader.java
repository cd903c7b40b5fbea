package org.printassay.measurement;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.printassay.colour.Lab;
import org.printassay.colour.Rgb8;
import org.printassay.colour.Xyz;
import org.printassay.measurement.MeasurementFile.Condition;
import org.printassay.problem.Problem;

/**
 * CxF3 (ISO 17972-1) to sets of patches. Codes stand with the readings or in an object of the same
 * name; the measurement condition comes from the specification that a reading names, or from the
 * kind of its object.
 */
final class CxfReader {
    private final String name;
    private final CxfContent content;
    private final List<String> notes = new ArrayList<>();
    private final Map<String, Rgb8> codesByName = new HashMap<>();

    /** Readings of one patch under one set of conditions. */
    private record Reading(
            String id,
            @Nullable Rgb8 rgb,
            CxfContent.@Nullable Value spectrum,
            CxfContent.@Nullable Value lab,
            CxfContent.@Nullable Value xyz,
            int line) {}

    private CxfReader(String name, CxfContent content) {
        this.name = name;
        this.content = content;
    }

    static RawFile read(String name, String xml) throws Problem {
        return new CxfReader(name, CxfParser.parse(name, xml)).file();
    }

    private RawFile file() throws Problem {
        for (CxfContent.Item item : content.items) {
            Rgb8 rgb = rgb(item);
            if (rgb != null && !item.name.isEmpty()) {
                codesByName.putIfAbsent(item.name, rgb);
            }
        }
        Map<Conditions, List<List<Reading>>> rounds = new LinkedHashMap<>();
        Map<String, Integer> seen = new HashMap<>();
        for (CxfContent.Item item : content.items) {
            for (Map.Entry<Conditions, List<Reading>> entry : readings(item).entrySet()) {
                List<List<Reading>> sets =
                        rounds.computeIfAbsent(entry.getKey(), key -> new ArrayList<>());
                for (Reading reading : entry.getValue()) {
                    String key = entry.getKey().words() + "\n" + reading.id;
                    int round = reading.id.isEmpty() ? 0 : seen.merge(key, 1, Integer::sum) - 1;
                    if (round == sets.size()) {
                        sets.add(new ArrayList<>());
                    }
                    sets.get(round).add(reading);
                }
            }
        }
        if (rounds.isEmpty()) {
            throw Problem.input(
                    name,
                    "no object has a reflectance spectrum, CIEXYZ or CIELAB. Export the"
                            + " measurements with it.");
        }
        List<RawSet> sets = new ArrayList<>();
        for (Map.Entry<Conditions, List<List<Reading>>> entry : rounds.entrySet()) {
            for (List<Reading> round : entry.getValue()) {
                sets.add(new RawSet(entry.getKey(), patches(round)));
            }
        }
        Map<String, String> keywords = new LinkedHashMap<>();
        keywords.put("ORIGINATOR", content.creator);
        keywords.put("DESCRIPTOR", content.description);
        notes.add(0, "CxF3: object names as patch names; ColorRGB as codes.");
        return new RawFile(name, sets, keywords, notes.stream().distinct().toList());
    }

    /** The readings of an object by conditions; several spectra under one are repeats. */
    private Map<Conditions, List<Reading>> readings(CxfContent.Item item) throws Problem {
        Map<Conditions, List<CxfContent.Value>> spectra = new LinkedHashMap<>();
        Map<Conditions, CxfContent.Value> labs = new LinkedHashMap<>();
        Map<Conditions, CxfContent.Value> xyzs = new LinkedHashMap<>();
        for (CxfContent.Value value : item.values) {
            Conditions conditions = conditions(item, value);
            switch (value.kind) {
                case "ReflectanceSpectrum" ->
                        spectra.computeIfAbsent(conditions, key -> new ArrayList<>()).add(value);
                case "ColorCIELab" -> labs.putIfAbsent(conditions, value);
                case "ColorCIEXYZ" -> xyzs.putIfAbsent(conditions, value);
                default -> {}
            }
        }
        String id = CxfContent.clean(item.name.isEmpty() ? item.id : item.name);
        Rgb8 own = rgb(item);
        Rgb8 rgb = own != null ? own : codesByName.get(item.name);
        Map<Conditions, List<Reading>> found = new LinkedHashMap<>();
        spectra.forEach(
                (conditions, values) -> {
                    List<Reading> readings = new ArrayList<>();
                    for (CxfContent.Value spectrum : values) {
                        CxfContent.Value lab = readings.isEmpty() ? labs.get(conditions) : null;
                        readings.add(new Reading(id, rgb, spectrum, lab, null, spectrum.line));
                    }
                    found.put(conditions, readings);
                });
        if (found.isEmpty()) {
            Set<Conditions> all = new LinkedHashSet<>(xyzs.keySet());
            all.addAll(labs.keySet());
            for (Conditions conditions : all) {
                CxfContent.Value xyz = xyzs.get(conditions);
                CxfContent.Value lab = labs.get(conditions);
                int line = xyz != null ? xyz.line : lab != null ? lab.line : item.line;
                found.put(conditions, List.of(new Reading(id, rgb, null, lab, xyz, line)));
            }
        }
        return found;
    }

    private List<RawPatch> patches(List<Reading> readings) throws Problem {
        ColourMaker colours = new ColourMaker(notes);
        CxfContent.Value first = readings.get(0).spectrum;
        int start = first == null ? 0 : startNm(first);
        int step = first == null ? 0 : stepNm(first);
        if (first != null) {
            colours.grid(place(first.line), start, step, first.numbers.size());
            colours.spectralScale(
                    readings.stream()
                            .map(r -> r.spectrum == null ? new double[0] : array(r.spectrum))
                            .toList(),
                    null);
        } else if (readings.get(0).xyz != null) {
            List<double[]> xyzs = new ArrayList<>();
            for (Reading reading : readings) {
                if (reading.xyz != null) {
                    xyzs.add(new double[] {0, part(reading.xyz, "Y"), 0});
                }
            }
            colours.xyzScale(xyzs);
        } else {
            colours.labAsStated();
        }
        List<RawPatch> patches = new ArrayList<>();
        for (Reading r : readings) {
            CxfContent.Value spectrum = r.spectrum;
            if ((spectrum == null) != (first == null)
                    || (r.xyz == null) != (readings.get(0).xyz == null)) {
                throw Problem.input(
                        place(r.line),
                        "patch '"
                                + r.id
                                + "' has other kinds of values than those before. Export all with"
                                + " spectra.");
            }
            if (spectrum != null
                    && first != null
                    && (startNm(spectrum) != start
                            || stepNm(spectrum) != step
                            || spectrum.numbers.size() != first.numbers.size())) {
                throw Problem.input(
                        place(r.line),
                        "the spectrum of '"
                                + r.id
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
                            place(r.line),
                            spectrum == null ? new double[0] : array(spectrum),
                            r.xyz == null
                                    ? null
                                    : new Xyz(part(r.xyz, "X"), part(r.xyz, "Y"), part(r.xyz, "Z")),
                            r.lab == null
                                    ? null
                                    : new Lab(
                                            part(r.lab, "L"), part(r.lab, "A"), part(r.lab, "B")));
            patches.add(new RawPatch(r.id, r.rgb, made.lab(), made.xyz(), made.spectrum(), r.line));
        }
        colours.noteDoubts();
        return patches;
    }

    private void refuseOtherLight(Reading r) throws Problem {
        CxfContent.Value value = r.xyz != null ? r.xyz : r.lab;
        CxfContent.Spec spec = value == null ? null : content.specs.get(value.spec);
        if (spec != null) {
            StatedLight.refuseOther(
                    place(r.line),
                    spec.said.getOrDefault("Illuminant", ""),
                    spec.said.getOrDefault("Observer", ""));
        }
    }

    private Conditions conditions(CxfContent.Item item, CxfContent.Value value) {
        CxfContent.Spec spec = content.specs.get(value.spec);
        Set<Condition> modes = Conditions.modes(item.type);
        if (spec == null) {
            return new Conditions(one(modes), Optional.empty(), Optional.empty());
        }
        String light = spec.said.getOrDefault("DeviceIllumination", "");
        Optional<Condition> mode = one(Conditions.modes(light));
        if (spec.said.getOrDefault("DevicePolarization", "").matches("(?i)true|1|yes")) {
            mode = Optional.of(Condition.M3);
        }
        return new Conditions(
                mode.isPresent() ? mode : one(modes),
                said(spec, "Backing"),
                said(spec, "DeviceFilter"));
    }

    private static Optional<String> said(CxfContent.Spec spec, String what) {
        String text = Conditions.tidy(spec.said.getOrDefault(what, ""));
        return text.isEmpty() ? Optional.empty() : Optional.of(text);
    }

    private static Optional<Condition> one(Set<Condition> modes) {
        return modes.size() == 1 ? Optional.of(modes.iterator().next()) : Optional.empty();
    }

    private @Nullable Rgb8 rgb(CxfContent.Item item) throws Problem {
        for (CxfContent.Value value : item.values) {
            if (value.kind.equals("ColorRGB")) {
                Double range = value.parts.get("MaxRange");
                double scale = range == null || range <= 0 ? 1 : 255 / range;
                return new Rgb8(
                        code(value, "R", scale), code(value, "G", scale), code(value, "B", scale));
            }
        }
        return null;
    }

    private int code(CxfContent.Value value, String part, double scale) throws Problem {
        long code = Math.round(part(value, part) * scale);
        if (code < 0 || code > 255) {
            throw Problem.input(
                    place(value.line), "an RGB code is outside 0 to 255. Export 8-bit codes.");
        }
        return (int) code;
    }

    private double part(CxfContent.Value value, String part) throws Problem {
        Double number = value.parts.get(part);
        if (number == null) {
            throw Problem.input(
                    place(value.line),
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
