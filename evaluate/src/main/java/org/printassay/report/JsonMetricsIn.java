package org.printassay.report;

import com.fasterxml.jackson.databind.JsonNode;
import org.jspecify.annotations.Nullable;
import org.printassay.colour.Lab;
import org.printassay.metric.Irregularity;
import org.printassay.metric.LevelStep;
import org.printassay.metric.Neutrality;
import org.printassay.metric.Tone;
import org.printassay.metric.Verdict;
import org.printassay.metric.Wedge;

/** Metrics of valid JSON; null when they were not judged. */
final class JsonMetricsIn {
    private JsonMetricsIn() {}

    static @Nullable Tone tone(JsonNode t) {
        if (t.path("rmsDeltaL").isNull()) {
            return null;
        }
        return new Tone(
                t.path("aim").asText(),
                t.path("rmsDeltaL").asDouble(),
                t.path("rmsUncertainty").asDouble(),
                t.path("maxDeltaL").asDouble(),
                t.path("maxAtLevel").asInt(),
                t.path("meanDeltaLShadows").asDouble(),
                t.path("meanDeltaLMidtones").asDouble(),
                t.path("meanDeltaLHighlights").asDouble(),
                t.path("monotonic").asBoolean(),
                JsonIn.list(t.path("reversalLevels"), JsonNode::asInt),
                JsonIn.list(
                        t.path("points"),
                        p ->
                                new Tone.Point(
                                        p.path("level").asInt(),
                                        p.path("fileL").asDouble(),
                                        p.path("measuredL").asDouble(),
                                        p.path("aimL").asDouble(),
                                        p.path("standardError").asDouble(),
                                        p.path("localContrast").asDouble())),
                JsonIn.list(
                        t.path("irregularities"),
                        i ->
                                new Irregularity(
                                        i.path("kind").asText().equals("step")
                                                ? Irregularity.Kind.STEP
                                                : Irregularity.Kind.HUE_SWING,
                                        i.path("level").asInt(),
                                        i.path("toLevel").asInt(),
                                        i.path("size").asDouble(),
                                        i.path("sureness").asDouble())));
    }

    static @Nullable Wedge wedge(JsonNode w, String merged, String separated, String best) {
        if (w.path("threshold").isNull()) {
            return null;
        }
        JsonNode interval = w.path("interval");
        return new Wedge(
                w.path("threshold").asDouble(),
                JsonIn.whole(w.path(merged)),
                JsonIn.whole(w.path(separated)),
                JsonIn.whole(w.path(best)),
                interval.isArray()
                        ? new Wedge.Interval(interval.path(0).asInt(), interval.path(1).asInt())
                        : null,
                w.path("visibleSteps").asInt(),
                w.path("aimVisibleSteps").asInt(),
                JsonIn.decimal(w.path("slopeAgainstAim")),
                JsonIn.list(w.path("reversalLevels"), JsonNode::asInt),
                JsonIn.list(w.path("steps"), JsonMetricsIn::step));
    }

    private static LevelStep step(JsonNode s) {
        return new LevelStep(
                s.path("level").asInt(),
                s.path("difference").asDouble(),
                s.path("low").asDouble(),
                s.path("high").asDouble(),
                s.path("aim").asDouble(),
                verdict(s.path("verdict").asText()),
                colour(s.path("colour")),
                s.path("twins").asInt());
    }

    private static Lab colour(JsonNode node) {
        return new Lab(
                node.path("l").asDouble(), node.path("a").asDouble(), node.path("b").asDouble());
    }

    private static Verdict verdict(String key) {
        for (Verdict verdict : Verdict.values()) {
            if (verdict.key().equals(key)) {
                return verdict;
            }
        }
        throw new IllegalStateException("the schema lets no other verdict through: " + key);
    }

    static @Nullable Neutrality neutrality(JsonNode n) {
        if (n.path("meanDeltaCh").isNull()) {
            return null;
        }
        return new Neutrality(
                n.path("meanDeltaCh").asDouble(),
                n.path("maxDeltaCh").asDouble(),
                n.path("maxAtLevel").asInt(),
                cast(n.path("cast")),
                cast(n.path("castShadows")),
                cast(n.path("castMidtones")),
                cast(n.path("castHighlights")),
                n.path("crossover").asBoolean(),
                n.path("paperRelativeMeanDeltaCh").asDouble(),
                n.path("paperRelativeMaxDeltaCh").asDouble(),
                JsonIn.text(n.path("paperTintWords")),
                JsonIn.decimal(n.path("suggestedDeltaB")),
                JsonIn.list(
                        n.path("points"),
                        p ->
                                new Neutrality.Point(
                                        p.path("level").asInt(),
                                        p.path("l").asDouble(),
                                        p.path("a").asDouble(),
                                        p.path("b").asDouble(),
                                        p.path("deltaA").asDouble(),
                                        p.path("deltaB").asDouble())));
    }

    private static Neutrality.Cast cast(JsonNode c) {
        return new Neutrality.Cast(
                c.path("a").asDouble(),
                c.path("b").asDouble(),
                c.path("uncertaintyA").asDouble(),
                c.path("uncertaintyB").asDouble(),
                c.path("significant").asBoolean(),
                c.path("words").asText());
    }
}
