package org.printassay.measurement;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** What a CxF3 file holds, no meaning yet. Mutable while it is read. */
final class CxfContent {
    /** Names of the file's free tags that tell how it was measured. */
    static final String BACKING = "Backing";

    static final String FILTER = "Filter";

    private static final int LONGEST = 100;

    final List<Item> items = new ArrayList<>();
    final Map<String, Spec> specs = new HashMap<>();
    final Map<String, String> tags = new HashMap<>();
    String creator = "";
    String description = "";

    /** An Object: one patch, or one measurement of it. */
    static final class Item {
        final String id;
        final String name;
        final String type;
        final int line;
        final List<Value> values = new ArrayList<>();

        Item(String id, String name, String type, int line) {
            this.id = id;
            this.name = name;
            this.type = type;
            this.line = line;
        }
    }

    /** A spectrum or a colour: its numbers in order, or by name. */
    static final class Value {
        final String kind;
        final String spec;
        final String startNm;
        final int line;
        final List<Double> numbers = new ArrayList<>();
        final Map<String, Double> parts = new HashMap<>();

        Value(String kind, String spec, String startNm, int line) {
            this.kind = kind;
            this.spec = spec;
            this.startNm = startNm;
            this.line = line;
        }
    }

    /** A ColorSpecification. */
    static final class Spec {
        final String id;
        final Map<String, String> said = new HashMap<>();
        String startNm = "";
        String stepNm = "";

        Spec(String id) {
            this.id = id;
        }
    }

    /** Text from outside, short and without control characters. */
    static String clean(String text) {
        String plain = text.replaceAll("\\p{Cntrl}", " ");
        return plain.substring(0, Math.min(LONGEST, plain.length()));
    }
}
