package org.printassay.report;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.NullNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.printassay.evaluation.CalibrationSummary;
import org.printassay.evaluation.SourceFile;
import org.printassay.json.JsonNumbers;
import org.printassay.metric.Budget;

/** How far figures can be trusted, to JSON and back: calibration and budgets of uncertainty. */
final class JsonTrust {
    /** Finer than the sums, so that these come out alike from what is written. */
    private static final int PART_DECIMALS = 6;

    private JsonTrust() {}

    static JsonNode calibration(@Nullable CalibrationSummary c) {
        if (c == null) {
            return NullNode.instance;
        }
        ObjectNode node = JsonOut.object();
        node.put("name", c.file().name()).put("sha256", c.file().sha256());
        node.set("scanner", JsonOut.text(c.scanner()));
        node.set("printer", JsonOut.text(c.printer()));
        node.set("paper", JsonOut.text(c.paper()));
        node.set("family", JsonOut.text(c.family()));
        node.set("meanDeltaE00", JsonNumbers.decimal(c.meanDeltaE00(), JsonOut.FINE));
        node.set("p95DeltaE00", JsonNumbers.decimal(c.p95DeltaE00(), JsonOut.FINE));
        node.set("maxDeltaE00", JsonNumbers.decimal(c.maxDeltaE00(), JsonOut.FINE));
        node.put("patches", c.patches());
        node.put("colours", c.colours());
        node.set("expectedDeltaE00", JsonNumbers.decimal(c.expectedDeltaE00(), JsonOut.FINE));
        return node;
    }

    static @Nullable CalibrationSummary calibration(JsonNode c) {
        if (!c.isObject()) {
            return null;
        }
        return new CalibrationSummary(
                new SourceFile(c.path("name").asText(), c.path("sha256").asText()),
                text(c.path("scanner")),
                text(c.path("printer")),
                text(c.path("paper")),
                text(c.path("family")),
                c.path("meanDeltaE00").asDouble(),
                c.path("p95DeltaE00").asDouble(),
                c.path("maxDeltaE00").asDouble(),
                c.path("patches").asInt(),
                c.path("colours").asInt(),
                c.path("expectedDeltaE00").asDouble(c.path("meanDeltaE00").asDouble()));
    }

    static JsonNode budget(Budget exact) {
        Budget b = asWritten(exact);
        ObjectNode node = JsonOut.object();
        node.put("figure", b.figure());
        node.put("unit", b.unit());
        node.set("value", JsonNumbers.decimal(b.value(), 4));
        node.set(
                "parts",
                JsonOut.list(
                        b.parts(),
                        p -> {
                            ObjectNode part = JsonOut.object();
                            part.put("kind", p.kind().key());
                            part.set("standard", JsonNumbers.decimal(p.standard(), PART_DECIMALS));
                            part.set("freedom", JsonOut.whole(p.freedom()));
                            return part;
                        }));
        node.set("standard", JsonNumbers.decimal(b.standard(), 4));
        node.set("coverageFactor", JsonNumbers.decimal(b.coverageFactor(), JsonOut.FINE));
        node.set("halfWidth", JsonNumbers.decimal(b.halfWidth(), 4));
        return node;
    }

    /** With the decimals that the file has, so that what was read is written again the same. */
    private static Budget asWritten(Budget b) {
        List<Budget.Part> parts = new ArrayList<>();
        for (Budget.Part p : b.parts()) {
            double standard = JsonNumbers.rounded(p.standard(), PART_DECIMALS).doubleValue();
            parts.add(new Budget.Part(p.kind(), standard, p.freedom()));
        }
        return new Budget(b.figure(), b.unit(), b.value(), parts);
    }

    static Budget budget(JsonNode b) {
        List<Budget.Part> parts = new ArrayList<>();
        for (JsonNode p : b.path("parts")) {
            JsonNode freedom = p.path("freedom");
            parts.add(
                    new Budget.Part(
                            Budget.Kind.ofKey(p.path("kind").asText()),
                            p.path("standard").asDouble(),
                            freedom.isNumber() ? freedom.asInt() : null));
        }
        return new Budget(
                b.path("figure").asText(),
                b.path("unit").asText(),
                b.path("value").asDouble(),
                parts);
    }

    private static @Nullable String text(JsonNode node) {
        return node.isTextual() ? node.asText() : null;
    }
}
