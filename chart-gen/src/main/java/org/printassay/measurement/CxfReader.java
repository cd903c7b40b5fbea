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
import org.printassay.colour.Rgb8;
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
    private final Map<CxfContent.Item, Rgb8> codesByItem = new HashMap<>();

    /** Readings of one patch under one set of conditions. */
    record Reading(
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
            if (rgb != null) {
                codesByItem.put(item, rgb);
            }
        }
        CxfColours colours = new CxfColours(name, content, this::codes, notes);
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
                sets.add(new RawSet(entry.getKey(), colours.patches(round)));
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
        Rgb8 rgb = codes(item);
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

    private @Nullable Rgb8 codes(CxfContent.Item item) {
        Rgb8 own = codesByItem.get(item);
        return own != null ? own : codesByName.get(item.name);
    }

    private Conditions conditions(CxfContent.Item item, CxfContent.Value value) {
        CxfContent.Spec spec = content.specs.get(value.spec);
        Set<Condition> modes = Conditions.modes(item.type);
        if (spec == null) {
            return new Conditions(
                    one(modes), tagged(CxfContent.BACKING), tagged(CxfContent.FILTER));
        }
        String light = spec.said.getOrDefault("DeviceIllumination", "");
        Optional<Condition> mode = one(Conditions.modes(light));
        if (spec.said.getOrDefault("DevicePolarization", "").matches("(?i)true|1|yes")) {
            mode = Optional.of(Condition.M3);
        }
        return new Conditions(
                mode.isPresent() ? mode : one(modes),
                said(spec, "Backing").or(() -> tagged(CxfContent.BACKING)),
                tagged(CxfContent.FILTER).or(() -> said(spec, "DeviceFilter")));
    }

    /** What holds for the whole file. */
    private Optional<String> tagged(String name) {
        return Conditions.said(content.tags.getOrDefault(name, ""));
    }

    private static Optional<String> said(CxfContent.Spec spec, String what) {
        return Conditions.said(spec.said.getOrDefault(what, ""));
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
        long code = Math.round(CxfColours.part(name, value, part) * scale);
        if (code < 0 || code > 255) {
            throw Problem.input(
                    name + ", line " + value.line,
                    "an RGB code is outside 0 to 255. Export 8-bit codes.");
        }
        return (int) code;
    }
}
