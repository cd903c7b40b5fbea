package org.printassay.locate;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import org.printassay.sheet.Marker;
import org.printassay.sheet.RectMm;
import org.printassay.sheet.Sheet;

/**
 * Tells the markers of one print from others in the same scan. Markers belong together when one
 * flat map puts all of them where the sheet has them; the map is drawn from three at a time (M.
 * Fischler and R. Bolles, "Random sample consensus", Comm. ACM 24(6), 1981).
 */
final class MarkerGroups {
    /**
     * A marker this near to where the others put it is of the same print: more than a carriage or a
     * lens moves it, less than lies between prints.
     */
    private static final double TOGETHER_MM = 4;

    private static final int DRAWS = 150;

    private final Map<Integer, RectMm> places;

    private MarkerGroups(Map<Integer, RectMm> places) {
        this.places = places;
    }

    /**
     * Markers told apart.
     *
     * @param ours of the print that most markers belong to, each id once
     * @param others a second print's, when three or more agree; else empty
     */
    record Groups(List<FoundMarker> ours, List<FoundMarker> others) {}

    static Groups of(Sheet sheet, List<FoundMarker> markers) {
        Map<Integer, RectMm> places = new TreeMap<>();
        for (Marker marker : sheet.markers()) {
            places.put(marker.id(), marker.area());
        }
        MarkerGroups groups = new MarkerGroups(places);
        List<FoundMarker> known = new ArrayList<>();
        for (FoundMarker marker : markers) {
            if (places.containsKey(marker.id())) {
                known.add(marker);
            }
        }
        List<FoundMarker> ours = groups.largest(known);
        List<FoundMarker> rest = new ArrayList<>(known);
        rest.removeAll(ours);
        return new Groups(ours, groups.largest(rest));
    }

    /** The largest set of markers that lie as on the sheet, three or more; else empty. */
    private List<FoundMarker> largest(List<FoundMarker> markers) {
        List<FoundMarker> best = List.of();
        Random random = new Random(markers.size());
        for (int i = 0; i < DRAWS && markers.size() >= 3 && best.size() < markers.size(); i++) {
            List<FoundMarker> three = new ArrayList<>();
            Set<Integer> ids = new TreeSet<>();
            for (int tries = 0; tries < 20 && three.size() < 3; tries++) {
                FoundMarker marker = markers.get(random.nextInt(markers.size()));
                if (ids.add(marker.id())) {
                    three.add(marker);
                }
            }
            if (three.size() == 3) {
                List<FoundMarker> agreeing = agreeing(three, markers);
                best = agreeing.size() > best.size() ? agreeing : best;
            }
        }
        return best.size() >= 3 ? best : List.of();
    }

    /** For each id the marker nearest to where three others put it, when that is near. */
    private List<FoundMarker> agreeing(List<FoundMarker> three, List<FoundMarker> markers) {
        Homography map = Homography.fit(PagePlacement.pairs(three, places));
        Map<Integer, FoundMarker> nearest = new TreeMap<>();
        Map<Integer, Double> distances = new TreeMap<>();
        for (FoundMarker marker : markers) {
            double off = offMm(map, marker);
            if (off < distances.getOrDefault(marker.id(), TOGETHER_MM)) {
                distances.put(marker.id(), off);
                nearest.put(marker.id(), marker);
            }
        }
        return List.copyOf(nearest.values());
    }

    /** Farthest corner from where a map puts it, by the marker's own size in the scan. */
    private double offMm(Homography map, FoundMarker marker) {
        double worst = 0;
        for (Homography.Pair pair : PagePlacement.pairs(List.of(marker), places)) {
            PointPx at = map.apply(pair.page().x(), pair.page().y());
            worst = Math.max(worst, Math.hypot(at.x() - pair.scan().x(), at.y() - pair.scan().y()));
        }
        RectMm place = PagePlacement.place(places, marker);
        return worst * place.width() / Math.max(marker.sidePx(), 1e-9);
    }
}
