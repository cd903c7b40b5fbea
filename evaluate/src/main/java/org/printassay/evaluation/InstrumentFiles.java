package org.printassay.evaluation;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.printassay.chart.Chart;
import org.printassay.chart.ReadingOrder;
import org.printassay.measurement.MeasurementFile;
import org.printassay.measurement.MeasurementReader;
import org.printassay.problem.Problem;
import org.printassay.reading.Trust;

/**
 * Measurement files, and how far they can be trusted. The readings that an evaluation of a scan
 * leaves behind have the same form: taken for an instrument's they would be trusted more than the
 * scan was.
 */
public final class InstrumentFiles {
    private static final List<Trust> SCANS =
            List.of(Trust.CALIBRATED_SCAN, Trust.PROFILED_SCAN, Trust.PLAIN_SCAN);

    private InstrumentFiles() {}

    /**
     * Reads a measurement file that an instrument made.
     *
     * @param chart whose patches were measured, where known
     * @throws Problem when it cannot be read or used, or holds readings of a scan or a chart's own
     *     colours
     */
    public static MeasurementFile read(Path path, Optional<Chart> chart) throws Problem {
        MeasurementFile file = readAny(path, chart);
        if (trust(file) != Trust.INSTRUMENT) {
            throw ofScan(file);
        }
        return file;
    }

    /**
     * Reads a measurement file, an instrument's or the readings of a scan in absolute colour.
     *
     * @throws Problem as {@link #read}, but for such readings
     */
    static MeasurementFile readAny(Path path, Optional<Chart> chart) throws Problem {
        MeasurementFile file =
                chart.isEmpty()
                        ? MeasurementReader.read(path)
                        : MeasurementReader.read(path, ReadingOrder.of(chart.get()));
        if (trust(file) == Trust.PLAIN_SCAN) {
            throw ofScan(file);
        }
        AimsFile.refuse(file);
        return file;
    }

    private static Problem ofScan(MeasurementFile file) {
        return Problem.input(
                file.name(),
                "holds what printassay read from a scan, not an instrument's measurement. Name the"
                        + " scan itself, or the instrument's own file.");
    }

    /** How the colours of a file were obtained, as it says itself. */
    static Trust trust(MeasurementFile file) {
        Map<String, String> keywords = file.keywords();
        String source = keywords.getOrDefault("MEASUREMENT_SOURCE", "");
        boolean own = keywords.getOrDefault("ORIGINATOR", "").equals("printassay");
        String descriptor = keywords.getOrDefault("DESCRIPTOR", "");
        return SCANS.stream()
                .filter(
                        trust -> {
                            String words = "(" + trust.key().replace('-', ' ') + ")";
                            return source.equals(trust.key())
                                    || (own && descriptor.contains(words));
                        })
                .findFirst()
                .orElse(Trust.INSTRUMENT);
    }
}
