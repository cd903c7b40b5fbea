package org.printassay.surface;

import java.util.ArrayList;
import java.util.List;
import org.printassay.colour.Rgb8;

/**
 * What a line does to each channel of one tint that shows it: an ink that is missing lightens the
 * light that it absorbs most.
 *
 * @param tint codes of the tint
 * @param contrasts dR/R in red, green and blue
 * @param errors standard errors of these
 */
public record LineColour(Rgb8 tint, List<Double> contrasts, List<Double> errors) {
    /** Looked at so far on each side of the line. */
    private static final double AROUND_MM = 1.4;

    /** A tint may show the line so far from the place that all tints agree on. */
    private static final double WITHIN_MM = 0.15;

    private static final int CHANNELS = 3;

    /**
     * Neighbouring bins share blur and grain: what is left tells less of the error than its sum.
     */
    private static final double ALIKE = 2;

    public LineColour {
        contrasts = List.copyOf(contrasts);
        errors = List.copyOf(errors);
    }

    /**
     * The colours of a line in tints that show it; none of a grey scan.
     *
     * @param tints that show it
     * @param sigmaMm blur of print and scan together
     */
    public static List<LineColour> of(List<TintTrace> tints, double sigmaMm, FoundLine line) {
        List<LineColour> colours = new ArrayList<>();
        for (TintTrace tint : tints) {
            int from = (int) Math.ceil(tint.binOf(line.positionMm() - AROUND_MM));
            int to = (int) Math.floor(tint.binOf(line.positionMm() + AROUND_MM)) + 1;
            from = Math.max(0, from);
            to = Math.min(tint.bins(), to);
            if (tint.channels() == CHANNELS && to - from > 4) {
                colours.add(of(tint, from, to, sigmaMm, line));
            }
        }
        return colours;
    }

    private static LineColour of(TintTrace tint, int from, int to, double sigmaMm, FoundLine line) {
        double[][] light = new double[CHANNELS][];
        for (int c = 0; c < CHANNELS; c++) {
            light[c] = tint.channel(c, from, to);
        }
        double most = -1;
        List<LineFit> best = List.of();
        double step = tint.stepMm() / 2;
        for (double away = -WITHIN_MM; away <= WITHIN_MM; away += step) {
            double[] shape = new double[to - from];
            for (int i = 0; i < shape.length; i++) {
                double at = tint.positionMm(from + i) - line.positionMm() - away;
                shape[i] = LineFilter.shape(at, line.widthMm(), sigmaMm);
            }
            List<LineFit> fits = new ArrayList<>();
            double explained = 0;
            for (double[] channel : light) {
                LineFit fit = LineFit.of(shape, channel);
                fits.add(fit);
                explained += fit.explained();
            }
            if (explained > most) {
                most = explained;
                best = fits;
            }
        }
        return new LineColour(
                tint.rgb(),
                best.stream().map(LineFit::height).toList(),
                best.stream().map(fit -> ALIKE * fit.error()).toList());
    }
}
