package org.printassay.scannercalibration;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.printassay.chart.Chart;
import org.printassay.colour.Lab;
import org.printassay.colour.LinearRgb;
import org.printassay.colour.Rgb8;
import org.printassay.colour.RgbSpace;
import org.printassay.locate.CornerPlacement;
import org.printassay.locate.LocatedSheet;
import org.printassay.locate.PointPx;
import org.printassay.measurement.MeasurementReader;
import org.printassay.problem.Problem;
import org.printassay.reading.ReadingFlag;
import org.printassay.reading.Warning;
import org.printassay.reading.WarningCode;
import org.printassay.recipe.Margins;
import org.printassay.recipe.PageSize;
import org.printassay.recipe.Recipe;
import org.printassay.sample.PatchSample;
import org.printassay.sample.PatchSampler;
import org.printassay.scan.CodeLight;
import org.printassay.scan.ScanFiles;
import org.printassay.scan.ScanImage;
import org.printassay.scan.ScanInfo;
import org.printassay.scannermodel.TrainingPatch;
import org.printassay.sheet.Patch;
import org.printassay.sheet.PointMm;
import org.printassay.sheet.RectMm;
import org.printassay.sheet.Section;
import org.printassay.sheet.Sheet;

/**
 * The patches of a scanned reference target with their values of its data file (ISO 12641). Uneven
 * light is taken out where the layout names background areas. Without twins stray light cannot be
 * told and stays in.
 */
final class TargetReading {
    /** Chroma below which a colour of a target counts as a grey. */
    private static final double GREY = 5;

    /** Where more patches than this are not even, the grid lies beside them. */
    private static final double MOST_UNEVEN = 0.3;

    /** More names than this are not listed. */
    private static final int NAMED = 10;

    private final ScanImage scan;
    private final LocatedSheet located;
    private final Map<String, Lab> values;

    /** So many of the last patches are background. */
    private final int background;

    private final Optional<Warning> missing;

    private TargetReading(
            ScanImage scan,
            LocatedSheet located,
            Map<String, Lab> values,
            int background,
            Optional<Warning> missing) {
        this.scan = scan;
        this.located = located;
        this.values = values;
        this.background = background;
        this.missing = missing;
    }

    /**
     * What a reading gave.
     *
     * @param patches those with values that are clean
     * @param light how the light falls off; empty where it could not be told
     */
    record Read(List<TrainingPatch> patches, Optional<BackgroundLight> light) {}

    /**
     * Makes ready.
     *
     * @param corners where the layout's corners are in the scan, pixels
     * @param data data file of the target
     */
    static TargetReading of(Path scan, Path layout, List<PointPx> corners, Path data)
            throws Problem {
        TargetLayout target = TargetLayout.read(layout);
        ScanImage image = ScanFiles.open(scan);
        if (image.info().channels() != 3) {
            throw Problem.input(image.info().name(), "is grey. Scan the target in colour.");
        }
        double area =
                TargetLayout.area(corners.stream().map(p -> new PointMm(p.x(), p.y())).toList());
        for (PointPx corner : corners) {
            if (corner.x() < 0
                    || corner.y() < 0
                    || corner.x() > image.info().width()
                    || corner.y() > image.info().height()) {
                throw Problem.usage("--corners lie outside " + image.info().name() + ".");
            }
        }
        if (!(area > 100)) {
            throw Problem.usage(
                    "--corners go clockwise from the target's top left corner, in pixels.");
        }
        List<String> ids = target.patches().stream().map(TargetLayout.Place::id).toList();
        PaddedNames names = new PaddedNames(ids);
        Map<String, Lab> values = names.own(MeasurementReader.colours(data, names.all()));
        LocatedSheet located = located(target, corners);
        refuseBeyond(ScanFiles.displayName(layout), located, image.info());
        List<String> missing = ids.stream().filter(id -> !values.containsKey(id)).toList();
        return new TargetReading(
                image,
                located,
                values,
                target.background().size(),
                missing(ScanFiles.displayName(data), missing, ids.size()));
    }

    /** A place beyond the scan is a mistake in the layout or in the corners. */
    private static void refuseBeyond(String layout, LocatedSheet located, ScanInfo scan)
            throws Problem {
        List<String> beyond = new ArrayList<>();
        for (Patch patch : located.sheet().patches()) {
            PointPx middle = located.placement().toScan(patch.area().centre());
            if (middle.x() < 0
                    || middle.y() < 0
                    || middle.x() > scan.width()
                    || middle.y() > scan.height()) {
                beyond.add(patch.id());
            }
        }
        if (!beyond.isEmpty()) {
            throw Problem.input(
                    layout,
                    String.format(
                            Locale.ROOT,
                            "by --corners, %d of its places lie beyond %s: %s. Check its millimetres,"
                                    + " and that its corners are those of --corners.",
                            beyond.size(),
                            scan.name(),
                            named(beyond)));
        }
    }

    private static Optional<Warning> missing(String data, List<String> ids, int all) {
        return ids.isEmpty()
                ? Optional.empty()
                : Optional.of(
                        new Warning(
                                WarningCode.PATCHES_MISSING,
                                String.format(
                                        Locale.ROOT,
                                        "%d of %d patches of the layout are not in %s: %s.",
                                        ids.size(),
                                        all,
                                        data,
                                        named(ids))));
    }

    /** The first of them. */
    private static String named(List<String> ids) {
        return String.join(", ", ids.subList(0, Math.min(NAMED, ids.size())))
                + (ids.size() > NAMED ? " and " + (ids.size() - NAMED) + " more" : "");
    }

    /** What the user must know about the data file. */
    Optional<Warning> missing() {
        return missing;
    }

    /** A target is read like a sheet; codes only tell its patches apart. */
    private static LocatedSheet located(TargetLayout target, List<PointPx> corners) throws Problem {
        List<Patch> patches = new ArrayList<>();
        for (TargetLayout.Place place : target.patches()) {
            patches.add(patch(place.id(), patches.size(), place.area()));
        }
        for (RectMm area : target.background()) {
            patches.add(patch("background", patches.size(), area));
        }
        PointMm first = target.corners().get(0);
        PointMm last = target.corners().get(2);
        RectMm page = new RectMm(first.x(), first.y(), last.x() - first.x(), last.y() - first.y());
        Sheet sheet = new Sheet(1, page, page, patches, List.of(), page, target.name(), List.of());
        Recipe recipe = Recipe.paper(PageSize.parse("A4"), Margins.all(10), RgbSpace.SRGB);
        return new LocatedSheet(
                new Chart("target", recipe, 1, List.of(sheet)),
                sheet,
                CornerPlacement.of(target.corners(), corners),
                Map.of(),
                0,
                0,
                false,
                List.of(),
                corners);
    }

    private static Patch patch(String id, int number, RectMm area) {
        Rgb8 code = new Rgb8(number >> 16, number >> 8 & 255, number & 255);
        return new Patch(id, Section.CUBE, code, area);
    }

    ScanImage scan() {
        return scan;
    }

    /** Reads the patches, codes taken to mean this light. */
    Read read(CodeLight codes) throws Problem {
        List<PatchSample> all = PatchSampler.sample(scan, codes, located);
        List<PatchSample> samples = all.subList(0, all.size() - background);
        Optional<BackgroundLight> light = light(all.subList(samples.size(), all.size()));
        List<TrainingPatch> patches = new ArrayList<>();
        int uneven = 0;
        for (PatchSample sample : samples) {
            uneven += sample.flags().contains(ReadingFlag.UNEVEN) ? 1 : 0;
            Lab lab = values.get(sample.patch().id());
            if (lab != null && sample.flags().isEmpty()) {
                PointMm at = sample.patch().area().centre();
                patches.add(
                        new TrainingPatch(
                                sample.patch().id(),
                                sample.patch().id(),
                                lab.chroma() < GREY,
                                light.map(by -> by.evened(at, sample.linear()))
                                        .orElse(sample.linear()),
                                lab));
            }
        }
        if (uneven > MOST_UNEVEN * samples.size()) {
            throw Problem.chart(
                    scan.info().name(),
                    String.format(
                            Locale.ROOT,
                            "%d of %d patches are not even: the target is not where its layout and"
                                    + " --corners say.",
                            uneven,
                            samples.size()));
        }
        return new Read(patches, light);
    }

    private Optional<BackgroundLight> light(List<PatchSample> areas) {
        // Card around a target often ends with the scan, which stray light alone minds.
        List<PatchSample> clean =
                areas.stream()
                        .filter(one -> Set.of(ReadingFlag.EDGE).containsAll(one.flags()))
                        .toList();
        return BackgroundLight.of(
                located.sheet().page(),
                clean.stream().map(one -> one.patch().area().centre()).toList(),
                clean.stream().map(PatchSample::linear).toList());
    }

    /** Light of the lightest patch. */
    static LinearRgb paper(List<TrainingPatch> patches) {
        LinearRgb lightest = new LinearRgb(0, 0, 0);
        for (TrainingPatch patch : patches) {
            lightest = patch.light().g() > lightest.g() ? patch.light() : lightest;
        }
        return lightest;
    }
}
