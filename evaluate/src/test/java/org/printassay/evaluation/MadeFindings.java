package org.printassay.evaluation;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.printassay.colour.Lab;
import org.printassay.colour.Rgb8;
import org.printassay.metric.ColourDetail;
import org.printassay.metric.Extreme;
import org.printassay.metric.Gradient;
import org.printassay.metric.Irregularity;
import org.printassay.metric.LevelStep;
import org.printassay.metric.Neutrality;
import org.printassay.metric.Tone;
import org.printassay.metric.Verdict;
import org.printassay.metric.Wedge;
import org.printassay.reading.Trust;
import org.printassay.reading.Warning;
import org.printassay.reading.WarningCode;
import org.printassay.sheet.RectMm;
import org.printassay.surface.Along;
import org.printassay.surface.ContrastSensitivity;
import org.printassay.surface.FoundBand;
import org.printassay.surface.FoundLine;

/** Made results of one print, one thing wrong after the other. */
final class MadeFindings {
    private Trust trust = Trust.INSTRUMENT;
    private PrintDetails details = PrintDetails.UNKNOWN;
    private @Nullable Extreme white;
    private @Nullable Extreme black;
    private @Nullable Tone tone;
    private @Nullable Wedge shadows;
    private @Nullable Wedge highlights;
    private @Nullable Neutrality neutrality;
    private @Nullable ColourDetail colours;
    private @Nullable Gradient gradient;
    private final List<PlacementSummary> placements = new ArrayList<>();
    private boolean scannerLimited;
    private final List<PrintLine> lines = new ArrayList<>();
    private final List<PrintBand> bands = new ArrayList<>();
    private boolean looked;
    private PrintSurface.@Nullable Grain grain;
    private @Nullable List<PrintSurface.Vignette> vignettes;

    List<Weighed> ranked() {
        List<Warning> warnings =
                scannerLimited
                        ? List.of(new Warning(WarningCode.SCANNER_LIMITED, "Black is limited."))
                        : List.of();
        return Findings.ranked(
                Evaluation.builder(trust, "srgb")
                        .details(details)
                        .placements(placements)
                        .white(white)
                        .black(black)
                        .tone(tone)
                        .shadows(shadows)
                        .highlights(highlights)
                        .neutrality(neutrality)
                        .colours(new Colours(1, null, colours))
                        .evenness(new Evenness(0.5, 0, null, gradient))
                        .warnings(warnings)
                        .surface(surface())
                        .build(),
                true);
    }

    List<Finding> told() {
        return Findings.told(ranked());
    }

    private PrintSurface surface() {
        return new PrintSurface(
                looked ? lines : null,
                null,
                looked ? bands : null,
                List.of(),
                List.of(),
                new RectMm(0, 0, 210, 297),
                null,
                ContrastSensitivity.USUAL,
                grain,
                null,
                vignettes);
    }

    MadeFindings trust(Trust other) {
        trust = other;
        return this;
    }

    MadeFindings scaled(double scale) {
        return scaled(scale, scale);
    }

    MadeFindings scaled(double across, double down) {
        placements.add(new PlacementSummary("scan.tif", 1, 12, 12, 0.02, across, down, 0, 11.8));
        return this;
    }

    /** Shadows that open at a level, which lies so much above black in the aim. */
    MadeFindings shadows(@Nullable Integer level, double aimL) {
        shadows = wedge(level, level == null ? 8 : level, aimL, 0.1);
        return this;
    }

    MadeFindings shadowsDarkerThanBlack() {
        shadows = wedge(12, 12, 4, -2);
        return this;
    }

    MadeFindings highlights(@Nullable Integer level, double aimL) {
        highlights = wedge(level, level == null ? 248 : level, aimL, 0.1);
        return this;
    }

    private static Wedge wedge(@Nullable Integer best, int level, double aimL, double difference) {
        Lab grey = new Lab(10, 0, 0);
        List<LevelStep> steps =
                List.of(
                        new LevelStep(
                                2,
                                difference,
                                difference - 0.2,
                                difference + 0.2,
                                0.3,
                                Verdict.MERGED,
                                grey,
                                4),
                        new LevelStep(level, 0.8, 0.6, 1, aimL, Verdict.SEPARATED, grey, 4),
                        new LevelStep(253, 0.1, 0, 0.2, 0.3, Verdict.MERGED, grey, 4));
        return new Wedge(
                0.5,
                best == null ? null : best - 1,
                best,
                best,
                best == null ? null : new Wedge.Interval(best, best),
                10,
                12,
                1.0,
                List.of(),
                steps);
    }

    MadeFindings tone(double rms, double unsure) {
        tone = tone(rms, unsure, true, List.of());
        return this;
    }

    MadeFindings toneBackwards() {
        tone = tone(0.5, 0.2, false, List.of());
        return this;
    }

    MadeFindings irregular(Irregularity.Kind kind, double size) {
        tone = tone(0.5, 0.2, true, List.of(new Irregularity(kind, 96, 104, size, 6)));
        return this;
    }

    private static Tone tone(
            double rms, double unsure, boolean monotonic, List<Irregularity> irregularities) {
        return new Tone(
                "paper",
                rms,
                unsure,
                -2 * rms,
                128,
                -rms,
                -rms,
                -rms,
                monotonic,
                monotonic ? List.of() : List.of(40),
                List.of(),
                irregularities);
    }

    MadeFindings greys(double lean, double unsure, boolean crossover) {
        Neutrality.Cast cast =
                new Neutrality.Cast(0, lean, unsure, unsure, lean > unsure, "warm, towards yellow");
        neutrality =
                new Neutrality(
                        lean, lean, 128, cast, cast, cast, cast, crossover, lean, lean, null, null,
                        List.of());
        return this;
    }

    /** Greys that lean in shadows, mid-tones and highlights, each with its words; by b* alone. */
    MadeFindings greysOf(
            Neutrality.Cast mean,
            Neutrality.Cast shadows,
            Neutrality.Cast midtones,
            Neutrality.Cast highlights) {
        neutrality =
                new Neutrality(
                        1,
                        2,
                        128,
                        mean,
                        shadows,
                        midtones,
                        highlights,
                        false,
                        1,
                        2,
                        null,
                        null,
                        List.of());
        return this;
    }

    MadeFindings toned() {
        return route("toned monochrome").greys(3, 0.2, false);
    }

    MadeFindings route(String said) {
        details = new PrintDetails(null, null, said, null);
        return this;
    }

    MadeFindings dull(double missing) {
        return hue(missing, null);
    }

    MadeFindings full(int percent) {
        return hue(0, percent);
    }

    /** Six full colours of one warm tone, lighter and darker. */
    MadeFindings withoutColour() {
        List<ColourDetail.Hue> hues = new ArrayList<>();
        for (int k = 0; k < 6; k++) {
            Lab aim = new Lab(50, 80 * Math.cos(k * Math.PI / 3), 80 * Math.sin(k * Math.PI / 3));
            Lab full = new Lab(30 + 10 * k, 2, 6 + k);
            hues.add(new ColourDetail.Hue("hue " + k, full, aim, 40, -70, 0, full.chroma(), 10));
        }
        colours = colours(hues, List.of());
        return this;
    }

    private MadeFindings hue(double missing, @Nullable Integer from) {
        Lab aim = new Lab(50, 80, 0);
        Lab full = new Lab(50, 80 - missing, 0);
        colours =
                colours(
                        List.of(
                                new ColourDetail.Hue(
                                        "red", full, aim, 3, -missing, 0, full.chroma(), from)),
                        List.of());
        return this;
    }

    MadeFindings skin(double deltaE) {
        Lab tone = new Lab(60, 14, 18);
        colours =
                colours(
                        List.of(),
                        List.of(
                                new ColourDetail.SkinTone(
                                        new Rgb8(180, 140, 116),
                                        tone,
                                        tone,
                                        deltaE,
                                        -deltaE,
                                        0,
                                        0,
                                        "darker")));
        return this;
    }

    private static ColourDetail colours(
            List<ColourDetail.Hue> hues, List<ColourDetail.SkinTone> skin) {
        return new ColourDetail(
                3, 5, new Rgb8(255, 0, 0), hues, skin, 400_000.0, 500_000, List.of());
    }

    MadeFindings uneven(double overSheet) {
        gradient = new Gradient(5, 5, overSheet, 0.3, true, "darker towards the bottom");
        return this;
    }

    /** Paper and black; null where the scan is clipped there. */
    MadeFindings range(@Nullable Double whiteL, @Nullable Double blackL, double unsure) {
        white = extreme(whiteL, 0.2);
        black = extreme(blackL, unsure);
        return this;
    }

    private static Extreme extreme(@Nullable Double l, double unsure) {
        Lab lab = l == null ? null : new Lab(l, 0, 0);
        Lab relative = new Lab(l == null ? 50 : l, 0, 0);
        return new Extreme(lab, relative, null, new Lab(unsure, 0.2, 0.2), 0, 0, 8);
    }

    MadeFindings limitedByScanner() {
        scannerLimited = true;
        return this;
    }

    MadeFindings looked() {
        looked = true;
        return this;
    }

    MadeFindings line(double contrast, double widthMm, SurfaceCause cause) {
        return line(contrast, widthMm, 50, cause);
    }

    MadeFindings line(double contrast, double widthMm, double tintL, SurfaceCause cause) {
        FoundLine line =
                new FoundLine(
                        Along.Y,
                        80,
                        widthMm,
                        contrast,
                        20,
                        List.of("L1"),
                        List.of("L2"),
                        false,
                        tintL);
        lines.add(new PrintLine(1, line, cause, List.of()));
        return looked();
    }

    MadeFindings band(double overThreshold, SurfaceCause cause) {
        FoundBand band =
                new FoundBand(
                        Along.Y, 4, 0.4, overThreshold >= 1, overThreshold, List.of("L1"), false);
        bands.add(new PrintBand(1, band, cause));
        return looked();
    }

    MadeFindings grain(double graininess) {
        PrintSurface.Zone zone = new PrintSurface.Zone(graininess, 0.2);
        grain = new PrintSurface.Grain(zone, zone, zone, zone, 10, true, 12);
        return this;
    }

    MadeFindings gradientStep() {
        vignettes =
                List.of(
                        new PrintSurface.Vignette(
                                1,
                                0,
                                64,
                                100,
                                List.of(new PrintSurface.Step(30, 50, 1.2)),
                                List.of()));
        return this;
    }
}
