package org.printassay.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import org.printassay.colour.Lab;
import org.printassay.evaluation.Evaluation;
import org.printassay.metric.Derived;
import org.printassay.metric.Extreme;
import org.printassay.metric.Neutrality;
import org.printassay.metric.Tone;
import org.printassay.metric.Wedge;
import org.printassay.reading.StrayLight;

/** The results in single lines, as the report and the comparison show them. */
final class Facts {
    private static final String NOT_JUDGED = "not judged";
    private static final String CLIPPED = "clipped in the scan";

    private Facts() {}

    /** What the first screen must answer. */
    static List<Fact> glance(Evaluation e) {
        List<Fact> out = new ArrayList<>();
        out.add(white(e));
        out.add(black(e));
        Fact contrast = contrast(e);
        if (contrast != null) {
            out.add(contrast);
        }
        out.add(shadows(e.shadows()));
        out.add(highlights(e.highlights()));
        out.add(neutrality(e.neutrality()));
        out.add(tone(e.tone()));
        return out;
    }

    static Fact white(Evaluation e) {
        Extreme x = e.white();
        if (x == null) {
            return Fact.of("Paper white", NOT_JUDGED, "");
        }
        if (x.lab() == null && e.trust().absolute()) {
            return Fact.of("Paper white", NOT_JUDGED, CLIPPED);
        }
        if (x.lab() == null) {
            return Fact.of(
                    "Paper white",
                    "taken as L* 100",
                    "a scan without profile has no absolute white");
        }
        String tint =
                e.neutrality() == null || e.neutrality().paperTintWords() == null
                        ? ""
                        : e.neutrality().paperTintWords() + "; ";
        return new Fact(
                "Paper white",
                Swatch.of(x.lab()),
                "L*\u00a0" + Words.within(x.lab().l(), x.uncertainty().l(), 1) + density(x),
                tint
                        + "a*\u00a0"
                        + Words.within(x.lab().a(), x.uncertainty().a(), 1)
                        + ", b*\u00a0"
                        + Words.within(x.lab().b(), x.uncertainty().b(), 1));
    }

    static Fact black(Evaluation e) {
        Extreme x = e.black();
        if (x == null) {
            return Fact.of("Deepest black", NOT_JUDGED, "");
        }
        if (x.lab() == null && e.trust().absolute()) {
            return Fact.of("Deepest black", NOT_JUDGED, CLIPPED);
        }
        Lab lab = x.lab() != null ? x.lab() : x.labRelative();
        StrayLight stray = e.strayLight();
        String detail =
                x.lab() == null
                        ? "lightness relative to paper, no absolute density"
                        : "a*\u00a0"
                                + Words.within(lab.a(), x.uncertainty().a(), 1)
                                + ", b*\u00a0"
                                + Words.within(lab.b(), x.uncertainty().b(), 1);
        if (stray != null && stray.corrected()) {
            detail += "; stray light removed, was L*\u00a0" + Words.number(stray.blackWithout(), 1);
        }
        return new Fact(
                "Deepest black",
                Swatch.of(lab),
                "L*\u00a0" + Words.within(lab.l(), x.uncertainty().l(), 1) + density(x),
                detail);
    }

    static @Nullable Fact contrast(Evaluation e) {
        Derived d = Derived.of(e.white(), e.black(), e.paperLight());
        if (d == null) {
            return null;
        }
        return Fact.of(
                "Range",
                Words.within(d.contrastStops(), d.contrastUncertainty(), 1) + " stops",
                "from black to paper, " + Words.number(d.contrastDeltaL(), 1) + " L* apart");
    }

    static Fact shadows(@Nullable Wedge w) {
        if (w == null) {
            return Fact.of("Shadows", NOT_JUDGED, "");
        }
        String value =
                w.best() == null
                        ? "no level stands out from black"
                        : w.isRough()
                                ? "open somewhere from level\u00a0" + span(w)
                                : "open from level\u00a0" + w.best();
        return Fact.of("Shadows", value, wedgeDetail(w));
    }

    static Fact highlights(@Nullable Wedge w) {
        if (w == null) {
            return Fact.of("Highlights", NOT_JUDGED, "");
        }
        String value =
                w.best() == null
                        ? "no level stands out from paper"
                        : w.isRough()
                                ? "hold up to somewhere from level\u00a0" + span(w)
                                : "hold up to level\u00a0" + w.best();
        return Fact.of("Highlights", value, wedgeDetail(w));
    }

    private static String span(Wedge w) {
        Wedge.Interval interval = Objects.requireNonNull(w.interval());
        return interval.low() + " to\u00a0" + interval.high();
    }

    private static String wedgeDetail(Wedge w) {
        Wedge.Interval interval = w.interval();
        String sure;
        if (interval == null) {
            sure = "interval unknown";
        } else if (interval.low() == interval.high()) {
            sure = "95\u00a0%: level\u00a0" + interval.low();
        } else {
            sure = "95\u00a0%: level\u00a0" + interval.low() + " to\u00a0" + interval.high();
        }
        return sure
                + "; "
                + w.visibleSteps()
                + " visible steps, the aim has\u00a0"
                + w.aimVisibleSteps();
    }

    static Fact neutrality(@Nullable Neutrality n) {
        if (n == null) {
            return Fact.of("Greys", NOT_JUDGED, "");
        }
        Neutrality.Cast cast = n.cast();
        String words = cast.words().isEmpty() ? "" : cast.words() + "; ";
        return Fact.of(
                "Greys",
                "dCh " + Words.number(n.meanDeltaCh(), 1) + " mean",
                words
                        + "largest "
                        + largest(n)
                        + "; da*\u00a0"
                        + signedWithin(cast.a(), cast.uncertaintyA())
                        + ", db*\u00a0"
                        + signedWithin(cast.b(), cast.uncertaintyB()));
    }

    private static String largest(Neutrality n) {
        return Words.number(n.maxDeltaCh(), 1) + " at level\u00a0" + n.maxAtLevel();
    }

    static Fact tone(@Nullable Tone t) {
        if (t == null) {
            return Fact.of("Tone", NOT_JUDGED, "");
        }
        return Fact.of(
                "Tone",
                "dL* " + Words.within(t.rmsDeltaL(), t.rmsUncertainty(), 1) + " RMS",
                "off the aim by at most "
                        + Words.signed(t.maxDeltaL(), 1)
                        + " at level\u00a0"
                        + t.maxAtLevel());
    }

    /** A lean with its uncertainty. */
    static String signedWithin(double value, double halfWidth) {
        return Words.signed(value, 1) + "\u00a0\u00b1\u00a0" + Words.number(halfWidth, 1);
    }

    private static String density(Extreme x) {
        return x.density() == null ? "" : ", density\u00a0" + Words.number(x.density(), 2);
    }
}
