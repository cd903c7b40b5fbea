package org.printassay.locate;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.printassay.layout.SheetLayout;

/** What passes for a marker and is none: small patterns, often the same letter many times. */
class MarkerSearchTest {
    private static FoundMarker marker(int id, double x, double y, double side) {
        return new FoundMarker(
                id,
                List.of(
                        new PointPx(x, y),
                        new PointPx(x + side, y),
                        new PointPx(x + side, y + side),
                        new PointPx(x, y + side)));
    }

    @Test
    void lettersThatPassForMarkersAreLeftOutHoweverMany() {
        List<FoundMarker> real = new ArrayList<>();
        for (int place = 1; place <= 6; place++) {
            real.add(marker(SheetLayout.markerId(1, place), 300 * place, 40, 100 + 2 * place));
        }
        List<FoundMarker> all = new ArrayList<>(real);
        for (int i = 0; i < 9; i++) {
            all.add(i, marker(491, 500 + 20 * i, 360, 12 + i / 3.0));
        }
        all.add(marker(946, 980, 290, 16));
        all.add(marker(904, 1020, 1170, 13));
        assertEquals(real, MarkerSearch.likeSized(all));
    }

    @Test
    void twoPrintsOfOneSizeStay() {
        List<FoundMarker> all = new ArrayList<>();
        for (int place = 1; place <= 4; place++) {
            all.add(marker(SheetLayout.markerId(1, place), 300 * place, 40, 100));
            all.add(marker(SheetLayout.markerId(2, place), 300 * place, 1500, 130));
        }
        assertEquals(all, MarkerSearch.likeSized(all));
    }
}
