package org.printassay.report;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.printassay.evaluation.Finding;
import org.printassay.reading.Warning;

/**
 * What the page of one evaluation shows, in words and finished drawings.
 *
 * @param style style sheet and policy
 * @param simulated whether to say that nothing real was printed
 * @param title name of the paper, or a general title
 * @param about printer, route and the like in one line
 * @param trust how colour was obtained
 * @param trustMeaning what that allows
 * @param findings what was found, most important first
 * @param warnings what the reader must know
 * @param glance results in single lines
 * @param cautions what to keep in mind
 * @param strip all levels; null when no neutrals were measured
 * @param scans scans with what was found
 * @param tone tone plot and its facts; null when not judged
 * @param shadows likewise
 * @param highlights likewise
 * @param neutrality likewise
 * @param colours likewise
 * @param skin likewise
 * @param lines lines and bands, likewise
 * @param texture grain, sharpness and vignettes, likewise
 * @param promise beside the printer's profile; null when none was named
 * @param further other results in single lines
 * @param budgets what the uncertainties of headline figures are made of
 * @param conditions under which the print was made and read
 * @param sections readings by section of the chart
 * @param flags those of readings, and what they mean
 * @param readings the table
 * @param absolute whether the table holds absolute colours
 * @param identity number that other evaluations do not have
 */
public record ReportView(
        PageStyle style,
        boolean simulated,
        String title,
        String about,
        String trust,
        String trustMeaning,
        List<Finding> findings,
        List<Warning> warnings,
        List<Fact> glance,
        List<String> cautions,
        @Nullable Plot strip,
        List<Scan> scans,
        @Nullable Part tone,
        @Nullable Part shadows,
        @Nullable Part highlights,
        @Nullable Part neutrality,
        @Nullable Part colours,
        @Nullable Part skin,
        @Nullable Part lines,
        @Nullable Part texture,
        @Nullable Promised promise,
        List<Fact> further,
        List<Budget> budgets,
        List<Fact> conditions,
        List<SectionRow> sections,
        List<Fact> flags,
        List<Row> readings,
        boolean absolute,
        long identity) {
    /** Whether the table holds absolute colours, in words. */
    public String readingsHold() {
        return PageText.readingsHold(absolute);
    }

    /** A scan and how the sheet lies in it. */
    public record Scan(ScanFigure figure, String caption) {}

    /**
     * A metric.
     *
     * @param id unique in the page
     * @param title its heading
     * @param lead one sentence
     * @param figures plots
     * @param key what signs in them mean
     * @param note what else to know when looking at them; may be empty
     * @param facts results in single lines
     */
    public record Part(
            String id,
            String title,
            String lead,
            List<Plot> figures,
            List<Sign> key,
            String note,
            List<Fact> facts) {}

    /**
     * One line of the table of uncertainties, 95 % half-widths in the figure's unit; a part that
     * the figure does not have is empty.
     */
    public record Budget(
            String figure,
            String value,
            String random,
            String light,
            String calibration,
            String systematic,
            String all) {}

    /** The print beside its printer's profile, patch by patch, furthest first. */
    public record Promised(String lead, List<Fact> facts, List<PromisedRow> rows) {}

    /** One patch: what was promised, what was read. */
    public record PromisedRow(
            String id,
            String rgb,
            Swatch promisedSwatch,
            String promised,
            Swatch readSwatch,
            String read,
            String deltaE) {}

    /** The readings of one section: how many, range of L*, median standard error of L*, flags. */
    public record SectionRow(
            String section, String patches, String range, String error, String flags) {}

    /** One reading. */
    public record Row(
            String id,
            String section,
            String rgb,
            @Nullable Swatch swatch,
            String l,
            String a,
            String b,
            String density,
            String flags) {}
}
