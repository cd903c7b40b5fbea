package org.printassay.report;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.BooleanNode;
import com.fasterxml.jackson.databind.node.IntNode;
import com.fasterxml.jackson.databind.node.NullNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.printassay.colour.Lab;
import org.printassay.colour.Rgb8;
import org.printassay.evaluation.Colours;
import org.printassay.json.JsonNumbers;
import org.printassay.metric.ColourDetail;
import org.printassay.metric.Gradient;

/** Colours and evenness to JSON and back: the same keys whether judged or not. */
final class JsonColours {
    private JsonColours() {}

    static JsonNode of(@Nullable Colours c) {
        ColourDetail d = c == null ? null : c.detail();
        ObjectNode node = JsonOut.object();
        node.set("meanDeltaE00", fine(c == null ? null : c.meanDeltaE00()));
        node.set("percentile95DeltaE00", fine(d == null ? null : d.percentile95DeltaE00()));
        node.set("maxDeltaE00", fine(d == null ? null : d.maxDeltaE00()));
        node.set("maxAtRgb", d == null ? NullNode.instance : rgb(d.maxAt()));
        node.set("gamutVolume", JsonNumbers.decimal(c == null ? null : c.gamutVolume(), 0));
        node.set("aimVolume", JsonNumbers.decimal(d == null ? null : d.aimVolume(), 0));
        node.set("hues", JsonOut.list(d == null ? List.of() : d.hues(), JsonColours::hue));
        node.set("skin", JsonOut.list(d == null ? List.of() : d.skin(), JsonColours::skin));
        return node;
    }

    private static JsonNode rgb(Rgb8 code) {
        return JsonOut.list(List.of(code.r(), code.g(), code.b()), IntNode::valueOf);
    }

    private static JsonNode hue(ColourDetail.Hue h) {
        ObjectNode node = JsonOut.object();
        node.put("name", h.name());
        node.set("full", JsonOut.lab(h.full()));
        node.set("aim", JsonOut.lab(h.aim()));
        node.set("deltaE00", fine(h.deltaE00()));
        node.set("deltaChroma", fine(h.deltaChroma()));
        node.set("deltaHue", fine(h.deltaHue()));
        node.set("mostChroma", fine(h.mostChroma()));
        node.set("noMoreFromPercent", JsonOut.whole(h.noMoreFromPercent()));
        return node;
    }

    private static JsonNode skin(ColourDetail.SkinTone s) {
        ObjectNode node = JsonOut.object();
        node.set("rgb", rgb(s.rgb()));
        node.set("measured", JsonOut.lab(s.measured()));
        node.set("aim", JsonOut.lab(s.aim()));
        node.set("deltaE00", fine(s.deltaE00()));
        node.set("deltaL", fine(s.deltaL()));
        node.set("deltaChroma", fine(s.deltaChroma()));
        node.set("hueShiftDegrees", fine(s.hueShiftDegrees()));
        node.put("words", s.words());
        return node;
    }

    /**
     * What was written, as it was written; the outlines of gamuts, which are not, come from the
     * readings.
     */
    static @Nullable ColourDetail detail(JsonNode c, @Nullable ColourDetail derived) {
        Double percentile = JsonIn.decimal(c.path("percentile95DeltaE00"));
        Double aimVolume = JsonIn.decimal(c.path("aimVolume"));
        if (percentile == null || aimVolume == null || derived == null) {
            return null;
        }
        return new ColourDetail(
                percentile,
                c.path("maxDeltaE00").asDouble(),
                rgb(c.path("maxAtRgb")),
                JsonIn.list(c.path("hues"), JsonColours::hueOf),
                JsonIn.list(c.path("skin"), JsonColours::skinOf),
                JsonIn.decimal(c.path("gamutVolume")),
                aimVolume,
                derived.slices());
    }

    private static Rgb8 rgb(JsonNode code) {
        return new Rgb8(code.path(0).asInt(), code.path(1).asInt(), code.path(2).asInt());
    }

    private static Lab lab(JsonNode node) {
        return new Lab(
                node.path("l").asDouble(), node.path("a").asDouble(), node.path("b").asDouble());
    }

    private static ColourDetail.Hue hueOf(JsonNode h) {
        return new ColourDetail.Hue(
                h.path("name").asText(),
                lab(h.path("full")),
                lab(h.path("aim")),
                h.path("deltaE00").asDouble(),
                h.path("deltaChroma").asDouble(),
                h.path("deltaHue").asDouble(),
                h.path("mostChroma").asDouble(),
                JsonIn.whole(h.path("noMoreFromPercent")));
    }

    private static ColourDetail.SkinTone skinOf(JsonNode s) {
        return new ColourDetail.SkinTone(
                rgb(s.path("rgb")),
                lab(s.path("measured")),
                lab(s.path("aim")),
                s.path("deltaE00").asDouble(),
                s.path("deltaL").asDouble(),
                s.path("deltaChroma").asDouble(),
                s.path("hueShiftDegrees").asDouble(),
                s.path("words").asText());
    }

    static JsonNode gradient(@Nullable Gradient g) {
        if (g == null) {
            return NullNode.instance;
        }
        ObjectNode node = JsonOut.object();
        node.set("acrossPerMetre", fine(g.acrossPerMetre()));
        node.set("downPerMetre", fine(g.downPerMetre()));
        node.set("overSheet", fine(g.overSheet()));
        node.set("uncertainty", fine(g.uncertainty()));
        node.set("significant", BooleanNode.valueOf(g.significant()));
        node.put("words", g.words());
        return node;
    }

    static @Nullable Gradient gradient(JsonNode g) {
        return g.isObject()
                ? new Gradient(
                        g.path("acrossPerMetre").asDouble(),
                        g.path("downPerMetre").asDouble(),
                        g.path("overSheet").asDouble(),
                        g.path("uncertainty").asDouble(),
                        g.path("significant").asBoolean(),
                        g.path("words").asText())
                : null;
    }

    private static JsonNode fine(@Nullable Double value) {
        return JsonNumbers.decimal(value, JsonOut.FINE);
    }
}
