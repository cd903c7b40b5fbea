package org.printassay.metric;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.printassay.colour.Lab;
import org.printassay.colour.Rgb8;

/**
 * The surface that the RGB cube's surface becomes in CIELAB, by known triangles (idea of ISO/TS
 * 18621-11): each square of neighbouring codes on a face is cut along the diagonal from its lower
 * to its higher corner.
 */
public final class GamutMesh {
    private final List<Triangle> triangles;
    private final Map<Rgb8, Lab> colours;

    private GamutMesh(List<Triangle> triangles, Map<Rgb8, Lab> colours) {
        this.triangles = triangles;
        this.colours = colours;
    }

    /** Colour of a code of the surface; null when it is not known. */
    @FunctionalInterface
    public interface Surface {
        /** CIELAB of a code. */
        @Nullable Lab at(Rgb8 code);
    }

    /** Three codes, seen from outside in the same sense all over the surface. */
    private record Triangle(Rgb8 one, Rgb8 two, Rgb8 three) {
        List<Rgb8> corners() {
            return List.of(one, two, three);
        }
    }

    /** A place in a plane of equal lightness. */
    public record Place(double a, double b) {}

    /** Two corners of the mesh, in a fixed order, so that both triangles at an edge agree. */
    private record Edge(Rgb8 one, Rgb8 two) {
        static Edge of(Rgb8 one, Rgb8 two) {
            return order(one) < order(two) ? new Edge(one, two) : new Edge(two, one);
        }

        private static int order(Rgb8 code) {
            return (code.r() << 16) | (code.g() << 8) | code.b();
        }
    }

    /**
     * The mesh of a surface.
     *
     * @param edge codes along an edge of the cube, rising from 0 to 255
     * @return empty when a colour is missing
     */
    public static Optional<GamutMesh> of(int[] edge, Surface surface) {
        List<Triangle> triangles = new ArrayList<>();
        Map<Rgb8, Lab> colours = new HashMap<>();
        int n = edge.length;
        for (int axis = 0; axis < 3; axis++) {
            for (int w : new int[] {0, 255}) {
                for (int i = 0; i + 1 < n; i++) {
                    for (int k = 0; k + 1 < n; k++) {
                        Rgb8 low = code(axis, w, edge[i], edge[k]);
                        Rgb8 right = code(axis, w, edge[i + 1], edge[k]);
                        Rgb8 up = code(axis, w, edge[i], edge[k + 1]);
                        Rgb8 high = code(axis, w, edge[i + 1], edge[k + 1]);
                        boolean far = w == 255;
                        triangles.add(turned(far, low, right, high));
                        triangles.add(turned(far, low, high, up));
                    }
                }
            }
        }
        for (Triangle triangle : triangles) {
            for (Rgb8 code : triangle.corners()) {
                Lab lab = surface.at(code);
                if (lab == null) {
                    return Optional.empty();
                }
                colours.put(code, lab);
            }
        }
        return Optional.of(new GamutMesh(triangles, colours));
    }

    private static Triangle turned(boolean far, Rgb8 one, Rgb8 two, Rgb8 three) {
        return far ? new Triangle(one, two, three) : new Triangle(one, three, two);
    }

    /** A code with {@code w} on one axis and u, v on the two that follow it in a circle. */
    private static Rgb8 code(int axis, int w, int u, int v) {
        return switch (axis) {
            case 0 -> new Rgb8(w, u, v);
            case 1 -> new Rgb8(v, w, u);
            default -> new Rgb8(u, v, w);
        };
    }

    /** Colour of a corner. */
    Lab lab(Rgb8 code) {
        Lab lab = colours.get(code);
        if (lab == null) {
            throw new IllegalArgumentException("code " + code + " is no corner of the mesh");
        }
        return lab;
    }

    /** Volume inside, cubic CIELAB units: the signed tetrahedra to the origin added up. */
    public double volume() {
        double six = 0;
        for (Triangle t : triangles) {
            six += triple(lab(t.one), lab(t.two), lab(t.three));
        }
        return Math.abs(six) / 6;
    }

    /**
     * How the volume changes with the colour of each corner: cubic units for one unit of L*, a* and
     * b*.
     */
    Map<Rgb8, Lab> sensitivity() {
        double six = 0;
        Map<Rgb8, Lab> sums = new LinkedHashMap<>();
        for (Triangle t : triangles) {
            Lab one = lab(t.one);
            Lab two = lab(t.two);
            Lab three = lab(t.three);
            six += triple(one, two, three);
            sums.merge(t.one, cross(two, three), GamutMesh::sum);
            sums.merge(t.two, cross(three, one), GamutMesh::sum);
            sums.merge(t.three, cross(one, two), GamutMesh::sum);
        }
        double share = Math.signum(six) / 6;
        sums.replaceAll((code, s) -> new Lab(share * s.l(), share * s.a(), share * s.b()));
        return sums;
    }

    private static Lab sum(Lab one, Lab two) {
        return new Lab(one.l() + two.l(), one.a() + two.a(), one.b() + two.b());
    }

    private static Lab cross(Lab p, Lab q) {
        return new Lab(
                p.a() * q.b() - q.a() * p.b(),
                p.b() * q.l() - q.b() * p.l(),
                p.l() * q.a() - q.l() * p.a());
    }

    private static double triple(Lab p, Lab q, Lab r) {
        return p.l() * (q.a() * r.b() - q.b() * r.a())
                - p.a() * (q.l() * r.b() - q.b() * r.l())
                + p.b() * (q.l() * r.a() - q.a() * r.l());
    }

    /**
     * Where a plane of equal lightness cuts the surface.
     *
     * @return closed outlines, the first place not repeated at the end; none outside the range
     */
    public List<List<Place>> slice(double lightness) {
        Map<Edge, List<Edge>> joined = new LinkedHashMap<>();
        for (Triangle triangle : triangles) {
            List<Edge> cut = new ArrayList<>();
            List<Rgb8> corners = triangle.corners();
            for (int i = 0; i < 3; i++) {
                Rgb8 one = corners.get(i);
                Rgb8 two = corners.get((i + 1) % 3);
                // Corners on the plane count as above it, so that every outline closes.
                if (lab(one).l() >= lightness != lab(two).l() >= lightness) {
                    cut.add(Edge.of(one, two));
                }
            }
            if (cut.size() == 2) {
                joined.computeIfAbsent(cut.get(0), k -> new ArrayList<>()).add(cut.get(1));
                joined.computeIfAbsent(cut.get(1), k -> new ArrayList<>()).add(cut.get(0));
            }
        }
        List<List<Place>> outlines = new ArrayList<>();
        while (!joined.isEmpty()) {
            List<Place> outline = new ArrayList<>();
            Deque<Edge> next = new ArrayDeque<>(List.of(joined.keySet().iterator().next()));
            while (!next.isEmpty()) {
                Edge at = next.remove();
                List<Edge> neighbours = joined.remove(at);
                if (neighbours == null) {
                    continue;
                }
                outline.add(crossing(at, lightness));
                neighbours.stream().filter(joined::containsKey).findFirst().ifPresent(next::add);
            }
            outlines.add(outline);
        }
        return outlines;
    }

    private Place crossing(Edge edge, double lightness) {
        Lab one = lab(edge.one);
        Lab two = lab(edge.two);
        double share = (lightness - one.l()) / (two.l() - one.l());
        return new Place(
                one.a() + share * (two.a() - one.a()), one.b() + share * (two.b() - one.b()));
    }
}
