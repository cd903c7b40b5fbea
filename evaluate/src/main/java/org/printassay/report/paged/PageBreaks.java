package org.printassay.report.paged;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;

/**
 * Where pages are turned: over the whole document, so that as little as possible stays empty, as
 * lines of a paragraph are broken (Knuth and Plass, Breaking paragraphs into lines, Software:
 * Practice and Experience 11, 1981, 1119-1184). Where something may be shown in several ways, the
 * way is chosen with the pages.
 *
 * <p>A page costs the square of the tenths of it that stay empty; the last one may be as short as
 * it likes, but not so short that it looks forgotten. To that come the costs of turning ({@link
 * Turn}) and of ways. Turning somewhere costs at most {@link Turn#NEVER}, so pages are always
 * found.
 */
final class PageBreaks {
    /** A loose space grows by this at most, points. */
    static final double STRETCH = 16;

    /** A loose space shrinks by this at most, points. */
    static final double SHRINK = 5;

    private static final double TENTHS = 10;
    private static final double PAGE = 1;
    private static final double SHORTEST_END = 0.2;

    /** A piece at its place, points below the top of the text. */
    record Placed(Piece piece, double y, boolean top) {}

    /** A piece in the graph of what may follow what. */
    private record Node(Piece piece, List<Integer> next) {}

    /** The best pages before a node with which a page begins. */
    private record Best(double cost, int from, List<Integer> page) {}

    private final double height;
    private final List<Node> nodes = new ArrayList<>();

    /** What choosing the way costs that begins with a node. */
    private final List<Double> entry = new ArrayList<>();

    private final Best[] best;
    private final int end;

    private PageBreaks(List<List<Sequence.Way>> steps, double height) {
        this.height = height;
        List<Integer> loose = new ArrayList<>();
        for (List<Sequence.Way> step : steps) {
            List<Integer> ends = new ArrayList<>();
            List<Integer> starts = new ArrayList<>();
            for (Sequence.Way way : step) {
                for (int i = 0; i < way.pieces().size(); i++) {
                    int number = nodes.size();
                    if (i == 0) {
                        starts.add(number);
                    } else {
                        nodes.get(number - 1).next().add(number);
                    }
                    nodes.add(new Node(way.pieces().get(i), new ArrayList<>()));
                    entry.add(i == 0 ? way.cost() : 0.0);
                }
                ends.add(nodes.size() - 1);
            }
            for (int last : loose) {
                nodes.get(last).next().addAll(starts);
            }
            loose = ends;
        }
        end = nodes.size();
        for (int last : loose) {
            nodes.get(last).next().add(end);
        }
        best = new Best[end + 1];
        starts(steps);
    }

    private void starts(List<List<Sequence.Way>> steps) {
        if (steps.isEmpty()) {
            return;
        }
        int number = 0;
        for (Sequence.Way way : steps.get(0)) {
            best[number] = new Best(way.cost(), -1, List.of());
            number += way.pieces().size();
        }
    }

    /** The pages of a sequence, each of so much height. */
    static List<List<Placed>> of(Sequence sequence, double height) {
        return new PageBreaks(sequence.steps(), height).pages();
    }

    private List<List<Placed>> pages() {
        for (int start = 0; start < end; start++) {
            if (best[start] != null) {
                follow(start, start, new ArrayList<>(), best[start].cost(), 0, 0);
            }
        }
        List<List<Placed>> pages = new ArrayList<>();
        for (int at = end; at >= 0 && best[at] != null && best[at].from() >= 0; ) {
            pages.add(placed(best[at].page(), pages.isEmpty()));
            at = best[at].from();
        }
        Collections.reverse(pages);
        return pages;
    }

    /**
     * Goes on from a node on a page that began at another, and notes what each page's end costs.
     */
    private void follow(
            int start, int at, List<Integer> page, double cost, double used, double give) {
        Piece piece = nodes.get(at).piece();
        boolean top = at == start;
        double below = used + (top ? 0 : piece.before()) + piece.heightAt(top);
        double shrinks = give + (!top && piece.loose() ? SHRINK : 0);
        if (below - shrinks > height && !top) {
            return;
        }
        page.add(at);
        double empty = Math.max(0, 1 - below / height);
        for (int next : nodes.get(at).next()) {
            boolean last = next == end;
            double here = cost + PAGE + (last ? ending(1 - empty) : squared(TENTHS * empty));
            double turned = last ? here : here + nodes.get(next).piece().turn() + entry.get(next);
            if (best[next] == null || turned < best[next].cost()) {
                best[next] = new Best(turned, start, List.copyOf(page));
            }
            if (!last) {
                follow(start, next, page, cost + entry.get(next), below, shrinks);
            }
        }
        page.remove(page.size() - 1);
    }

    private static double ending(double full) {
        return squared(TENTHS * Math.max(0, SHORTEST_END - full));
    }

    private static double squared(double value) {
        return value * value;
    }

    private List<Placed> placed(List<Integer> page, boolean last) {
        double used = 0;
        int loose = 0;
        for (int i = 0; i < page.size(); i++) {
            Piece piece = nodes.get(page.get(i)).piece();
            used += (i == 0 ? 0 : piece.before()) + piece.heightAt(i == 0);
            loose += i > 0 && piece.loose() ? 1 : 0;
        }
        double left = last ? Math.min(0, height - used) : height - used;
        double give = loose == 0 ? 0 : Math.max(-SHRINK, Math.min(STRETCH, left / loose));
        List<Placed> placed = new ArrayList<>();
        double y = 0;
        for (int i = 0; i < page.size(); i++) {
            Piece piece = nodes.get(page.get(i)).piece();
            y += i == 0 ? 0 : piece.before() + (piece.loose() ? give : 0);
            placed.add(new Placed(piece, y, i == 0));
            y += piece.heightAt(i == 0);
        }
        return placed;
    }
}
