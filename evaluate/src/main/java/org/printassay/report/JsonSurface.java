package org.printassay.report;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.BooleanNode;
import com.fasterxml.jackson.databind.node.NullNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.fasterxml.jackson.databind.node.TextNode;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.printassay.evaluation.PrintBand;
import org.printassay.evaluation.PrintLine;
import org.printassay.evaluation.PrintSurface;
import org.printassay.json.JsonNumbers;
import org.printassay.surface.Along;

/** Lines, bands, grain, sharpness and vignettes to JSON: the same keys whether judged or not. */
final class JsonSurface {
    private JsonSurface() {}

    /** Adds the keys to the root of an evaluation. */
    static void add(ObjectNode root, @Nullable PrintSurface surface) {
        PrintSurface s = surface == null ? PrintSurface.NOT_JUDGED : surface;
        root.set("lines", listOrNull(s.lines(), JsonSurface::line));
        ObjectNode pattern = JsonOut.object();
        pattern.set("periodMm", fine(s.pattern() == null ? null : s.pattern().periodMm()));
        pattern.set("lines", JsonOut.whole(s.pattern() == null ? null : s.pattern().lines()));
        root.set("linePattern", pattern);
        root.set("bands", listOrNull(s.bands(), JsonSurface::band));
        root.set("scannerLines", JsonOut.list(s.scannerLines(), JsonSurface::line));
        root.set("scannerBands", JsonOut.list(s.scannerBands(), JsonSurface::band));
        ObjectNode page = JsonOut.object();
        page.set("widthMm", fine(s.page() == null ? null : s.page().width()));
        page.set("heightMm", fine(s.page() == null ? null : s.page().height()));
        root.set("page", page);
        root.set("feed", s.feed() == null ? NullNode.instance : along(s.feed()));
        ObjectNode viewing = root.putObject("viewing");
        viewing.set("distanceMm", fine(s.viewing().distanceMm()));
        viewing.set("illuminanceLux", fine(s.viewing().illuminanceLux()));
        unevenness(root, s.grain());
        sharpness(root, s.sharpness());
        root.set("vignettes", listOrNull(s.vignettes(), JsonSurface::vignette));
    }

    private static <T> JsonNode listOrNull(
            @Nullable List<T> items, java.util.function.Function<T, JsonNode> each) {
        return items == null ? NullNode.instance : JsonOut.list(items, each);
    }

    /** Down the page, or across it. */
    static JsonNode along(Along along) {
        return TextNode.valueOf(along == Along.Y ? "down" : "across");
    }

    private static JsonNode line(PrintLine l) {
        ObjectNode node = JsonOut.object();
        node.put("sheet", l.sheet());
        node.set("along", along(l.line().along()));
        node.set("positionMm", fine(l.line().positionMm()));
        node.set("widthMm", fine(l.line().widthMm()));
        node.set("contrast", fine(l.line().contrast()));
        node.set("tintL", fine(l.line().tintL()));
        node.set("deltaL", fine(l.line().deltaL()));
        node.set("signalToNoise", fine(l.line().z()));
        node.put("polarity", l.line().polarity());
        node.put("cause", l.cause().key());
        node.set("tints", JsonOut.list(l.line().shows(), TextNode::valueOf));
        node.set("inks", JsonOut.list(l.inks(), TextNode::valueOf));
        return node;
    }

    private static JsonNode band(PrintBand b) {
        ObjectNode node = JsonOut.object();
        node.put("sheet", b.sheet());
        node.set("along", along(b.band().along()));
        node.set("periodMm", fine(b.band().periodMm()));
        node.set("amplitudeDeltaL", fine(b.band().amplitudeDeltaL()));
        node.put("visible", b.band().visible());
        node.set("overThreshold", fine(b.band().overThreshold()));
        node.put("cause", b.cause().key());
        node.set("tints", JsonOut.list(b.band().shows(), TextNode::valueOf));
        return node;
    }

    private static void unevenness(ObjectNode root, PrintSurface.@Nullable Grain g) {
        String[] names = {"shadows", "midtones", "highlights", "paper"};
        ObjectNode grain = root.putObject("grain");
        ObjectNode mottle = root.putObject("mottle");
        for (String name : names) {
            PrintSurface.Zone zone = g == null ? null : zone(g, name);
            grain.set(name, fine(zone == null ? null : zone.graininess()));
            mottle.set(name, fine(zone == null ? null : zone.mottle()));
        }
        grain.set("highestPerMm", fine(g == null ? null : g.highestPerMm()));
        grain.set(
                "noiseRemoved",
                g == null ? NullNode.instance : BooleanNode.valueOf(g.noiseRemoved()));
        grain.set("areas", JsonOut.whole(g == null ? null : g.areas()));
    }

    private static PrintSurface.@Nullable Zone zone(PrintSurface.Grain g, String name) {
        return switch (name) {
            case "shadows" -> g.shadows();
            case "midtones" -> g.midtones();
            case "highlights" -> g.highlights();
            default -> g.paper();
        };
    }

    private static void sharpness(ObjectNode root, PrintSurface.@Nullable Sharpness s) {
        ObjectNode node = root.putObject("sharpness");
        node.set("acrossHalfPerMm", fine(s == null ? null : s.acrossHalfPerMm()));
        node.set("downHalfPerMm", fine(s == null ? null : s.downHalfPerMm()));
        node.set("acrossAtFive", fine(s == null ? null : s.acrossAtFive()));
        node.set("downAtFive", fine(s == null ? null : s.downAtFive()));
        node.set("edges", JsonOut.whole(s == null ? null : s.edges()));
        node.set("stepPerMm", fine(s == null ? null : s.stepPerMm()));
        node.set("across", JsonOut.list(s == null ? List.of() : s.across(), JsonSurface::fine));
        node.set("down", JsonOut.list(s == null ? List.of() : s.down(), JsonSurface::fine));
    }

    private static JsonNode vignette(PrintSurface.Vignette v) {
        ObjectNode node = JsonOut.object();
        node.put("sheet", v.sheet());
        node.set("fromLevel", fine(v.fromLevel()));
        node.set("toLevel", fine(v.toLevel()));
        node.set("yMm", fine(v.yMm()));
        node.set("steps", JsonOut.list(v.steps(), JsonSurface::step));
        node.set("scannerSteps", JsonOut.list(v.scannerSteps(), JsonSurface::step));
        return node;
    }

    private static JsonNode step(PrintSurface.Step step) {
        ObjectNode node = JsonOut.object();
        node.set("level", fine(step.level()));
        node.set("positionMm", fine(step.positionMm()));
        node.set("deltaL", fine(step.deltaL()));
        return node;
    }

    private static JsonNode fine(@Nullable Double value) {
        return JsonNumbers.decimal(value, JsonOut.FINE);
    }
}
