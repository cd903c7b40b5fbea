package org.printassay.measurement;

import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.Locale;
import java.util.Map;
import java.util.Set;

/** Which names in a file mean which patches of a chart. */
final class PatchNames {
    private PatchNames() {}

    /**
     * Names of a file that are the chart's, to the chart's own spelling. Case and punctuation make
     * no difference ({@code n-00a} is {@code N00A}) where only one name of the chart and one of the
     * file can be meant.
     *
     * @param chartIds names of the chart's patches
     * @param names as the file has them
     */
    static Map<String, String> known(Set<String> chartIds, Collection<String> names) {
        Map<String, String> known = new HashMap<>();
        Set<String> others = new LinkedHashSet<>();
        for (String name : names) {
            if (chartIds.contains(name)) {
                known.put(name, name);
            } else {
                others.add(name);
            }
        }
        Map<String, String> ids = byLetters(chartIds);
        byLetters(others)
                .forEach(
                        (letters, name) -> {
                            String id = ids.get(letters);
                            if (id != null && !known.containsKey(id)) {
                                known.put(name, id);
                            }
                        });
        return known;
    }

    /** Names by their letters and digits alone, those left out that share them. */
    private static Map<String, String> byLetters(Collection<String> names) {
        Map<String, String> found = new HashMap<>();
        Set<String> shared = new HashSet<>();
        for (String name : names) {
            String letters = name.toUpperCase(Locale.ROOT).replaceAll("[^\\p{L}\\p{N}]", "");
            if (letters.isEmpty() || found.putIfAbsent(letters, name) != null) {
                shared.add(letters);
            }
        }
        found.keySet().removeAll(shared);
        return found;
    }
}
