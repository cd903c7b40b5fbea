package org.printassay.report;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import org.printassay.calibrate.Unevenness;
import org.printassay.colour.Lab;
import org.printassay.colour.Rgb8;
import org.printassay.colour.RgbSpace;
import org.printassay.evaluation.Colours;
import org.printassay.evaluation.Evaluation;
import org.printassay.evaluation.Evenness;
import org.printassay.evaluation.Finding;
import org.printassay.evaluation.PlacementSummary;
import org.printassay.evaluation.PrintDetails;
import org.printassay.evaluation.SourceFile;
import org.printassay.metric.ColourJudge;
import org.printassay.metric.Extreme;
import org.printassay.reading.LabError;
import org.printassay.reading.Reading;
import org.printassay.reading.ReadingFlag;
import org.printassay.reading.ReadingSet;
import org.printassay.reading.StrayLight;
import org.printassay.reading.Trust;
import org.printassay.reading.Warning;
import org.printassay.reading.WarningCode;
import org.printassay.sheet.PointMm;
import org.printassay.sheet.Section;

/** JSON that is valid by its schema to an evaluation. */
final class JsonIn {
    private JsonIn() {}

    static Evaluation evaluation(JsonNode root) {
        JsonNode source = root.path("source");
        return Evaluation.builder(trust(source.path("trust").asText()), root.path("space").asText())
                .chartId(text(root.path("chart").path("id")))
                .sheets(sheets(root.path("chart").path("sheet")))
                .print(whole(root.path("chart").path("print")))
                .details(
                        new PrintDetails(
                                text(root.path("paper")),
                                text(root.path("printer")),
                                text(root.path("route")),
                                decimal(root.path("driedHours")),
                                text(source.path("scanner")),
                                text(root.path("family"))))
                .fromScan(source.path("kind").asText().equals("scan"))
                .files(
                        list(
                                source.path("files"),
                                f ->
                                        new SourceFile(
                                                f.path("name").asText(),
                                                f.path("sha256").asText())))
                .placements(list(root.path("placements"), JsonIn::placement))
                .white(extreme(root.path("white")))
                .black(extreme(root.path("black")))
                .patches(list(root.path("patches"), JsonIn::reading))
                .tone(JsonMetricsIn.tone(root.path("tone")))
                .shadows(
                        JsonMetricsIn.wedge(
                                root.path("shadows"),
                                "blockedThrough",
                                "firstSeparated",
                                "firstVisible"))
                .highlights(
                        JsonMetricsIn.wedge(
                                root.path("highlights"),
                                "mergedFrom",
                                "lastSeparated",
                                "lastVisible"))
                .neutrality(JsonMetricsIn.neutrality(root.path("neutrality")))
                .colours(colours(root))
                .evenness(evenness(root.path("evenness")))
                .strayLight(strayLight(root.path("strayLight")))
                .warnings(
                        list(
                                root.path("warnings"),
                                w ->
                                        new Warning(
                                                warning(w.path("code").asText()),
                                                w.path("text").asText())))
                .findings(
                        list(
                                root.path("findings"),
                                f ->
                                        new Finding(
                                                f.path("topic").asText(),
                                                f.path("text").asText(),
                                                f.path("sureness").asText(),
                                                f.path("advice").asText())))
                .calibration(JsonTrust.calibration(source.path("calibration")))
                .measurement(JsonDerived.read(root))
                .uncertainty(list(root.path("uncertainty"), JsonTrust::budget))
                .surface(JsonSurfaceIn.surface(root))
                .promise(JsonPromise.read(root.path("aim")))
                .build();
    }

    private static List<Integer> sheets(JsonNode sheet) {
        if (sheet.isArray()) {
            return list(sheet, JsonNode::asInt);
        }
        return sheet.isNumber() ? List.of(sheet.asInt()) : List.of();
    }

    private static PlacementSummary placement(JsonNode p) {
        return new PlacementSummary(
                p.path("file").asText(),
                p.path("sheet").asInt(),
                p.path("markersFound").asInt(),
                p.path("markersExpected").asInt(),
                p.path("residualMm").asDouble(),
                decimal(p.path("scaleX")),
                decimal(p.path("scaleY")),
                p.path("rotationDegrees").asDouble(),
                p.path("samplesPerMm").asDouble(),
                text(p.path("profile")));
    }

    private static @Nullable Extreme extreme(JsonNode x) {
        Lab relative = lab(x.path("labRelative"));
        Lab uncertainty = lab(x.path("uncertainty"));
        if (relative == null || uncertainty == null) {
            return null;
        }
        return new Extreme(
                lab(x.path("lab")),
                relative,
                decimal(x.path("density")),
                uncertainty,
                x.path("systematicL").asDouble(),
                x.path("level").asInt(),
                x.path("patches").asInt());
    }

    private static Reading reading(JsonNode r) {
        JsonNode rgb = r.path("rgb");
        JsonNode error = r.path("standardError");
        Double x = decimal(r.path("xMm"));
        Double y = decimal(r.path("yMm"));
        return new Reading(
                r.path("id").asText(),
                Section.ofKey(r.path("section").asText()),
                new Rgb8(rgb.path(0).asInt(), rgb.path(1).asInt(), rgb.path(2).asInt()),
                lab(r.path("lab")),
                lab(r.path("labRelative")),
                error.isObject()
                        ? new LabError(
                                error.path("l").asDouble(),
                                error.path("a").asDouble(),
                                error.path("b").asDouble())
                        : null,
                decimal(r.path("density")),
                flags(r.path("flags")),
                x == null || y == null ? null : new PointMm(x, y),
                r.path("sheet").asInt());
    }

    private static Set<ReadingFlag> flags(JsonNode flags) {
        Set<ReadingFlag> out = EnumSet.noneOf(ReadingFlag.class);
        for (JsonNode flag : flags) {
            for (ReadingFlag known : ReadingFlag.values()) {
                if (known.key().equals(flag.asText())) {
                    out.add(known);
                }
            }
        }
        return out;
    }

    /** Details follow from the readings and are made from them again. */
    private static @Nullable Colours colours(JsonNode root) {
        JsonNode c = root.path("colours");
        Double mean = decimal(c.path("meanDeltaE00"));
        if (mean == null) {
            return null;
        }
        ReadingSet set =
                new ReadingSet(
                        list(root.path("patches"), JsonIn::reading),
                        RgbSpace.ofKey(root.path("space").asText()).orElse(RgbSpace.SRGB),
                        trust(root.path("source").path("trust").asText()),
                        true);
        return new Colours(
                mean,
                decimal(c.path("gamutVolume")),
                JsonColours.detail(c, ColourJudge.detail(set)));
    }

    private static @Nullable Unevenness whose(JsonNode e) {
        return e.path("scannerPercent").isNumber()
                ? new Unevenness(
                        e.path("scannerPercent").asDouble(),
                        e.path("printPercent").asDouble(),
                        e.path("undecidedPercent").asDouble())
                : null;
    }

    private static @Nullable Evenness evenness(JsonNode e) {
        Double max = decimal(e.path("maxDeltaE00"));
        return max == null
                ? null
                : new Evenness(
                        max,
                        e.path("lightFalloffPercent").asDouble(),
                        whose(e),
                        JsonColours.gradient(e.path("gradient")));
    }

    private static @Nullable StrayLight strayLight(JsonNode s) {
        Double fraction = decimal(s.path("fraction"));
        return fraction == null
                ? null
                : new StrayLight(
                        fraction,
                        s.path("standardError").asDouble(),
                        s.path("returned").asDouble(),
                        s.path("widthMm").asDouble(Double.NaN),
                        s.path("corrected").asBoolean(),
                        s.path("blackWithout").asDouble());
    }

    private static Trust trust(String key) {
        for (Trust trust : Trust.values()) {
            if (trust.key().equals(key)) {
                return trust;
            }
        }
        throw new IllegalStateException("the schema lets no other trust through: " + key);
    }

    private static WarningCode warning(String key) {
        for (WarningCode code : WarningCode.values()) {
            if (code.key().equals(key)) {
                return code;
            }
        }
        throw new IllegalStateException("the schema lets no other code through: " + key);
    }

    static @Nullable Lab lab(JsonNode lab) {
        return lab.isObject()
                ? new Lab(
                        lab.path("l").asDouble(),
                        lab.path("a").asDouble(),
                        lab.path("b").asDouble())
                : null;
    }

    static <T> List<T> list(JsonNode array, Function<JsonNode, T> each) {
        List<T> out = new ArrayList<>();
        array.forEach(node -> out.add(each.apply(node)));
        return List.copyOf(out);
    }

    static @Nullable String text(JsonNode node) {
        return node.isTextual() ? node.asText() : null;
    }

    static @Nullable Integer whole(JsonNode node) {
        return node.isNumber() ? Integer.valueOf(node.asInt()) : null;
    }

    static @Nullable Double decimal(JsonNode node) {
        return node.isNumber() ? Double.valueOf(node.asDouble()) : null;
    }
}
