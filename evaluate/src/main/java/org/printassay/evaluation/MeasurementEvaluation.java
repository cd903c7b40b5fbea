package org.printassay.evaluation;

import java.nio.file.Path;
import java.util.ArrayList;
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
import org.printassay.colour.Xyz;
import org.printassay.measurement.MeasuredPatch;
import org.printassay.measurement.MeasurementFile;
import org.printassay.measurement.MeasurementReader;
import org.printassay.problem.Problem;
import org.printassay.reading.Reading;
import org.printassay.reading.ReadingSet;
import org.printassay.reading.Trust;
import org.printassay.sheet.Patch;
import org.printassay.sheet.Sheet;

/** An instrument's measurement file to an evaluation. */
final class MeasurementEvaluation {
    private MeasurementEvaluation() {}

    /** A patch of a chart and the sheet it stands on. */
    private record Place(Patch patch, int sheet) {}

    static Evaluator.Result evaluate(EvaluationRequest request) throws Problem {
        Path path = request.files().get(0);
        MeasurementFile file = MeasurementReader.read(path);
        Chart chart = request.chart().isPresent() ? ChartFile.read(request.chart().get()) : null;
        RgbSpace space = chart == null ? request.space() : chart.space();
        Map<String, Place> places = places(chart);
        Xyz paper = paper(file);
        List<Reading> readings = new ArrayList<>();
        int matched = 0;
        for (MeasuredPatch measured : file.patches()) {
            Place place = places.get(measured.id());
            boolean same = place != null && place.patch.rgb().equals(measured.rgb());
            matched += same ? 1 : 0;
            readings.add(reading(measured, same ? place : null, paper));
        }
        if (chart != null && matched == 0) {
            throw Problem.chart(
                    file.name(),
                    "has no patch of chart "
                            + chart.id()
                            + " by id and code. Leave --chart away, or name the right file.");
        }
        Evaluation evaluation =
                Assembly.evaluation(
                        new ReadingSet(readings, space, Trust.INSTRUMENT, true),
                        new Assembly.Origin(
                                chart == null ? null : chart.id(),
                                List.of(),
                                null,
                                request.details(),
                                false,
                                List.of(InputFiles.describe(path)),
                                List.of(),
                                null,
                                0,
                                null,
                                List.of()),
                        request.threshold());
        return new Evaluator.Result(evaluation, List.of());
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
    private static @Nullable Xyz paper(MeasurementFile file) {
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
                null,
                Density.ofFactor(Math.max(1e-4, Lab.luminanceFactor(lab.l()))),
                Set.of(),
                place == null ? null : place.patch.area().centre(),
                place == null ? 1 : place.sheet);
    }
}
