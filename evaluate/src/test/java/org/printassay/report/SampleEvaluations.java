package org.printassay.report;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.geom.Point2D;
import java.awt.image.BufferedImage;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.printassay.calibrate.Unevenness;
import org.printassay.colour.Lab;
import org.printassay.colour.PaperAim;
import org.printassay.colour.Rgb8;
import org.printassay.colour.RgbSpace;
import org.printassay.evaluation.Colours;
import org.printassay.evaluation.Evaluation;
import org.printassay.evaluation.Evenness;
import org.printassay.evaluation.Finding;
import org.printassay.evaluation.PlacementSummary;
import org.printassay.evaluation.PrintDetails;
import org.printassay.evaluation.SourceFile;
import org.printassay.metric.Extreme;
import org.printassay.metric.LevelStep;
import org.printassay.metric.Neutrality;
import org.printassay.metric.Tone;
import org.printassay.metric.Verdict;
import org.printassay.metric.Wedge;
import org.printassay.reading.LabError;
import org.printassay.reading.Reading;
import org.printassay.reading.ReadingFlag;
import org.printassay.reading.StrayLight;
import org.printassay.reading.Trust;
import org.printassay.reading.Warning;
import org.printassay.reading.WarningCode;
import org.printassay.sheet.PointMm;
import org.printassay.sheet.Section;

/** Simulated evaluations, made by hand from a simple paper; nothing in them was measured. */
final class SampleEvaluations {
    private static final double THRESHOLD = 0.5;

    private final Lab white;
    private final double blackL;
    private final int knee;
    private final double leanB;

    private SampleEvaluations(Lab white, double blackL, int knee, double leanB) {
        this.white = white;
        this.blackL = blackL;
        this.knee = knee;
        this.leanB = leanB;
    }

    /** A dull, warm paper that blocks early. */
    static Evaluation matt() {
        return new SampleEvaluations(new Lab(94.1, 0.4, 4.6), 19.5, 11, 1.1)
                .evaluation("Simulated matt A", Trust.PROFILED_SCAN);
    }

    /** A bright, cool paper with a deep black. */
    static Evaluation gloss() {
        return new SampleEvaluations(new Lab(95.6, 0.6, -4.2), 6.1, 3, -0.7)
                .evaluation("Simulated gloss B", Trust.CALIBRATED_SCAN);
    }

    /** As if a print had been read on a scanner, through a profile. */
    static Evaluation readBy(Evaluation e, String scanner, String family, String profile) {
        PlacementSummary p =
                new PlacementSummary("scan-a.tif", 1, 14, 14, 0.031, null, null, 0, 24, profile);
        return e.toBuilder()
                .details(new PrintDetails("Paper A", "Printer A", null, null, scanner, family))
                .placements(List.of(p))
                .build();
    }

    /** A paper between the two. */
    static Evaluation satin() {
        return new SampleEvaluations(new Lab(95.0, -0.2, -0.9), 9.4, 6, 0.2)
                .evaluation("Simulated satin C", Trust.INSTRUMENT);
    }

    /** A scan without profile. */
    static Evaluation plain() {
        return new SampleEvaluations(new Lab(100, 0, 0), 15, 8, 0.5)
                .evaluation("Simulated plain scan", Trust.PLAIN_SCAN);
    }

    /** Nothing was judged and nothing is known. */
    static Evaluation empty() {
        return Evaluation.builder(Trust.INSTRUMENT, "srgb").build();
    }

    /** As {@link #matt}, with text from outside that tries to be something else. */
    static Evaluation hostile() {
        Evaluation e = matt();
        Reading first = e.patches().get(0);
        List<Reading> patches = new ArrayList<>(e.patches());
        patches.set(
                0,
                new Reading(
                        "=cmd()",
                        Optional.empty(),
                        first.rgb(),
                        first.lab(),
                        first.labRelative(),
                        null,
                        null,
                        Set.of(),
                        null,
                        1));
        String bad = "<script>alert(1)</script>\"'&\u0007";
        return e.toBuilder()
                .sheets(List.of(1, 2))
                .details(new PrintDetails(bad, bad, "<img src=x onerror=alert(1)>", 0.5))
                .fromScan(true)
                .files(List.of(new SourceFile(bad, "0".repeat(64))))
                .placements(List.of(new PlacementSummary(bad, 1, 3, 12, 0.1, null, null, -90, 6)))
                .patches(patches)
                .warnings(List.of(new Warning(WarningCode.DRYING, bad)))
                .findings(List.of(new Finding("tone", bad, bad, bad)))
                .build();
    }

    /** A drawing of a scan: grey patches on paper, turned a little. */
    static ScanPreview preview(String file) {
        BufferedImage image = new BufferedImage(640, 880, BufferedImage.TYPE_INT_RGB);
        Graphics2D g = image.createGraphics();
        g.setColor(new Color(60, 60, 60));
        g.fillRect(0, 0, 640, 880);
        g.rotate(0.012, 320, 440);
        g.setColor(new Color(243, 241, 234));
        g.fillRect(20, 20, 600, 840);
        List<List<Point2D>> patches = new ArrayList<>();
        for (int row = 0; row < 26; row++) {
            for (int column = 0; column < 22; column++) {
                float hue = (row * 22 + column) * 0.0137f;
                g.setColor(Color.getHSBColor(hue, row % 3 == 0 ? 0.6f : 0.05f, 0.2f + row / 34f));
                g.fillRect(70 + column * 23, 130 + row * 25, 22, 24);
                patches.add(corners(74 + column * 23, 134 + row * 25, 14, 16));
            }
        }
        List<List<Point2D>> markers = new ArrayList<>();
        for (int i = 0; i < 12; i++) {
            int x = 40 + (i % 6) * 100;
            int y = i < 6 ? 50 : 800;
            g.setColor(Color.BLACK);
            g.fillRect(x, y, 34, 34);
            markers.add(corners(x, y, 34, 34));
        }
        g.dispose();
        return new ScanPreview(file, image, patches, patches.subList(40, 46), markers);
    }

    private static List<Point2D> corners(double x, double y, double w, double h) {
        List<Point2D> out = new ArrayList<>();
        for (double[] c : new double[][] {{x, y}, {x + w, y}, {x + w, y + h}, {x, y + h}}) {
            double dx = c[0] - 320;
            double dy = c[1] - 440;
            double cos = Math.cos(0.012);
            double sin = Math.sin(0.012);
            out.add(new Point2D.Double(320 + dx * cos - dy * sin, 440 + dx * sin + dy * cos));
        }
        return out;
    }

    private Evaluation evaluation(String paper, Trust trust) {
        boolean absolute = trust.absolute();
        boolean scan = trust != Trust.INSTRUMENT;
        Wedge shadows = shadows();
        Wedge highlights = highlights();
        Lab black = measured(0);
        return Evaluation.builder(trust, "srgb")
                .chartId("K7Q2MD")
                .sheets(List.of(1))
                .print(1)
                .details(
                        new PrintDetails(
                                paper,
                                "Simulated pigment printer",
                                "relative colorimetric with black point compensation",
                                26.0))
                .fromScan(scan)
                .files(
                        List.of(
                                new SourceFile(
                                        scan ? "scan-a.tif" : "print-a.txt", "5f".repeat(32))))
                .placements(
                        scan
                                ? List.of(
                                        new PlacementSummary(
                                                "scan-a.tif",
                                                1,
                                                14,
                                                14,
                                                0.031,
                                                0.9991,
                                                1.0004,
                                                0.69,
                                                23.622))
                                : List.of())
                .white(
                        new Extreme(
                                absolute ? white : null,
                                new Lab(100, 0, 0),
                                absolute ? 0.06 : null,
                                new Lab(0.6, 0.3, 0.4),
                                0.5,
                                255,
                                16))
                .black(
                        new Extreme(
                                absolute ? black : null,
                                new Lab(black.l() * 100 / white.l(), black.a(), black.b()),
                                absolute ? -Math.log10(Lab.luminanceFactor(black.l())) : null,
                                new Lab(0.7, 0.3, 0.3),
                                0.5,
                                0,
                                5))
                .patches(patches(absolute))
                .tone(tone())
                .shadows(shadows)
                .highlights(highlights)
                .neutrality(neutrality(absolute))
                .colours(absolute ? new Colours(2.64, 512_384.0, null) : null)
                .evenness(new Evenness(0.83, 3.4, new Unevenness(3.0, 0.8, 1.2), null))
                .strayLight(
                        scan
                                ? new StrayLight(0.0132, 0.0011, 0.021, 6.2, true, blackL + 2.1)
                                : null)
                .warnings(warnings(trust))
                .findings(findings(shadows, highlights))
                .build();
    }

    private static List<Warning> warnings(Trust trust) {
        return switch (trust) {
            case PLAIN_SCAN ->
                    List.of(
                            new Warning(
                                    WarningCode.PLAIN_SCAN,
                                    "The scan has no profile: only relative results are given."),
                            new Warning(
                                    WarningCode.THRESHOLD_APPROXIMATE,
                                    "Levels come from a scan without profile and hold roughly."));
            case PROFILED_SCAN ->
                    List.of(
                            new Warning(
                                    WarningCode.EXPOSURE_UNKNOWN,
                                    "Absolute lightness is true only if the scanner's automatic"
                                            + " exposure was off."),
                            new Warning(
                                    WarningCode.STRAY_LIGHT,
                                    "Stray light of 1.3 % was found and removed."));
            default -> List.of();
        };
    }

    private List<Finding> findings(Wedge shadows, Wedge highlights) {
        int best = shadows.best() == null ? 48 : shadows.best();
        int last = highlights.best() == null ? 207 : highlights.best();
        return List.of(
                new Finding(
                        "shadows",
                        "Levels 0 to " + (best - 1) + " print as one black.",
                        "0 to " + (best - 3) + " at least, 0 to " + (best + 1) + " at most (95 %).",
                        "Keep detail that must be seen at " + (best + 2) + " or above."),
                new Finding(
                        "highlights",
                        "Highlights hold up to level " + last + "; above it the paper shows.",
                        "Between " + (last - 1) + " and " + (last + 1) + " (95 %).",
                        "Bring wanted detail below " + last + "."),
                new Finding(
                        "neutrality",
                        leanB > 0.4 ? "Greys lean slightly warm." : "Greys follow the paper.",
                        "Mean db* " + leanB + " \u00b1 0.3.",
                        ""),
                new Finding(
                        "tone",
                        "The print matches the file within what can be seen.",
                        "RMS difference 0.9 \u00b1 0.2 dL*.",
                        "If it looks darker than the screen, lower the screen or raise the viewing"
                                + " light."));
    }

    private Lab aim(int level) {
        return PaperAim.relativeColorimetric(white, new Lab(blackL, 0, 0))
                .absoluteLab(RgbSpace.SRGB, Rgb8.grey(level));
    }

    /** The aim with a knee: below it nothing but black. */
    private Lab measured(int level) {
        double excess = level - knee;
        double kept = level <= knee ? 0 : knee + excess - knee * Math.exp(-excess / 9.0);
        int below = (int) Math.floor(kept);
        double share = kept - below;
        Lab one = aim(below);
        Lab two = aim(Math.min(255, below + 1));
        double l = one.l() + share * (two.l() - one.l());
        double wave = 1.1 * Math.sin(level / 255.0 * Math.PI * 1.4);
        double tint = l / white.l();
        double lean = leanB * Math.sin(level / 255.0 * Math.PI);
        return new Lab(
                l + (level > knee ? wave * Math.min(1, excess / 60) * (1 - tint * tint) : 0),
                white.a() * tint + 0.4 * lean,
                white.b() * tint + lean);
    }

    private Wedge shadows() {
        List<LevelStep> steps = new ArrayList<>();
        for (int level = 1; level <= 48; level += level < 24 ? 1 : 2) {
            double wiggle = 0.06 * Math.sin(level * 2.3);
            double difference = measured(level).l() - measured(0).l() + wiggle;
            steps.add(step(level, difference, aim(level).l() - aim(0).l()));
        }
        return wedge(steps, true);
    }

    private Wedge highlights() {
        List<LevelStep> steps = new ArrayList<>();
        for (int level = 207; level < 255; level += level < 231 ? 2 : 1) {
            double wiggle = 0.05 * Math.sin(level * 1.9);
            double difference = white.l() - measured(level).l() + wiggle;
            steps.add(step(level, difference, white.l() - aim(level).l()));
        }
        return wedge(steps, false);
    }

    private LevelStep step(int level, double difference, double aim) {
        double half = 0.22 + 0.01 * Math.abs(difference);
        Verdict verdict =
                difference - half >= THRESHOLD
                        ? Verdict.SEPARATED
                        : difference + half < THRESHOLD ? Verdict.MERGED : Verdict.UNCERTAIN;
        return new LevelStep(
                level,
                difference,
                difference - half,
                difference + half,
                aim,
                verdict,
                measured(level),
                4);
    }

    private static Wedge wedge(List<LevelStep> steps, boolean shadows) {
        List<LevelStep> inward = new ArrayList<>(steps);
        if (!shadows) {
            java.util.Collections.reverse(inward);
        }
        Integer merged = null;
        Integer best = null;
        Integer separated = null;
        for (LevelStep s : inward) {
            if (s.verdict() == Verdict.MERGED && separated == null && best == null) {
                merged = s.level();
            }
            if (best == null && s.difference() >= THRESHOLD) {
                best = s.level();
            }
            if (separated == null && s.verdict() == Verdict.SEPARATED) {
                separated = s.level();
            }
        }
        Wedge.Interval interval = null;
        if (separated != null) {
            int outer = merged == null ? (shadows ? 1 : 255) : merged + (shadows ? 1 : -1);
            interval =
                    shadows
                            ? new Wedge.Interval(outer, separated)
                            : new Wedge.Interval(separated, outer);
        }
        return new Wedge(
                THRESHOLD, merged, separated, best, interval, 14, 18, 0.82, List.of(), steps);
    }

    private Tone tone() {
        List<Tone.Point> points = new ArrayList<>();
        double squares = 0;
        double most = 0;
        int at = 0;
        for (int i = 0; i <= 32; i++) {
            int level = Math.round(i * 255f / 32);
            double delta = measured(level).l() - aim(level).l();
            squares += delta * delta;
            if (Math.abs(delta) > Math.abs(most)) {
                most = delta;
                at = level;
            }
            points.add(
                    new Tone.Point(
                            level,
                            RgbSpace.SRGB.toLab(Rgb8.grey(level)).l(),
                            measured(level).l(),
                            aim(level).l(),
                            0.14,
                            1));
        }
        return new Tone(
                "relative colorimetric with black point compensation onto this paper",
                Math.sqrt(squares / 33),
                0.2,
                most,
                at,
                -0.6,
                0.4,
                0.2,
                true,
                List.of(),
                points,
                List.of());
    }

    private Neutrality neutrality(boolean absolute) {
        List<Neutrality.Point> points = new ArrayList<>();
        for (int i = 0; i <= 32; i++) {
            int level = Math.round(i * 255f / 32);
            Lab lab = measured(level);
            double tint = lab.l() / white.l();
            double noise = 0.25 * Math.sin(i * 2.1);
            points.add(
                    new Neutrality.Point(
                            level,
                            lab.l(),
                            lab.a() + noise,
                            lab.b() - noise,
                            lab.a() - white.a() * tint + noise,
                            lab.b() - white.b() * tint - noise));
        }
        String words = leanB > 0.4 ? "slightly warm, towards yellow" : "no measurable lean";
        Neutrality.Cast cast =
                new Neutrality.Cast(leanB * 0.25, leanB * 0.6, 0.3, 0.3, leanB > 0.4, words);
        return new Neutrality(
                0.74,
                1.62,
                120,
                cast,
                cast,
                cast,
                cast,
                false,
                1.4,
                2.7,
                absolute ? (white.b() > 0 ? "warm paper" : "cool paper") : null,
                leanB > 0.4 ? -0.7 : null,
                points);
    }

    private List<Reading> patches(boolean absolute) {
        List<Reading> out = new ArrayList<>();
        for (int i = 0; i <= 255; i += 3) {
            Lab lab = measured(i);
            out.add(
                    new Reading(
                            "A" + i,
                            Optional.of(i < 48 ? Section.SHADOWS : Section.NEUTRAL_RAMP),
                            Rgb8.grey(i),
                            absolute ? lab : null,
                            new Lab(lab.l() * 100 / white.l(), lab.a(), lab.b()),
                            new LabError(0.11, 0.05, 0.06),
                            absolute ? -Math.log10(Lab.luminanceFactor(lab.l())) : null,
                            i == 9 ? Set.of(ReadingFlag.DUSTY, ReadingFlag.UNEVEN) : Set.of(),
                            new PointMm(20 + i % 40, 30 + i / 4.0),
                            1));
        }
        return out;
    }
}
