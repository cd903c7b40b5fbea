package org.printassay.report;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.printassay.evaluation.Colours;
import org.printassay.metric.ColourDetail;
import org.printassay.report.plot.GamutPlot;

/** The sections of the report on colours and skin-like tones. */
final class ColourParts {
    private ColourParts() {}

    static ReportView.@Nullable Part colours(@Nullable Colours colours) {
        ColourDetail detail = colours == null ? null : colours.detail();
        if (colours == null || detail == null) {
            return null;
        }
        List<Fact> facts = new ArrayList<>();
        facts.add(
                Fact.of(
                        "Against the aim",
                        "dE00 " + Words.number(colours.meanDeltaE00(), 1) + " mean",
                        "95 of 100 within "
                                + Words.number(detail.percentile95DeltaE00(), 1)
                                + ", largest "
                                + Words.number(detail.maxDeltaE00(), 1)
                                + " at "
                                + detail.maxAt().r()
                                + " "
                                + detail.maxAt().g()
                                + " "
                                + detail.maxAt().b()));
        if (detail.gamutVolume() != null) {
            facts.add(
                    Fact.of(
                            "Gamut",
                            Parts.grouped(detail.gamutVolume()) + " cubic units",
                            Words.number(100 * detail.gamutVolume() / detail.aimVolume(), 0)
                                    + " % of its aim, the file's colours on this paper's white and"
                                    + " black"));
        }
        for (ColourDetail.Hue hue : detail.hues()) {
            facts.add(hue(hue));
        }
        List<Plot> figures =
                detail.slices().isEmpty()
                        ? List.of()
                        : List.of(
                                new Plot(
                                        "gamut",
                                        width -> GamutPlot.slices(detail, width),
                                        Plot.WIDE));
        return new ReportView.Part(
                "colours",
                "Colours",
                "Gamut cut at six lightnesses: filled what the print reaches, broken line what is"
                        + " aimed at. Differences are against the file's colour on this paper's white"
                        + " and black.",
                figures,
                List.of(),
                "",
                facts);
    }

    private static Fact hue(ColourDetail.Hue hue) {
        String name = Character.toUpperCase(hue.name().charAt(0)) + hue.name().substring(1);
        String more =
                hue.noMoreFromPercent() == null
                        ? ""
                        : "; no more colour from "
                                + hue.noMoreFromPercent()
                                + "\u00a0% of full colour on";
        return new Fact(
                name,
                Swatch.of(hue.full()),
                "chroma "
                        + Words.number(hue.full().chroma(), 0)
                        + " of "
                        + Words.number(hue.aim().chroma(), 0),
                "dE00\u00a0"
                        + Words.number(hue.deltaE00(), 1)
                        + ", dC*\u00a0"
                        + Words.signed(hue.deltaChroma(), 1)
                        + ", dH*\u00a0"
                        + Words.signed(hue.deltaHue(), 1)
                        + more);
    }

    static ReportView.@Nullable Part skin(@Nullable Colours colours) {
        ColourDetail detail = colours == null ? null : colours.detail();
        if (detail == null || detail.skin().isEmpty()) {
            return null;
        }
        List<Fact> facts = new ArrayList<>();
        for (ColourDetail.SkinTone tone : detail.skin()) {
            facts.add(
                    new Fact(
                            "L*\u00a0" + Words.number(tone.aim().l(), 0),
                            Swatch.of(tone.measured()),
                            tone.words(),
                            "dE00\u00a0"
                                    + Words.number(tone.deltaE00(), 1)
                                    + ", dL*\u00a0"
                                    + Words.signed(tone.deltaL(), 1)
                                    + ", dC*\u00a0"
                                    + Words.signed(tone.deltaChroma(), 1)
                                    + ", hue\u00a0"
                                    + Words.signed(tone.hueShiftDegrees(), 0)
                                    + "\u00b0"));
        }
        return new ReportView.Part(
                "skin",
                "Skin-like tones",
                "Each tone as printed above, as aimed at below, with its dE00.",
                List.of(
                        new Plot(
                                "skin-plot",
                                (width, tall) -> GamutPlot.skin(detail, width, tall),
                                Plot.WIDE)),
                List.of(),
                "",
                facts);
    }
}
