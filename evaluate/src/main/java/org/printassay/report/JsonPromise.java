package org.printassay.report;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.NullNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Locale;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import org.printassay.colour.icc.Intent;
import org.printassay.json.JsonNumbers;
import org.printassay.promise.PrintRoute;
import org.printassay.promise.Promise;
import org.printassay.promise.RouteKind;

/** The print beside what its printer's profile promises, to JSON and back. */
final class JsonPromise {
    private JsonPromise() {}

    static JsonNode write(@Nullable Promise p) {
        if (p == null) {
            return NullNode.instance;
        }
        ObjectNode node = JsonOut.object();
        ObjectNode profile = node.putObject("profile");
        profile.put("name", p.profile()).put("sha256", p.sha256());
        profile.put("description", p.description());
        node.put("intent", key(p.route().intent()));
        // The absolute intent ignores it.
        boolean absolute = p.route().intent() == Intent.ABSOLUTE;
        node.put("blackPointCompensation", !absolute && p.route().blackPointCompensation());
        node.put("judged", p.judged());
        node.set("meanDeltaE00", fine(p.meanDeltaE00()));
        node.set("p95DeltaE00", fine(p.p95DeltaE00()));
        node.set("maxDeltaE00", fine(p.maxDeltaE00()));
        node.put("worst", p.worst());
        node.set("promisedFit", JsonNumbers.decimal(p.promisedFit(), JsonOut.FINE));
        Promise.Mistake mistake = p.mistake();
        if (mistake == null) {
            node.putNull("mistake");
        } else {
            ObjectNode found = node.putObject("mistake");
            found.put("kind", mistake.kind().key()).put("words", mistake.words());
            found.set("fit", fine(mistake.fit()));
        }
        node.set(
                "patches",
                JsonOut.list(
                        p.patches(),
                        patch -> {
                            ObjectNode row = JsonOut.object().put("id", patch.id());
                            row.set("lab", JsonOut.lab(patch.lab()));
                            row.set("deltaE00", fine(patch.deltaE00()));
                            return row;
                        }));
        return node;
    }

    static @Nullable Promise read(JsonNode p) {
        if (!p.isObject()) {
            return null;
        }
        JsonNode profile = p.path("profile");
        JsonNode mistake = p.path("mistake");
        return new Promise(
                profile.path("name").asText(),
                profile.path("sha256").asText(),
                profile.path("description").asText(),
                new PrintRoute(
                        intent(p.path("intent").asText()),
                        p.path("blackPointCompensation").asBoolean()),
                JsonIn.list(
                        p.path("patches"),
                        row ->
                                new Promise.Patch(
                                        row.path("id").asText(),
                                        Objects.requireNonNull(JsonIn.lab(row.path("lab"))),
                                        row.path("deltaE00").asDouble())),
                p.path("judged").asInt(),
                p.path("meanDeltaE00").asDouble(),
                p.path("p95DeltaE00").asDouble(),
                p.path("maxDeltaE00").asDouble(),
                p.path("worst").asText(),
                JsonIn.decimal(p.path("promisedFit")),
                mistake.isObject()
                        ? new Promise.Mistake(
                                kind(mistake.path("kind").asText()),
                                mistake.path("words").asText(),
                                mistake.path("fit").asDouble())
                        : null);
    }

    private static String key(Intent intent) {
        return intent.name().toLowerCase(Locale.ROOT);
    }

    private static Intent intent(String key) {
        return Intent.valueOf(key.toUpperCase(Locale.ROOT));
    }

    private static RouteKind kind(String key) {
        for (RouteKind kind : RouteKind.values()) {
            if (kind.key().equals(key)) {
                return kind;
            }
        }
        throw new IllegalStateException("the schema lets no other kind through: " + key);
    }

    private static JsonNode fine(double value) {
        return JsonNumbers.decimal(value, JsonOut.FINE);
    }
}
