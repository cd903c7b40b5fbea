package org.printassay.locate;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.printassay.robust.Median;
import org.printassay.sheet.Marker;
import org.printassay.sheet.PointMm;
import org.printassay.sheet.RectMm;
import org.printassay.sheet.Sheet;

/**
 * Placement fitted to the corners of a sheet's markers: a homography, and a smooth residual when it
 * places markers better that it was not fitted to.
 */
final class PagePlacement implements Placement {
    /** A marker further from the others' fit than this, and than five times the usual, is bad. */
    private static final double BAD_MM = 0.5;

    /** The residual must take away this share of the error of markers left out of its fit. */
    private static final double WORTH = 0.25;

    private static final int INVERSE_STEPS = 4;

    private final Homography toScan;
    private final Homography toPage;
    private final MarkerResidual residual;
    private final double samplesPerMm;
    private final double rotationDegrees;

    private PagePlacement(Homography toScan, MarkerResidual residual, PointMm middle) {
        this.toScan = toScan;
        this.toPage = toScan.inverse();
        this.residual = residual;
        double[] right = step(middle, 1, 0);
        double[] down = step(middle, 0, 1);
        this.samplesPerMm = Math.sqrt(Math.abs(right[0] * down[1] - right[1] * down[0]));
        this.rotationDegrees = Math.toDegrees(Math.atan2(right[1], right[0]));
    }

    /**
     * The result of a fit.
     *
     * @param placement the map
     * @param used markers that took part, by id
     * @param places where markers stand on the page, by id
     */
    record Fit(
            PagePlacement placement, Map<Integer, FoundMarker> used, Map<Integer, RectMm> places) {
        /** Root mean square distance of the corners of the used markers from a placement. */
        double residualMm(Placement from) {
            double sum = 0;
            for (FoundMarker marker : used.values()) {
                sum += Math.pow(errorMm(from, marker, places), 2) / used.size();
            }
            return Math.sqrt(sum);
        }

        /** Change of scale by perspective from the middle of a page to its far corner. */
        double perspective(RectMm page) {
            double reach = Math.hypot(page.width(), page.height()) / 2;
            return placement.toScan.perspective(page.centre(), reach);
        }
    }

    /**
     * Fits a placement.
     *
     * @param found the sheet's markers, three or more, not in one line
     */
    static Fit fit(Sheet sheet, List<FoundMarker> found) {
        Map<Integer, RectMm> places = new TreeMap<>();
        for (Marker marker : sheet.markers()) {
            places.put(marker.id(), marker.area());
        }
        List<FoundMarker> used = new ArrayList<>(found);
        PointMm middle = sheet.page().centre();
        while (true) {
            Homography flat = Homography.fit(pairs(used, places));
            PagePlacement placement = new PagePlacement(flat, MarkerResidual.NONE, middle);
            double[] errors = new double[used.size()];
            for (int i = 0; i < errors.length; i++) {
                errors[i] = errorMm(placement, used.get(i), places);
            }
            int worst = 0;
            for (int i = 1; i < errors.length; i++) {
                worst = errors[i] > errors[worst] ? i : worst;
            }
            double usual = Median.upper(errors);
            if (used.size() > 4 && errors[worst] > Math.max(BAD_MM, 5 * usual)) {
                used.remove(worst);
                continue;
            }
            PagePlacement best = withResidual(flat, used, places, middle);
            Map<Integer, FoundMarker> byId = new TreeMap<>();
            for (FoundMarker marker : used) {
                byId.put(marker.id(), marker);
            }
            return new Fit(best, byId, places);
        }
    }

    /** Adds a residual when it foretells left-out markers better than the flat map does. */
    private static PagePlacement withResidual(
            Homography flat, List<FoundMarker> used, Map<Integer, RectMm> places, PointMm middle) {
        PagePlacement plain = new PagePlacement(flat, MarkerResidual.NONE, middle);
        if (used.size() < 10) {
            return plain;
        }
        double without = 0;
        double with = 0;
        for (FoundMarker left : used) {
            List<FoundMarker> others = new ArrayList<>(used);
            others.remove(left);
            Homography otherFlat = Homography.fit(pairs(others, places));
            MarkerResidual smooth = MarkerResidual.fit(offsets(otherFlat, others, places));
            PagePlacement flatOnly = new PagePlacement(otherFlat, MarkerResidual.NONE, middle);
            PagePlacement bent = new PagePlacement(otherFlat, smooth, middle);
            without += Math.pow(errorMm(flatOnly, left, places), 2);
            with += Math.pow(errorMm(bent, left, places), 2);
        }
        if (with > (1 - WORTH) * without) {
            return plain;
        }
        return new PagePlacement(flat, MarkerResidual.fit(offsets(flat, used, places)), middle);
    }

    static List<Homography.Pair> pairs(List<FoundMarker> markers, Map<Integer, RectMm> places) {
        List<Homography.Pair> pairs = new ArrayList<>();
        for (FoundMarker marker : markers) {
            List<PointMm> corners = corners(place(places, marker));
            for (int i = 0; i < 4; i++) {
                pairs.add(new Homography.Pair(corners.get(i), marker.corners().get(i)));
            }
        }
        return pairs;
    }

    private static List<MarkerResidual.Offset> offsets(
            Homography flat, List<FoundMarker> markers, Map<Integer, RectMm> places) {
        List<MarkerResidual.Offset> offsets = new ArrayList<>();
        for (Homography.Pair pair : pairs(markers, places)) {
            PointPx at = flat.apply(pair.page().x(), pair.page().y());
            offsets.add(
                    new MarkerResidual.Offset(
                            pair.page().x(),
                            pair.page().y(),
                            pair.scan().x() - at.x(),
                            pair.scan().y() - at.y()));
        }
        return offsets;
    }

    static RectMm place(Map<Integer, RectMm> places, FoundMarker marker) {
        RectMm place = places.get(marker.id());
        if (place == null) {
            throw new IllegalArgumentException("the sheet has no marker " + marker.id());
        }
        return place;
    }

    static List<PointMm> corners(RectMm area) {
        return List.of(
                new PointMm(area.x(), area.y()),
                new PointMm(area.right(), area.y()),
                new PointMm(area.right(), area.bottom()),
                new PointMm(area.x(), area.bottom()));
    }

    /** Root mean square distance of a marker's corners, page millimetres. */
    private static double errorMm(
            Placement placement, FoundMarker marker, Map<Integer, RectMm> places) {
        List<PointMm> corners = corners(place(places, marker));
        double sum = 0;
        for (int i = 0; i < 4; i++) {
            PointPx at = placement.toScan(corners.get(i));
            PointPx found = marker.corners().get(i);
            sum += Math.pow(at.x() - found.x(), 2) + Math.pow(at.y() - found.y(), 2);
        }
        return Math.sqrt(sum / 4) / placement.samplesPerMm();
    }

    @Override
    public PointPx toScan(PointMm page) {
        PointPx flat = toScan.apply(page.x(), page.y());
        return residual.moved(flat, page.x(), page.y(), 1);
    }

    @Override
    public PointMm toPage(PointPx scan) {
        PointPx page = toPage.apply(scan.x(), scan.y());
        if (residual == MarkerResidual.NONE) {
            return new PointMm(page.x(), page.y());
        }
        for (int i = 0; i < INVERSE_STEPS; i++) {
            PointPx flat = residual.moved(scan, page.x(), page.y(), -1);
            page = toPage.apply(flat.x(), flat.y());
        }
        return new PointMm(page.x(), page.y());
    }

    /** How far the scan point moves with one millimetre on the page, {right, down} in pixels. */
    private double[] step(PointMm at, double dx, double dy) {
        PointPx from = toScan.apply(at.x() - 50 * dx, at.y() - 50 * dy);
        PointPx to = toScan.apply(at.x() + 50 * dx, at.y() + 50 * dy);
        return new double[] {(to.x() - from.x()) / 100, (to.y() - from.y()) / 100};
    }

    @Override
    public double samplesPerMm() {
        return samplesPerMm;
    }

    @Override
    public double rotationDegrees() {
        return rotationDegrees;
    }
}
