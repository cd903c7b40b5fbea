package org.printassay.sample;

import java.util.ArrayList;
import java.util.List;
import org.printassay.colour.Rgb8;
import org.printassay.locate.Placement;
import org.printassay.locate.PointPx;
import org.printassay.scan.ScanInfo;
import org.printassay.sheet.PointMm;
import org.printassay.sheet.RectMm;
import org.printassay.surface.Along;
import org.printassay.surface.TintTrace;

/**
 * A long tint while rows come in: its light along one or both axes of the page, in strips. Every
 * pixel is shared between the two nearest bins, so that no bin stays empty where bins and pixels
 * beat.
 */
final class TraceWindow implements RowWindow {
    private static final double FINEST_STEP_MM = 0.04;

    /** The placement is followed in straight pieces of this length. */
    private static final double PIECE_MM = 8;

    private static final int FEWEST_STRIPS = 8;
    private static final int MOST_STRIPS = 10;
    private static final double STRIP_MM = 1;

    private final String id;
    private final Rgb8 rgb;
    private final RectMm area;
    private final Placement placement;
    private final RowSpan span;
    private final int channels;
    private final double stepMm;
    private final List<Axis> axes = new ArrayList<>();
    private final double[] most;

    /** Sums along one axis. */
    private static final class Axis {
        final Along along;
        final int strips;
        final int bins;
        final float[][][] sums;
        final float[][] weights;

        Axis(Along along, int strips, int bins, int channels) {
            this.along = along;
            this.strips = strips;
            this.bins = bins;
            this.sums = new float[strips][channels][bins];
            this.weights = new float[strips][bins];
        }
    }

    /**
     * A window.
     *
     * @param area of the page, away from what stands around the tint
     * @param along axes to trace
     */
    TraceWindow(
            String id,
            Rgb8 rgb,
            RectMm area,
            List<Along> along,
            Placement placement,
            ScanInfo info) {
        this.id = id;
        this.rgb = rgb;
        this.area = area;
        this.placement = placement;
        this.span = new RowSpan(area, placement, info);
        this.channels = info.channels();
        this.most = new double[channels];
        this.stepMm = Math.max(FINEST_STEP_MM, 1 / placement.samplesPerMm());
        for (Along axis : along) {
            double length = axis == Along.X ? area.width() : area.height();
            double across = axis == Along.X ? area.height() : area.width();
            int strips = (int) Math.max(FEWEST_STRIPS, Math.min(MOST_STRIPS, across / STRIP_MM));
            axes.add(new Axis(axis, strips, (int) (length / stepMm), channels));
        }
    }

    @Override
    public int firstRow() {
        return span.firstRow();
    }

    @Override
    public int lastRow() {
        return span.lastRow();
    }

    @Override
    public void take(int y, char[] row, float[][] curves) {
        int[] columns = span.columns(y);
        for (int c = 0; c < channels; c++) {
            most[c] = curves[c][curves[c].length - 1];
        }
        int piece = (int) Math.max(8, PIECE_MM * placement.samplesPerMm());
        for (int from = columns[0]; from < columns[1]; from += piece) {
            int to = Math.min(columns[1], from + piece);
            PointMm first = placement.toPage(new PointPx(from + 0.5, y + 0.5));
            PointMm last = placement.toPage(new PointPx(to + 0.5, y + 0.5));
            double u = (first.x() - area.x()) / area.width();
            double v = (first.y() - area.y()) / area.height();
            double du = (last.x() - first.x()) / area.width() / (to - from);
            double dv = (last.y() - first.y()) / area.height() / (to - from);
            for (Axis axis : axes) {
                boolean x = axis.along == Along.X;
                add(axis, row, from, to, x ? u : v, x ? du : dv, x ? v : u, x ? dv : du, curves);
            }
        }
    }

    /** Adds pixels at shares of the length and of the width, which change evenly. */
    private void add(
            Axis axis,
            char[] row,
            int from,
            int to,
            double length,
            double lengthStep,
            double across,
            double acrossStep,
            float[][] curves) {
        double perLength = (axis.along == Along.X ? area.width() : area.height()) / stepMm;
        double at = length * perLength - 0.5;
        double atStep = lengthStep * perLength;
        for (int column = from; column < to; column++, at += atStep, across += acrossStep) {
            int strip = (int) (across * axis.strips);
            int bin = (int) Math.floor(at);
            if (strip < 0 || strip >= axis.strips || bin < 0 || bin + 1 >= axis.bins) {
                continue;
            }
            float right = (float) (at - bin);
            float left = 1 - right;
            float[] weights = axis.weights[strip];
            weights[bin] += left;
            weights[bin + 1] += right;
            for (int c = 0; c < channels; c++) {
                float light = curves[c][row[column * channels + c]];
                float[] sums = axis.sums[strip][c];
                sums[bin] += left * light;
                sums[bin + 1] += right * light;
            }
        }
    }

    /** One trace an axis; their lightness is not known yet. */
    List<TintTrace> traces() {
        List<TintTrace> traces = new ArrayList<>();
        for (Axis axis : axes) {
            // The first and last bins have few pixels, or none.
            int from = 2;
            int count = axis.bins - 4;
            float[][][] light = new float[axis.strips][channels][count];
            for (int s = 0; s < axis.strips; s++) {
                for (int c = 0; c < channels; c++) {
                    float known = 0;
                    for (int i = 0; i < count; i++) {
                        float weight = axis.weights[s][from + i];
                        known = weight > 0 ? axis.sums[s][c][from + i] / weight : known;
                        light[s][c][i] = known;
                    }
                }
            }
            double start = axis.along == Along.X ? area.x() : area.y();
            TintTrace trace =
                    new TintTrace(
                            id,
                            rgb,
                            axis.along,
                            start + (from + 0.5) * stepMm,
                            stepMm,
                            axis.along == Along.X ? area.centre().y() : area.centre().x(),
                            Double.NaN,
                            light);
            traces.add(trace.within(most));
        }
        return traces;
    }
}
