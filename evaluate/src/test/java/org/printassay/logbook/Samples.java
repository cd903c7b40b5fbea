package org.printassay.logbook;

import java.nio.charset.StandardCharsets;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.printassay.colour.Lab;
import org.printassay.evaluation.Evaluation;
import org.printassay.evaluation.PrintDetails;
import org.printassay.evaluation.SourceFile;
import org.printassay.metric.Extreme;
import org.printassay.reading.Trust;

/** Evaluations made by hand; nothing in them was measured. */
final class Samples {
    private Samples() {}

    /** A print of paper A; prints of different numbers were read from different files. */
    static Evaluation print(int number, double whiteL) {
        return print(number, whiteL, "Printer 1", "Paper A", "as usual", Trust.INSTRUMENT);
    }

    /** A print of another chart, or of one that is not known. */
    static Evaluation ofChart(@Nullable String chart, int number) {
        return print(
                chart,
                number,
                95,
                new PrintDetails("Paper A", "Printer 1", "as usual", 24.0),
                Trust.INSTRUMENT);
    }

    static Evaluation print(
            int number,
            double whiteL,
            @Nullable String printer,
            @Nullable String paper,
            @Nullable String route,
            Trust trust) {
        return print(
                "PA-2-A4", number, whiteL, new PrintDetails(paper, printer, route, 24.0), trust);
    }

    /** A print of paper A that was read with a scanner. */
    static Evaluation readWith(String scanner, int number, double whiteL) {
        return print(
                "PA-2-A4",
                number,
                whiteL,
                new PrintDetails("Paper A", "Printer 1", "as usual", 24.0, scanner, null),
                Trust.PLAIN_SCAN);
    }

    private static Evaluation print(
            @Nullable String chart, int number, double whiteL, PrintDetails details, Trust trust) {
        String sha256 = PackedText.sha256(("file " + number).getBytes(StandardCharsets.UTF_8));
        Lab uncertainty = new Lab(0.2, 0.1, 0.1);
        return Evaluation.builder(trust, "srgb")
                .chartId(chart)
                .sheets(List.of(1))
                .print(number)
                .details(details)
                .files(List.of(new SourceFile("print-" + number + ".txt", sha256)))
                .white(
                        new Extreme(
                                new Lab(whiteL, 0.3, -1.2),
                                new Lab(100, 0, 0),
                                0.07,
                                uncertainty,
                                0,
                                255,
                                9))
                .black(
                        new Extreme(
                                new Lab(14.2, 0.1, 0.6),
                                new Lab(12.9, 0, 0),
                                1.68,
                                uncertainty,
                                0,
                                0,
                                9))
                .build();
    }
}
