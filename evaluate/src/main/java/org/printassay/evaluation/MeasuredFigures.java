package org.printassay.evaluation;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import org.printassay.colour.Density;
import org.printassay.colour.Rgb8;
import org.printassay.colour.Spectrum;
import org.printassay.measurement.Conditions;
import org.printassay.measurement.MeasuredPatch;
import org.printassay.measurement.MeasurementFile;
import org.printassay.measurement.MeasurementFile.Condition;
import org.printassay.measurement.MeasurementSet;
import org.printassay.measurement.MeasurementWriter;

/** Figures that need spectra or more than one measurement condition. */
final class MeasuredFigures {
    private static final String[] NAMES = {
        "black", "blue", "green", "cyan", "red", "magenta", "yellow", "paper"
    };

    /** Longer names of instruments are cut. */
    private static final int LONGEST = 100;

    private MeasuredFigures() {}

    /**
     * Of files taken together.
     *
     * @param files each of them
     */
    static MeasurementSummary of(MeasurementFile file, List<MeasurementFile> files) {
        Conditions conditions = file.conditions();
        List<String> notes = new ArrayList<>(file.notes());
        if (conditions.mode().isEmpty()) {
            notes.add("The measurement condition (M0 to M3) is not stated.");
        }
        Double brightener = brightener(file, notes);
        return new MeasurementSummary(
                conditions.mode().map(Condition::name).orElse(null),
                conditions.backing().orElse(null),
                conditions.filter().orElse(null),
                instruments(files),
                file.patches().stream().mapToInt(MeasuredPatch::repeats).max().orElse(1),
                brightener,
                solids(file.patches()),
                notes);
    }

    /** Those that the files name, or nothing where one names none. */
    private static @Nullable String instruments(List<MeasurementFile> files) {
        Set<String> all = new TreeSet<>();
        for (MeasurementFile file : files) {
            String said = file.keywords().getOrDefault("INSTRUMENTATION", "");
            String plain = said.replaceAll("[\\p{Cntrl}\\s]+", " ").strip();
            if (plain.isEmpty()) {
                return null;
            }
            all.add(plain.substring(0, Math.min(LONGEST, plain.length())));
        }
        return String.join(" and ", all);
    }

    /**
     * The index; null without both conditions, or where what lay behind the sheet was not the same,
     * which is then noted.
     */
    private static @Nullable Double brightener(MeasurementFile file, List<String> notes) {
        List<String> backings = new ArrayList<>();
        for (MeasurementSet with : under(file, Condition.M1)) {
            for (MeasurementSet without : under(file, Condition.M2)) {
                Optional<String> behind = with.conditions().backing();
                Optional<String> other = without.conditions().backing();
                Optional<Double> bWith = paperB(with);
                Optional<Double> bWithout = paperB(without);
                if (bWith.isEmpty() || bWithout.isEmpty()) {
                    continue;
                }
                if (behind.equals(other)) {
                    return bWithout.get() - bWith.get();
                }
                backings.add(
                        "M1 with backing "
                                + behind.orElse("not stated")
                                + ", M2 with backing "
                                + other.orElse("not stated"));
            }
        }
        if (!backings.isEmpty()) {
            notes.add(
                    "The OBA index was not taken: it needs M1 and M2 over the same backing, and the"
                            + " paper was measured under "
                            + backings.get(0)
                            + ".");
        }
        return null;
    }

    private static List<MeasurementSet> under(MeasurementFile file, Condition condition) {
        return file.sets().stream()
                .filter(set -> set.conditions().mode().equals(Optional.of(condition)))
                .toList();
    }

    private static Optional<Double> paperB(MeasurementSet set) {
        double sum = 0;
        int n = 0;
        for (MeasuredPatch patch : set.patches()) {
            if (patch.rgb().equals(Rgb8.grey(255))) {
                sum += patch.lab().b();
                n++;
            }
        }
        return n == 0 ? Optional.empty() : Optional.of(sum / n);
    }

    private static List<MeasurementSummary.Solid> solids(List<MeasuredPatch> patches) {
        List<MeasurementSummary.Solid> solids = new ArrayList<>();
        for (int i = NAMES.length - 1; i >= 0; i--) {
            Rgb8 rgb = new Rgb8((i & 4) == 0 ? 0 : 255, (i & 2) == 0 ? 0 : 255, (i & 1) * 255);
            Spectrum mean = mean(patches, rgb);
            if (mean != null) {
                solids.add(
                        new MeasurementSummary.Solid(
                                NAMES[i],
                                rgb,
                                Density.visual(mean),
                                Density.statusA(mean),
                                Density.statusT(mean)));
            }
        }
        return solids;
    }

    /** Mean reflectance of all patches of a code; null when there is no spectrum. */
    private static @Nullable Spectrum mean(List<MeasuredPatch> patches, Rgb8 rgb) {
        Spectrum first = null;
        double[] sums = {};
        int n = 0;
        for (MeasuredPatch patch : patches) {
            Spectrum spectrum = patch.spectrum();
            if (spectrum == null || !patch.rgb().equals(rgb)) {
                continue;
            }
            if (first == null) {
                first = spectrum;
                sums = new double[spectrum.factors().size()];
            }
            if (MeasurementWriter.sameGrid(first, spectrum)) {
                for (int i = 0; i < sums.length; i++) {
                    sums[i] += spectrum.factors().get(i);
                }
                n++;
            }
        }
        if (first == null) {
            return null;
        }
        List<Double> factors = new ArrayList<>();
        for (double sum : sums) {
            factors.add(sum / n);
        }
        return new Spectrum(first.startNm(), first.stepNm(), factors);
    }
}
