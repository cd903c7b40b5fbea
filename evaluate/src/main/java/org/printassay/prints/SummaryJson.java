package org.printassay.prints;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import org.jspecify.annotations.Nullable;
import org.printassay.colour.Lab;
import org.printassay.json.JsonNumbers;
import org.printassay.report.JsonText;

/** The summary of many prints as JSON, {@code printassay/summary/1}: every key is always there. */
final class SummaryJson {
    private SummaryJson() {}

    static String write(Summary summary) {
        ObjectNode root = JsonNodeFactory.instance.objectNode();
        root.put("schema", "printassay/summary/1");
        root.put("exitCode", summary.exitCode());
        root.put("evaluated", summary.evaluated());
        root.put("failed", summary.outcomes().size() - summary.evaluated());
        ArrayNode prints = root.putArray("prints");
        for (PrintOutcome<EvaluatedPrint> outcome : summary.outcomes()) {
            prints.add(print(outcome));
        }
        PrintHead.skipped(summary.skipped(), root);
        return JsonText.write(root);
    }

    private static ObjectNode print(PrintOutcome<EvaluatedPrint> outcome) {
        EvaluatedPrint e = outcome.result();
        ObjectNode node = PrintHead.json(outcome, "evaluation", "evaluation.json");
        node.set("figures", e == null ? node.nullNode() : figures(e));
        return node;
    }

    private static ObjectNode figures(EvaluatedPrint e) {
        ObjectNode node = JsonNodeFactory.instance.objectNode();
        ObjectNode chart = node.putObject("chart");
        chart.put("id", e.chartId());
        chart.put("print", e.print());
        ArrayNode sheets = chart.putArray("sheets");
        e.sheets().forEach(sheets::add);
        node.put("trust", e.trust());
        node.set("white", lab(e.white()));
        node.set("black", lab(e.black()));
        node.set("density", JsonNumbers.decimal(e.density(), 3));
        node.set("rmsDeltaL", JsonNumbers.decimal(e.rmsDeltaL(), 3));
        node.set("shadows", level(e.shadows(), "firstVisible"));
        node.set("highlights", level(e.highlights(), "lastVisible"));
        node.set("meanDeltaCh", JsonNumbers.decimal(e.meanDeltaCh(), 3));
        node.put("cast", e.cast());
        node.set("gamutVolume", JsonNumbers.decimal(e.gamutVolume(), 0));
        node.set("maxDeltaE00", JsonNumbers.decimal(e.evenness(), 3));
        node.put("lines", e.lines());
        node.put("bands", e.bands());
        ArrayNode warnings = node.putArray("warnings");
        e.warnings().forEach(warnings::add);
        ArrayNode findings = node.putArray("findings");
        e.findings().forEach(findings::add);
        return node;
    }

    private static JsonNode lab(@Nullable Lab lab) {
        if (lab == null) {
            return JsonNodeFactory.instance.nullNode();
        }
        ObjectNode node = JsonNodeFactory.instance.objectNode();
        node.set("l", JsonNumbers.decimal(lab.l(), 3));
        node.set("a", JsonNumbers.decimal(lab.a(), 3));
        node.set("b", JsonNumbers.decimal(lab.b(), 3));
        return node;
    }

    private static JsonNode level(EvaluatedPrint.@Nullable Level level, String key) {
        if (level == null) {
            return JsonNodeFactory.instance.nullNode();
        }
        ObjectNode node = JsonNodeFactory.instance.objectNode();
        node.put(key, level.best());
        if (level.low() == null || level.high() == null) {
            node.putNull("interval");
        } else {
            node.putArray("interval").add(level.low()).add(level.high());
        }
        return node;
    }
}
