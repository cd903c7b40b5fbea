package org.printassay.report;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.LongNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.fasterxml.jackson.databind.node.TextNode;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.printassay.check.Baseline;
import org.printassay.check.Change;
import org.printassay.check.Check;
import org.printassay.check.CheckWords;
import org.printassay.check.DecisionRule;
import org.printassay.check.Grown;
import org.printassay.check.SurfaceChange;
import org.printassay.compare.KnownSpread;
import org.printassay.compare.PatchDrift;
import org.printassay.evaluation.Evaluation;
import org.printassay.evaluation.PrintBand;
import org.printassay.evaluation.PrintLine;
import org.printassay.json.JsonNumbers;

/** The file of a check, {@code check.json}; keys are in its published schema. */
public final class CheckJson {
    /** Version of the schema that is written. */
    public static final int SCHEMA_VERSION = 1;

    /** Patches that are listed, furthest apart first. */
    static final int WORST = 12;

    private static final int FINE = 4;
    private static final double PERCENT = 100;
    private static final JsonNodeFactory NODES = JsonNodeFactory.instance;

    private CheckJson() {}

    /** The text of the file. */
    public static String write(Check check) {
        ObjectNode root = NODES.objectNode();
        root.put("schema", "printassay/check/" + SCHEMA_VERSION);
        root.put("outcome", check.outcome().key());
        ObjectNode tolerances = root.putObject("tolerances");
        tolerances.put("name", check.tolerances().name());
        tolerances.put("about", check.tolerances().about());
        root.put("rule", DecisionRule.WORDS);
        root.set("baseline", baseline(check.baseline()));
        root.set("print", print(check.print()));
        root.set("spread", spread(check));
        return JsonLayout.write(checked(check, root));
    }

    private static JsonNode baseline(Baseline baseline) {
        ObjectNode node = NODES.objectNode();
        node.set("logbook", JsonOut.text(baseline.logbook()));
        node.set("entries", JsonOut.list(baseline.entries(), LongNode::valueOf));
        node.set("prints", JsonOut.list(baseline.prints(), CheckJson::print));
        return node;
    }

    private static JsonNode spread(Check check) {
        ObjectNode node = NODES.objectNode();
        KnownSpread seen = check.seen();
        node.put("words", CheckWords.spread(check));
        boolean used = check.changes().stream().anyMatch(Change::spreadSeen);
        node.set("from", JsonOut.text(used ? seen.from() : null));
        node.set(
                "told",
                JsonOut.list(
                        used ? seen.told() : List.<KnownSpread.Told>of(),
                        told ->
                                JsonOut.object()
                                        .put("series", told.what())
                                        .put("fewestPrints", told.fewest())
                                        .put("mostPrints", told.most())));
        return node;
    }

    private static JsonNode print(Evaluation e) {
        ObjectNode node = NODES.objectNode();
        node.set(
                "files",
                JsonOut.list(
                        e.files(),
                        f -> {
                            ObjectNode file = NODES.objectNode();
                            file.put("name", f.name());
                            file.put("sha256", f.sha256());
                            return file;
                        }));
        node.set("chart", JsonOut.text(e.chartId()));
        node.set("paper", JsonOut.text(e.details().paper()));
        node.set("printer", JsonOut.text(e.details().printer()));
        node.put("trust", e.trust().key());
        return node;
    }

    private static JsonNode checked(Check check, ObjectNode node) {
        node.set("sentences", JsonOut.list(CheckWords.sentences(check), TextNode::valueOf));
        node.set(
                "cautions",
                JsonOut.list(
                        check.cautions(),
                        c -> {
                            ObjectNode caution = NODES.objectNode();
                            caution.put("reason", c.reason().key());
                            caution.put("text", c.text());
                            return caution;
                        }));
        ObjectNode decision = node.putObject("decision");
        decision.set(
                "falseAlarmPercent",
                JsonNumbers.decimal(PERCENT * check.rule().falseAlarms(), FINE));
        decision.put("quantities", check.rule().quantities());
        decision.set("factor", JsonNumbers.decimal(check.rule().factor(), FINE));
        node.set("changes", JsonOut.list(check.changes(), CheckJson::change));
        node.set("notJudged", JsonOut.list(check.missing(), q -> TextNode.valueOf(q.key())));
        SurfaceChange surface = check.surface();
        ObjectNode lines = node.putObject("lines");
        lines.put("compared", surface.linesCompared());
        lines.put("whole", !surface.unlooked().contains("lines"));
        lines.set("new", JsonOut.list(surface.newLines(), CheckJson::line));
        lines.set("stronger", JsonOut.list(surface.worseLines(), CheckJson::grownLine));
        lines.set("before", JsonOut.list(surface.oldLines(), CheckJson::line));
        lines.set("gone", JsonOut.list(surface.goneLines(), CheckJson::line));
        ObjectNode bands = node.putObject("bands");
        bands.put("compared", surface.bandsCompared());
        bands.put("whole", !surface.unlooked().contains("bands"));
        bands.set("new", JsonOut.list(surface.newBands(), CheckJson::band));
        bands.set("stronger", JsonOut.list(surface.worseBands(), CheckJson::grownBand));
        bands.set("before", JsonOut.list(surface.oldBands(), CheckJson::band));
        bands.set("gone", JsonOut.list(surface.goneBands(), CheckJson::band));
        node.set("patches", patches(check.patches()));
        return node;
    }

    private static JsonNode change(Change change) {
        ObjectNode node = NODES.objectNode();
        node.put("quantity", change.quantity().key());
        node.put("label", change.quantity().label());
        node.put("unit", change.quantity().unit());
        node.set("place", JsonOut.text(change.place().isEmpty() ? null : change.place()));
        node.set("before", JsonNumbers.decimal(change.before(), FINE));
        node.set("after", JsonNumbers.decimal(change.after(), FINE));
        node.set("change", JsonNumbers.decimal(change.change(), FINE));
        node.set("standardUncertainty", JsonNumbers.decimal(change.standard(), FINE));
        node.set("halfWidth", JsonNumbers.decimal(change.halfWidth(), FINE));
        node.set("limit", JsonNumbers.decimal(change.limit(), FINE));
        node.set("spread", JsonNumbers.decimal(change.spread(), FINE));
        node.put("spreadFrom", change.spreadSeen() ? "prints" : "tolerances");
        node.put("outcome", change.outcome().key());
        return node;
    }

    private static JsonNode line(PrintLine line) {
        ObjectNode node = NODES.objectNode();
        node.put("sheet", line.sheet());
        node.set("along", JsonSurface.along(line.line().along()));
        node.set("positionMm", JsonNumbers.decimal(line.line().positionMm(), FINE));
        node.set("widthMm", JsonNumbers.decimal(line.line().widthMm(), FINE));
        node.set("contrast", JsonNumbers.decimal(line.line().contrast(), FINE));
        node.set("tintL", JsonNumbers.decimal(line.line().tintL(), FINE));
        node.set("deltaL", JsonNumbers.decimal(line.line().deltaL(), FINE));
        node.put("polarity", line.line().polarity());
        node.put("cause", line.cause().key());
        node.set("inks", JsonOut.list(line.inks(), TextNode::valueOf));
        return node;
    }

    private static JsonNode grownLine(Grown<PrintLine> grown) {
        ObjectNode node = NODES.objectNode();
        node.put("outcome", grown.outcome().key());
        node.set("baseline", line(grown.before()));
        node.set("print", line(grown.after()));
        return node;
    }

    private static JsonNode grownBand(Grown<PrintBand> grown) {
        ObjectNode node = NODES.objectNode();
        node.put("outcome", grown.outcome().key());
        node.set("baseline", band(grown.before()));
        node.set("print", band(grown.after()));
        return node;
    }

    private static JsonNode band(PrintBand band) {
        ObjectNode node = NODES.objectNode();
        node.put("sheet", band.sheet());
        node.set("along", JsonSurface.along(band.band().along()));
        node.set("periodMm", JsonNumbers.decimal(band.band().periodMm(), FINE));
        node.set("amplitudeDeltaL", JsonNumbers.decimal(band.band().amplitudeDeltaL(), FINE));
        node.set("overThreshold", JsonNumbers.decimal(band.band().overThreshold(), FINE));
        node.put("cause", band.cause().key());
        return node;
    }

    private static JsonNode patches(@Nullable PatchDrift drift) {
        if (drift == null) {
            return NODES.nullNode();
        }
        ObjectNode node = NODES.objectNode();
        node.put("codes", drift.codes().size());
        node.put("relative", drift.relative());
        node.set("meanDeltaE00", JsonNumbers.decimal(drift.meanDeltaE00(), FINE));
        node.set("expected", JsonNumbers.decimal(drift.expected(), FINE));
        node.set("drift", JsonNumbers.decimal(drift.drift(), FINE));
        node.set("meanDeltaL", JsonNumbers.decimal(drift.meanDeltaL(), FINE));
        node.set("meanDeltaA", JsonNumbers.decimal(drift.meanDeltaA(), FINE));
        node.set("meanDeltaB", JsonNumbers.decimal(drift.meanDeltaB(), FINE));
        int shown = Math.min(WORST, drift.codes().size());
        node.set("worst", JsonOut.list(drift.codes().subList(0, shown), CheckJson::code));
        return node;
    }

    private static JsonNode code(PatchDrift.Code code) {
        ObjectNode node = NODES.objectNode();
        node.putArray("rgb").add(code.rgb().r()).add(code.rgb().g()).add(code.rgb().b());
        node.set("before", JsonOut.lab(code.one()));
        node.set("after", JsonOut.lab(code.other()));
        node.set("deltaE00", JsonNumbers.decimal(code.deltaE00(), FINE));
        return node;
    }
}
