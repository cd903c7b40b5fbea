package org.printassay.texture;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.apache.commons.math3.stat.descriptive.SummaryStatistics;
import org.printassay.robust.Mad;
import org.printassay.robust.Median;

/**
 * Steps in what should be a smooth vignette: places where lightness changes within half a
 * millimetre by more than the vignette's own slope there, visibly and beyond its own spread. One
 * code of the file is a step that no printer is to blame for: a fault is visible beside it.
 */
public final class ContourSteps {
    /** Light is averaged over this length on either side of a place. */
    private static final double SIDE_MM = 0.8;

    /** Blur and the edge itself, left out between the two sides. */
    private static final double GAP_MM = 0.2;

    /**
     * Tone on either side is followed over these lengths, and over more than one code of the file:
     * the longer are not misled by a mark across the print, the shorter not by tone that bends.
     */
    private static final double NEAR_MM = 0.8;

    private static final double FAR_MM = 1.8;

    private static final double BESIDE_CODES = 1.5;

    /** The usual slope is that of the neighbourhood. */
    private static final double AROUND_MM = 5;

    /** Just visible side by side (common practice, no source). */
    public static final double VISIBLE_L = 0.5;

    /**
     * Of what changes around a step so much at least does so in one place (common practice, no
     * source).
     */
    private static final double AT_ONCE = 0.6;

    /**
     * A print's step runs across all strips alike: its mean is so many standard errors, by how they
     * differ (Student's t). With eight strips chance alone passes it in one place of two thousand,
     * of the few that stand out of the whole vignette; what crosses a few strips only stays below.
     */
    private static final double SURE = 6;

    /** Of a scanner's step bare paper shows so much at least (common practice, no source). */
    private static final double ON_PAPER = 0.5;

    private static final double PAPER_L = 100;

    private static final double ROBUST = 6;

    private ContourSteps() {}

    /**
     * A step.
     *
     * @param at place along the profile, in bins
     * @param deltaL lightness after it less before it, both from the lines that tone follows there
     */
    public record Step(double at, double deltaL) {}

    /**
     * Finds steps.
     *
     * @param lightness L* along the vignette
     * @param strips the same of strips side by side: what some of them show alone is dirt, or lies
     *     on the sheet; none where they are not known apart
     * @param stepMm from value to value
     * @param codeMm length of the vignette for one 8-bit code
     * @return in order
     */
    public static List<Step> find(
            double[] lightness, double[][] strips, double stepMm, double codeMm) {
        int side = Math.max(2, (int) Math.round(SIDE_MM / stepMm));
        int gap = Math.max(1, (int) Math.round(GAP_MM / stepMm / 2));
        int reach = side + gap;
        int n = lightness.length;
        if (n < 6 * reach) {
            return List.of();
        }
        double[] sums = sums(lightness);
        double[] change = new double[n - 2 * reach];
        for (int i = 0; i < change.length; i++) {
            change[i] = change(sums, i + reach, side, gap);
        }
        int around = (int) Math.round(AROUND_MM / stepMm);
        double[] excess = excess(change, around, reach);
        double[] sizes = Arrays.stream(excess).map(Math::abs).toArray();
        double noise = ROBUST * Mad.sigma(excess);
        double[] least = new double[sizes.length];
        for (int i = 0; i < least.length; i++) {
            int low = Math.max(0, i + reach - around);
            int high = Math.min(n - 1, i + reach + around);
            double code = Math.abs(slope(sums, low, high, reach)) * codeMm / stepMm;
            least[i] = Math.max(VISIBLE_L + code, noise);
        }
        int near = (int) Math.round(Math.max(NEAR_MM, BESIDE_CODES * codeMm) / stepMm);
        int far = (int) Math.round(Math.max(FAR_MM, BESIDE_CODES * codeMm) / stepMm);
        List<double[]> each = Arrays.stream(strips).map(ContourSteps::sums).toList();
        List<Step> steps = new ArrayList<>();
        int i = 0;
        while (i < excess.length) {
            if (sizes[i] < least[i]) {
                i++;
                continue;
            }
            int best = i;
            int end = i;
            while (end < excess.length && sizes[end] >= least[end] && end - i < 2 * reach) {
                best = sizes[end] > sizes[best] ? end : best;
                end++;
            }
            int at = best + reach;
            double sign = Math.signum(excess[best]);
            double jump = sign * Jump.at(lightness, at, gap, near);
            // What comes back is a narrow mark, what rises over its own length is tone.
            jump = Math.min(jump, sign * Jump.at(lightness, at, gap, far));
            if (!(jump >= Math.max(VISIBLE_L, AT_ONCE * sizes[best]))) {
                i = end;
                continue;
            }
            Step step = new Step(at, sign * jump);
            double usual = change[best] - excess[best];
            double[] own =
                    each.stream()
                            .mapToDouble(strip -> change(strip, at, side, gap) - usual)
                            .toArray();
            if (isAlike(own, step.deltaL())) {
                steps.add(step);
            }
            // The shoulders of a step are no steps.
            i = Math.max(end, best + reach);
        }
        return steps;
    }

    /**
     * Whether a step goes on over bare paper, as one of the scanner does, which changes light by
     * the same share everywhere: the same way there, in all strips alike.
     *
     * @param paper L* along bare paper, about 100, in strips side by side
     * @param at the step's place there, in bins
     * @param stepMm from value to value
     * @param lightness L* that the step stands at
     * @param deltaL of the step
     * @return empty where bare paper does not reach far enough
     */
    public static Optional<Boolean> goesOn(
            double[][] paper, double at, double stepMm, double lightness, double deltaL) {
        int side = Math.max(2, (int) Math.round(SIDE_MM / stepMm));
        int gap = Math.max(1, (int) Math.round(GAP_MM / stepMm / 2));
        int bin = (int) Math.round(at);
        if (Arrays.stream(paper).anyMatch(s -> bin < side + gap || bin + side + gap > s.length)) {
            return Optional.empty();
        }
        double[] changes =
                Arrays.stream(paper).mapToDouble(s -> change(sums(s), bin, side, gap)).toArray();
        // L* + 16 goes with the cube root of light (ISO/CIE 11664-4).
        double whole = deltaL * (PAPER_L + 16) / (lightness + 16);
        double mean = Arrays.stream(changes).average().orElse(0);
        return Optional.of(
                Math.signum(whole) * mean >= ON_PAPER * Math.abs(whole) && isAlike(changes, whole));
    }

    /** Whether a step is the same in all strips; true where they are not known apart. */
    private static boolean isAlike(double[] strips, double deltaL) {
        if (strips.length < 2) {
            return true;
        }
        SummaryStatistics own = new SummaryStatistics();
        Arrays.stream(strips).forEach(strip -> own.addValue(Math.signum(deltaL) * strip));
        return own.getMean() * Math.sqrt(strips.length) > SURE * own.getStandardDeviation();
    }

    private static double[] sums(double[] values) {
        double[] sums = new double[values.length + 1];
        for (int i = 0; i < values.length; i++) {
            sums[i + 1] = sums[i] + values[i];
        }
        return sums;
    }

    /** Mean after a place less that before it. */
    private static double change(double[] sums, int at, int side, int gap) {
        double before = (sums[at - gap] - sums[at - gap - side]) / side;
        double after = (sums[at + gap + side] - sums[at + gap]) / side;
        return after - before;
    }

    /** Mean change from value to value between two places, by the means of so many at each. */
    private static double slope(double[] sums, int low, int high, int count) {
        double first = (sums[low + count] - sums[low]) / count;
        double last = (sums[high + 1] - sums[high + 1 - count]) / count;
        return (last - first) / (high + 1 - count - low);
    }

    /**
     * Change less the usual change: what lies between the medians before and after a place, equally
     * far on both sides, so that a slope that itself changes, as at a knee, makes no step. 0 near
     * the ends.
     */
    private static double[] excess(double[] change, int around, int apart) {
        double[] out = new double[change.length];
        int stride = Math.max(1, around / 16);
        for (int from = 0; from < change.length; from += stride) {
            int middle = Math.min(change.length - 1, from + stride / 2);
            int room = Math.min(around, Math.min(middle, change.length - 1 - middle));
            if (room < 2 * apart) {
                continue;
            }
            double before = Median.of(Arrays.copyOfRange(change, middle - room, middle - apart));
            double after =
                    Median.of(Arrays.copyOfRange(change, middle + apart + 1, middle + room + 1));
            double least = Math.min(before, after);
            double most = Math.max(before, after);
            for (int i = from; i < Math.min(change.length, from + stride); i++) {
                out[i] = change[i] - Math.max(least, Math.min(most, change[i]));
            }
        }
        return out;
    }
}
