package org.printassay.logbook;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.printassay.json.JsonNumbers;
import org.printassay.trend.ControlLimits;
import org.printassay.trend.Point;
import org.printassay.trend.Shift;
import org.printassay.trend.Trend;

/** What the logbook says, for scripts: {@code printassay/log/1} and {@code printassay/trend/1}. */
public final class LogbookJson {
    private static final JsonMapper MAPPER = new JsonMapper();
    private static final int DECIMALS = 5;

    private LogbookJson() {}

    /** Entries and what was done with them. */
    public static String entries(LogbookPlace place, String done, List<Entry> entries) {
        ObjectNode root = root(place, done);
        ArrayNode list = root.putArray("entries");
        entries.forEach(entry -> list.add(entry(entry)));
        return text(root);
    }

    /** Files that were added, each with its outcome. */
    public static String added(LogbookPlace place, Map<String, Added> files) {
        ObjectNode root = root(place, "add");
        ArrayNode list = root.putArray("files");
        files.forEach(
                (file, added) -> {
                    ObjectNode node = list.addObject();
                    node.put("file", file);
                    node.put("outcome", added.outcome().key());
                    node.set("entry", entry(added.entry()));
                });
        return text(root);
    }

    /** Numbers of entries by what became of them. */
    public static String counts(LogbookPlace place, String done, Map<String, Integer> counts) {
        ObjectNode root = root(place, done);
        ObjectNode node = root.putObject("counts");
        counts.forEach(node::put);
        return text(root);
    }

    private static ObjectNode root(LogbookPlace place, String done) {
        ObjectNode root = MAPPER.createObjectNode();
        return root.put("schema", "printassay/log/1")
                .put("done", done)
                .put("logbook", place.shown());
    }

    private static ObjectNode entry(Entry entry) {
        ObjectNode node = MAPPER.createObjectNode();
        node.put("id", entry.id());
        series(node, entry.series());
        node.put("readAt", entry.readAt().toString());
        node.put("addedAt", entry.addedAt().toString());
        node.put("chart", entry.chart());
        node.put("print", entry.print());
        node.put("manner", entry.manner());
        node.put("note", entry.note());
        return node.put("baseline", entry.baseline());
    }

    private static void series(ObjectNode node, Series series) {
        node.put("printer", said(series.printer()));
        node.put("paper", said(series.paper()));
        node.put("route", said(series.route()));
    }

    private static @Nullable String said(String name) {
        return name.isEmpty() ? null : name;
    }

    /** A series over time. */
    public static String trend(SeriesTrend series) {
        ObjectNode root = MAPPER.createObjectNode();
        root.put("schema", "printassay/trend/1");
        series(root, series.series());
        root.put("manner", series.manner());
        root.put("prints", series.entries().size());
        ArrayNode notes = root.putArray("notes");
        series.notes().forEach(notes::add);
        ArrayNode figures = root.putArray("figures");
        series.trends().forEach(trend -> figures.add(figure(trend)));
        return text(root);
    }

    private static ObjectNode figure(Trend trend) {
        ObjectNode node = MAPPER.createObjectNode();
        node.put("figure", trend.quantity().key());
        node.put("label", trend.quantity().label());
        node.put("unit", trend.quantity().unit());
        node.put("state", trend.state().key());
        ControlLimits limits = trend.limits();
        if (limits == null) {
            node.putNull("limits");
        } else {
            ObjectNode out = node.putObject("limits");
            out.set("centre", rounded(limits.centre()));
            out.set("lower", rounded(limits.lower()));
            out.set("upper", rounded(limits.upper()));
            out.set("standardDeviation", rounded(limits.sigma()));
            out.put("prints", limits.values());
            out.put("provisional", limits.provisional());
        }
        ArrayNode changes = node.putArray("changes");
        for (Shift change : trend.changes()) {
            ObjectNode out = changes.addObject();
            out.put("kind", change.kind().key());
            out.put("first", trend.points().get(change.first()).entry());
            out.put("last", trend.points().get(change.last()).entry());
            out.set("extent", rounded(change.extent()));
        }
        ArrayNode points = node.putArray("points");
        for (int i = 0; i < trend.points().size(); i++) {
            Point point = trend.points().get(i);
            int judged = i - trend.judgedFrom();
            ObjectNode out = points.addObject();
            out.put("entry", point.entry());
            out.put("readAt", point.at().toString());
            out.put("value", point.value());
            if (judged >= 0 && judged < trend.running().size()) {
                out.set("runningMean", rounded(trend.running().get(judged)));
            } else {
                out.putNull("runningMean");
            }
            out.put("baseline", point.baseline());
        }
        return node;
    }

    /** A hundred-thousandth says nothing about a print. */
    private static JsonNode rounded(double value) {
        return JsonNumbers.decimal(value, DECIMALS);
    }

    private static String text(ObjectNode root) {
        return root.toPrettyString();
    }
}
