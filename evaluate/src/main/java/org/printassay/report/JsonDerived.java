package org.printassay.report;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.NullNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.fasterxml.jackson.databind.node.TextNode;
import org.jspecify.annotations.Nullable;
import org.printassay.colour.Density;
import org.printassay.colour.Lab;
import org.printassay.colour.Rgb8;
import org.printassay.evaluation.Evaluation;
import org.printassay.evaluation.MeasurementSummary;
import org.printassay.json.JsonNumbers;
import org.printassay.metric.Derived;
import org.printassay.metric.Extreme;

/** How a print was measured, and figures that follow from others, to JSON and back. */
final class JsonDerived {
    private JsonDerived() {}

    static JsonNode measurement(@Nullable MeasurementSummary m) {
        if (m == null) {
            return NullNode.instance;
        }
        ObjectNode node = JsonOut.object();
        node.set("condition", JsonOut.text(m.condition()));
        node.set("backing", JsonOut.text(m.backing()));
        node.set("filter", JsonOut.text(m.filter()));
        node.set("instrument", JsonOut.text(m.instrument()));
        node.put("repeats", m.repeats());
        node.set("notes", JsonOut.list(m.notes(), TextNode::valueOf));
        return node;
    }

    static JsonNode derived(Evaluation e) {
        Derived d = Derived.of(asWritten(e.white()), asWritten(e.black()), e.paperLight());
        MeasurementSummary m = e.measurement();
        ObjectNode node = JsonOut.object();
        node.set("contrastStops", fine(d == null ? null : d.contrastStops()));
        node.set("contrastUncertainty", fine(d == null ? null : d.contrastUncertainty()));
        node.set("contrastDeltaL", fine(d == null ? null : d.contrastDeltaL()));
        node.set("stopsWithFlare", fine(d == null ? null : d.stopsWithFlare()));
        node.set("paperWords", JsonOut.text(d == null ? null : d.paperWords()));
        node.set(
                "paperDeltaCh",
                fine(d == null || Double.isNaN(d.paperDeltaCh()) ? null : d.paperDeltaCh()));
        node.set("obaIndex", fine(m == null ? null : m.brightener()));
        node.set(
                "densities",
                m == null || m.solids().isEmpty()
                        ? NullNode.instance
                        : JsonOut.list(m.solids(), JsonDerived::solid));
        return node;
    }

    /** With the decimals that the file has, so that what was read is written again the same. */
    private static @Nullable Extreme asWritten(@Nullable Extreme x) {
        Lab lab = x == null ? null : x.lab();
        return x == null || lab == null
                ? null
                : new Extreme(
                        rounded(lab),
                        x.labRelative(),
                        x.density(),
                        rounded(x.uncertainty()),
                        x.systematicL(),
                        x.level(),
                        x.patches());
    }

    private static Lab rounded(Lab lab) {
        return new Lab(rounded(lab.l()), rounded(lab.a()), rounded(lab.b()));
    }

    private static double rounded(double value) {
        return JsonNumbers.rounded(value, JsonOut.FINE).doubleValue();
    }

    private static JsonNode solid(MeasurementSummary.Solid solid) {
        ObjectNode node = JsonOut.object();
        node.put("name", solid.name());
        Rgb8 rgb = solid.rgb();
        node.putArray("rgb").add(rgb.r()).add(rgb.g()).add(rgb.b());
        node.set("visual", fine(solid.visual()));
        node.set("statusA", filters(solid.statusA()));
        node.set("statusT", filters(solid.statusT()));
        return node;
    }

    private static JsonNode filters(Density.Filters filters) {
        ObjectNode node = JsonOut.object();
        node.set("red", fine(filters.red()));
        node.set("green", fine(filters.green()));
        node.set("blue", fine(filters.blue()));
        return node;
    }

    private static JsonNode fine(@Nullable Double value) {
        return JsonNumbers.decimal(value, JsonOut.FINE);
    }

    static @Nullable MeasurementSummary read(JsonNode root) {
        JsonNode m = root.path("source").path("measurement");
        JsonNode derived = root.path("derived");
        if (!m.isObject()) {
            return null;
        }
        return new MeasurementSummary(
                JsonIn.text(m.path("condition")),
                JsonIn.text(m.path("backing")),
                JsonIn.text(m.path("filter")),
                JsonIn.text(m.path("instrument")),
                m.path("repeats").asInt(),
                JsonIn.decimal(derived.path("obaIndex")),
                JsonIn.list(
                        derived.path("densities"),
                        s ->
                                new MeasurementSummary.Solid(
                                        s.path("name").asText(),
                                        new Rgb8(
                                                s.path("rgb").path(0).asInt(),
                                                s.path("rgb").path(1).asInt(),
                                                s.path("rgb").path(2).asInt()),
                                        s.path("visual").asDouble(),
                                        filters(s.path("statusA")),
                                        filters(s.path("statusT")))),
                JsonIn.list(m.path("notes"), JsonNode::asText));
    }

    private static Density.Filters filters(JsonNode node) {
        return new Density.Filters(
                node.path("red").asDouble(),
                node.path("green").asDouble(),
                node.path("blue").asDouble());
    }
}
