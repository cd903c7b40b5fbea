package org.printassay.measurement;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.printassay.colour.Lab;
import org.printassay.colour.Rgb8;
import org.printassay.measurement.MeasurementFile.Condition;
import org.printassay.problem.InputPath;
import org.printassay.problem.Problem;
import org.printassay.sheet.Patch;

/**
 * Reads measurement files. ISO 28178 text (CGATS.17) by its field names, with the dialects of real
 * files: spectral columns in several spellings, percent or fraction, tabs or spaces or semicolons
 * or commas, quotes, no header, comments, decimal comma, several tables, several conditions side by
 * side, empty cells, byte order marks, any line ends. CSV with column names on top. CxF3 (ISO
 * 17972-1). Lists of L* a* b* typed in a chart's reading order. Told apart by content.
 */
public final class MeasurementReader {
    /** Larger files are no measurements of prints. */
    public static final int MAX_BYTES = 64 << 20;

    private static final List<Condition> PREFERRED =
            List.of(Condition.M1, Condition.M0, Condition.M2, Condition.M3);

    private MeasurementReader() {}

    /**
     * Reads a file that names the codes of its patches.
     *
     * @throws Problem when it cannot be read or used; names the file and the line
     */
    public static MeasurementFile read(Path file) throws Problem {
        return read(String.valueOf(file.getFileName()), bytes(file), null);
    }

    /**
     * Reads a measurement of a known chart: codes may be missing where names or the reading order
     * tell them.
     *
     * @throws Problem as {@link #read(Path)}; also when the readings cannot be those of the chart
     */
    public static MeasurementFile read(Path file, ChartPatches chart) throws Problem {
        return read(String.valueOf(file.getFileName()), bytes(file), chart);
    }

    /**
     * Colours of a reference target's data file (ISO 12641) by name; such files have no codes.
     *
     * @param ids names of the target's patches; others in the file are passed over
     * @throws Problem as {@link #read(Path)}; also when none of the names is in the file
     */
    public static Map<String, Lab> colours(Path file, Set<String> ids) throws Problem {
        String name = String.valueOf(file.getFileName());
        RawFile raw = raw(name, bytes(file), ids, Map.of());
        Map<String, Lab> colours = new HashMap<>();
        List<RawPatch> patches = raw.sets().get(0).patches();
        Map<String, String> known =
                PatchNames.known(ids, patches.stream().map(RawPatch::id).toList());
        for (RawPatch patch : patches) {
            String id = known.get(patch.id());
            if (id != null) {
                colours.put(id, patch.lab());
            }
        }
        if (colours.isEmpty()) {
            throw Problem.input(
                    name,
                    "has no patch of the target's layout by name. Name the target's own data file.");
        }
        return colours;
    }

    /**
     * Reads a file's bytes.
     *
     * @param name file name for messages
     * @throws Problem when they cannot be used; names the file and the line
     */
    public static MeasurementFile read(String name, byte[] bytes) throws Problem {
        return read(name, bytes, null);
    }

    /** As {@link #read(Path, ChartPatches)}, of a file's bytes. */
    public static MeasurementFile read(String name, byte[] bytes, @Nullable ChartPatches chart)
            throws Problem {
        if (bytes.length > MAX_BYTES) {
            throw tooLarge(name);
        }
        List<Patch> all = chart == null ? List.of() : chart.all();
        Set<String> ids = all.stream().map(Patch::id).collect(Collectors.toSet());
        Map<String, Rgb8> codes =
                all.stream().collect(Collectors.toMap(Patch::id, Patch::rgb, (one, two) -> one));
        RawFile raw = raw(name, bytes, ids, codes);
        List<String> notes = new ArrayList<>(raw.notes());
        PatchMatcher matcher = new PatchMatcher(name, chart, notes);
        List<MeasurementSet> sets = new ArrayList<>();
        for (RawSet set : raw.sets()) {
            sets.add(matcher.match(set));
        }
        return file(name, sets, raw.keywords(), notes);
    }

    /**
     * Several measurements of one print as one: those under the same conditions are averaged,
     * others stay sets of their own.
     *
     * @throws Problem when a patch has other codes in another file
     */
    public static MeasurementFile together(List<MeasurementFile> files) throws Problem {
        if (files.size() == 1) {
            return files.get(0);
        }
        refuseOtherCodes(files);
        List<MeasurementSet> sets = new ArrayList<>();
        List<String> notes = new ArrayList<>();
        for (MeasurementFile file : files) {
            sets.addAll(file.sets());
            file.notes().forEach(note -> notes.add(file.name() + ": " + note));
        }
        MeasurementFile last = files.get(files.size() - 1);
        return file(last.name(), sets, files.get(0).keywords(), notes);
    }

    private static void refuseOtherCodes(List<MeasurementFile> files) throws Problem {
        Map<Conditions, Map<String, Rgb8>> codes = new HashMap<>();
        for (MeasurementFile file : files) {
            for (MeasurementSet set : file.sets()) {
                Map<String, Rgb8> known =
                        codes.computeIfAbsent(set.conditions(), key -> new HashMap<>());
                for (MeasuredPatch patch : set.patches()) {
                    Rgb8 before = known.putIfAbsent(patch.id(), patch.rgb());
                    if (before != null && !before.equals(patch.rgb())) {
                        throw Repeats.otherCodes(file.name(), patch);
                    }
                }
            }
        }
    }

    private static MeasurementFile file(
            String name,
            List<MeasurementSet> sets,
            Map<String, String> keywords,
            List<String> notes)
            throws Problem {
        List<MeasurementSet> together = new ArrayList<>(Repeats.together(name, sets));
        together.sort(
                Comparator.comparingInt(
                        set -> set.conditions().mode().map(PREFERRED::indexOf).orElse(4)));
        if (together.size() > 1) {
            notes.add(
                    "Conditions in the file: "
                            + together.stream()
                                    .map(set -> set.conditions().words())
                                    .collect(Collectors.joining("; "))
                            + ". Results are for the first; they are never mixed.");
        }
        int most =
                together.get(0).patches().stream().mapToInt(MeasuredPatch::repeats).max().orElse(1);
        if (most > 1) {
            notes.add("Repeated measurements were averaged: up to " + most + " of a patch.");
        }
        return new MeasurementFile(name, together, keywords, notes.stream().distinct().toList());
    }

    private static byte[] bytes(Path file) throws Problem {
        String name = String.valueOf(file.getFileName());
        InputPath.refuseSpecial(file, name);
        try {
            if (Files.size(file) > MAX_BYTES) {
                throw tooLarge(name);
            }
            return Files.readAllBytes(file);
        } catch (IOException e) {
            throw Problem.input(name, "cannot be read. Check that it exists and may be read.", e);
        }
    }

    /** Told apart by how it begins, byte order mark and white space aside. */
    private static RawFile raw(String name, byte[] bytes, Set<String> ids, Map<String, Rgb8> codes)
            throws Problem {
        String text = MeasurementBytes.text(name, bytes);
        return text.stripLeading().startsWith("<")
                ? CxfReader.read(name, text)
                : TextReader.read(name, text, ids, codes);
    }

    private static Problem tooLarge(String name) {
        return Problem.input(name, "larger than 64 MB, too large for a measurement file.");
    }
}
