package org.printassay.scannermodel;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.DecimalNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.math.BigDecimal;
import java.math.MathContext;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import org.printassay.colour.Lab;
import org.printassay.colour.LinearRgb;
import org.printassay.json.CheckedJson;
import org.printassay.problem.Problem;

/** Calibrations as JSON, {@code printassay/calibration/1}; same calibration, same text. */
public final class CalibrationFile {
    private static final int SCHEMA_VERSION = 1;
    private static final String KIND = "calibration";

    /** Significant digits: far beyond what a scanner repeats. */
    private static final MathContext DIGITS = new MathContext(9);

    private static final JsonNodeFactory NODES = JsonNodeFactory.instance;

    private CalibrationFile() {}

    /**
     * Reads a calibration.
     *
     * @throws Problem input, when it cannot be read, was made by a newer version or is not valid
     */
    public static ScannerCalibration read(Path file) throws Problem {
        String where = String.valueOf(file.getFileName());
        return calibration(where, CheckedJson.read(file, KIND, SCHEMA_VERSION));
    }

    /** As {@link #read}, of bytes already in memory; {@code where} is for messages. */
    public static ScannerCalibration parse(String where, byte[] bytes) throws Problem {
        return calibration(where, CheckedJson.parse(where, bytes, KIND, SCHEMA_VERSION));
    }

    private static ScannerCalibration calibration(String where, JsonNode root) throws Problem {
        try {
            return calibration(root);
        } catch (IllegalArgumentException e) {
            // Valid by the schema, but its parts do not fit each other.
            throw Problem.input(
                    where, "is damaged (" + e.getMessage() + "). Make the calibration anew.", e);
        }
    }

    private static ScannerCalibration calibration(JsonNode root) {
        JsonNode model = root.path("model");
        JsonNode residual = model.path("residual");
        SmoothResidual rest =
                residual.isNull()
                        ? null
                        : new SmoothResidual(
                                residual.path("range").asDouble(),
                                list(residual.path("centres"), CalibrationFile::lab),
                                list(residual.path("weights"), CalibrationFile::lab));
        double[][] coefficients = {
            numbers(model.path("x")), numbers(model.path("y")), numbers(model.path("z"))
        };
        JsonNode error = root.path("leaveOneOut");
        JsonNode curves = root.path("curves");
        return new ScannerCalibration(
                new CodeCurves(
                        list(curves.path("red"), JsonNode::asDouble),
                        list(curves.path("green"), JsonNode::asDouble),
                        list(curves.path("blue"), JsonNode::asDouble)),
                new ScannerModel(
                        new RootPolynomial(model.path("order").asInt(), coefficients), rest),
                new LeaveOneOut(
                        error.path("meanDeltaE00").asDouble(),
                        error.path("p95DeltaE00").asDouble(),
                        error.path("maxDeltaE00").asDouble(),
                        error.path("patches").asInt(),
                        error.path("colours").asInt()),
                list(root.path("colours"), CalibrationFile::colour),
                light(root.path("paperLight")),
                list(root.path("leftOut"), JsonNode::asText),
                root.path("strayLightKnown").asBoolean(),
                root.path("lightDeltaE00").isNumber()
                        ? root.path("lightDeltaE00").asDouble()
                        : null,
                made(root.path("made")));
    }

    private static FittedColour colour(JsonNode c) {
        return new FittedColour(
                c.path("name").asText(),
                c.path("neutral").asBoolean(),
                light(c.path("light")),
                lab(c.path("lab")),
                lab(c.path("off")),
                c.path("patches").asInt());
    }

    private static Circumstances made(JsonNode m) {
        JsonNode resolution = m.path("samplesPerInch");
        return new Circumstances(
                text(m.path("scanner")),
                text(m.path("printer")),
                text(m.path("paper")),
                text(m.path("family")),
                resolution.isNull() ? null : resolution.asDouble(),
                m.path("bits").asInt(),
                text(m.path("profileSha256")),
                text(m.path("condition")),
                list(
                        m.path("files"),
                        f ->
                                new Circumstances.Source(
                                        f.path("name").asText(), f.path("sha256").asText())));
    }

    private static @Nullable String text(JsonNode node) {
        return node.isNull() ? null : node.asText();
    }

    private static Lab lab(JsonNode n) {
        return new Lab(n.path(0).asDouble(), n.path(1).asDouble(), n.path(2).asDouble());
    }

    private static LinearRgb light(JsonNode n) {
        return new LinearRgb(n.path(0).asDouble(), n.path(1).asDouble(), n.path(2).asDouble());
    }

    private static double[] numbers(JsonNode n) {
        return list(n, JsonNode::asDouble).stream().mapToDouble(d -> d).toArray();
    }

    private static <T> List<T> list(JsonNode array, Function<JsonNode, T> each) {
        List<T> items = new ArrayList<>();
        array.forEach(item -> items.add(each.apply(item)));
        return items;
    }

    /** The text of a calibration. */
    public static String write(ScannerCalibration c) {
        ObjectNode root = NODES.objectNode();
        root.put("schema", "printassay/" + KIND + "/" + SCHEMA_VERSION);
        ObjectNode made = root.putObject("made");
        made.put("scanner", c.made().scanner());
        made.put("printer", c.made().printer());
        made.put("paper", c.made().paper());
        made.put("family", c.made().family());
        Double resolution = c.made().samplesPerInch();
        made.set("samplesPerInch", resolution == null ? NODES.nullNode() : number(resolution));
        made.put("bits", c.made().bits());
        made.put("profileSha256", c.made().profileSha256());
        made.put("condition", c.made().condition());
        ArrayNode files = made.putArray("files");
        for (Circumstances.Source file : c.made().files()) {
            files.addObject().put("name", file.name()).put("sha256", file.sha256());
        }
        ObjectNode error = root.putObject("leaveOneOut");
        error.set("meanDeltaE00", number(c.error().meanDeltaE00()));
        error.set("p95DeltaE00", number(c.error().p95DeltaE00()));
        error.set("maxDeltaE00", number(c.error().maxDeltaE00()));
        error.put("patches", c.error().patches());
        error.put("colours", c.error().colours());
        root.put("strayLightKnown", c.strayLightKnown());
        Double off = c.lightDeltaE00();
        root.set("lightDeltaE00", off == null ? NODES.nullNode() : number(off));
        root.set("paperLight", three(c.paper().r(), c.paper().g(), c.paper().b()));
        ArrayNode leftOut = root.putArray("leftOut");
        c.leftOut().forEach(leftOut::add);
        root.set("model", model(c.model()));
        ArrayNode colours = root.putArray("colours");
        for (FittedColour colour : c.colours()) {
            ObjectNode node = colours.addObject();
            node.put("name", colour.name()).put("neutral", colour.neutral());
            LinearRgb light = colour.light();
            node.set("light", three(light.r(), light.g(), light.b()));
            node.set("lab", three(colour.lab()));
            node.set("off", three(colour.off()));
            node.put("patches", colour.patches());
        }
        ObjectNode curves = root.putObject("curves");
        curves.set("red", numbers(c.curves().red()));
        curves.set("green", numbers(c.curves().green()));
        curves.set("blue", numbers(c.curves().blue()));
        try {
            return JsonMapper.builder()
                            .build()
                            .writerWithDefaultPrettyPrinter()
                            .writeValueAsString(root)
                            .replace("\r\n", "\n")
                    + "\n";
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("a tree of our own cannot be written", e);
        }
    }

    private static ObjectNode model(ScannerModel m) {
        ObjectNode model = NODES.objectNode();
        model.put("order", m.order());
        double[][] coefficients = m.polynomial().coefficients();
        model.set("x", numbers(coefficients[0]));
        model.set("y", numbers(coefficients[1]));
        model.set("z", numbers(coefficients[2]));
        SmoothResidual rest = m.residual();
        if (rest == null) {
            model.putNull("residual");
            return model;
        }
        ObjectNode residual = model.putObject("residual");
        residual.set("range", number(rest.range()));
        ArrayNode centres = residual.putArray("centres");
        rest.centres().forEach(lab -> centres.add(three(lab)));
        ArrayNode weights = residual.putArray("weights");
        rest.weights().forEach(lab -> weights.add(three(lab)));
        return model;
    }

    private static ArrayNode numbers(double... values) {
        ArrayNode array = NODES.arrayNode();
        for (double value : values) {
            array.add(number(value));
        }
        return array;
    }

    private static ArrayNode numbers(List<Double> values) {
        return numbers(values.stream().mapToDouble(d -> d).toArray());
    }

    private static ArrayNode three(Lab lab) {
        return three(lab.l(), lab.a(), lab.b());
    }

    private static ArrayNode three(double one, double two, double three) {
        return numbers(one, two, three);
    }

    private static DecimalNode number(double value) {
        BigDecimal rounded = new BigDecimal(value).round(DIGITS).stripTrailingZeros();
        return DecimalNode.valueOf(rounded.scale() < 0 ? rounded.setScale(0) : rounded);
    }
}
