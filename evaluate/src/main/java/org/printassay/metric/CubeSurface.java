package org.printassay.metric;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import org.printassay.colour.Lab;
import org.printassay.colour.Rgb8;

/** The surface of the RGB cube as far as a print holds it, whatever steps its chart cuts it in. */
final class CubeSurface {
    /** Levels along an edge of the cube in our own charts. */
    private static final int[] USUAL = {0, 64, 128, 191, 255};

    /** With fewer levels along an edge the triangles cut off too much of a gamut. */
    private static final int FEWEST_ALONG = 4;

    /**
     * A level is meant where it stands on so many of the six edges of the cube that touch neither
     * black nor white.
     */
    private static final int FEWEST_EDGES = 4;

    private final Map<Rgb8, Lab> colours;
    private final int[] edge;

    private CubeSurface(Map<Rgb8, Lab> colours, int[] edge) {
        this.colours = colours;
        this.edge = edge;
    }

    /** The surface among all colours of a print. */
    static CubeSurface of(Map<Rgb8, Lab> colours) {
        int[] found =
                IntStream.rangeClosed(0, 255)
                        .filter(level -> edges(colours, level) >= FEWEST_EDGES)
                        .toArray();
        boolean whole = found.length > 1 && found[0] == 0 && found[found.length - 1] == 255;
        return new CubeSurface(colours, whole ? found : USUAL);
    }

    /** How many of six edges hold a level; ramps from paper to full colours lie on none of them. */
    private static long edges(Map<Rgb8, Lab> colours, int v) {
        return List.of(
                        new Rgb8(v, 0, 255),
                        new Rgb8(v, 255, 0),
                        new Rgb8(0, v, 255),
                        new Rgb8(255, v, 0),
                        new Rgb8(0, 255, v),
                        new Rgb8(255, 0, v))
                .stream()
                .filter(colours::containsKey)
                .count();
    }

    /** Whether a code lies on the surface, at its steps. */
    boolean holds(Rgb8 code) {
        int[] channels = {code.r(), code.g(), code.b()};
        boolean end = Arrays.stream(channels).anyMatch(c -> c == 0 || c == 255);
        return end && Arrays.stream(channels).allMatch(c -> Arrays.binarySearch(edge, c) >= 0);
    }

    /** Its mesh; empty when a colour is missing or little more than corners is known. */
    Optional<GamutMesh> mesh() {
        Optional<GamutMesh> own =
                edge.length < FEWEST_ALONG ? Optional.empty() : GamutMesh.of(edge, colours::get);
        return own.isPresent() ? own : GamutMesh.of(USUAL, colours::get);
    }
}
