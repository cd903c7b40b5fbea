package org.printassay.report;

import gg.jte.ContentType;
import gg.jte.TemplateEngine;
import gg.jte.output.StringOutput;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import org.printassay.evaluation.Evaluation;
import org.printassay.evaluation.Finding;
import org.printassay.evaluation.PlacementSummary;
import org.printassay.reading.Warning;
import org.printassay.report.plot.RangeStrip;

/** The page of one evaluation: one file, no network, no scripts. */
public final class ReportPage {
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
        return write(view(e, scans, simulated));
    }

    static String write(ReportView view) {
        StringOutput out = new StringOutput(1 << 18);
        engine().render("report.jte", view, out);
        return HarmlessText.inPage(out.toString());
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
                Words.trustMeaning(e) + Parts.calibrationError(e),
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
                PageText.cautions(e.trust()),
                strip(e),
                scans(e, scans),
                Parts.tone(e.tone(), absolute),
                WedgeParts.shadows(e.shadows()),
                WedgeParts.highlights(e.highlights()),
                Parts.neutrality(e.neutrality(), e.white()),
                ColourParts.colours(e.colours()),
                ColourParts.skin(e.colours()),
                SurfaceParts.lines(e.surface()),
                SurfaceParts.texture(e.surface()),
                PromisePart.of(e),
                Parts.further(e),
                Budgets.rows(e),
                Parts.conditions(e),
                ReadingsPart.sections(e, absolute),
                FlagWords.of(e.patches()),
                ReadingsPart.rows(e.patches(), absolute),
                absolute,
                identity(e));
    }

    /** From what was read and what was said about it, the same in every run. */
    private static long identity(Evaluation e) {
        long number = 17;
        List<String> parts = new ArrayList<>(List.of(about(e), e.trust().key()));
        e.files().forEach(file -> parts.add(file.sha256()));
        e.findings().forEach(finding -> parts.add(finding.text() + finding.sureness()));
        for (String part : parts) {
            number = 1_000_003 * number + part.hashCode();
        }
        return number;
    }

    private static @Nullable Plot strip(Evaluation e) {
        return RangeStrip.draw(e, Plot.WIDE) == null
                ? null
                : new Plot(
                        "strip",
                        width -> Objects.requireNonNull(RangeStrip.draw(e, width)),
                        Plot.WIDE);
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
            if (!scan.doubtful().isEmpty()) {
                caption.append(", ").append(scan.doubtful().size()).append(" doubtful");
            }
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
}
