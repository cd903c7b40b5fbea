package org.printassay.acceptance;

import java.util.Map;
import java.util.TreeMap;
import java.util.function.IntPredicate;
import org.printassay.colour.Lab;
import org.printassay.colour.Rgb8;
import org.printassay.demo.paper.PaperModel;

/**
 * Figures of a simulated paper from its model, by the definitions: nothing of a print's noise or of
 * its reading. Lightness by CIE 15; sRGB by IEC 61966-2-1; the aim scales Y straight onto paper and
 * black (ISO 18619).
 */
final class PaperTruth {
    private static final double JUST_VISIBLE = 0.5;
    private static final double KAPPA = 24389 / 27.0;

    private PaperTruth() {}

    /** Figures by their keys. */
    static Map<String, Double> of(PaperModel paper) {
        Map<String, Double> truth = new TreeMap<>();
        Lab white = grey(paper, 255);
        Lab black = grey(paper, 0);
        truth.put("white.lab.l", white.l());
        truth.put("white.lab.a", white.a());
        truth.put("white.lab.b", white.b());
        truth.put("black.lab.l", black.l());
        truth.put("tone.meanDeltaLMidtones", tone(paper, 33, 67));
        truth.put("tone.meanDeltaLShadows", tone(paper, 0, 33));
        truth.put("shadows.firstVisible", (double) firstVisible(paper));
        truth.put("highlights.lastVisible", (double) lastVisible(paper));
        chroma(truth, paper, "red", new Rgb8(255, 0, 0));
        chroma(truth, paper, "yellow", new Rgb8(255, 255, 0));
        chroma(truth, paper, "green", new Rgb8(0, 255, 0));
        chroma(truth, paper, "cyan", new Rgb8(0, 255, 255));
        chroma(truth, paper, "blue", new Rgb8(0, 0, 255));
        chroma(truth, paper, "magenta", new Rgb8(255, 0, 255));
        return truth;
    }

    private static Lab grey(PaperModel paper, int level) {
        return paper.colourOf(Rgb8.grey(level));
    }

    private static void chroma(
            Map<String, Double> truth, PaperModel paper, String name, Rgb8 full) {
        truth.put("colours.hues." + name + ".chroma", paper.colourOf(full).chroma());
    }

    /** Mean over levels even in L*, as the chart has them. */
    private static double tone(PaperModel paper, double from, double to) {
        double white = luminance(grey(paper, 255).l());
        double black = luminance(grey(paper, 0).l());
        double sum = 0;
        int n = 0;
        for (int i = 0; i < 33; i++) {
            int level = (int) Math.round(255 * encode(luminance(100 * i / 32.0)));
            double y = decode(level / 255.0);
            double fileL = lightness(y);
            if (fileL >= from && fileL < to) {
                sum += grey(paper, level).l() - lightness(black + y * (white - black));
                n++;
            }
        }
        return sum / n;
    }

    /** Least level from which all that are tested stand out from black. */
    private static int firstVisible(PaperModel paper) {
        double black = grey(paper, 0).l();
        int first = 49;
        for (int level = 48; level >= 1; level--) {
            if (!tested(level)) {
                continue;
            }
            if (grey(paper, level).l() - black < JUST_VISIBLE) {
                break;
            }
            first = level;
        }
        return first;
    }

    private static int lastVisible(PaperModel paper) {
        double white = grey(paper, 255).l();
        int last = 206;
        IntPredicate tested = level -> tested(255 - level);
        for (int level = 207; level <= 254; level++) {
            if (!tested.test(level)) {
                continue;
            }
            if (white - grey(paper, level).l() < JUST_VISIBLE) {
                break;
            }
            last = level;
        }
        return last;
    }

    /** Every level up to 24 from the end, every second one beyond. */
    private static boolean tested(int out) {
        return out <= 24 || out % 2 == 0;
    }

    private static double luminance(double l) {
        return l > 8 ? Math.pow((l + 16) / 116, 3) : l / KAPPA;
    }

    private static double lightness(double y) {
        return y > 216 / 24389.0 ? 116 * Math.cbrt(y) - 16 : KAPPA * y;
    }

    private static double decode(double code) {
        return code <= 0.04045 ? code / 12.92 : Math.pow((code + 0.055) / 1.055, 2.4);
    }

    private static double encode(double y) {
        return y <= 0.0031308 ? 12.92 * y : 1.055 * Math.pow(y, 1 / 2.4) - 0.055;
    }
}
