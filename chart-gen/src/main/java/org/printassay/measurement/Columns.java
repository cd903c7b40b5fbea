package org.printassay.measurement;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.printassay.measurement.MeasurementFile.Condition;

/**
 * Which column of a table means what. A list is empty where there is none.
 *
 * @param ids columns that may name the patch, likeliest first
 * @param rgb red, green, blue
 * @param lab L*, a*, b*
 * @param xyz X, Y, Z
 * @param bands spectral bands, wavelength in nm to column, in order
 * @param cmyk whether there are CMYK columns
 */
record Columns(
        List<Integer> ids,
        List<Integer> rgb,
        List<Integer> lab,
        List<Integer> xyz,
        SortedMap<Integer, Integer> bands,
        boolean cmyk) {
    /** SPECTRAL_NM380, NM380, nm380, SPEC_380, R_380, SPECTRAL_380, 380nm, 380 and the like. */
    private static final Pattern BAND =
            Pattern.compile(
                    "(?:SPECTRAL|SPEC|SPECTRUM|REFLECTANCE|REFL|LAMBDA|R)?_?(?:NM)?_?"
                            + "(\\d{3})(?:[.]0+)?_?(?:NM)?");

    /** A column of one measurement condition: M1_LAB_L or LAB_L_M1. */
    private static final Pattern TAGGED = Pattern.compile("M([0-3])_(.+)|(.+)_M([0-3])");

    /** CIE L*, CIE_L, CIELAB_L, LAB_L*, Lab L and the like. */
    private static final Pattern LAB =
            Pattern.compile("(?:CIE_?LAB|CIE|LAB)_?([LAB])(?:[*]|_?STAR)?");

    private static final Pattern STAR = Pattern.compile("([LAB])(?:[*]|_?STAR)");

    private static final Pattern XYZ = Pattern.compile("(?:CIE_?XYZ|CIE|XYZ)_?([XYZ])");

    /** That values are for D50, 2 degree, which is what they are taken for: L*(D50), L*_D50/2. */
    private static final Pattern OF_D50 =
            Pattern.compile("_*[(\\[_]_*D_?50(?:[/,_-]*2(?:\u00b0|_?DEG(?:REE)?)?)?_*[)\\]]?$");

    private static final int MOST_NAMED = 6;

    private static final int LONGEST = 40;

    private static final List<String> ID_NAMES =
            Words.of(
                    "SAMPLE_ID SAMPLEID SAMPLE_NAME SAMPLE_LOC ID NAME PATCH_ID PATCH_NAME PATCH"
                            + " SAMPLE NO NO. NR NR.",
                    false);

    /** Columns that belong to no condition in particular. */
    static Columns of(List<String> fields) {
        return ofNames(names(fields));
    }

    /**
     * Colour columns by condition, where a table has several side by side; one entry without a
     * condition where it has not.
     */
    static Map<Optional<Condition>, Columns> byCondition(List<String> fields) {
        List<String> names = names(fields);
        Columns plain = ofNames(names);
        Map<Optional<Condition>, Columns> found =
                new TreeMap<>((a, b) -> Integer.compare(order(a), order(b)));
        if (plain.hasColour()) {
            found.put(Optional.empty(), plain);
        }
        for (Condition condition : Condition.values()) {
            Columns own = ofNames(names.stream().map(name -> bare(name, condition)).toList());
            if (own.hasColour()) {
                found.put(
                        Optional.of(condition),
                        new Columns(plain.ids, plain.rgb, own.lab, own.xyz, own.bands, plain.cmyk));
            }
        }
        return found;
    }

    private static int order(Optional<Condition> condition) {
        return condition.map(Condition::ordinal).orElse(-1);
    }

    /** A column's name without its condition; empty when it belongs to none or another. */
    private static String bare(String name, Condition condition) {
        Matcher matcher = TAGGED.matcher(name);
        if (!matcher.matches()) {
            return "";
        }
        boolean before = matcher.group(1) != null;
        String number = before ? matcher.group(1) : matcher.group(4);
        return condition.name().equals("M" + number) ? matcher.group(before ? 2 : 3) : "";
    }

    private static List<String> names(List<String> fields) {
        return fields.stream().map(f -> f.toUpperCase(Locale.ROOT).replace(' ', '_')).toList();
    }

    /** A name in one of its spellings to that which is looked for. */
    private static String usual(String name) {
        String bare = OF_D50.matcher(name).replaceFirst("");
        Matcher lab = LAB.matcher(bare);
        if (lab.matches()) {
            return "LAB_" + lab.group(1);
        }
        Matcher star = STAR.matcher(bare);
        if (star.matches()) {
            return star.group(1) + "*";
        }
        Matcher xyz = XYZ.matcher(bare);
        return xyz.matches() ? "XYZ_" + xyz.group(1) : bare;
    }

    private static Columns ofNames(List<String> spelled) {
        List<String> names = spelled.stream().map(Columns::usual).toList();
        List<Integer> lab = find(names, "LAB_L LAB_A LAB_B", "L* A* B*");
        List<Integer> rgb = find(names, "RGB_R RGB_G RGB_B", "RED GREEN BLUE");
        if (lab.isEmpty()) {
            lab = letters(names, "L", "A", -1);
        }
        if (rgb.isEmpty()) {
            rgb = letters(names, "R", "G", lab.isEmpty() ? -1 : lab.get(2));
            // The only B beside R and G is blue.
            List<Integer> alone = letters(names, "R", "G", -1);
            if (rgb.isEmpty() && !alone.isEmpty()) {
                rgb = alone;
                lab = List.of();
            }
        }
        return new Columns(
                ID_NAMES.stream().filter(names::contains).map(names::indexOf).toList(),
                rgb,
                lab,
                find(names, "XYZ_X XYZ_Y XYZ_Z", "X Y Z"),
                bands(names),
                find(names, "CMYK_C CMYK_M CMYK_Y CMYK_K", "C M Y K").size() == 4);
    }

    /** Whether words are column names of a measurement table. */
    static boolean looksLikeHeading(List<String> words) {
        if (words.size() < 3) {
            return false; // no colour has fewer
        }
        Map<Optional<Condition>, Columns> all = byCondition(words);
        if (all.isEmpty()) {
            return false;
        }
        Columns columns = all.values().iterator().next();
        return !columns.rgb.isEmpty()
                || columns.cmyk
                || !columns.ids.isEmpty()
                || columns.lab.size() + columns.xyz.size() + columns.bands.size() == words.size();
    }

    boolean hasColour() {
        return !lab.isEmpty() || !xyz.isEmpty() || !bands.isEmpty();
    }

    /** Which columns were used for what, in words. */
    String used(List<String> fields, int id) {
        List<String> parts = new ArrayList<>();
        if (id >= 0) {
            parts.add(fields.get(id) + " as patch name");
        }
        if (!rgb.isEmpty()) {
            parts.add(named(fields, rgb) + " as codes");
        }
        if (!bands.isEmpty()) {
            List<Integer> all = List.copyOf(bands.values());
            parts.add(
                    fields.get(all.get(0))
                            + " to "
                            + fields.get(all.get(all.size() - 1))
                            + " ("
                            + all.size()
                            + " bands) as reflectance");
        } else if (!xyz.isEmpty()) {
            parts.add(named(fields, xyz) + " as XYZ");
        } else {
            parts.add(named(fields, lab) + " as CIELAB");
        }
        return "Columns used: " + String.join("; ", parts) + ".";
    }

    /** Says which of the columns used stand in the table again; nothing where none does. */
    Optional<String> again(List<String> fields) {
        List<String> names = names(fields).stream().map(Columns::usual).toList();
        List<Integer> used = new ArrayList<>(rgb);
        used.addAll(bands.isEmpty() ? List.of() : bands.values());
        used.addAll(xyz);
        used.addAll(lab);
        List<Integer> twice =
                used.stream()
                        .filter(i -> names.lastIndexOf(names.get(i)) > i)
                        .filter(i -> !names.get(i).equals("B"))
                        .toList();
        return twice.isEmpty()
                ? Optional.empty()
                : Optional.of(
                        "Columns named twice, of which the first were used: "
                                + named(fields, twice)
                                + ".");
    }

    /** Says which columns of a table are neither names nor codes; nothing where all are. */
    String notUsed(List<String> fields) {
        List<String> others = new ArrayList<>();
        for (int i = 0; i < fields.size(); i++) {
            if (!ids.contains(i) && !rgb.contains(i) && !fields.get(i).isEmpty()) {
                String name = fields.get(i);
                others.add("'" + name.substring(0, Math.min(LONGEST, name.length())) + "'");
            }
        }
        if (others.isEmpty()) {
            return "";
        }
        boolean all = others.size() <= MOST_NAMED;
        return " Not known: "
                + String.join(", ", all ? others : others.subList(0, MOST_NAMED))
                + (all ? "." : " and others.");
    }

    private static String named(List<String> fields, List<Integer> columns) {
        return columns.stream().map(fields::get).collect(Collectors.joining(", "));
    }

    /**
     * Columns of two bare letters and of the B after them, else of any B; blue and b* share it.
     *
     * @param taken column that is not looked at, -1 for none
     */
    private static List<Integer> letters(List<String> names, String one, String two, int taken) {
        int first = names.indexOf(one);
        int second = names.indexOf(two);
        if (first < 0 || second < 0) {
            return List.of();
        }
        int third = -1;
        for (int i = names.size() - 1; i >= 0; i--) {
            if (names.get(i).equals("B") && i != taken && (i > second || third < second)) {
                third = i;
            }
        }
        return third < 0 ? List.of() : List.of(first, second, third);
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
