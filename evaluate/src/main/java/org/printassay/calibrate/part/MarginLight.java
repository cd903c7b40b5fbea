package org.printassay.calibrate.part;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.printassay.calibrate.light.LightFit;
import org.printassay.calibrate.light.LightSurface;
import org.printassay.robust.Median;
import org.printassay.sample.PageImage;
import org.printassay.sample.SheetSamples;
import org.printassay.sheet.PointMm;
import org.printassay.sheet.RectMm;
import org.printassay.sheet.Section;

/** The bare margin of a sheet, which no printer reached, against the windows of code 255. */
final class MarginLight {
    /** Fewer places of the margin than this tell nothing. */
    private static final int ENOUGH = 200;

    private static final int ENOUGH_WINDOWS = 4;

    /** Shadows of the sheet's edge are kept out. */
    private static final double FROM_EDGE_MM = 3;

    private static final double FROM_PRINT_MM = 1;

    private MarginLight() {}

    /**
     * Light of the bare margin over that of the windows, evened out, by channel; stray light, which
     * differs by a percent or two between them, is still in both. Empty when there are too few
     * places.
     */
    static Optional<double[]> overWindows(SheetSamples samples, LightFit light) {
        double[][] surfaces = light.surfaces();
        RectMm page = samples.located().sheet().page();
        RectMm printable = samples.located().sheet().printable();
        LightSurface terms = new LightSurface(page);
        PageImage image = samples.page();
        double[] ratios = new double[surfaces.length];
        for (int c = 0; c < ratios.length; c++) {
            List<Double> bare = new ArrayList<>();
            for (int row = 0; row < image.rows(); row++) {
                for (int column = 0; column < image.columns(); column++) {
                    PointMm at = image.centre(column, row);
                    float margin = image.light(c, column, row);
                    if (inMargin(at, page, printable) && !Float.isNaN(margin)) {
                        bare.add(
                                margin / LightSurface.at(surfaces[c], terms.terms(at.x(), at.y())));
                    }
                }
            }
            List<Double> windows = new ArrayList<>();
            for (int i = 0; i < samples.samples().size(); i++) {
                if (samples.samples().get(i).patch().section() == Section.PAPER) {
                    windows.add(light.evened()[c][i]);
                }
            }
            if (bare.size() < ENOUGH || windows.size() < ENOUGH_WINDOWS) {
                return Optional.empty();
            }
            ratios[c] = median(bare) / median(windows);
        }
        return Optional.of(ratios);
    }

    private static boolean inMargin(PointMm at, RectMm page, RectMm printable) {
        double fromEdge =
                Math.min(
                        Math.min(at.x() - page.x(), page.right() - at.x()),
                        Math.min(at.y() - page.y(), page.bottom() - at.y()));
        double fromPrint =
                Math.max(
                        Math.max(printable.x() - at.x(), at.x() - printable.right()),
                        Math.max(printable.y() - at.y(), at.y() - printable.bottom()));
        return fromEdge > FROM_EDGE_MM && fromPrint > FROM_PRINT_MM;
    }

    private static double median(List<Double> values) {
        return Median.of(values.stream().mapToDouble(v -> v).toArray());
    }
}
