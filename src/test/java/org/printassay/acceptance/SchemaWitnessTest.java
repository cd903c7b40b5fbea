package org.printassay.acceptance;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.harrel.jsonschema.Dialects;
import dev.harrel.jsonschema.SpecificationVersion;
import dev.harrel.jsonschema.Validator;
import dev.harrel.jsonschema.ValidatorFactory;
import dev.harrel.jsonschema.providers.JacksonNode;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.printassay.demo.PrintRoom;
import org.printassay.demo.print.Printing;
import org.printassay.json.CheckedJson;
import org.printassay.problem.Problem;

/**
 * The published schemas and the files that commands write, before a validator that the program does
 * not use itself (dev.harrel:json-schema).
 */
class SchemaWitnessTest {
    private static final ObjectMapper MAPPER = new ObjectMapper();
    private static final String META = "https://json-schema.org/draft/2020-12/schema";

    @TempDir Path dir;

    /** Schemas by kind and version, {@code chart-1}. */
    private static Map<String, JsonNode> schemas() throws Exception {
        Map<String, JsonNode> schemas = new TreeMap<>();
        for (String module : List.of("chart-gen", "evaluate", "cli")) {
            Path folder = root().resolve(module + "/src/main/resources/org/printassay/json");
            try (Stream<Path> files = Files.list(folder)) {
                for (Path file : files.sorted().toList()) {
                    String name = file.getFileName().toString().replace(".schema.json", "");
                    assertEquals(null, schemas.put(name, MAPPER.readTree(file.toFile())), name);
                }
            }
        }
        return schemas;
    }

    private static Path root() {
        Path at = Path.of("").toAbsolutePath();
        while (!Files.exists(at.resolve("README.md"))) {
            at = Objects.requireNonNull(at.getParent(), "the project's folder");
        }
        return at;
    }

    private static Validator validator() {
        return new ValidatorFactory()
                .withDialect(new Dialects.Draft2020Dialect())
                .withJsonNodeFactory(new JacksonNode.Factory())
                .createValidator();
    }

    private static String errors(JsonNode schema, JsonNode file) {
        Validator validator = validator();
        Validator.Result result = validator.validate(validator.registerSchema(schema), file);
        return result.isValid() ? "" : result.getErrors().toString();
    }

    @Test
    void everySchemaIsValidByTheMetaSchema() throws Exception {
        Map<String, JsonNode> schemas = schemas();
        assertTrue(schemas.size() >= 8, schemas.keySet().toString());
        for (Map.Entry<String, JsonNode> schema : schemas.entrySet()) {
            assertEquals(META, schema.getValue().path("$schema").asText(), schema.getKey());
            Validator.Result result =
                    validator()
                            .validate(
                                    URI.create(SpecificationVersion.DRAFT2020_12.getId()),
                                    schema.getValue());
            assertTrue(result.isValid(), schema.getKey() + ": " + result.getErrors());
            int dash = schema.getKey().lastIndexOf('-');
            assertEquals(
                    "printassay/"
                            + schema.getKey().substring(0, dash)
                            + "/"
                            + schema.getKey().substring(dash + 1),
                    schema.getValue().at("/properties/schema/const").asText());
        }
    }

    /** What commands wrote or printed, each by the schema that it names. */
    private List<JsonNode> written() throws Exception {
        Path scan = SimulatedPrint.plainGood(dir.resolve("scan.png"));
        List<JsonNode> files = new ArrayList<>();
        files.add(printed("chart", "--dpi", 72, "--json", "--out", dir.resolve("chart")));
        files.add(MAPPER.readTree(dir.resolve("chart/chart.json").toFile()));
        files.add(printed("evaluate", scan, "--json", "--out", dir.resolve("one")));
        files.add(printed("evaluate", "--many", scan, "--json", "--out", dir.resolve("many")));
        assertEquals(
                files.get(files.size() - 1),
                MAPPER.readTree(dir.resolve("many/summary.json").toFile()));
        Path measured = dir.resolve("measured.txt");
        PrintRoom.measure(
                SimulatedPrint.print(SimulatedPrint.goodPaper(), Printing.EXACT, 7), 7, measured);
        files.add(
                printed(
                        "calibrate",
                        "--scan",
                        scan,
                        "--measurement",
                        measured,
                        "--paper",
                        "P",
                        "--json",
                        "--out",
                        dir.resolve("calibration")));
        Path before = MeasuredPrint.evaluation(dir.resolve("before"), "P", 1, 0);
        Path after = MeasuredPrint.evaluation(dir.resolve("after"), "P", 2, 9);
        Path other = MeasuredPrint.evaluation(dir.resolve("other"), "Q", 3, 0);
        files.add(failed("check", after, "--baseline", before, "--out", dir.resolve("check")));
        files.add(
                failed(
                        "check",
                        after,
                        dir.resolve("after/evaluation"),
                        "--baseline",
                        before,
                        "--out",
                        dir.resolve("checks")));
        files.add(printed("compare", before, other, "--json", "--out", dir.resolve("sides")));
        if ("required".equals(System.getProperty("witnesses"))) {
            // It prints, scans and reads three papers: too long for every day.
            files.add(printed("demo", "--json", "--out", dir.resolve("demo")));
        }
        return files;
    }

    /** What a check of a changed print says. */
    private static JsonNode failed(Object... arguments) throws Exception {
        List<Object> all = new ArrayList<>(List.of(arguments));
        all.add("--json");
        CommandLineRun run = CommandLineRun.of(all.toArray());
        assertEquals(1, run.exitCode(), run.err());
        return MAPPER.readTree(run.out());
    }

    private static JsonNode printed(Object... arguments) throws Exception {
        CommandLineRun run = CommandLineRun.of(arguments);
        assertEquals(0, run.exitCode(), run.err());
        return MAPPER.readTree(run.out());
    }

    private static String kind(JsonNode file) {
        String[] parts = file.path("schema").asText().split("/", -1);
        assertEquals(3, parts.length, file.path("schema").asText());
        return parts[1] + "-" + parts[2];
    }

    @Test
    void whatCommandsWriteIsValidAndWhatIsMadeWrongIsRefusedByBoth() throws Exception {
        Map<String, JsonNode> schemas = schemas();
        for (JsonNode file : written()) {
            String kind = kind(file);
            JsonNode schema = Objects.requireNonNull(schemas.get(kind), kind);
            assertEquals("", errors(schema, file), kind);
            accepted(kind, file);
            for (JsonNode wrong : madeWrong(file)) {
                assertFalse(errors(schema, wrong).isEmpty(), kind);
                assertThrows(Problem.class, () -> accepted(kind, wrong), kind);
            }
        }
    }

    /** By the validator that the program uses. */
    private static void accepted(String kind, JsonNode file) throws Exception {
        int dash = kind.lastIndexOf('-');
        CheckedJson.parse(
                kind,
                MAPPER.writeValueAsString(file).getBytes(StandardCharsets.UTF_8),
                kind.substring(0, dash),
                Integer.parseInt(kind.substring(dash + 1)));
    }

    /** Each required key taken away in turn, and each replaced by what it cannot be. */
    private static List<JsonNode> madeWrong(JsonNode file) {
        List<JsonNode> wrong = new ArrayList<>();
        for (Map.Entry<String, JsonNode> field : file.properties()) {
            if (field.getKey().equals("schema")) {
                continue;
            }
            ObjectNode other = file.deepCopy();
            ArrayNode nested = MAPPER.createArrayNode();
            nested.addArray().addArray().add("what is this?");
            other.set(field.getKey(), nested);
            wrong.add(other);
        }
        ObjectNode version = file.deepCopy();
        version.put("schema", file.path("schema").asText() + "0");
        wrong.add(version);
        return wrong;
    }

    @Test
    void aListOfPrintsIsValidOrRefusedByBoth() throws Exception {
        JsonNode schema = Objects.requireNonNull(schemas().get("prints-1"));
        JsonNode good =
                MAPPER.readTree(
                        """
                        {"schema": "printassay/prints/1", "files": [
                          {"file": "a.tif", "print": 1, "paper": "Paper A", "driedHours": 24}]}
                        """);
        assertEquals("", errors(schema, good));
        accepted("prints-1", good);
        for (String bad :
                List.of(
                        "{\"schema\": \"printassay/prints/1\", \"files\": []}",
                        "{\"schema\": \"printassay/prints/1\"}",
                        "{\"schema\": \"printassay/prints/1\", \"files\": [{\"file\": \"\"}]}",
                        "{\"schema\": \"printassay/prints/1\", \"files\": [{\"file\": \"a\","
                                + " \"driedHours\": -1}]}",
                        "{\"schema\": \"printassay/prints/1\", \"files\": [{\"file\": \"a\","
                                + " \"colour\": 1}]}")) {
            assertFalse(errors(schema, MAPPER.readTree(bad)).isEmpty(), bad);
            assertThrows(Problem.class, () -> accepted("prints-1", MAPPER.readTree(bad)));
        }
    }
}
