package org.printassay.report;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.List;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import org.printassay.evaluation.PrintBand;
import org.printassay.evaluation.PrintLine;
import org.printassay.evaluation.PrintSurface;
import org.printassay.evaluation.SurfaceCause;
import org.printassay.sheet.RectMm;
import org.printassay.surface.Along;
import org.printassay.surface.ContrastSensitivity;
import org.printassay.surface.FoundBand;
import org.printassay.surface.FoundLine;
import org.printassay.surface.SwathPattern;

/** Lines, bands, grain, sharpness and vignettes from JSON that is valid by its schema. */
final class JsonSurfaceIn {
    private JsonSurfaceIn() {}

    static PrintSurface surface(JsonNode root) {
        JsonNode pattern = root.path("linePattern");
        Double period = JsonIn.decimal(pattern.path("periodMm"));
        Double width = JsonIn.decimal(root.path("page").path("widthMm"));
        Double height = JsonIn.decimal(root.path("page").path("heightMm"));
        return new PrintSurface(
                listOrNull(root.path("lines"), JsonSurfaceIn::line),
                period == null ? null : new SwathPattern(period, pattern.path("lines").asInt()),
                listOrNull(root.path("bands"), JsonSurfaceIn::band),
                JsonIn.list(root.path("scannerLines"), JsonSurfaceIn::line),
                JsonIn.list(root.path("scannerBands"), JsonSurfaceIn::band),
                width == null || height == null ? null : new RectMm(0, 0, width, height),
                root.path("feed").isTextual() ? along(root.path("feed")) : null,
                new ContrastSensitivity(
                        root.path("viewing").path("distanceMm").asDouble(),
                        root.path("viewing").path("illuminanceLux").asDouble()),
                grain(root.path("grain"), root.path("mottle")),
                sharpness(root.path("sharpness")),
                listOrNull(root.path("vignettes"), JsonSurfaceIn::vignette));
    }

    private static <T> @Nullable List<T> listOrNull(JsonNode node, Function<JsonNode, T> each) {
        return node.isArray() ? JsonIn.list(node, each) : null;
    }

    private static Along along(JsonNode node) {
        return node.asText().equals("down") ? Along.Y : Along.X;
    }

    private static SurfaceCause cause(JsonNode node) {
        for (SurfaceCause cause : SurfaceCause.values()) {
            if (cause.key().equals(node.asText())) {
                return cause;
            }
        }
        return SurfaceCause.UNDECIDED;
    }

    private static PrintLine line(JsonNode l) {
        SurfaceCause cause = cause(l.path("cause"));
        return new PrintLine(
                l.path("sheet").asInt(),
                new FoundLine(
                        along(l.path("along")),
                        l.path("positionMm").asDouble(),
                        l.path("widthMm").asDouble(),
                        l.path("contrast").asDouble(),
                        l.path("signalToNoise").asDouble(),
                        JsonIn.list(l.path("tints"), JsonNode::asText),
                        List.of(),
                        cause == SurfaceCause.SCANNER,
                        JsonIn.decimal(l.path("tintL"))),
                cause,
                JsonIn.list(l.path("inks"), JsonNode::asText));
    }

    private static PrintBand band(JsonNode b) {
        SurfaceCause cause = cause(b.path("cause"));
        return new PrintBand(
                b.path("sheet").asInt(),
                new FoundBand(
                        along(b.path("along")),
                        b.path("periodMm").asDouble(),
                        b.path("amplitudeDeltaL").asDouble(),
                        b.path("visible").asBoolean(),
                        b.path("overThreshold").asDouble(),
                        JsonIn.list(b.path("tints"), JsonNode::asText),
                        cause == SurfaceCause.SCANNER),
                cause);
    }

    private static PrintSurface.@Nullable Grain grain(JsonNode grain, JsonNode mottle) {
        Double highest = JsonIn.decimal(grain.path("highestPerMm"));
        return highest == null
                ? null
                : new PrintSurface.Grain(
                        zone(grain, mottle, "shadows"),
                        zone(grain, mottle, "midtones"),
                        zone(grain, mottle, "highlights"),
                        zone(grain, mottle, "paper"),
                        highest,
                        grain.path("noiseRemoved").asBoolean(),
                        grain.path("areas").asInt());
    }

    private static PrintSurface.@Nullable Zone zone(JsonNode grain, JsonNode mottle, String name) {
        Double fine = JsonIn.decimal(grain.path(name));
        return fine == null ? null : new PrintSurface.Zone(fine, JsonIn.decimal(mottle.path(name)));
    }

    private static PrintSurface.@Nullable Sharpness sharpness(JsonNode s) {
        Integer edges = JsonIn.whole(s.path("edges"));
        return edges == null
                ? null
                : new PrintSurface.Sharpness(
                        JsonIn.decimal(s.path("acrossHalfPerMm")),
                        JsonIn.decimal(s.path("downHalfPerMm")),
                        JsonIn.decimal(s.path("acrossAtFive")),
                        JsonIn.decimal(s.path("downAtFive")),
                        edges,
                        JsonIn.list(s.path("across"), JsonNode::asDouble),
                        JsonIn.list(s.path("down"), JsonNode::asDouble),
                        s.path("stepPerMm").asDouble());
    }

    private static PrintSurface.Vignette vignette(JsonNode v) {
        return new PrintSurface.Vignette(
                v.path("sheet").asInt(),
                v.path("fromLevel").asDouble(),
                v.path("toLevel").asDouble(),
                v.path("yMm").asDouble(),
                JsonIn.list(v.path("steps"), JsonSurfaceIn::step),
                JsonIn.list(v.path("scannerSteps"), JsonSurfaceIn::step));
    }

    private static PrintSurface.Step step(JsonNode step) {
        return new PrintSurface.Step(
                step.path("level").asDouble(),
                step.path("positionMm").asDouble(),
                step.path("deltaL").asDouble());
    }
}
