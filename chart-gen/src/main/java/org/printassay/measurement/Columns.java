package org.printassay.measurement;

import java.util.List;
import java.util.Locale;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Which column of a table means what. A position is -1, a list empty, where there is none.
 *
 * @param id patch name
 * @param rgb red, green, blue
 * @param lab L*, a*, b*
 * @param xyz X, Y, Z
 * @param bands spectral bands, wavelength in nm to column, in order
 * @param cmyk whether there are CMYK columns
 */
record Columns(
        int id,
        List<Integer> rgb,
        List<Integer> lab,
        List<Integer> xyz,
        SortedMap<Integer, Integer> bands,
        boolean cmyk) {
    /** SPECTRAL_NM380, NM380, nm380, SPEC_380, R_380, SPECTRAL_380, 380nm, 380 and the like. */
    private static final Pattern BAND =
            Pattern.compile(
                    "(?:SPECTRAL|SPEC|REFLECTANCE|REFL|LAMBDA|R)?_?(?:NM)?_?"
                            + "(\\d{3})(?:[.]0+)?_?(?:NM)?");

    static Columns of(List<String> fields) {
        List<String> names =
                fields.stream().map(f -> f.toUpperCase(Locale.ROOT).replace(' ', '_')).toList();
        List<Integer> lab = find(names, "LAB_L LAB_A LAB_B", "LAB_L* LAB_A* LAB_B*", "L* A* B*");
        List<Integer> rgb = find(names, "RGB_R RGB_G RGB_B", "RED GREEN BLUE", "R G B");
        if (lab.isEmpty() && !names.contains("R")) {
            lab = find(names, "L A B"); // a bare B belongs to R G B where there is an R
        }
        return new Columns(
                id(names),
                rgb,
                lab,
                find(names, "XYZ_X XYZ_Y XYZ_Z", "X Y Z"),
                bands(names),
                find(names, "CMYK_C CMYK_M CMYK_Y CMYK_K", "C M Y K").size() == 4);
    }

    /** Whether words are column names of a measurement table. */
    static boolean looksLikeHeading(List<String> words) {
        Columns columns = of(words);
        return (!columns.rgb.isEmpty() || columns.cmyk) && columns.hasColour();
    }

    boolean hasColour() {
        return !lab.isEmpty() || !xyz.isEmpty() || !bands.isEmpty();
    }

    private static int id(List<String> names) {
        for (String name :
                List.of(
                        "SAMPLE_ID",
                        "SAMPLEID",
                        "SAMPLE_NAME",
                        "SAMPLE_LOC",
                        "ID",
                        "NAME",
                        "PATCH")) {
            if (names.contains(name)) {
                return names.indexOf(name);
            }
        }
        return -1;
    }

    private static List<Integer> find(List<String> names, String... spellings) {
        for (String spelling : spellings) {
            List<Integer> found = Words.of(spelling, false).stream().map(names::indexOf).toList();
            if (!found.contains(-1)) {
                return found;
            }
        }
        return List.of();
    }

    private static SortedMap<Integer, Integer> bands(List<String> names) {
        TreeMap<Integer, Integer> bands = new TreeMap<>();
        for (int i = 0; i < names.size(); i++) {
            Matcher matcher = BAND.matcher(names.get(i));
            if (matcher.matches()) {
                int nm = Integer.parseInt(matcher.group(1));
                if (nm >= 300 && nm <= 900) {
                    bands.putIfAbsent(nm, i);
                }
            }
        }
        // One stray number in a column name is no spectrum.
        return bands.size() < 3 ? new TreeMap<>() : bands;
    }
}
