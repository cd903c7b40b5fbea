package org.printassay.evaluation;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.printassay.chart.Chart;
import org.printassay.chart.ChartFile;
import org.printassay.colour.Density;
import org.printassay.colour.Lab;
import org.printassay.colour.Rgb8;
import org.printassay.colour.RgbSpace;
import org.printassay.colour.Spectrum;
import org.printassay.colour.Xyz;
import org.printassay.measurement.Conditions;
import org.printassay.measurement.MeasuredPatch;
import org.printassay.measurement.MeasurementFile;
import org.printassay.measurement.MeasurementReader;
import org.printassay.measurement.MeasurementSet;
import org.printassay.metric.Judgement;
import org.printassay.problem.Problem;
import org.printassay.reading.LabError;
import org.printassay.reading.Reading;
import org.printassay.reading.ReadingSet;
import org.printassay.reading.Repeatability;
import org.printassay.reading.Trust;
import org.printassay.sheet.Patch;
import org.printassay.sheet.Sheet;

/** An instrument's measurement files of one print to an evaluation. */
final class MeasurementEvaluation {
    /** X, Y and Z of any paper are far above this. */
    private static final double DARKEST_PAPER = 0.1;

    private MeasurementEvaluation() {}

    /** A patch of a chart and the sheet it stands on. */
    private record Place(Patch patch, int sheet) {}

    static Evaluator.Result evaluate(EvaluationRequest request) throws Problem {
        Chart chart = request.chart().isPresent() ? ChartFile.read(request.chart().get()) : null;
        List<MeasurementFile> files = new ArrayList<>();
        ToldApart names = ToldApart.of(request.files());
        for (int i = 0; i < request.files().size(); i++) {
            try {
                files.add(
                        InstrumentFiles.readAny(
                                request.files().get(i), Optional.ofNullable(chart)));
            } catch (Problem problem) {
                throw names.told(problem, i);
            }
        }
        List<SourceFile> sources = Checksums.different(request.files(), "measurement");
        MeasurementFile file = MeasurementReader.together(files);
        refuseMixed(files, file);
        RgbSpace space = chart == null ? request.space() : chart.space();
        Map<String, Place> places = places(chart);
        Trust trust =
                files.stream()
                        .map(InstrumentFiles::trust)
                        .max(Comparator.naturalOrder())
                        .orElse(Trust.INSTRUMENT);
        Xyz paper = paper(file);
        List<Reading> readings = new ArrayList<>();
        for (MeasuredPatch measured : file.patches()) {
            Place place = measured.placed() ? places.get(measured.id()) : null;
            readings.add(reading(measured, place, paper));
        }
        ReadingSet set =
                new ReadingSet(readings, space, trust, true)
                        .withRepeats(repeatability(file.patches()));
        Evaluation evaluation =
                Assembly.evaluation(
                        set,
                        Judgement.of(set, request.threshold(), request.toneAim()),
                        Evaluation.builder(trust, space.key())
                                .chartId(chart == null ? null : chart.id())
                                .details(request.details())
                                .files(sources)
                                .measurement(MeasuredFigures.of(file, files)),
                        Assembly.Light.EVEN);
        return new Evaluator.Result(evaluation, List.of());
    }

    /** A file whose conditions neither agree nor are known to differ cannot be put to use. */
    private static void refuseMixed(List<MeasurementFile> files, MeasurementFile together)
            throws Problem {
        for (MeasurementFile file : files) {
            for (MeasurementSet set : file.sets()) {
                Conditions own = set.conditions();
                Conditions used = together.conditions();
                boolean told = own.mode().isPresent() && !own.mode().equals(used.mode());
                if (files.size() > 1 && !own.equals(used) && !told) {
                    throw Problem.input(
                            file.name(),
                            "was measured under other conditions ("
                                    + own.words()
                                    + ") than "
                                    + files.get(0).name()
                                    + " ("
                                    + files.get(0).conditions().words()
                                    + "), and these are never mixed. Name files of one condition.");
                }
            }
        }
    }

    private static Map<String, Place> places(@Nullable Chart chart) {
        Map<String, Place> places = new HashMap<>();
        if (chart != null) {
            for (Sheet sheet : chart.sheets()) {
                for (Patch patch : sheet.patches()) {
                    places.put(patch.id(), new Place(patch, sheet.number()));
                }
            }
        }
        return places;
    }

    /** Mean of the patches of code 255; null when there are none. */
    private static @Nullable Xyz paper(MeasurementFile file) throws Problem {
        double x = 0;
        double y = 0;
        double z = 0;
        int n = 0;
        for (MeasuredPatch patch : file.patches()) {
            if (patch.rgb().equals(Rgb8.grey(255))) {
                Xyz xyz = patch.lab().toXyz(Xyz.PCS_WHITE);
                x += xyz.x();
                y += xyz.y();
                z += xyz.z();
                n++;
            }
        }
        if (n > 0 && Math.min(x, Math.min(y, z)) < n * DARKEST_PAPER) {
            throw Problem.input(
                    file.name(),
                    "code 255 reads as black, so nothing can be told relative to the paper. Check"
                            + " the columns, or measure the paper again.");
        }
        return n == 0 ? null : new Xyz(x / n, y / n, z / n);
    }

    private static Reading reading(
            MeasuredPatch measured, @Nullable Place place, @Nullable Xyz paper) {
        Lab lab = measured.lab();
        Lab relative = null;
        if (paper != null) {
            Xyz xyz = lab.toXyz(Xyz.PCS_WHITE);
            relative =
                    Lab.of(
                            new Xyz(
                                    xyz.x() / paper.x() * Xyz.PCS_WHITE.x(),
                                    xyz.y() / paper.y() * Xyz.PCS_WHITE.y(),
                                    xyz.z() / paper.z() * Xyz.PCS_WHITE.z()),
                            Xyz.PCS_WHITE);
        }
        return new Reading(
                measured.id(),
                place == null ? Optional.empty() : Optional.of(place.patch.section()),
                measured.rgb(),
                lab,
                relative,
                standardError(measured),
                density(measured),
                Set.of(),
                place == null ? null : place.patch.area().centre(),
                place == null ? 1 : place.sheet);
    }

    /** Of the mean of the repeats; null when measured once. */
    private static @Nullable LabError standardError(MeasuredPatch measured) {
        Lab spread = measured.spread();
        if (spread == null) {
            return null;
        }
        double root = Math.sqrt(measured.repeats());
        return new LabError(spread.l() / root, spread.a() / root, spread.b() / root);
    }

    /** How well the instrument repeats: pooled over all patches that were measured repeatedly. */
    private static @Nullable Repeatability repeatability(List<MeasuredPatch> patches) {
        double l = 0;
        double a = 0;
        double b = 0;
        double shares = 0;
        int freedom = 0;
        for (MeasuredPatch patch : patches) {
            Lab spread = patch.spread();
            int more = patch.repeats() - 1;
            shares += 1.0 / patch.repeats() / patches.size();
            if (spread != null) {
                l += more * spread.l() * spread.l();
                a += more * spread.a() * spread.a();
                b += more * spread.b() * spread.b();
                freedom += more;
            }
        }
        return freedom == 0
                ? null
                : new Repeatability(
                        new Lab(
                                Math.sqrt(l / freedom * shares),
                                Math.sqrt(a / freedom * shares),
                                Math.sqrt(b / freedom * shares)),
                        freedom);
    }

    /** Visual density of the spectrum; without one that of the luminance factor. */
    private static double density(MeasuredPatch measured) {
        Spectrum spectrum = measured.spectrum();
        return spectrum != null
                ? Density.visual(spectrum)
                : Density.ofFactor(Math.max(1e-4, Lab.luminanceFactor(measured.lab().l())));
    }
}
