package org.printassay.evaluation;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import org.printassay.calibrate.codes.ScanPart;
import org.printassay.colour.Lab;
import org.printassay.robust.Median;
import org.printassay.sample.PatchSample;
import org.printassay.sample.SheetSamples;
import org.printassay.sample.SurfaceSamples;
import org.printassay.sheet.Artwork;
import org.printassay.sheet.RectMm;
import org.printassay.sheet.Section;
import org.printassay.surface.Along;
import org.printassay.surface.TintTrace;
import org.printassay.texture.ContourSteps;

/** Steps in vignettes, where a smooth one was printed. */
final class VignetteJudge {
    /** Side of the squares of lossy coding in which lightness is kept, pixels (ISO/IEC 10918-1). */
    private static final int BLOCK = 8;

    /** From this quality on squares keep what slopes within them (common practice, no source). */
    private static final int FINE = 93;

    /** Tone on either side of a step is taken from here to there, millimetres from it. */
    private static final double BESIDE_MM = 0.3;

    private static final double TO_MM = 1.1;

    private VignetteJudge() {}

    /** Steps in every vignette of the first scan of each sheet that shows any; null when none. */
    static @Nullable List<PrintSurface.Vignette> judge(List<ScanPart> parts) {
        Map<Integer, List<PrintSurface.Vignette>> bySheet = new TreeMap<>();
        for (ScanPart part : parts) {
            SheetSamples samples = part.samples();
            int sheet = samples.located().sheet().number();
            double paper = paper(samples);
            if (samples.surface().vignettes().isEmpty() || !(paper > 0)) {
                continue;
            }
            GreyTones greys = GreyTones.of(samples, paper);
            List<PrintSurface.Vignette> found = new ArrayList<>();
            for (SurfaceSamples.Gradient gradient : samples.surface().vignettes()) {
                found.add(vignette(part, sheet, gradient, paper, greys));
            }
            bySheet.putIfAbsent(sheet, found);
        }
        List<PrintSurface.Vignette> all = new ArrayList<>();
        bySheet.values().forEach(all::addAll);
        return bySheet.isEmpty() ? null : all;
    }

    /** Lossy coding makes steps of its own: as with codes of the file, what is visible beside. */
    private static PrintSurface.Vignette vignette(
            ScanPart part,
            int sheet,
            SurfaceSamples.Gradient gradient,
            double paper,
            GreyTones greys) {
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
        double codeMm = Math.max(area.width() / Math.abs(to - from), blockMm(part.samples()));
        List<PrintSurface.Step> steps = new ArrayList<>();
        List<PrintSurface.Step> scanners = new ArrayList<>();
        for (ContourSteps.Step step :
                ContourSteps.find(lightness, strips, trace.stepMm(), codeMm)) {
            double at = trace.positionMm(step.at());
            double there = Math.max(0, light[(int) step.at()]);
            double least = ContourSteps.VISIBLE_L + part.codingStep(there, paper);
            boolean covered =
                    !fits(gradient, greys, paper, at - TO_MM, step)
                            || !fits(gradient, greys, paper, at + BESIDE_MM, step);
            if (covered || Math.abs(step.deltaL()) < least) {
                continue;
            }
            boolean scanner =
                    isScanners(part.samples(), trace, at, lightness[(int) step.at()], step);
            (scanner ? scanners : steps)
                    .add(new PrintSurface.Step(level(gradient.vignette(), at), at, step.deltaL()));
        }
        return new PrintSurface.Vignette(sheet, from, to, area.centre().y(), steps, scanners);
    }

    /**
     * Whether a vignette, some way from a place on, may be what its codes print as: not covered.
     */
    private static boolean fits(
            SurfaceSamples.Gradient gradient,
            GreyTones greys,
            double paper,
            double fromMm,
            ContourSteps.Step step) {
        TintTrace trace = gradient.trace();
        double[] light = trace.meanLuminance();
        int first = (int) Math.max(0, trace.binOf(fromMm));
        int after = (int) Math.min(light.length, trace.binOf(fromMm + TO_MM - BESIDE_MM) + 1);
        double middle = Median.of(Arrays.copyOfRange(light, Math.min(first, after), after));
        double code = level(gradient.vignette(), fromMm + (TO_MM - BESIDE_MM) / 2);
        return Double.isNaN(middle) || greys.fits(code, middle / paper, Math.abs(step.deltaL()));
    }

    /** Code of a vignette at a place of the page, across. */
    private static double level(Artwork.Vignette vignette, double atMm) {
        double share = (atMm - vignette.area().x()) / vignette.area().width();
        return vignette.fromLevel() + share * (vignette.toLevel() - vignette.fromLevel());
    }

    /**
     * Whether bare paper shows a step too, in the column of the scan that it stands in. A hair on
     * one margin is no fault of the scanner: all margins that reach there must show it.
     */
    private static boolean isScanners(
            SheetSamples samples,
            TintTrace trace,
            double at,
            double lightness,
            ContourSteps.Step step) {
        ScanColumns columns = new ScanColumns(samples.located().placement());
        boolean shows = false;
        for (TintTrace paper : samples.surface().paper()) {
            double there = columns.through(Along.X, at, trace.acrossMm(), paper.acrossMm());
            double middle = Median.of(paper.meanLuminance());
            double[][] strips =
                    Arrays.stream(paper.stripLuminance())
                            .map(strip -> lightness(strip, middle))
                            .toArray(double[][]::new);
            Optional<Boolean> goesOn =
                    ContourSteps.goesOn(
                            strips, paper.binOf(there), paper.stepMm(), lightness, step.deltaL());
            if (goesOn.isPresent() && !goesOn.get()) {
                return false;
            }
            shows |= goesOn.isPresent();
        }
        return shows;
    }

    /** Length over which coarse lossy coding may keep but one tone; 0 without. */
    private static double blockMm(SheetSamples samples) {
        boolean keeps =
                samples.scan()
                        .coding()
                        .map(coding -> coding.quality() < FINE)
                        .orElse(samples.scan().lossy());
        return keeps ? BLOCK / samples.located().placement().samplesPerMm() : 0;
    }

    private static double[] lightness(double[] light, double paper) {
        return Arrays.stream(light).map(l -> Lab.lightness(Math.max(0, l / paper))).toArray();
    }

    /** Luminance of device light on bare paper; NaN when no window was read. */
    private static double paper(SheetSamples samples) {
        double[] values =
                samples.samples().stream()
                        .filter(sample -> sample.patch().section() == Section.PAPER)
                        .mapToDouble(VignetteJudge::luminance)
                        .toArray();
        return Median.of(values);
    }

    static double luminance(PatchSample sample) {
        return 0.2126 * sample.linear().r()
                + 0.7152 * sample.linear().g()
                + 0.0722 * sample.linear().b();
    }
}
