package org.printassay.check;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import org.printassay.evaluation.LineWords;
import org.printassay.evaluation.PrintBand;
import org.printassay.evaluation.PrintLine;
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
            case CANNOT_TELL -> cannotTell(check, against);
        };
    }

    private static String cannotTell(Check check, String against) {
        if (check.untilUnlooked() != Outcome.CANNOT_TELL) {
            return "Cannot tell: "
                    + (check.untilUnlooked() == Outcome.WITHIN
                            ? "within in what could be compared with "
                            : "changed, but inside what is allowed in what could be compared with ")
                    + against
                    + "; "
                    + String.join(" and ", check.surface().unlooked())
                    + " were not looked at.";
        }
        if (!check.changes().isEmpty()) {
            return "Cannot tell: the print may or may not be as near as is allowed to "
                    + against
                    + ".";
        }
        return check.surface().linesCompared() || check.surface().bandsCompared()
                ? "Cannot tell: none of the quantities could be compared."
                : "Cannot tell: the prints have nothing in common that can be compared.";
    }

    /** Everything worth saying after the headline. */
    public static List<String> sentences(Check check) {
        List<String> all = new ArrayList<>();
        SurfaceChange surface = check.surface();
        if (surface.found() == Outcome.FAILED) {
            SurfaceWords.worse(all, surface);
        }
        changes(all, check, Outcome.FAILED);
        if (surface.found() == Outcome.CANNOT_TELL) {
            SurfaceWords.worse(all, surface);
        }
        SurfaceWords.unlooked(all, surface);
        changes(all, check, Outcome.CANNOT_TELL);
        changes(all, check, Outcome.DRIFTED);
        if (surface.found() == Outcome.DRIFTED || surface.found() == Outcome.WITHIN) {
            SurfaceWords.worse(all, surface);
        }
        SurfaceWords.asBefore(all, surface);
        within(all, check);
        SurfaceWords.notCompared(all, check);
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
                            + ". Measure every patch twice"
                            + (logbookWouldTell(check, unknown)
                                    ? ", or let the logbook tell how prints lie apart."
                                    : "."));
        }
    }

    private static boolean logbookWouldTell(Check check, List<Change> unknown) {
        return !check.seen().known()
                && unknown.stream().anyMatch(c -> c.quantity().figure().isPresent());
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
            case DRIFTED -> moved + ", more than chance, inside the " + limit;
            case WITHIN -> moved + ", no measurable change; " + limit;
            case CANNOT_TELL ->
                    change.isByScans()
                            ? moved + ": the scans are not equally sound, so it may be theirs."
                            : half > change.limit()
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
        String inks =
                line.inks().isEmpty() ? "" : ", suspect ink " + String.join(", ", line.inks());
        return String.format(
                Locale.ROOT,
                "%s line at %.1f mm from the %s, %s%s",
                line.line().polarity(),
                line.line().positionMm(),
                line.line().along() == Along.Y ? "top" : "left",
                LineWords.amount(line.line()),
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

    /** A line that is stronger than in the baseline. */
    public static String grownLine(Grown<PrintLine> grown) {
        return SurfaceWords.line(grown);
    }

    /** A band that is stronger than in the baseline. */
    public static String grownBand(Grown<PrintBand> grown) {
        return SurfaceWords.band(grown);
    }

    static String some(List<String> all) {
        return String.join("; ", all.subList(0, Math.min(SHOWN, all.size())))
                + (all.size() > SHOWN ? " and " + (all.size() - SHOWN) + " more" : "");
    }

    private static String labels(List<Change> changes) {
        return some(changes.stream().map(c -> c.quantity().label()).toList());
    }

    private static String number(double value, Quantity quantity) {
        return String.format(Locale.ROOT, "%." + quantity.decimals() + "f", value);
    }

    private static String signed(double value, Quantity quantity) {
        return String.format(Locale.ROOT, "%+." + quantity.decimals() + "f", value);
    }
}
