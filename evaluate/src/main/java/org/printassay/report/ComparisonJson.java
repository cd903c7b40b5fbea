package org.printassay.report;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.IntNode;
import com.fasterxml.jackson.databind.node.NullNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.fasterxml.jackson.databind.node.TextNode;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.printassay.compare.Comparison;
import org.printassay.compare.Difference;
import org.printassay.compare.Figure;
import org.printassay.compare.FigureValue;
import org.printassay.compare.Judged;
import org.printassay.compare.Manner;
import org.printassay.compare.Pair;
import org.printassay.compare.PrintSpread;
import org.printassay.compare.Question.Criterion;
import org.printassay.compare.Ranking;
import org.printassay.compare.Side;
import org.printassay.compare.Verdicts;
import org.printassay.evaluation.Evaluation;
import org.printassay.json.JsonNumbers;

/**
 * The comparison file, {@code comparison.json}. Sides are numbered from 1; differences are second
 * minus first; what cannot be told is null. The same prints always give the same text.
 */
public final class ComparisonJson {
    /** Version of the schema that is written and read. */
    public static final int SCHEMA_VERSION = 1;

    private static final int DECIMALS = 4;

    private ComparisonJson() {}

    /** The text of a comparison's file. */
    public static String write(Comparison c) {
        ObjectNode root = JsonOut.object();
        root.put("schema", "printassay/comparison/" + SCHEMA_VERSION);
        root.put("subject", c.subject().many());
        root.put("against", c.against() + 1);
        root.put("readAlike", c.comparability().readAlike());
        root.set(
                "cautions",
                JsonOut.list(
                        c.comparability().cautions(),
                        caution ->
                                JsonOut.object()
                                        .put("code", caution.reason().key())
                                        .put("text", caution.text())));
        root.set(
                "findings",
                JsonOut.list(
                        c.findings(),
                        f ->
                                JsonOut.object()
                                        .put("topic", f.topic())
                                        .put("text", f.text())
                                        .put("sureness", f.sureness())
                                        .put("advice", f.advice())));
        root.set("rankings", JsonOut.list(c.rankings(), ComparisonJson::ranking));
        root.set("sides", sides(c));
        ObjectNode together = root.putObject("together");
        together.put("method", "benjamini-hochberg");
        together.set("rate", decimal(Verdicts.RATE));
        together.put("differences", c.pairs().counted());
        root.set("judged", judged(c));
        root.set("spreadFrom", JsonOut.text(c.known().known() ? c.known().words() : null));
        root.set("spread", spread(PrintSpread.ofRepeats(c.sides())));
        root.set("pairs", JsonOut.list(c.pairs().all(), ComparisonJson::pair));
        return JsonLayout.write(root);
    }

    private static JsonNode judged(Comparison c) {
        Manner manner =
                Manner.of(c.sides().stream().flatMap(side -> side.prints().stream()).toList());
        ObjectNode node = JsonOut.object();
        node.set("space", JsonOut.text(manner.space()));
        node.set("threshold", decimal(manner.threshold()));
        node.set("aim", JsonOut.text(manner.aim()));
        return node;
    }

    private static JsonNode ranking(Ranking r) {
        ObjectNode node = JsonOut.object();
        node.put("question", r.question().key());
        node.set("figures", JsonOut.list(r.criteria(), ComparisonJson::criterion));
        node.set("left", JsonOut.list(r.left(), ComparisonJson::criterion));
        node.set(
                "places",
                JsonOut.list(
                        r.places(),
                        p -> {
                            ObjectNode place = JsonOut.object();
                            place.put("place", p.place()).put("side", p.side() + 1);
                            Figure by = p.decidedBy();
                            place.set("decidedBy", JsonOut.text(by == null ? null : by.key()));
                            return place;
                        }));
        node.set(
                "within",
                JsonOut.list(
                        r.within(),
                        t ->
                                JsonOut.object()
                                        .put("better", t.better() + 1)
                                        .put("worse", t.worse() + 1)
                                        .put("decidedBy", t.decidedBy().key())));
        return node;
    }

    private static JsonNode criterion(Criterion c) {
        ObjectNode node = JsonOut.object();
        node.put("figure", c.figure().key());
        node.put("better", c.more() ? "more" : "less");
        node.set("countsFrom", decimal(c.figure().visible()));
        return node;
    }

    private static JsonNode sides(Comparison c) {
        int[] number = {0};
        return JsonOut.list(
                c.sides(),
                side -> {
                    ObjectNode node = JsonOut.object();
                    node.put("number", ++number[0]);
                    node.put("name", side.name());
                    Evaluation first = side.prints().get(0);
                    node.set("paper", JsonOut.text(first.details().paper()));
                    node.set("printer", JsonOut.text(first.details().printer()));
                    node.set("route", JsonOut.text(first.details().route()));
                    node.put("trust", first.trust().key());
                    node.set("prints", JsonOut.list(side.prints(), ComparisonJson::print));
                    node.set("figures", figures(side));
                    return node;
                });
    }

    private static JsonNode print(Evaluation e) {
        ObjectNode node = JsonOut.object();
        node.set("chart", JsonOut.text(e.chartId()));
        node.set("print", JsonOut.whole(e.print()));
        node.set(
                "driedHours",
                e.details().driedHours() == null
                        ? NullNode.instance
                        : decimal(e.details().driedHours()));
        node.set(
                "files",
                JsonOut.list(
                        e.files(),
                        f -> JsonOut.object().put("name", f.name()).put("sha256", f.sha256())));
        return node;
    }

    private static JsonNode figures(Side side) {
        List<Figure> judged =
                Arrays.stream(Figure.values()).filter(f -> !side.values(f).isEmpty()).toList();
        return JsonOut.list(
                judged,
                figure -> {
                    ObjectNode node = JsonOut.object();
                    node.put("figure", figure.key());
                    node.set("mean", decimal(side.mean(figure).orElse(null)));
                    node.set(
                            "values",
                            JsonOut.list(
                                    side.values(figure).stream().map(FigureValue::value).toList(),
                                    ComparisonJson::decimal));
                    return node;
                });
    }

    private static JsonNode spread(PrintSpread spread) {
        List<Figure> known =
                Arrays.stream(Figure.values()).filter(f -> spread.of(f).isPresent()).toList();
        return JsonOut.list(
                known,
                figure -> {
                    ObjectNode node = JsonOut.object();
                    node.put("figure", figure.key());
                    node.set("deviation", decimal(spread.of(figure).orElse(null)));
                    node.set(
                            "freedom",
                            spread.freedom(figure)
                                    .<JsonNode>map(IntNode::valueOf)
                                    .orElse(NullNode.instance));
                    return node;
                });
    }

    private static JsonNode pair(Pair pair) {
        ObjectNode node = JsonOut.object();
        node.put("one", pair.one() + 1).put("other", pair.other() + 1);
        node.set("differences", JsonOut.list(pair.figures(), ComparisonJson::judged));
        return node;
    }

    private static JsonNode judged(Judged judged) {
        Difference d = judged.difference();
        Double half = d.halfWidth();
        ObjectNode node = JsonOut.object();
        node.put("figure", d.figure().key());
        node.set("unit", TextNode.valueOf(d.figure().unit()));
        node.set("one", decimal(d.one()));
        node.set("other", decimal(d.other()));
        node.set("difference", decimal(d.value()));
        node.set("low", decimal(half == null ? null : d.value() - half));
        node.set("high", decimal(half == null ? null : d.value() + half));
        node.set("standard", decimal(d.standard()));
        node.set("freedom", decimal(d.freedom()));
        node.put("basis", d.basis().key());
        node.put("verdict", judged.verdict().key());
        return node;
    }

    private static JsonNode decimal(@Nullable Double value) {
        return JsonNumbers.decimal(value, DECIMALS);
    }
}
