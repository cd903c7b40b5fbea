package org.printassay.compare;

import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.printassay.colour.Rgb8;
import org.printassay.compare.Uncertainties.Split;
import org.printassay.evaluation.Colours;
import org.printassay.evaluation.Evaluation;
import org.printassay.metric.ColourDetail;
import org.printassay.reading.LabError;
import org.printassay.reading.Reading;

/** Figures of colours, gamut and skin-like tones. */
final class ColourFigures {
    private static final Map<String, Figure> CHROMA =
            Map.of(
                    "red", Figure.CHROMA_RED,
                    "yellow", Figure.CHROMA_YELLOW,
                    "green", Figure.CHROMA_GREEN,
                    "cyan", Figure.CHROMA_CYAN,
                    "blue", Figure.CHROMA_BLUE,
                    "magenta", Figure.CHROMA_MAGENTA);

    private static final Map<String, Rgb8> FULL =
            Map.of(
                    "red", new Rgb8(255, 0, 0),
                    "yellow", new Rgb8(255, 255, 0),
                    "green", new Rgb8(0, 255, 0),
                    "cyan", new Rgb8(0, 255, 255),
                    "blue", new Rgb8(0, 0, 255),
                    "magenta", new Rgb8(255, 0, 255));

    /** How unlike twins of a colour usually are beyond the noise within a patch, chroma and L*. */
    private static final double PLACES = 0.25;

    private final Evaluation evaluation;
    private final Uncertainties uncertainties;

    ColourFigures(Evaluation evaluation, Uncertainties uncertainties) {
        this.evaluation = evaluation;
        this.uncertainties = uncertainties;
    }

    void collect(PrintFigures.Collected to) {
        Colours colours = evaluation.colours();
        if (colours == null) {
            return;
        }
        to.put(
                Figure.COLOURS_MEAN,
                colours.meanDeltaE00(),
                uncertainties.of("colours.meanDeltaE00"));
        to.put(Figure.GAMUT_VOLUME, colours.gamutVolume(), uncertainties.of("colours.gamutVolume"));
        ColourDetail detail = colours.detail();
        if (detail == null) {
            return;
        }
        for (ColourDetail.Hue hue : detail.hues()) {
            Figure figure = CHROMA.get(hue.name());
            if (figure != null) {
                to.put(figure, hue.full().chroma(), patches(List.of(FULL.get(hue.name()))));
            }
        }
        skin(to, detail.skin());
    }

    private void skin(PrintFigures.Collected to, List<ColourDetail.SkinTone> tones) {
        if (tones.isEmpty()) {
            return;
        }
        Split split = patches(tones.stream().map(ColourDetail.SkinTone::rgb).toList());
        to.put(
                Figure.SKIN_MEAN,
                tones.stream().mapToDouble(ColourDetail.SkinTone::deltaE00).average().orElseThrow(),
                split);
        to.put(
                Figure.SKIN_LIGHTNESS,
                tones.stream().mapToDouble(ColourDetail.SkinTone::deltaL).average().orElseThrow(),
                split);
    }

    /** A mean over codes, from how sure each patch is. */
    private Split patches(List<Rgb8> codes) {
        Split white = uncertainties.of("white.lab.a");
        if (uncertainties.of("colours.meanDeltaE00").random() == null) {
            return new Split(null, white.systematic());
        }
        double squares = 0;
        for (Rgb8 code : codes) {
            List<Reading> readings = readings(code).toList();
            if (readings.isEmpty()) {
                return new Split(null, white.systematic());
            }
            double variance = PLACES * PLACES;
            for (Reading reading : readings) {
                LabError error = reading.standardError();
                double chroma = error == null ? 0 : Math.max(error.a(), error.b());
                variance += chroma * chroma / readings.size();
            }
            squares += variance / readings.size();
        }
        return new Split(Math.sqrt(squares) / codes.size(), white.systematic());
    }

    private Stream<Reading> readings(Rgb8 code) {
        return evaluation.patches().stream().filter(r -> r.rgb().equals(code) && r.isSound());
    }
}
