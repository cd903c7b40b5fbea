package org.printassay.report;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.printassay.colour.Lab;
import org.printassay.evaluation.Evaluation;
import org.printassay.evaluation.MeasurementSummary;
import org.printassay.measurement.Conditions;
import org.printassay.measurement.CxfWriter;
import org.printassay.measurement.MeasurementFile.Condition;
import org.printassay.measurement.MeasurementWriter;
import org.printassay.reading.Reading;

/** Readings as CxF3 (ISO 17972-1): absolute CIELAB and codes. */
final class ReadingsCxf {
    /** The creator stands in the first of them. */
    private static final int HEAD_BYTES = 1024;

    private ReadingsCxf() {}

    /**
     * The text of the file; nothing when no reading is absolute or only lightness was read, because
     * the format has no relative colours and no half ones.
     *
     * @param created when it was scanned or measured
     */
    static Optional<String> write(Evaluation e, Instant created) {
        List<MeasurementWriter.Row> rows = new ArrayList<>();
        for (Reading r : e.patches()) {
            Lab lab = r.lab();
            if (lab != null) {
                rows.add(new MeasurementWriter.Row(r.id(), r.rgb(), lab, null, null));
            }
        }
        if (rows.isEmpty() || e.lightnessAlone()) {
            return Optional.empty();
        }
        return Optional.of(
                CxfWriter.write(
                        "Readings, absolute CIELAB D50 (" + Words.trust(e.trust()) + ")",
                        created,
                        conditions(e.measurement()),
                        rows));
    }

    private static Conditions conditions(@Nullable MeasurementSummary m) {
        return m == null
                ? Conditions.UNKNOWN
                : new Conditions(
                        Optional.ofNullable(m.condition()).map(Condition::valueOf),
                        Optional.ofNullable(m.backing()),
                        Optional.ofNullable(m.filter()));
    }

    /** Whether a file says that this program made it. */
    static boolean isOurs(Path file) throws IOException {
        try (InputStream in = Files.newInputStream(file)) {
            String head = new String(in.readNBytes(HEAD_BYTES), StandardCharsets.UTF_8);
            return head.contains("Creator>" + CxfWriter.CREATOR + "<");
        }
    }
}
