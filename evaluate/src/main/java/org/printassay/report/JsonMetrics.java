package org.printassay.report;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.BooleanNode;
import com.fasterxml.jackson.databind.node.IntNode;
import com.fasterxml.jackson.databind.node.NullNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.printassay.json.JsonNumbers;
import org.printassay.metric.Neutrality;
import org.printassay.metric.Tone;
import org.printassay.metric.Wedge;

/** Metrics to JSON: the same keys whether judged or not. */
final class JsonMetrics {
    private JsonMetrics() {}

    static JsonNode tone(@Nullable Tone t) {
        ObjectNode node = JsonOut.object();
        node.set("aim", JsonOut.text(t == null ? null : t.aim()));
        node.set("rmsDeltaL", fine(t == null ? null : t.rmsDeltaL()));
        node.set("rmsUncertainty", fine(t == null ? null : t.rmsUncertainty()));
        node.set("maxDeltaL", fine(t == null ? null : t.maxDeltaL()));
        node.set("maxAtLevel", JsonOut.whole(t == null ? null : t.maxAtLevel()));
        node.set("meanDeltaLShadows", fine(t == null ? null : t.meanDeltaLShadows()));
        node.set("meanDeltaLMidtones", fine(t == null ? null : t.meanDeltaLMidtones()));
        node.set("meanDeltaLHighlights", fine(t == null ? null : t.meanDeltaLHighlights()));
        node.set("monotonic", truth(t == null ? null : t.monotonic()));
        node.set("reversalLevels", levels(t == null ? List.of() : t.reversalLevels()));
        node.set(
                "irregularities",
                JsonOut.list(
                        t == null ? List.of() : t.irregularities(),
                        i -> {
                            ObjectNode place = JsonOut.object();
                            place.put("kind", i.kind().key());
                            place.put("level", i.level());
                            place.put("toLevel", i.toLevel());
                            place.set("size", fine(i.size()));
                            place.set("sureness", fine(i.sureness()));
                            return place;
                        }));
        node.set(
                "points",
                JsonOut.list(
                        t == null ? List.of() : t.points(),
                        p -> {
                            ObjectNode point = JsonOut.object();
                            point.put("level", p.level());
                            point.set("fileL", fine(p.fileL()));
                            point.set("measuredL", fine(p.measuredL()));
                            point.set("aimL", fine(p.aimL()));
                            point.set("standardError", JsonNumbers.decimal(p.standardError(), 4));
                            point.set("localContrast", fine(p.localContrast()));
                            return point;
                        }));
        return node;
    }

    static JsonNode shadows(@Nullable Wedge w) {
        return wedge(w, "blockedThrough", "firstSeparated", "firstVisible");
    }

    static JsonNode highlights(@Nullable Wedge w) {
        return wedge(w, "mergedFrom", "lastSeparated", "lastVisible");
    }

    private static JsonNode wedge(@Nullable Wedge w, String merged, String separated, String best) {
        ObjectNode node = JsonOut.object();
        node.set("threshold", fine(w == null ? null : w.threshold()));
        node.set(merged, JsonOut.whole(w == null ? null : w.merged()));
        node.set(separated, JsonOut.whole(w == null ? null : w.separated()));
        node.set(best, JsonOut.whole(w == null ? null : w.best()));
        Wedge.Interval interval = w == null ? null : w.interval();
        node.set(
                "interval",
                interval == null
                        ? NullNode.instance
                        : JsonOut.list(List.of(interval.low(), interval.high()), IntNode::valueOf));
        node.set("visibleSteps", JsonOut.whole(w == null ? null : w.visibleSteps()));
        node.set("aimVisibleSteps", JsonOut.whole(w == null ? null : w.aimVisibleSteps()));
        node.set("slopeAgainstAim", fine(w == null ? null : w.slopeAgainstAim()));
        node.set("reversalLevels", levels(w == null ? List.of() : w.reversalLevels()));
        node.set(
                "steps",
                JsonOut.list(
                        w == null ? List.of() : w.steps(),
                        s -> {
                            ObjectNode step = JsonOut.object();
                            step.put("level", s.level());
                            step.set("difference", fine(s.difference()));
                            step.set("low", fine(s.low()));
                            step.set("high", fine(s.high()));
                            step.set("aim", fine(s.aim()));
                            step.put("verdict", s.verdict().key());
                            step.set("colour", JsonOut.lab(s.colour()));
                            step.put("twins", s.twins());
                            return step;
                        }));
        return node;
    }

    static JsonNode neutrality(@Nullable Neutrality n) {
        ObjectNode node = JsonOut.object();
        node.set("meanDeltaCh", fine(n == null ? null : n.meanDeltaCh()));
        node.set("maxDeltaCh", fine(n == null ? null : n.maxDeltaCh()));
        node.set("maxAtLevel", JsonOut.whole(n == null ? null : n.maxAtLevel()));
        node.set("cast", cast(n == null ? null : n.cast()));
        node.set("castShadows", cast(n == null ? null : n.shadows()));
        node.set("castMidtones", cast(n == null ? null : n.midtones()));
        node.set("castHighlights", cast(n == null ? null : n.highlights()));
        node.set("crossover", truth(n == null ? null : n.crossover()));
        node.set("paperRelativeMeanDeltaCh", fine(n == null ? null : n.paperRelativeMeanDeltaCh()));
        node.set("paperRelativeMaxDeltaCh", fine(n == null ? null : n.paperRelativeMaxDeltaCh()));
        node.set("paperTintWords", JsonOut.text(n == null ? null : n.paperTintWords()));
        node.set("suggestedDeltaB", fine(n == null ? null : n.suggestedDeltaB()));
        node.set(
                "points",
                JsonOut.list(
                        n == null ? List.of() : n.points(),
                        p -> {
                            ObjectNode point = JsonOut.object();
                            point.put("level", p.level());
                            point.set("l", fine(p.l()));
                            point.set("a", fine(p.a()));
                            point.set("b", fine(p.b()));
                            point.set("deltaA", fine(p.deltaA()));
                            point.set("deltaB", fine(p.deltaB()));
                            return point;
                        }));
        return node;
    }

    private static JsonNode cast(Neutrality.@Nullable Cast c) {
        ObjectNode node = JsonOut.object();
        node.set("a", fine(c == null ? null : c.a()));
        node.set("b", fine(c == null ? null : c.b()));
        node.set("words", JsonOut.text(c == null ? null : c.words()));
        node.set("uncertaintyA", fine(c == null ? null : c.uncertaintyA()));
        node.set("uncertaintyB", fine(c == null ? null : c.uncertaintyB()));
        node.set("significant", truth(c == null ? null : c.significant()));
        return node;
    }

    private static JsonNode fine(@Nullable Double value) {
        return JsonNumbers.decimal(value, JsonOut.FINE);
    }

    private static JsonNode truth(@Nullable Boolean value) {
        return value == null ? NullNode.instance : BooleanNode.valueOf(value);
    }

    private static JsonNode levels(List<Integer> levels) {
        return JsonOut.list(levels, IntNode::valueOf);
    }
}
