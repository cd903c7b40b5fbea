package org.printassay.evaluation;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import org.printassay.calibrate.codes.ScanPart;
import org.printassay.colour.Lab;
import org.printassay.colour.ToneZone;
import org.printassay.reading.Reading;
import org.printassay.reading.ReadingSet;
import org.printassay.sample.SurfaceSamples;
import org.printassay.texture.GrainMeter;
import org.printassay.texture.PixelTile;

/** Grain by zone of tone, from what scans show of flat areas. */
final class GrainJudge {
    private static final int PAPER = 255;

    /** L* of paper in relative colour. */
    private static final double PAPER_L = 100;

    private GrainJudge() {}

    /**
     * Grain of the first scan that shows flat areas finely enough, lines left out; null when none
     * does.
     *
     * @param views what the scans show of lines, those that were looked at
     */
    static PrintSurface.@Nullable Grain judge(
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
            double sigma = PrintBlur.sigmaMm(part.samples());
            GrainMeter.Measured paper = GrainMeter.measure(bare, PAPER_L, sigma);
            ZoneSum shadows = new ZoneSum();
            ZoneSum midtones = new ZoneSum();
            ZoneSum highlights = new ZoneSum();
            for (Map.Entry<Integer, List<PixelTile>> entry : byLevel.entrySet()) {
                int level = entry.getKey();
                Double lightness = lightness(readings, level);
                if (lightness == null) {
                    continue;
                }
                double perPaper = (lightness + 16) / (PAPER_L + 16);
                GrainMeter.Measured all =
                        GrainMeter.measure(entry.getValue(), lightness, sigma)
                                .less(perPaper * paper.graininess(), perPaper * paper.mottle());
                double fileL = Lab.lightness(readings.space().decode(level / 255.0));
                ZoneSum zone =
                        switch (ToneZone.of(fileL)) {
                            case SHADOWS -> shadows;
                            case MIDTONES -> midtones;
                            case HIGHLIGHTS -> highlights;
                        };
                zone.add(all, entry.getValue().size());
            }
            return new PrintSurface.Grain(
                    shadows.zone(),
                    midtones.zone(),
                    highlights.zone(),
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

        void add(GrainMeter.Measured one, int count) {
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
                    : GrainJudge.zone(Math.sqrt(grain / areas), Math.sqrt(mottle / tiled));
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
}
