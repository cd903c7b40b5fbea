package org.printassay.logbook;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.printassay.evaluation.Evaluation;
import org.printassay.evaluation.PrintDetails;
import org.printassay.evaluation.SourceFile;
import org.printassay.metric.Tone;
import org.printassay.metric.ToneAim;
import org.printassay.metric.Wedge;

/**
 * What makes two evaluations the same print: chart, sheets, print number and the files that were
 * read. Names, calibration and thresholds are none of it: the same scan evaluated anew is no second
 * print.
 */
final class Identity {
    private Identity() {}

    /**
     * SHA-256 of what identifies the print, hexadecimal.
     *
     * @param text of the evaluation; identifies it where no file is named
     */
    static String of(Evaluation evaluation, PackedText text) {
        List<String> parts = new ArrayList<>();
        parts.add("printassay/identity/1");
        parts.add("chart " + evaluation.chartId());
        parts.add("sheets " + evaluation.sheets());
        parts.add("print " + evaluation.print());
        parts.add(evaluation.fromScan() ? "scan" : "measurement");
        evaluation.files().stream().map(SourceFile::sha256).sorted().forEach(parts::add);
        if (evaluation.files().isEmpty()) {
            parts.add(text.sha256());
        }
        return PackedText.sha256(String.join("\n", parts).getBytes(StandardCharsets.UTF_8));
    }

    /** How it was read, as far as it decides whether figures may stand in one trend. */
    static String manner(Evaluation evaluation) {
        List<String> parts = new ArrayList<>();
        parts.add(evaluation.trust().key());
        if (evaluation.measurement() != null) {
            add(parts, evaluation.measurement().condition());
            add(parts, evaluation.measurement().backing());
            add(parts, evaluation.measurement().filter());
        }
        add(parts, evaluation.details().scanner());
        parts.add(evaluation.spaceKey());
        Wedge wedge = evaluation.shadows() != null ? evaluation.shadows() : evaluation.highlights();
        add(parts, wedge == null ? null : "threshold " + wedge.threshold());
        Tone tone = evaluation.tone();
        if (tone != null && !tone.aim().equals(ToneAim.PAPER.words())) {
            parts.add(tone.aim());
        }
        return PrintDetails.plain(String.join(", ", parts));
    }

    /** Checksum of the scanner's calibration. */
    static @Nullable String calibration(Evaluation evaluation) {
        return evaluation.calibration() == null ? null : evaluation.calibration().file().sha256();
    }

    private static void add(List<String> parts, @Nullable String part) {
        if (part != null && !part.isBlank()) {
            parts.add(part);
        }
    }
}
