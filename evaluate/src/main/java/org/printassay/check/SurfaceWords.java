package org.printassay.check;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.Function;
import org.printassay.evaluation.LineWords;
import org.printassay.evaluation.PrintBand;
import org.printassay.evaluation.PrintLine;
import org.printassay.evaluation.SurfaceCause;

/** Lines and bands of a check in plain sentences. */
final class SurfaceWords {
    private SurfaceWords() {}

    /** What is new, or stronger than in the baseline. */
    static void worse(List<String> to, SurfaceChange surface) {
        sentence(to, "new line", surface.newLines(), CheckWords::line, PrintLine::cause);
        sentence(
                to,
                "line stronger than in the baseline",
                surface.worseLines(),
                SurfaceWords::line,
                grown -> grown.after().cause());
        sentence(to, "new visible band", surface.newBands(), CheckWords::band, PrintBand::cause);
        sentence(
                to,
                "visible band stronger than in the baseline",
                surface.worseBands(),
                SurfaceWords::band,
                grown -> grown.after().cause());
    }

    private static <T> void sentence(
            List<String> to,
            String what,
            List<T> all,
            Function<T, String> words,
            Function<T, SurfaceCause> cause) {
        if (all.isEmpty()) {
            return;
        }
        boolean undecided = all.stream().anyMatch(o -> cause.apply(o) == SurfaceCause.UNDECIDED);
        to.add(
                count(all.size(), what)
                        + ": "
                        + CheckWords.some(all.stream().map(words).toList())
                        + (undecided
                                ? ". It may be the scanner's: evaluate scans of both turns"
                                        + " together."
                                : "."));
    }

    /** A line that grew. */
    static String line(Grown<PrintLine> grown) {
        return CheckWords.line(grown.after())
                + String.format(
                        Locale.ROOT,
                        " of %.2f mm (%s of %.2f mm before)",
                        grown.after().line().widthMm(),
                        LineWords.amount(grown.before().line()),
                        grown.before().line().widthMm());
    }

    /** A band that grew. */
    static String band(Grown<PrintBand> grown) {
        return CheckWords.band(grown.after())
                + String.format(
                        Locale.ROOT, " (%.2f before)", grown.before().band().amplitudeDeltaL());
    }

    /** What was there before, and what is gone. */
    static void asBefore(List<String> to, SurfaceChange surface) {
        if (!surface.goneLines().isEmpty()) {
            to.add(
                    count(surface.goneLines().size(), "line")
                            + " of the baseline gone: "
                            + CheckWords.some(
                                    surface.goneLines().stream().map(CheckWords::line).toList())
                            + ".");
        }
        if (!surface.goneBands().isEmpty()) {
            to.add(count(surface.goneBands().size(), "visible band") + " of the baseline gone.");
        }
        if (!surface.oldLines().isEmpty()) {
            to.add(
                    count(surface.oldLines().size(), "line")
                            + " as in the baseline, as far as can be told.");
        }
        if (!surface.oldBands().isEmpty()) {
            to.add(
                    count(surface.oldBands().size(), "visible band")
                            + " as in the baseline, as far as can be told.");
        }
    }

    /** What tints could have told, had they been looked at. */
    static void unlooked(List<String> to, SurfaceChange surface) {
        if (!surface.unlooked().isEmpty()) {
            to.add(
                    capitalised(surface.unlooked())
                            + " were not looked at on every sheet of both prints: scan all of them"
                            + " whole, at 600 samples an inch.");
        }
    }

    /** What the tolerances ask for and these sheets cannot tell. */
    static void notCompared(List<String> to, Check check) {
        SurfaceChange surface = check.surface();
        List<String> asked = new ArrayList<>();
        if (check.tolerances().lineContrast() != null && !surface.linesCompared()) {
            asked.add("lines");
        }
        if (check.tolerances().bandOverThreshold() != null && !surface.bandsCompared()) {
            asked.add("bands");
        }
        asked.removeAll(surface.unlooked());
        if (!asked.isEmpty()) {
            to.add(
                    capitalised(asked)
                            + " were not compared: both prints need scans of 600 samples an inch of"
                            + " a sheet with tints.");
        }
    }

    private static String capitalised(List<String> words) {
        String all = String.join(" and ", words);
        return Character.toUpperCase(all.charAt(0)) + all.substring(1);
    }

    private static String count(int n, String what) {
        int noun = what.indexOf(" stronger");
        String one = noun < 0 ? what : what.substring(0, noun);
        String rest = noun < 0 ? "" : what.substring(noun);
        return n + " " + one + (n == 1 ? "" : "s") + rest;
    }
}
