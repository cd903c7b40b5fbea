package org.printassay.prints;

import java.util.ArrayList;
import java.util.List;
import java.util.StringJoiner;
import org.jspecify.annotations.Nullable;
import org.printassay.evaluation.PrintDetails;
import org.printassay.json.JsonNumbers;
import org.printassay.report.CsvText;

/** The summary of many prints as a table: text for a terminal, and CSV (RFC 4180). */
final class SummaryTable {
    private static final String NOT_JUDGED = "-";

    private static final List<String> HEADING =
            List.of(
                    "Print",
                    "White L*",
                    "Black L*",
                    "Shadows",
                    "Highlights",
                    "Greys dCh",
                    "Tone dL*");

    private static final List<String> COLUMNS =
            List.of(
                    "print",
                    "files",
                    "paper",
                    "printer",
                    "route",
                    "dried hours",
                    "chart",
                    "print number",
                    "colour from",
                    "white L*",
                    "white a*",
                    "white b*",
                    "black L*",
                    "black density",
                    "shadows from level",
                    "shadows low",
                    "shadows high",
                    "highlights to level",
                    "highlights low",
                    "highlights high",
                    "greys mean dCh",
                    "tone RMS dL*",
                    "gamut volume",
                    "evenness dE00",
                    "lines",
                    "bands",
                    "exit code",
                    "problem");

    private SummaryTable() {}

    static String text(Summary summary) {
        List<List<String>> rows = new ArrayList<>();
        rows.add(HEADING);
        for (PrintOutcome<EvaluatedPrint> outcome : summary.outcomes()) {
            EvaluatedPrint print = outcome.result();
            if (print != null) {
                rows.add(row(print));
            }
        }
        return TextTable.ofFigures(rows);
    }

    private static List<String> row(EvaluatedPrint e) {
        return List.of(
                TextTable.shortened(e.name()),
                shown(e.white() == null ? null : e.white().l()),
                shown(e.black() == null ? null : e.black().l()),
                level(e.shadows()),
                level(e.highlights()),
                shown(e.meanDeltaCh()),
                shown(e.rmsDeltaL()));
    }

    private static String level(EvaluatedPrint.@Nullable Level level) {
        if (level == null) {
            return NOT_JUDGED;
        }
        String best = level.best() == null ? "none" : level.best().toString();
        return level.low() == null || level.high() == null
                ? best
                : best + " (" + level.low() + " to " + level.high() + ")";
    }

    private static String shown(@Nullable Double value) {
        return value == null ? NOT_JUDGED : number(value, 1);
    }

    static String csv(Summary summary) {
        StringBuilder out = new StringBuilder(String.join(",", COLUMNS)).append("\r\n");
        for (PrintOutcome<EvaluatedPrint> outcome : summary.outcomes()) {
            EvaluatedPrint e = outcome.result();
            PrintOutcome.Failure failure = outcome.failure();
            PrintDetails said = PrintHead.said(outcome);
            StringJoiner cells = new StringJoiner(",");
            cells.add(text(outcome.print().name()));
            cells.add(text(PrintHead.files(outcome)));
            cells.add(text(said.paper())).add(text(said.printer())).add(text(said.route()));
            cells.add(number(said.driedHours(), 2));
            figures(e, cells);
            cells.add(String.valueOf(outcome.exitCode()));
            cells.add(text(failure == null ? null : failure.text()));
            out.append(cells).append("\r\n");
        }
        return out.toString();
    }

    private static void figures(@Nullable EvaluatedPrint e, StringJoiner cells) {
        if (e == null) {
            for (int i = COLUMNS.indexOf("chart"); i < COLUMNS.indexOf("exit code"); i++) {
                cells.add("");
            }
            return;
        }
        cells.add(text(e.chartId())).add(whole(e.print())).add(e.trust());
        cells.add(number(e.white() == null ? null : e.white().l(), 2));
        cells.add(number(e.white() == null ? null : e.white().a(), 2));
        cells.add(number(e.white() == null ? null : e.white().b(), 2));
        cells.add(number(e.black() == null ? null : e.black().l(), 2));
        cells.add(number(e.density(), 3));
        levels(e.shadows(), cells);
        levels(e.highlights(), cells);
        cells.add(number(e.meanDeltaCh(), 2)).add(number(e.rmsDeltaL(), 2));
        cells.add(number(e.gamutVolume(), 0)).add(number(e.evenness(), 2));
        cells.add(whole(e.lines())).add(whole(e.bands()));
    }

    private static void levels(EvaluatedPrint.@Nullable Level level, StringJoiner cells) {
        cells.add(level == null ? "" : whole(level.best()));
        cells.add(level == null ? "" : whole(level.low()));
        cells.add(level == null ? "" : whole(level.high()));
    }

    private static String whole(@Nullable Integer value) {
        return value == null ? "" : value.toString();
    }

    private static String number(@Nullable Double value, int decimals) {
        return value == null ? "" : JsonNumbers.rounded(value, decimals).toPlainString();
    }

    static String text(@Nullable String text) {
        return text == null ? "" : CsvText.cell(text);
    }
}
