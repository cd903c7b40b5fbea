package org.printassay.scannercalibration;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.printassay.colour.Lab;

/**
 * Names of a layout's patches in files that write their numbers with zeros in front, or without:
 * {@code A1} is {@code A01} where nothing else could be.
 */
final class PaddedNames {
    private static final Pattern NUMBERED = Pattern.compile("(|.*[^0-9])([0-9]{1,4})");

    private static final int MOST_DIGITS = 4;

    private final List<String> ids;

    /** Other ways to write each name; none that another patch might be meant by. */
    private final Map<String, Set<String>> others = new HashMap<>();

    PaddedNames(List<String> ids) {
        this.ids = List.copyOf(ids);
        Map<String, Integer> meanings = new HashMap<>();
        for (String id : ids) {
            Set<String> ways = ways(id);
            others.put(id, ways);
            ways.forEach(way -> meanings.merge(way, 1, Integer::sum));
        }
        others.values().forEach(ways -> ways.removeIf(way -> meanings.getOrDefault(way, 0) > 1));
        for (String id : ids) {
            others.values().forEach(ways -> ways.remove(id));
        }
    }

    private static Set<String> ways(String id) {
        Set<String> ways = new HashSet<>();
        Matcher numbered = NUMBERED.matcher(id);
        if (numbered.matches()) {
            String number = String.valueOf(Integer.parseInt(numbered.group(2)));
            for (int digits = number.length(); digits <= MOST_DIGITS; digits++) {
                ways.add(numbered.group(1) + "0".repeat(digits - number.length()) + number);
            }
        }
        return ways;
    }

    /** The names in every way. */
    Set<String> all() {
        Set<String> all = new HashSet<>(ids);
        others.values().forEach(all::addAll);
        return all;
    }

    /** Values by the layout's own names. */
    Map<String, Lab> own(Map<String, Lab> values) {
        Map<String, Lab> own = new HashMap<>();
        for (String id : ids) {
            List<Lab> found = new ArrayList<>();
            for (String way : others.getOrDefault(id, Set.of())) {
                Lab value = values.get(way);
                if (value != null) {
                    found.add(value);
                }
            }
            Lab exact = values.get(id);
            if (exact != null) {
                own.put(id, exact);
            } else if (found.size() == 1) {
                own.put(id, found.get(0));
            }
        }
        return own;
    }
}
