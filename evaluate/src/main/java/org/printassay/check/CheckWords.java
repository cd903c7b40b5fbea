package org.printassay.check;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import org.printassay.evaluation.PrintBand;
import org.printassay.evaluation.PrintLine;
import org.printassay.evaluation.SurfaceCause;
import org.printassay.surface.Along;

/** A check in plain sentences, most consequential first. */
public final class CheckWords {
    /** Long lists are cut here; the rest is in the results. */
    private static final int SHOWN = 3;

    private CheckWords() {}

    /** The outcome of everything together, one sentence. */
    public static String headline(Check check) {
        String against = "the baseline (tolerances: " + check.tolerances().name() + ")";
        return switch (check.outcome()) {
            case WITHIN -> "Within: nothing has measurably changed against " + against + ".";
            case DRIFTED -> "Drifted: changed, but inside what is allowed against " + against + ".";
            case FAILED -> "Failed: further from " + against + " than is allowed.";
            case CANNOT_TELL ->
                    check.changes().isEmpty()
                            ? "Cannot tell: the prints have nothing in common that can be compared."
                            : "Cannot tell: the print may or may not be as near as is allowed to "
                                    + against
                                    + ".";
        };
    }

    /** Everything worth saying after the headline. */
    public static List<String> sentences(Check check) {
        List<String> all = new ArrayList<>();
        SurfaceChange surface = check.surface();
        if (surface.outcome() == Outcome.FAILED) {
            added(all, surface);
        }
        changes(all, check, Outcome.FAILED);
        if (surface.outcome() == Outcome.CANNOT_TELL) {
            added(all, surface);
        }
        changes(all, check, Outcome.CANNOT_TELL);
        changes(all, check, Outcome.DRIFTED);
        if (surface.outcome() == Outcome.DRIFTED) {
            added(all, surface);
        }
        compared(all, check);
        within(all, check);
        notCompared(all, check);
        return all;
    }

    private static void changes(List<String> to, Check check, Outcome outcome) {
        List<Change> found =
                check.changes().stream()
                        .filter(c -> c.outcome() == outcome)
                        .sorted(Comparator.comparingDouble((Change c) -> -Math.abs(c.share())))
                        .toList();
        List<Change> unknown = found.stream().filter(c -> c.standard() == null).toList();
        for (Change change : found) {
            if (change.standard() != null) {
                to.add(sentence(change));
            }
        }
        if (!unknown.isEmpty()) {
            to.add(
                    "Read once, so nothing tells how sure a change is: "
                            + labels(unknown)
                            + ". Measure every patch twice, or let the logbook tell how prints lie apart.");
        }
    }

    /** What it was held against, and where it is known from how unchanged prints lie apart. */
    public static String basis(Check check) {
        return "Held against " + check.baselineName() + ". " + spread(check);
    }

    /** Where it is known from how unchanged prints lie apart, and over how many prints. */
    public static String spread(Check check) {
        long seen = check.changes().stream().filter(Change::spreadSeen).count();
        String stated = "the tolerances (" + check.tolerances().name() + ")";
        String begin = "How far unchanged prints lie apart is taken from ";
        if (seen == 0) {
            return begin + stated + ".";
        }
        String known = begin + check.seen().words();
        String few =
                check.seen().fromFew() ? " Fewer than 20 prints tell it badly: that widens U." : "";
        return seen == check.changes().size()
                ? known + "." + few
                : known
                        + " for "
                        + seen
                        + " of "
                        + check.changes().size()
                        + " quantities, for the others from "
                        + stated
                        + "."
                        + few;
    }

    /** One change. */
    public static String sentence(Change change) {
        Quantity quantity = change.quantity();
        Double half = change.halfWidth();
        if (half == null) {
            return quantity.label() + ": nothing tells how sure a change is.";
        }
        String limit = number(change.limit(), quantity) + " allowed.";
        String moved =
                quantity.label() + ": " + moved(change) + " (+-" + number(half, quantity) + ")";
        return switch (change.outcome()) {
            case FAILED -> moved + ", more than the " + limit;
            case DRIFTED -> moved + ", a real change inside the " + limit;
            case WITHIN -> moved + ", no measurable change; " + limit;
            case CANNOT_TELL ->
                    half > change.limit()
                            ? moved + ": known less well than the " + limit
                            : moved + ": it may or may not be more than the " + limit;
        };
    }

    private static String moved(Change change) {
        Quantity quantity = change.quantity();
        String place = change.place().isEmpty() ? "" : " " + change.place();
        String by = signed(change.change(), quantity) + " " + quantity.unit() + place;
        return switch (quantity) {
            case SHADOW_SHIFT, HIGHLIGHT_SHIFT -> {
                String from = quantity == Quantity.SHADOW_SHIFT ? "black" : "paper";
                String when = change.change() > 0 ? "later" : "earlier";
                yield "separates from "
                        + from
                        + " "
                        + number(Math.abs(change.change()), quantity)
                        + " levels "
                        + when;
            }
            case MEAN_DRIFT -> number(change.change(), quantity) + " dE00 apart";
            default -> by;
        };
    }

    private static void added(List<String> to, SurfaceChange surface) {
        if (!surface.newLines().isEmpty()) {
            to.add(
                    count(surface.newLines().size(), "new line")
                            + ": "
                            + some(surface.newLines().stream().map(CheckWords::line).toList())
                            + undecided(
                                    surface.newLines().stream()
                                            .anyMatch(l -> l.cause() == SurfaceCause.UNDECIDED)));
        }
        if (!surface.newBands().isEmpty()) {
            to.add(
                    count(surface.newBands().size(), "new visible band")
                            + ": "
                            + some(surface.newBands().stream().map(CheckWords::band).toList())
                            + undecided(
                                    surface.newBands().stream()
                                            .anyMatch(b -> b.cause() == SurfaceCause.UNDECIDED)));
        }
    }

    private static String undecided(boolean any) {
        return any ? ". It may be the scanner's: evaluate scans of both turns together." : ".";
    }

    private static void compared(List<String> to, Check check) {
        SurfaceChange surface = check.surface();
        if (!surface.goneLines().isEmpty()) {
            to.add(
                    count(surface.goneLines().size(), "line")
                            + " of the baseline gone: "
                            + some(surface.goneLines().stream().map(CheckWords::line).toList())
                            + ".");
        }
        if (!surface.goneBands().isEmpty()) {
            to.add(count(surface.goneBands().size(), "visible band") + " of the baseline gone.");
        }
        if (!surface.oldLines().isEmpty()) {
            to.add(count(surface.oldLines().size(), "line") + " as in the baseline.");
        }
        if (!surface.oldBands().isEmpty()) {
            to.add(count(surface.oldBands().size(), "visible band") + " as in the baseline.");
        }
    }

    /** Of sheets without tints nobody expects it. */
    private static void notCompared(List<String> to, Check check) {
        boolean wanted = check.tolerances().lineContrast() != null && check.hasTints();
        if (wanted && !check.surface().linesCompared()) {
            to.add(
                    "Lines were not compared: both prints need scans of 600 samples an inch of a"
                            + " sheet with tints.");
        }
    }

    private static void within(List<String> to, Check check) {
        List<Change> same =
                check.changes().stream().filter(c -> c.outcome() == Outcome.WITHIN).toList();
        if (!same.isEmpty()) {
            to.add(
                    same.size()
                            + " of "
                            + check.changes().size()
                            + " quantities show no measurable change.");
        }
        if (!check.missing().isEmpty()) {
            to.add(
                    "Not judged in both prints: "
                            + String.join(
                                    ", ", check.missing().stream().map(Quantity::label).toList())
                            + ".");
        }
    }

    /** A line in a few words. */
    public static String line(PrintLine line) {
        double contrast = 100 * Math.abs(line.line().contrast());
        String inks =
                line.inks().isEmpty() ? "" : ", suspect ink " + String.join(", ", line.inks());
        return String.format(
                Locale.ROOT,
                "%s line at %.1f mm from the %s, %.0f %%%s",
                line.line().polarity(),
                line.line().positionMm(),
                line.line().along() == Along.Y ? "top" : "left",
                contrast,
                inks);
    }

    /** A band in a few words. */
    public static String band(PrintBand band) {
        return String.format(
                Locale.ROOT,
                "every %.1f mm, %.2f L*",
                band.band().periodMm(),
                band.band().amplitudeDeltaL());
    }

    private static String some(List<String> all) {
        return String.join("; ", all.subList(0, Math.min(SHOWN, all.size())))
                + (all.size() > SHOWN ? " and " + (all.size() - SHOWN) + " more" : "");
    }

    private static String labels(List<Change> changes) {
        return some(changes.stream().map(c -> c.quantity().label()).toList());
    }

    private static String count(int n, String what) {
        return n + " " + what + (n == 1 ? "" : "s");
    }

    private static String number(double value, Quantity quantity) {
        return String.format(Locale.ROOT, "%." + quantity.decimals() + "f", value);
    }

    private static String signed(double value, Quantity quantity) {
        return String.format(Locale.ROOT, "%+." + quantity.decimals() + "f", value);
    }
}
