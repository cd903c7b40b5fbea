package org.printassay.report;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.IntNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.NullNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.fasterxml.jackson.databind.node.TextNode;
import java.util.List;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import org.printassay.calibrate.Unevenness;
import org.printassay.colour.Lab;
import org.printassay.evaluation.Evaluation;
import org.printassay.json.JsonNumbers;
import org.printassay.metric.Extreme;
import org.printassay.reading.Reading;
import org.printassay.reading.ReadingFlag;
import org.printassay.reading.StrayLight;

/** Evaluation to JSON; keys in one fixed order. */
final class JsonOut {
    /** Decimals of colours, densities and their errors. */
    static final int FINE = 3;

    /** Decimals of shares and ratios. */
    static final int FINER = 5;

    private static final JsonNodeFactory NODES = JsonNodeFactory.instance;

    private JsonOut() {}

    static ObjectNode of(Evaluation e) {
        ObjectNode root = NODES.objectNode();
        root.put("schema", "printassay/evaluation/" + EvaluationJson.SCHEMA_VERSION);
        ObjectNode chart = root.putObject("chart");
        chart.set("id", text(e.chartId()));
        chart.set("sheet", sheet(e.sheets()));
        chart.set("print", whole(e.print()));
        root.set("paper", text(e.details().paper()));
        root.set("printer", text(e.details().printer()));
        root.set("route", text(e.details().route()));
        root.set("family", text(e.details().family()));
        root.set("driedHours", JsonNumbers.decimal(e.details().driedHours(), 2));
        root.put("space", e.spaceKey());
        ObjectNode source = root.putObject("source");
        source.put("kind", e.fromScan() ? "scan" : "measurement");
        source.put("trust", e.trust().key());
        source.set("scanner", text(e.details().scanner()));
        source.set(
                "files",
                list(
                        e.files(),
                        f -> {
                            ObjectNode file = NODES.objectNode();
                            return file.put("name", f.name()).put("sha256", f.sha256());
                        }));
        source.set("measurement", JsonDerived.measurement(e.measurement()));
        source.set("calibration", JsonTrust.calibration(e.calibration()));
        root.set("uncertainty", list(e.uncertainty(), JsonTrust::budget));
        root.set("placements", placements(e));
        root.set("white", extreme(e.white()));
        root.set("black", extreme(e.black()));
        root.set("tone", JsonMetrics.tone(e.tone()));
        root.set("shadows", JsonMetrics.shadows(e.shadows()));
        root.set("highlights", JsonMetrics.highlights(e.highlights()));
        root.set("neutrality", JsonMetrics.neutrality(e.neutrality()));
        root.set("colours", JsonColours.of(e.colours()));
        ObjectNode evenness = root.putObject("evenness");
        evenness.set(
                "maxDeltaE00",
                JsonNumbers.decimal(
                        e.evenness() == null ? null : e.evenness().maxDeltaE00(), FINE));
        evenness.set(
                "lightFalloffPercent",
                JsonNumbers.decimal(
                        e.evenness() == null ? null : e.evenness().lightFalloffPercent(), FINE));
        Unevenness whose = e.evenness() == null ? null : e.evenness().whose();
        evenness.set(
                "scannerPercent",
                JsonNumbers.decimal(whose == null ? null : whose.scannerPercent(), FINE));
        evenness.set(
                "printPercent",
                JsonNumbers.decimal(whose == null ? null : whose.printPercent(), FINE));
        evenness.set(
                "undecidedPercent",
                JsonNumbers.decimal(whose == null ? null : whose.undecidedPercent(), FINE));
        evenness.set(
                "gradient",
                JsonColours.gradient(e.evenness() == null ? null : e.evenness().gradient()));
        JsonSurface.add(root, e.surface());
        root.set("strayLight", strayLight(e.strayLight()));
        root.set("derived", JsonDerived.derived(e));
        root.set("aim", JsonPromise.write(e.promise()));
        root.set(
                "warnings",
                list(
                        e.warnings(),
                        w -> NODES.objectNode().put("code", w.code().key()).put("text", w.text())));
        root.set(
                "findings",
                list(
                        e.findings(),
                        f ->
                                NODES.objectNode()
                                        .put("topic", f.topic())
                                        .put("text", f.text())
                                        .put("sureness", f.sureness())
                                        .put("advice", f.advice())));
        root.set("patches", list(e.patches(), JsonOut::patch));
        return root;
    }

    private static JsonNode sheet(List<Integer> sheets) {
        return switch (sheets.size()) {
            case 0 -> NullNode.instance;
            case 1 -> IntNode.valueOf(sheets.get(0));
            default -> list(sheets, IntNode::valueOf);
        };
    }

    private static JsonNode placements(Evaluation e) {
        return list(
                e.placements(),
                p -> {
                    ObjectNode node = NODES.objectNode();
                    node.put("file", p.file()).put("sheet", p.sheet());
                    node.put("markersFound", p.markersFound());
                    node.put("markersExpected", p.markersExpected());
                    node.set("residualMm", JsonNumbers.decimal(p.residualMm(), FINER));
                    node.set("scaleX", JsonNumbers.decimal(p.scaleX(), FINER));
                    node.set("scaleY", JsonNumbers.decimal(p.scaleY(), FINER));
                    node.set("rotationDegrees", JsonNumbers.decimal(p.rotationDegrees(), FINE));
                    node.set("samplesPerMm", JsonNumbers.decimal(p.samplesPerMm(), FINER));
                    node.set("profile", text(p.profile()));
                    return node;
                });
    }

    private static JsonNode extreme(@Nullable Extreme x) {
        ObjectNode node = NODES.objectNode();
        node.set("lab", lab(x == null ? null : x.lab()));
        node.set("density", JsonNumbers.decimal(x == null ? null : x.density(), FINE));
        node.set("labRelative", lab(x == null ? null : x.labRelative()));
        node.set("uncertainty", lab(x == null ? null : x.uncertainty()));
        node.set("systematicL", JsonNumbers.decimal(x == null ? null : x.systematicL(), FINE));
        node.set("level", whole(x == null ? null : x.level()));
        node.set("patches", whole(x == null ? null : x.patches()));
        return node;
    }

    private static JsonNode strayLight(@Nullable StrayLight s) {
        ObjectNode node = NODES.objectNode();
        node.set("fraction", JsonNumbers.decimal(s == null ? null : s.fraction(), FINER));
        node.set("standardError", JsonNumbers.decimal(s == null ? null : s.standardError(), FINER));
        node.set("returned", JsonNumbers.decimal(s == null ? null : s.returned(), FINER));
        node.set(
                "widthMm",
                JsonNumbers.decimal(
                        s == null || Double.isNaN(s.widthMm()) ? null : s.widthMm(), FINE));
        node.set("corrected", s == null ? NullNode.instance : NODES.booleanNode(s.corrected()));
        node.set("blackWithout", JsonNumbers.decimal(s == null ? null : s.blackWithout(), FINE));
        return node;
    }

    private static JsonNode patch(Reading r) {
        ObjectNode node = NODES.objectNode();
        node.put("id", r.id());
        node.set("section", text(r.section().map(s -> s.key()).orElse(null)));
        node.putArray("rgb").add(r.rgb().r()).add(r.rgb().g()).add(r.rgb().b());
        node.set("lab", lab(r.lab()));
        node.set("labRelative", lab(r.labRelative()));
        node.set(
                "standardError",
                r.standardError() == null
                        ? NullNode.instance
                        : three(
                                r.standardError().l(),
                                r.standardError().a(),
                                r.standardError().b(),
                                4));
        node.set("density", JsonNumbers.decimal(r.density(), FINE));
        node.set("flags", list(r.flags().stream().sorted().toList(), JsonOut::flag));
        node.set("xMm", JsonNumbers.decimal(r.centre() == null ? null : r.centre().x(), FINE));
        node.set("yMm", JsonNumbers.decimal(r.centre() == null ? null : r.centre().y(), FINE));
        node.put("sheet", r.sheet());
        return node;
    }

    private static JsonNode flag(ReadingFlag flag) {
        return TextNode.valueOf(flag.key());
    }

    static JsonNode lab(@Nullable Lab lab) {
        return lab == null ? NullNode.instance : three(lab.l(), lab.a(), lab.b(), FINE);
    }

    private static JsonNode three(double l, double a, double b, int decimals) {
        ObjectNode node = NODES.objectNode();
        node.set("l", JsonNumbers.decimal(l, decimals));
        node.set("a", JsonNumbers.decimal(a, decimals));
        node.set("b", JsonNumbers.decimal(b, decimals));
        return node;
    }

    static <T> JsonNode list(List<T> items, Function<T, JsonNode> each) {
        ArrayNode array = NODES.arrayNode();
        items.forEach(item -> array.add(each.apply(item)));
        return array;
    }

    static JsonNode text(@Nullable String text) {
        return text == null ? NullNode.instance : TextNode.valueOf(text);
    }

    static JsonNode whole(@Nullable Integer value) {
        return value == null ? NullNode.instance : IntNode.valueOf(value);
    }

    static ObjectNode object() {
        return NODES.objectNode();
    }
}
