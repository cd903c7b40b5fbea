package org.printassay.metric;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.printassay.colour.DeltaE;
import org.printassay.colour.Lab;
import org.printassay.colour.PaperAim;
import org.printassay.colour.Rgb8;
import org.printassay.reading.Reading;
import org.printassay.reading.ReadingFlag;
import org.printassay.reading.ReadingSet;

/** Colours of the cube's surface: distance from their aim, and the volume that they span. */
public final class ColourJudge {
    /** Levels along an edge of the cube. */
    private static final int[] EDGE = {0, 64, 128, 191, 255};

    /** Of the 98 colours of the surface. */
    private static final int FEWEST_COLOURS = 20;

    private ColourJudge() {}

    /**
     * Mean dE00 of the cube surface against the aim, each code once however often it was read;
     * empty without absolute colour or when most of the surface is missing.
     */
    static Optional<Double> meanDeltaE00(ReadingSet set, PaperAim aim) {
        double sum = 0;
        int n = 0;
        for (Map.Entry<Rgb8, Lab> colour : means(set).entrySet()) {
            if (onSurface(colour.getKey())) {
                Lab wanted = aim.absoluteLab(set.space(), colour.getKey());
                sum += DeltaE.ciede2000(wanted, colour.getValue());
                n++;
            }
        }
        return n < FEWEST_COLOURS ? Optional.empty() : Optional.of(sum / n);
    }

    private static boolean onSurface(Rgb8 code) {
        int[] channels = {code.r(), code.g(), code.b()};
        boolean end = Arrays.stream(channels).anyMatch(c -> c == 0 || c == 255);
        return end && Arrays.stream(channels).allMatch(c -> Arrays.binarySearch(EDGE, c) >= 0);
    }

    /**
     * Gamut volume of a print, cubic CIELAB units; null when a colour of the surface is missing.
     */
    static @Nullable Double gamutVolume(ReadingSet set) {
        return volume(EDGE, means(set)::get);
    }

    /** Mean absolute colour of each code, doubtful readings left out where there are others. */
    private static Map<Rgb8, Lab> means(ReadingSet set) {
        Map<Rgb8, List<Reading>> byCode = new LinkedHashMap<>();
        for (Reading reading : set.readings()) {
            if (reading.lab() != null) {
                byCode.computeIfAbsent(reading.rgb(), k -> new ArrayList<>()).add(reading);
            }
        }
        Map<Rgb8, Lab> means = new LinkedHashMap<>();
        byCode.forEach(
                (code, all) -> {
                    List<Lab> labs = Neutrals.undoubted(all).stream().map(Reading::best).toList();
                    means.put(code, Neutrals.mean(labs));
                });
        return means;
    }

    /** Colour of a code of the surface; null when it is not known. */
    @FunctionalInterface
    public interface Surface {
        /** CIELAB of a code. */
        @Nullable Lab at(Rgb8 code);
    }

    /**
     * Volume inside the surface of the RGB cube, by known triangles (idea of ISO/TS 18621-11): each
     * square of neighbouring codes on a face is cut along the diagonal from its lower to its higher
     * corner, and the signed tetrahedra to the origin are added up.
     *
     * @param edge codes along an edge, rising from 0 to 255
     * @return cubic CIELAB units; null when a colour is missing
     */
    public static @Nullable Double volume(int[] edge, Surface surface) {
        double six = 0;
        int n = edge.length;
        for (int axis = 0; axis < 3; axis++) {
            for (int side = 0; side < 2; side++) {
                for (int i = 0; i + 1 < n; i++) {
                    for (int k = 0; k + 1 < n; k++) {
                        int w = side == 0 ? 0 : 255;
                        Lab p00 = surface.at(code(axis, w, edge[i], edge[k]));
                        Lab p10 = surface.at(code(axis, w, edge[i + 1], edge[k]));
                        Lab p01 = surface.at(code(axis, w, edge[i], edge[k + 1]));
                        Lab p11 = surface.at(code(axis, w, edge[i + 1], edge[k + 1]));
                        if (p00 == null || p10 == null || p01 == null || p11 == null) {
                            return null;
                        }
                        double square = triple(p00, p10, p11) + triple(p00, p11, p01);
                        six += side == 0 ? -square : square;
                    }
                }
            }
        }
        return Math.abs(six) / 6;
    }

    /** A code with {@code w} on one axis and u, v on the two that follow it in a circle. */
    private static Rgb8 code(int axis, int w, int u, int v) {
        return switch (axis) {
            case 0 -> new Rgb8(w, u, v);
            case 1 -> new Rgb8(v, w, u);
            default -> new Rgb8(u, v, w);
        };
    }

    private static double triple(Lab p, Lab q, Lab r) {
        return p.l() * (q.a() * r.b() - q.b() * r.a())
                - p.a() * (q.l() * r.b() - q.b() * r.l())
                + p.b() * (q.l() * r.a() - q.a() * r.l());
    }

    /**
     * Largest dE00 between clean twins, those told for differing included; empty when there are
     * none.
     */
    static Optional<Double> largestTwinDifference(ReadingSet set) {
        Map<Rgb8, List<Lab>> byCode = new HashMap<>();
        for (Reading reading : set.readings()) {
            boolean clean =
                    reading.flags().stream().allMatch(flag -> flag == ReadingFlag.UNLIKE_TWINS);
            if (clean && (reading.lab() != null || reading.labRelative() != null)) {
                byCode.computeIfAbsent(reading.rgb(), k -> new ArrayList<>()).add(reading.best());
            }
        }
        double largest = -1;
        for (List<Lab> twins : byCode.values()) {
            for (int i = 0; i < twins.size(); i++) {
                for (int k = i + 1; k < twins.size(); k++) {
                    largest = Math.max(largest, DeltaE.ciede2000(twins.get(i), twins.get(k)));
                }
            }
        }
        return largest < 0 ? Optional.empty() : Optional.of(largest);
    }
}
