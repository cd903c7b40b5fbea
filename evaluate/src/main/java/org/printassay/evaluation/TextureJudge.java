package org.printassay.evaluation;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import org.printassay.calibrate.ScanPart;
import org.printassay.colour.Lab;
import org.printassay.reading.Reading;
import org.printassay.reading.ReadingSet;
import org.printassay.sample.PatchSample;
import org.printassay.sample.SheetSamples;
import org.printassay.sample.SurfaceSamples;
import org.printassay.sheet.RectMm;
import org.printassay.sheet.Section;
import org.printassay.surface.Along;
import org.printassay.surface.TintTrace;
import org.printassay.texture.ContourSteps;
import org.printassay.texture.EdgeResponse;
import org.printassay.texture.GrainMeter;
import org.printassay.texture.PixelTile;

/** Grain by zone, sharpness by direction, steps in vignettes: from what scans show to results. */
final class TextureJudge {
    private static final int PAPER = 255;
    private static final double SHADOWS_BELOW = 33;
    private static final double HIGHLIGHTS_ABOVE = 67;
    private static final double FIVE_PER_MM = 5;

    /** L* of paper in relative colour. */
    private static final double PAPER_L = 100;

    private TextureJudge() {}

    /**
     * Grain of the first scan that shows flat areas finely enough, lines left out; null when none
     * does.
     *
     * @param views what the scans show of lines, those that were looked at
     */
    static PrintSurface.@Nullable Grain grain(
            List<ScanPart> parts, List<SurfaceView> views, ReadingSet readings) {
        for (ScanPart part : parts) {
            SurfaceView view =
                    views.stream().filter(v -> v.part().equals(part)).findFirst().orElse(null);
            Map<Integer, List<SurfaceSamples.Area>> flat = new TreeMap<>();
            for (SurfaceSamples.Area area : part.samples().surface().areas()) {
                int level = area.patch().rgb().g();
                flat.computeIfAbsent(level, l -> new ArrayList<>()).add(area);
            }
            Map<Integer, List<PixelTile>> byLevel = new TreeMap<>();
            int areas = 0;
            for (Map.Entry<Integer, List<SurfaceSamples.Area>> entry : flat.entrySet()) {
                List<PixelTile> tiles = LinesOut.of(entry.getValue(), view);
                if (!tiles.isEmpty()) {
                    byLevel.put(entry.getKey(), tiles);
                    areas += tiles.size();
                }
            }
            List<PixelTile> bare = byLevel.remove(PAPER);
            if (bare == null || byLevel.isEmpty()) {
                continue;
            }
            double sigma = Blur.sigmaMm(part.samples());
            GrainMeter.Unevenness paper = GrainMeter.measure(bare, PAPER_L, sigma);
            ZoneSum[] zones = {new ZoneSum(), new ZoneSum(), new ZoneSum()};
            for (Map.Entry<Integer, List<PixelTile>> entry : byLevel.entrySet()) {
                int level = entry.getKey();
                Double lightness = lightness(readings, level);
                if (lightness == null) {
                    continue;
                }
                double perPaper = (lightness + 16) / (PAPER_L + 16);
                GrainMeter.Unevenness all =
                        GrainMeter.measure(entry.getValue(), lightness, sigma)
                                .less(perPaper * paper.graininess(), perPaper * paper.mottle());
                double fileL = Lab.lightness(readings.space().decode(level / 255.0));
                int zone = fileL < SHADOWS_BELOW ? 0 : fileL <= HIGHLIGHTS_ABOVE ? 1 : 2;
                zones[zone].add(all, entry.getValue().size());
            }
            return new PrintSurface.Grain(
                    zones[0].zone(),
                    zones[1].zone(),
                    zones[2].zone(),
                    zone(paper.graininess(), paper.mottle()),
                    paper.highestPerMm(),
                    paper.noiseRemoved(),
                    areas);
        }
        return null;
    }

    /** Mottle that is no number was not measured. */
    private static PrintSurface.Zone zone(double graininess, double mottle) {
        return new PrintSurface.Zone(
                graininess, Double.isNaN(mottle) ? null : Double.valueOf(mottle));
    }

    /** Mean squares over the areas of one zone. */
    private static final class ZoneSum {
        private double grain;
        private double mottle;
        private int areas;
        private int tiled;

        void add(GrainMeter.Unevenness one, int count) {
            grain += count * one.graininess() * one.graininess();
            if (!Double.isNaN(one.mottle())) {
                mottle += count * one.mottle() * one.mottle();
                tiled += count;
            }
            areas += count;
        }

        PrintSurface.@Nullable Zone zone() {
            return areas == 0
                    ? null
                    : TextureJudge.zone(Math.sqrt(grain / areas), Math.sqrt(mottle / tiled));
        }
    }

    /** Mean L* of a grey, relative to paper where it can be; null when it was not read. */
    private static @Nullable Double lightness(ReadingSet readings, int level) {
        double sum = 0;
        int count = 0;
        for (Reading reading : readings.readings()) {
            boolean same =
                    reading.rgb().r() == level
                            && reading.rgb().g() == level
                            && reading.rgb().b() == level;
            Lab lab = reading.labRelative() != null ? reading.labRelative() : reading.lab();
            if (same && lab != null) {
                sum += lab.l();
                count++;
            }
        }
        return count == 0 ? null : Double.valueOf(sum / count);
    }

    /** Sharpness by the edges of all scans of the finest sampling; null when none could be read. */
    static PrintSurface.@Nullable Sharpness sharpness(List<ScanPart> parts) {
        double finest = 0;
        for (ScanPart part : parts) {
            if (!part.samples().surface().edges().isEmpty()) {
                finest = Math.max(finest, part.samples().located().placement().samplesPerMm());
            }
        }
        List<EdgeResponse> across = new ArrayList<>();
        List<EdgeResponse> down = new ArrayList<>();
        for (ScanPart part : parts) {
            if (part.samples().located().placement().samplesPerMm() < 0.95 * finest) {
                continue;
            }
            for (SurfaceSamples.Edge edge : part.samples().surface().edges()) {
                (edge.along() == Along.X ? across : down).add(edge.response());
            }
        }
        if (across.isEmpty() && down.isEmpty()) {
            return null;
        }
        double step = (across.isEmpty() ? down : across).get(0).stepPerMm();
        return new PrintSurface.Sharpness(
                half(across),
                half(down),
                at(across),
                at(down),
                across.size() + down.size(),
                curve(across, finest),
                curve(down, finest),
                4 * step);
    }

    private static @Nullable Double half(List<EdgeResponse> edges) {
        double[] values =
                edges.stream()
                        .mapToDouble(EdgeResponse::halfPerMm)
                        .filter(v -> !Double.isNaN(v))
                        .toArray();
        return values.length == 0 ? null : Double.valueOf(median(values));
    }

    private static @Nullable Double at(List<EdgeResponse> edges) {
        return edges.isEmpty() ? null : Double.valueOf(at(edges, FIVE_PER_MM));
    }

    private static double at(List<EdgeResponse> edges, double perMm) {
        return median(edges.stream().mapToDouble(edge -> edge.at(perMm)).toArray());
    }

    /** Medians of the responses, every 0.2 per millimetre up to what the sampling carries. */
    private static List<Double> curve(List<EdgeResponse> edges, double samplesPerMm) {
        List<Double> curve = new ArrayList<>();
        if (!edges.isEmpty()) {
            double step = 4 * edges.get(0).stepPerMm();
            for (int k = 0; k * step <= samplesPerMm / 2; k++) {
                curve.add(at(edges, k * step));
            }
        }
        return curve;
    }

    /** Steps in every vignette of the first scan of each sheet that shows any; null when none. */
    static @Nullable List<PrintSurface.Vignette> vignettes(List<ScanPart> parts) {
        Map<Integer, List<PrintSurface.Vignette>> bySheet = new TreeMap<>();
        for (ScanPart part : parts) {
            SheetSamples samples = part.samples();
            int sheet = samples.located().sheet().number();
            double paper = paper(samples);
            if (samples.surface().vignettes().isEmpty() || !(paper > 0)) {
                continue;
            }
            List<PrintSurface.Vignette> found = new ArrayList<>();
            for (SurfaceSamples.Gradient gradient : samples.surface().vignettes()) {
                found.add(vignette(part, sheet, gradient, paper));
            }
            bySheet.putIfAbsent(sheet, found);
        }
        List<PrintSurface.Vignette> all = new ArrayList<>();
        bySheet.values().forEach(all::addAll);
        return bySheet.isEmpty() ? null : all;
    }

    /** Lossy coding makes steps of its own: as with codes of the file, what is visible beside. */
    private static PrintSurface.Vignette vignette(
            ScanPart part, int sheet, SurfaceSamples.Gradient gradient, double paper) {
        TintTrace trace = gradient.trace();
        double[] light = trace.meanLuminance();
        double[] lightness = lightness(light, paper);
        double[][] strips =
                Arrays.stream(trace.stripLuminance())
                        .map(strip -> lightness(strip, paper))
                        .toArray(double[][]::new);
        RectMm area = gradient.vignette().area();
        double from = gradient.vignette().fromLevel();
        double to = gradient.vignette().toLevel();
        double codeMm = area.width() / Math.abs(to - from);
        List<PrintSurface.Step> steps = new ArrayList<>();
        for (ContourSteps.Step step :
                ContourSteps.find(lightness, strips, trace.stepMm(), codeMm)) {
            double at = trace.positionMm(step.at());
            double share = (at - area.x()) / area.width();
            double there = Math.max(0, light[(int) step.at()]);
            double least = ContourSteps.VISIBLE_L + part.codingStep(there, paper);
            if (Math.abs(step.deltaL()) < least) {
                continue;
            }
            steps.add(new PrintSurface.Step(from + share * (to - from), at, step.deltaL()));
        }
        return new PrintSurface.Vignette(sheet, from, to, area.centre().y(), steps);
    }

    private static double[] lightness(double[] light, double paper) {
        return Arrays.stream(light).map(l -> Lab.lightness(Math.max(0, l / paper))).toArray();
    }

    /** Luminance of device light on bare paper; NaN when no window was read. */
    private static double paper(SheetSamples samples) {
        double[] values =
                samples.samples().stream()
                        .filter(sample -> sample.patch().section() == Section.PAPER)
                        .mapToDouble(TextureJudge::luminance)
                        .toArray();
        return values.length == 0 ? Double.NaN : median(values);
    }

    private static double luminance(PatchSample sample) {
        return 0.2126 * sample.linear().r()
                + 0.7152 * sample.linear().g()
                + 0.0722 * sample.linear().b();
    }

    private static double median(double[] values) {
        double[] sorted = values.clone();
        Arrays.sort(sorted);
        int n = sorted.length;
        return (sorted[(n - 1) / 2] + sorted[n / 2]) / 2;
    }

    /** Blur of print and scan together. */
    static final class Blur {
        /** Of a good flatbed, where no edge tells (common practice, no source). */
        private static final double USUAL_MM = 0.045;

        private static final double LEAST_MM = 0.015;

        /** From 10 % to 90 % of a step blurred by a Gaussian, in standard deviations. */
        private static final double TEN_TO_NINETY = 2.563;

        /**
         * What the bins of an edge profile add, as a variance: 1.6 to 4.1 times that of one bin,
         * found by simulated edges.
         */
        private static final double BINS = 3 * 0.04 * 0.04 / 12;

        private Blur() {}

        /** Standard deviation of a Gaussian, by slanted edges, else by the edges of the markers. */
        static double sigmaMm(SheetSamples samples) {
            Double half =
                    half(
                            samples.surface().edges().stream()
                                    .map(SurfaceSamples.Edge::response)
                                    .toList());
            if (half != null) {
                return Math.sqrt(2 * Math.log(2)) / (2 * Math.PI * half);
            }
            double width = samples.edges().widthMm();
            if (Double.isNaN(width)) {
                return USUAL_MM;
            }
            double sigma = width / TEN_TO_NINETY;
            return Math.max(LEAST_MM, Math.sqrt(Math.max(0, sigma * sigma - BINS)));
        }
    }
}
