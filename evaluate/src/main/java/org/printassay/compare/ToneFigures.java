package org.printassay.compare;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.printassay.colour.ToneZone;
import org.printassay.compare.Uncertainties.Split;
import org.printassay.evaluation.Evaluation;
import org.printassay.metric.Coverage;
import org.printassay.metric.Extreme;
import org.printassay.metric.Neutrality;
import org.printassay.metric.Tone;
import org.printassay.metric.Wedge;

/** Figures of white, black, tone, both wedges and greys. */
final class ToneFigures {
    private final Evaluation evaluation;
    private final Uncertainties uncertainties;

    ToneFigures(Evaluation evaluation, Uncertainties uncertainties) {
        this.evaluation = evaluation;
        this.uncertainties = uncertainties;
    }

    void collect(PrintFigures.Collected to) {
        extremes(to);
        Tone tone = evaluation.tone();
        if (tone != null) {
            to.put(Figure.TONE_RMS, tone.rmsDeltaL(), uncertainties.of("tone.rmsDeltaL"));
            zone(to, Figure.TONE_SHADOWS, tone, tone.meanDeltaLShadows(), ToneZone.SHADOWS);
            zone(to, Figure.TONE_MIDTONES, tone, tone.meanDeltaLMidtones(), ToneZone.MIDTONES);
            zone(
                    to,
                    Figure.TONE_HIGHLIGHTS,
                    tone,
                    tone.meanDeltaLHighlights(),
                    ToneZone.HIGHLIGHTS);
        }
        wedge(to, evaluation.shadows(), Figure.SHADOWS_VISIBLE, Figure.SHADOWS_STEPS, "black");
        wedge(
                to,
                evaluation.highlights(),
                Figure.HIGHLIGHTS_VISIBLE,
                Figure.HIGHLIGHTS_STEPS,
                "white");
        greys(to);
    }

    private void extremes(PrintFigures.Collected to) {
        Extreme white = evaluation.white();
        boolean colour = evaluation.neutrality() != null;
        if (white != null && white.lab() != null) {
            to.put(Figure.WHITE_L, white.lab().l(), uncertainties.of("white.lab.l"));
            if (colour) {
                to.put(Figure.WHITE_A, white.lab().a(), uncertainties.of("white.lab.a"));
                to.put(Figure.WHITE_B, white.lab().b(), uncertainties.of("white.lab.b"));
            }
        }
        Extreme black = evaluation.black();
        if (black != null) {
            Split l = uncertainties.of("black.lab.l");
            if (black.lab() != null) {
                to.put(Figure.BLACK_L, black.lab().l(), l);
                to.put(Figure.BLACK_DENSITY, black.density(), uncertainties.of("black.density"));
            }
            Split relative = l.random() == null ? uncertainties.of("tone.rmsDeltaL") : l;
            to.put(Figure.BLACK_RELATIVE_L, black.labRelative().l(), relative);
        }
    }

    /** Mean over a zone: own errors are averaged, those of white and black shift the aim. */
    private void zone(
            PrintFigures.Collected to, Figure figure, Tone tone, double mean, ToneZone zone) {
        List<Tone.Point> points =
                tone.points().stream().filter(p -> ToneZone.of(p.fileL()) == zone).toList();
        if (points.isEmpty()) {
            return;
        }
        double squares =
                points.stream().mapToDouble(p -> p.standardError() * p.standardError()).sum();
        double fromBlack =
                points.stream().mapToDouble(p -> 1 - p.fileL() / 100).average().orElse(0.5);
        double error = Math.sqrt(squares) / points.size();
        Split whole = uncertainties.of("tone.rmsDeltaL");
        if (whole.random() == null) {
            to.put(figure, mean, Split.UNKNOWN);
            return;
        }
        double white = (1 - fromBlack) * random("white.lab.l");
        double black = fromBlack * random("black.lab.l");
        to.put(
                figure,
                mean,
                Math.sqrt(error * error + white * white + black * black),
                whole.systematic());
    }

    private double random(String key) {
        Double random = uncertainties.of(key).random();
        return random == null ? 0 : random;
    }

    private void wedge(
            PrintFigures.Collected to,
            @Nullable Wedge wedge,
            Figure visible,
            Figure steps,
            String anchor) {
        if (wedge == null || wedge.steps().isEmpty()) {
            return;
        }
        Wedge.Interval interval = wedge.interval();
        Integer best = wedge.best();
        to.put(
                visible,
                best,
                interval == null || best == null
                        ? Split.UNKNOWN
                        : new Split(
                                Math.max(
                                        PrintSpread.ROUNDED,
                                        reach(interval, best) / Coverage.NORMAL_95),
                                0));
        // Each visible step costs the threshold: what the whole range is off by, steps are off by.
        double range = random(anchor + ".lab.l") / wedge.threshold();
        to.put(
                steps,
                wedge.visibleSteps(),
                interval == null ? null : Double.valueOf(Math.hypot(0.5, range)),
                0);
    }

    /** How far the interval reaches on its longer side: the best level need not be its middle. */
    private static int reach(Wedge.Interval interval, int best) {
        return Math.max(interval.high() - best, best - interval.low());
    }

    private void greys(PrintFigures.Collected to) {
        Neutrality greys = evaluation.neutrality();
        if (greys == null) {
            return;
        }
        Split a = uncertainties.of("neutrality.cast.a");
        Split b = uncertainties.of("neutrality.cast.b");
        to.put(Figure.CAST_A, greys.cast().a(), a);
        to.put(Figure.CAST_B, greys.cast().b(), b);
        if (a.random() == null || b.random() == null) {
            to.put(Figure.GREYS_CHROMA, greys.meanDeltaCh(), Split.UNKNOWN);
        } else {
            to.put(
                    Figure.GREYS_CHROMA,
                    greys.meanDeltaCh(),
                    Uncertainties.quadraticMean(a.random(), b.random()),
                    Math.max(a.systematic(), b.systematic()));
        }
        cast(to, greys.shadows(), Figure.CAST_SHADOWS_A, Figure.CAST_SHADOWS_B);
        cast(to, greys.highlights(), Figure.CAST_HIGHLIGHTS_A, Figure.CAST_HIGHLIGHTS_B);
    }

    private void cast(
            PrintFigures.Collected to, Neutrality.Cast cast, Figure figureA, Figure figureB) {
        boolean known = uncertainties.of("neutrality.cast.a").random() != null;
        to.put(
                figureA,
                cast.a(),
                known ? uncertainties.of(cast.uncertaintyA(), "neutrality.cast.a") : Split.UNKNOWN);
        to.put(
                figureB,
                cast.b(),
                known ? uncertainties.of(cast.uncertaintyB(), "neutrality.cast.b") : Split.UNKNOWN);
    }
}
