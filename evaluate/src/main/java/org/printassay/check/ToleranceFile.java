package org.printassay.check;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.printassay.json.CheckedJson;
import org.printassay.problem.Problem;

/** Tolerance sets as files, {@code printassay/tolerances/1}, and those that come with the tool. */
public final class ToleranceFile {
    /** Names of the sets that come with the tool. */
    public static final List<String> OURS = List.of("fine", "workshop");

    private static final String KIND = "tolerances";
    private static final int VERSION = 1;
    private static final long LARGEST_BYTES = 1 << 20;
    private static final double PERCENT = 100;

    private ToleranceFile() {}

    /**
     * A set of ours by its name, or one from a file.
     *
     * @throws Problem usage, when it is neither; input, when the file is not valid
     */
    public static ToleranceSet named(String nameOrFile) throws Problem {
        String name = nameOrFile.toLowerCase(Locale.ROOT);
        if (OURS.contains(name)) {
            byte[] bytes = text(name).getBytes(StandardCharsets.UTF_8);
            return set(CheckedJson.parse(name, bytes, KIND, VERSION));
        }
        Path file = Path.of(nameOrFile);
        if (!Files.exists(file)) {
            throw Problem.usage(
                    "tolerances must be fine, workshop or a file; there is no \""
                            + nameOrFile
                            + "\". See --show-tolerances fine.");
        }
        return read(file);
    }

    /**
     * A set from a file.
     *
     * @throws Problem input, when it cannot be read or is not valid
     */
    public static ToleranceSet read(Path file) throws Problem {
        return set(CheckedJson.read(file, KIND, VERSION, LARGEST_BYTES));
    }

    /** The text of a set of ours, to be edited. */
    public static String text(String ours) {
        String resource = "tolerances-" + ours + ".json";
        try (InputStream in = ToleranceFile.class.getResourceAsStream(resource)) {
            if (in == null) {
                throw new IllegalArgumentException("no tolerances of ours are called " + ours);
            }
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new IllegalStateException("the tolerances " + ours + " are unreadable", e);
        }
    }

    private static ToleranceSet set(JsonNode root) {
        Map<Quantity, Tolerance> quantities = new EnumMap<>(Quantity.class);
        for (Map.Entry<String, JsonNode> entry : root.path("quantities").properties()) {
            JsonNode t = entry.getValue();
            quantities.put(
                    Quantity.ofKey(entry.getKey()).orElseThrow(),
                    new Tolerance(
                            t.path("limit").asDouble(),
                            t.path("limitPercent").asDouble(),
                            t.path("spread").asDouble(),
                            t.path("spreadPercent").asDouble()));
        }
        Double contrast = number(root.path("newLines").path("contrastPercent"));
        return new ToleranceSet(
                root.path("name").asText(),
                root.path("about").asText(),
                root.path("falseAlarmPercent").asDouble() / PERCENT,
                quantities,
                contrast == null ? null : Double.valueOf(contrast / PERCENT),
                number(root.path("newBands").path("overThreshold")));
    }

    private static @Nullable Double number(JsonNode node) {
        return node.isNumber() ? Double.valueOf(node.asDouble()) : null;
    }
}
