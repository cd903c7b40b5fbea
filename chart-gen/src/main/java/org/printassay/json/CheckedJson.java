package org.printassay.json;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.StreamReadFeature;
import com.fasterxml.jackson.core.exc.StreamConstraintsException;
import com.fasterxml.jackson.core.io.JsonEOFException;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.exc.MismatchedInputException;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.networknt.schema.Error;
import com.networknt.schema.InputFormat;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.io.CharConversionException;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.Iterator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.printassay.problem.InputPath;
import org.printassay.problem.Problem;

/**
 * Files of ours in JSON: each says in its {@code schema} field what it is, {@code
 * printassay/<kind>/<version>}, and is valid by the published JSON Schema (2020-12) of that name.
 */
public final class CheckedJson {
    /** No file of ours comes near; a larger one is refused before it is read. */
    public static final long LARGEST_BYTES = 32L << 20;

    private static final JsonMapper MAPPER =
            JsonMapper.builder()
                    .enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
                    .enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS)
                    .build();

    /** From the last colon or bracket on where the parser names its own parts. */
    private static final Pattern JARGON =
            Pattern.compile("\\s*[:(][^:(]*(?:`|Feature |\\[Source|com\\.fasterxml)");

    private static final SchemaRegistry REGISTRY =
            SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12);

    /** Schemas that were needed, ready for use: that takes far longer than a check. */
    private static final Map<String, Schema> SCHEMAS = new ConcurrentHashMap<>();

    private CheckedJson() {}

    /**
     * Reads and checks a file.
     *
     * @param kind what it must be: {@code chart}, {@code recipe}, ...
     * @param version the version of its schema that is understood
     * @throws Problem input, when it cannot be read, is something else, was made by a newer version
     *     or is not valid
     */
    public static JsonNode read(Path file, String kind, int version) throws Problem {
        return read(file, kind, version, LARGEST_BYTES);
    }

    /**
     * As {@link #read(Path, String, int)}, of a kind that is never so large.
     *
     * @param largestBytes a larger file is refused before it is read
     */
    public static JsonNode read(Path file, String kind, int version, long largestBytes)
            throws Problem {
        String where = shown(String.valueOf(file.getFileName()));
        InputPath.refuseSpecial(file, where);
        try {
            if (Files.isDirectory(file)) {
                throw Problem.input(where, "is a folder. Name " + article(kind) + " file in it.");
            }
            long size = Files.size(file);
            if (size > largestBytes) {
                throw Problem.input(
                        where,
                        "is " + (size >> 20) + " MB, too large to be " + article(kind) + " file.");
            }
            return parse(where, Files.readAllBytes(file), kind, version);
        } catch (NoSuchFileException e) {
            throw Problem.input(
                    where, "there is no such file: " + shown(file.toAbsolutePath().toString()), e);
        } catch (IOException e) {
            throw Problem.input(where, "cannot be read (" + shown(e.toString()) + ").", e);
        }
    }

    /** As {@link #read}, of bytes already in memory; {@code where} is for messages. */
    public static JsonNode parse(String where, byte[] bytes, String kind, int version)
            throws Problem {
        JsonNode node = tree(where, bytes);
        String wanted = "printassay/" + kind + "/" + version;
        String found = node.path("schema").asText("");
        if (!found.equals(wanted)) {
            boolean other = found.startsWith("printassay/" + kind + "/");
            throw Problem.input(
                    where,
                    other
                            ? "was made by another version of printassay (\""
                                    + shown(found)
                                    + "\"; this one reads \""
                                    + wanted
                                    + "\"). Update printassay."
                            : "is not "
                                    + article(kind)
                                    + " file: its \"schema\" is not \""
                                    + wanted
                                    + "\".");
        }
        String beyond = beyondRange(node, "");
        if (!beyond.isEmpty()) {
            throw Problem.input(
                    where + JsonPlaces.line(bytes, beyond),
                    "is not a valid "
                            + kind
                            + " file: at \""
                            + shown(beyond)
                            + "\": the number is out of any sensible range.");
        }
        String name = kind + "-" + version;
        List<Error> errors =
                SCHEMAS.computeIfAbsent(name, n -> REGISTRY.getSchema(schema(n), InputFormat.JSON))
                        .validate(node);
        if (!errors.isEmpty()) {
            throw invalid(where, bytes, kind, errors.get(0), schema(name));
        }
        return node;
    }

    private static String article(String kind) {
        return ("aeiou".indexOf(kind.charAt(0)) < 0 ? "a " : "an ") + kind;
    }

    /** Where the first number stands that no double holds, which the validator fails on. */
    private static String beyondRange(JsonNode node, String at) {
        if (node.isNumber()) {
            return Double.isFinite(node.asDouble()) ? "" : at;
        }
        String found = "";
        if (node.isObject()) {
            Iterator<Map.Entry<String, JsonNode>> fields = node.properties().iterator();
            while (found.isEmpty() && fields.hasNext()) {
                Map.Entry<String, JsonNode> field = fields.next();
                found = beyondRange(field.getValue(), at + "/" + field.getKey());
            }
        } else {
            for (int i = 0; found.isEmpty() && i < node.size(); i++) {
                found = beyondRange(node.get(i), at + "/" + i);
            }
        }
        return found;
    }

    private static Problem invalid(
            String where, byte[] bytes, String kind, Error error, String schema) throws Problem {
        String at = String.valueOf(error.getInstanceLocation());
        String unknown = error.getProperty();
        if ("additionalProperties".equals(error.getKeyword()) && unknown != null) {
            return Problem.input(
                    where + JsonPlaces.line(bytes, at + "/" + unknown),
                    "is not a valid "
                            + kind
                            + " file: at \""
                            + shown(at)
                            + "\": \""
                            + shown(unknown)
                            + "\" is not known"
                            + nearest(unknown, error, schema)
                            + ".");
        }
        return Problem.input(
                where + JsonPlaces.line(bytes, at),
                "is not a valid "
                        + kind
                        + " file: at \""
                        + shown(at)
                        + "\": "
                        + shown(String.valueOf(error.getMessage()))
                        + ".");
    }

    /** The known name that is most like an unknown one, where one is like it at all. */
    private static String nearest(String unknown, Error error, String schema) throws Problem {
        String keyword = String.valueOf(error.getSchemaLocation().getFragment());
        int end = keyword.lastIndexOf('/');
        String properties = (end < 0 ? "" : keyword.substring(0, end)) + "/properties";
        JsonNode known = tree("schema", schema.getBytes(StandardCharsets.UTF_8)).at(properties);
        String best = "";
        int least = Math.max(2, unknown.length() / 2) + 1;
        for (String name : (Iterable<String>) known::fieldNames) {
            int distance = JsonPlaces.edits(unknown.toLowerCase(Locale.ROOT), name);
            if (distance < least) {
                least = distance;
                best = name;
            }
        }
        return best.isEmpty() ? "" : "; \"" + best + "\" is";
    }

    /**
     * Where in a file a value stands: {@code ", line 12"}, or nothing when it cannot be told.
     *
     * @param pointer JSON pointer (RFC 6901) of the value
     */
    public static String line(Path file, String pointer) {
        try {
            return JsonPlaces.line(Files.readAllBytes(file), pointer);
        } catch (IOException e) {
            return "";
        }
    }

    private static JsonNode tree(String where, byte[] bytes) throws Problem {
        try {
            return MAPPER.readTree(bytes);
        } catch (JsonProcessingException e) {
            String at =
                    e.getLocation() == null
                            ? where
                            : where + ", line " + e.getLocation().getLineNr();
            throw Problem.input(at, "is not JSON: " + shown(words(e)) + ".", e);
        } catch (CharConversionException e) {
            throw Problem.input(where, "is not JSON: its text is not in UTF-8.", e);
        } catch (IOException e) {
            throw Problem.input(where, "cannot be read (" + shown(e.toString()) + ").", e);
        }
    }

    /** What the parser found, without the names of its parts and options. */
    private static String words(JsonProcessingException e) {
        if (e instanceof StreamConstraintsException) {
            return "it is nested deeper, or has a longer number, name or text, than any file of"
                    + " printassay";
        }
        if (e instanceof JsonEOFException) {
            return "it ends early. Copy it again";
        }
        if (e instanceof MismatchedInputException) {
            return "something follows its end";
        }
        String text = String.valueOf(e.getOriginalMessage());
        Matcher jargon = JARGON.matcher(text);
        return jargon.find() ? text.substring(0, jargon.start()) : text;
    }

    private static String schema(String name) {
        try (InputStream in = CheckedJson.class.getResourceAsStream(name + ".schema.json")) {
            if (in == null) {
                throw new IllegalStateException("no published schema " + name);
            }
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new IllegalStateException("the published schema " + name + " is unreadable", e);
        }
    }

    /** Text from outside, fit for one line on a terminal. */
    private static String shown(String text) {
        String clean = text.replaceAll("\\p{C}+", " ");
        return clean.length() > 160 ? clean.substring(0, 160) + "..." : clean;
    }
}
