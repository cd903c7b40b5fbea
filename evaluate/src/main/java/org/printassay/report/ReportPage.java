package org.printassay.report;

import gg.jte.ContentType;
import gg.jte.TemplateEngine;
import gg.jte.output.StringOutput;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.printassay.colour.Lab;
import org.printassay.evaluation.Evaluation;
import org.printassay.evaluation.Finding;
import org.printassay.evaluation.PlacementSummary;
import org.printassay.reading.Reading;
import org.printassay.reading.Warning;
import org.printassay.report.draw.Drawing;
import org.printassay.report.plot.RangeStrip;

/** The page of one evaluation: one file, no network, no scripts. */
public final class ReportPage {
    /** Width of the text column on a wide screen, in pixels. */
    static final double WIDE = 1040;

    /** What a phone of 390 pixels leaves between its margins. */
    static final double NARROW = 350;

    private ReportPage() {}

    /**
     * The page.
     *
     * @param scans small pictures of what was scanned; empty for measurement files
     * @param simulated whether the print is not real, to be said at the top
     * @throws IOException when a scan's picture cannot be encoded
     */
    public static String write(Evaluation e, List<ScanPreview> scans, boolean simulated)
            throws IOException {
        StringOutput out = new StringOutput(1 << 18);
        engine().render("report.jte", view(e, scans, simulated), out);
        return out.toString();
    }

    static TemplateEngine engine() {
        return TemplateEngine.createPrecompiled(
                null,
                ContentType.Html,
                ReportPage.class.getClassLoader(),
                "org.printassay.report.page");
    }

    static ReportView view(Evaluation e, List<ScanPreview> scans, boolean simulated)
            throws IOException {
        String paper = e.details().paper();
        boolean absolute = e.patches().stream().anyMatch(r -> r.lab() != null);
        return new ReportView(
                PageStyle.load(),
                simulated,
                paper == null ? "Print evaluation" : paper,
                about(e),
                Words.trust(e.trust()),
                Words.trustMeaning(e.trust()) + Parts.calibrationError(e),
                e.findings().stream()
                        .map(
                                f ->
                                        new Finding(
                                                f.topic(),
                                                Words.typeset(f.text()),
                                                Words.typeset(f.sureness()),
                                                Words.typeset(f.advice())))
                        .toList(),
                e.warnings().stream()
                        .map(w -> new Warning(w.code(), Words.typeset(w.text())))
                        .toList(),
                Facts.glance(e),
                strip(e),
                scans(e, scans),
                Parts.tone(e.tone(), absolute),
                Parts.shadows(e.shadows()),
                Parts.highlights(e.highlights()),
                Parts.neutrality(e.neutrality(), e.white()),
                ColourParts.colours(e.colours()),
                ColourParts.skin(e.colours()),
                SurfaceParts.lines(e.surface()),
                SurfaceParts.texture(e.surface()),
                PromisePart.of(e),
                Parts.further(e),
                Budgets.rows(e),
                Parts.conditions(e),
                e.patches().stream().map(r -> row(r, absolute)).toList(),
                absolute);
    }

    private static @Nullable Html strip(Evaluation e) {
        Drawing wide = RangeStrip.draw(e, WIDE);
        Drawing narrow = RangeStrip.draw(e, NARROW);
        return wide == null || narrow == null ? null : Html.of(wide, narrow, "strip");
    }

    /** Printer, route, drying and chart, as far as known. */
    static String about(Evaluation e) {
        List<String> parts = new ArrayList<>();
        if (e.details().printer() != null) {
            parts.add(e.details().printer());
        }
        if (e.details().route() != null) {
            parts.add(e.details().route());
        }
        if (e.chartId() != null) {
            parts.add("chart " + e.chartId() + (e.print() == null ? "" : ", print " + e.print()));
        }
        return String.join(" \u00b7 ", parts);
    }

    private static List<ReportView.Scan> scans(Evaluation e, List<ScanPreview> scans)
            throws IOException {
        List<ReportView.Scan> out = new ArrayList<>();
        for (ScanPreview scan : scans) {
            StringBuilder caption = new StringBuilder(scan.file()).append(": ");
            caption.append(scan.patchOutlines().size()).append(" patches read");
            for (PlacementSummary p : e.placements()) {
                if (p.file().equals(scan.file())) {
                    caption.append("; sheet ").append(p.sheet()).append(", ");
                    caption.append(p.markersFound()).append(" of ").append(p.markersExpected());
                    caption.append(" markers, placed within ");
                    caption.append(Words.number(p.residualMm(), 2)).append(" mm");
                }
            }
            out.add(
                    new ReportView.Scan(
                            ScanFigure.of(scan, "scan-" + out.size()),
                            caption.append('.').toString()));
        }
        return out;
    }

    private static ReportView.Row row(Reading r, boolean absolute) {
        Lab lab = absolute ? r.lab() : r.labRelative();
        return new ReportView.Row(
                r.id(),
                r.section().map(s -> s.key()).orElse(""),
                r.rgb().r() + " " + r.rgb().g() + " " + r.rgb().b(),
                lab == null ? new Html("") : Facts.swatch(lab),
                lab == null ? "" : Words.number(lab.l(), 2),
                lab == null ? "" : Words.number(lab.a(), 2),
                lab == null ? "" : Words.number(lab.b(), 2),
                r.density() == null ? "" : Words.number(r.density(), 2),
                String.join(" ", r.flags().stream().sorted().map(f -> f.key()).toList()));
    }
}
