package org.printassay.report.paged;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Against a search through all places at which pages could be turned, and all ways. */
class PageBreaksTest {
    private static final double HEIGHT = 700;

    /** What pages cost, computed anew: squares of empty tenths, turns, one for each page. */
    private static double cost(List<List<Piece>> pages) {
        double cost = 0;
        for (int i = 0; i < pages.size(); i++) {
            List<Piece> page = pages.get(i);
            double used = 0;
            double shrinks = 0;
            for (int j = 0; j < page.size(); j++) {
                Piece piece = page.get(j);
                used += j == 0 ? piece.more() : piece.before();
                used += piece.height();
                shrinks += j > 0 && piece.loose() ? PageBreaks.SHRINK : 0;
            }
            if (used - shrinks > HEIGHT && page.size() > 1) {
                return Double.POSITIVE_INFINITY;
            }
            double empty = Math.max(0, (HEIGHT - used) / HEIGHT);
            boolean last = i == pages.size() - 1;
            cost += 1 + (last ? Math.pow(10 * Math.max(0, empty - 0.8), 2) : 100 * empty * empty);
            cost += i == 0 ? 0 : page.get(0).turn();
        }
        return cost;
    }

    private static double least(List<Piece> pieces) {
        double least = Double.POSITIVE_INFINITY;
        for (int turns = 0; turns < 1 << (pieces.size() - 1); turns++) {
            List<List<Piece>> pages = new ArrayList<>();
            pages.add(new ArrayList<>());
            for (int i = 0; i < pieces.size(); i++) {
                if (i > 0 && (turns >> (i - 1) & 1) == 1) {
                    pages.add(new ArrayList<>());
                }
                pages.get(pages.size() - 1).add(pieces.get(i));
            }
            least = Math.min(least, cost(pages));
        }
        return least;
    }

    private static void random(Sequence sequence, Random random, int pieces) {
        for (int i = 0; i < pieces; i++) {
            sequence.space(random.nextInt(20));
            if (random.nextInt(3) == 0) {
                sequence.loosen();
            }
            double turn =
                    new double[] {Turn.FREE, Turn.ITEM, Turn.FIGURES, Turn.NEVER}
                            [random.nextInt(4)];
            sequence.add(10 + random.nextInt(380), random.nextInt(30), turn, top -> {});
        }
    }

    private static List<List<Piece>> pieces(List<List<PageBreaks.Placed>> pages) {
        return pages.stream()
                .map(page -> page.stream().map(PageBreaks.Placed::piece).toList())
                .toList();
    }

    @Test
    void noOtherTurnsAreBetter() {
        Random random = new Random(5);
        int several = 0;
        for (int round = 0; round < 300; round++) {
            Sequence sequence = new Sequence();
            random(sequence, random, 1 + random.nextInt(11));
            List<Piece> all = new ArrayList<>();
            sequence.steps().forEach(step -> all.addAll(step.get(0).pieces()));
            List<List<Piece>> pages = pieces(PageBreaks.of(sequence, HEIGHT));
            assertEquals(all, pages.stream().flatMap(List::stream).toList());
            assertEquals(least(all), cost(pages), 1e-6);
            several += pages.size() > 2 ? 1 : 0;
        }
        assertTrue(several > 100, several + " of more than two pages");
    }

    @Test
    void noOtherWayIsBetter() {
        Random random = new Random(6);
        int second = 0;
        for (int round = 0; round < 200; round++) {
            Sequence sequence = new Sequence();
            random(sequence, random, 1 + random.nextInt(3));
            sequence.either(
                    List.of(0.0, 0.5),
                    List.of(
                            () -> random(sequence, random, 1 + random.nextInt(3)),
                            () -> random(sequence, random, 1 + random.nextInt(3))));
            random(sequence, random, 1 + random.nextInt(3));
            List<Double> each = new ArrayList<>();
            for (Sequence.Way way : sequence.steps().get(1)) {
                List<Piece> all = new ArrayList<>(sequence.steps().get(0).get(0).pieces());
                all.addAll(way.pieces());
                all.addAll(sequence.steps().get(2).get(0).pieces());
                each.add(way.cost() + least(all));
            }
            List<Piece> shown =
                    pieces(PageBreaks.of(sequence, HEIGHT)).stream().flatMap(List::stream).toList();
            int taken = shown.containsAll(sequence.steps().get(1).get(0).pieces()) ? 0 : 1;
            double cost = sequence.steps().get(1).get(taken).cost();
            cost += cost(pieces(PageBreaks.of(sequence, HEIGHT)));
            assertEquals(Math.min(each.get(0), each.get(1)), cost, 1e-6);
            second += taken;
        }
        assertTrue(second > 20 && second < 180, second + " of the second way");
    }

    @Test
    void piecesLieBelowEachOtherAndWithinThePage() {
        Random random = new Random(7);
        for (int round = 0; round < 200; round++) {
            Sequence sequence = new Sequence();
            random(sequence, random, 12);
            for (List<PageBreaks.Placed> page : PageBreaks.of(sequence, HEIGHT)) {
                double end = 0;
                for (int i = 0; i < page.size(); i++) {
                    PageBreaks.Placed placed = page.get(i);
                    assertEquals(i == 0, placed.top());
                    assertTrue(placed.y() >= end - PageBreaks.SHRINK - 1e-9, "overlap");
                    end = placed.y() + placed.piece().heightAt(placed.top());
                }
                assertTrue(end <= HEIGHT + 1e-9, end + " points");
            }
        }
    }

    @Test
    void nothingMakesNoPages() {
        assertEquals(List.of(), PageBreaks.of(new Sequence(), HEIGHT));
    }
}
