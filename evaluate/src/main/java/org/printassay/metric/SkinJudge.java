package org.printassay.metric;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.printassay.colour.DeltaE;
import org.printassay.colour.Lab;
import org.printassay.colour.PaperAim;
import org.printassay.colour.Rgb8;
import org.printassay.reading.Reading;
import org.printassay.reading.ReadingSet;
import org.printassay.sheet.Section;

/** Skin-like tones against their aim, one by one and in words. */
final class SkinJudge {
    /** A difference that most would not see between two prints side by side; common practice. */
    private static final double AS_AIMED = 1.5;

    /** Parts of a difference that are worth a word. */
    private static final double WORTH_L = 1;

    private static final double WORTH_CHROMA = 1;
    private static final double WORTH_HUE = 1;

    private SkinJudge() {}

    static List<ColourDetail.SkinTone> tones(ReadingSet set, PaperAim aim) {
        Set<Rgb8> codes =
                set.readings().stream()
                        .filter(r -> r.section().equals(Optional.of(Section.SKIN)))
                        .map(Reading::rgb)
                        .collect(Collectors.toSet());
        List<ColourDetail.SkinTone> tones = new ArrayList<>();
        for (Map.Entry<Rgb8, Lab> mean : ColourJudge.means(set).entrySet()) {
            if (codes.contains(mean.getKey())) {
                Lab wanted = aim.absoluteLab(set.space(), mean.getKey());
                tones.add(tone(mean.getKey(), mean.getValue(), wanted));
            }
        }
        tones.sort(Comparator.comparingDouble(tone -> tone.aim().l()));
        return tones;
    }

    private static ColourDetail.SkinTone tone(Rgb8 code, Lab measured, Lab aim) {
        double deltaE = DeltaE.ciede2000(aim, measured);
        double shift = measured.hueDegrees() - aim.hueDegrees();
        double turned = shift - 360 * Math.rint(shift / 360);
        double deltaL = measured.l() - aim.l();
        double deltaChroma = measured.chroma() - aim.chroma();
        double deltaHue = Math.copySign(Math.abs(DeltaE.deltaHab(aim, measured)), turned);
        return new ColourDetail.SkinTone(
                code,
                measured,
                aim,
                deltaE,
                deltaL,
                deltaChroma,
                turned,
                deltaE < AS_AIMED ? "as aimed" : words(deltaL, deltaChroma, deltaHue));
    }

    /** What differs, in words, such as "darker, redder". */
    static String words(double deltaL, double deltaChroma, double deltaHue) {
        List<String> parts = new ArrayList<>();
        if (Math.abs(deltaL) >= WORTH_L) {
            parts.add(deltaL < 0 ? "darker" : "lighter");
        }
        if (Math.abs(deltaChroma) >= WORTH_CHROMA) {
            parts.add(deltaChroma < 0 ? "duller" : "more colourful");
        }
        if (Math.abs(deltaHue) >= WORTH_HUE) {
            parts.add(deltaHue < 0 ? "redder" : "yellower");
        }
        return parts.isEmpty() ? "a little off" : String.join(", ", parts);
    }
}
