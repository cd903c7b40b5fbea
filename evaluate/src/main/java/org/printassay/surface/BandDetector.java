package org.printassay.surface;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.printassay.colour.Lab;

/**
 * Finds periodic bands of 0.5 to 13 mm along one axis: the spectrum (Hann window) of each tint and
 * of all tints together, each peak against the noise around it. Noise makes such a peak in fewer
 * than one of ten million independent frequencies; a sheet has some thousand.
 */
public final class BandDetector {
    /** How rare a peak must be in noise to make a band in one tint: exp(-17) is 4 in 10^8. */
    private static final double ALONE = 17;

    /** And to show in a tint at a period that is known: exp(-7) is 1 in 1000. */
    private static final double SHOWS = 7;

    /** Bands below this amplitude, L*, are never seen and seldom the printer's. */
    private static final double SMALLEST_L = 0.06;

    /** Shorter traces tell too little about periods. */
    private static final double SHORTEST_TINT_MM = 20;

    /** Periods nearer than this share are one. */
    private static final double SAME = 0.03;

    private static final double HARMONIC = 0.015;
    private static final int HIGHEST_HARMONIC = 10;

    /** So much larger than its fundamental a harmonic is a band of its own. */
    private static final double LARGER = 2;

    private static final int MOST = 6;

    /** Bare paper shows a band when it holds this share of the modulation in ink. */
    private static final double ON_PAPER = 0.5;

    private BandDetector() {}

    private record Peak(BandTrace trace, double frequency, double strength, double amplitude) {}

    /**
     * Finds bands.
     *
     * @param tints tints along one axis, bare paper among them where there is any
     * @param viewing distance and light that visibility is judged at
     * @return strongest first
     */
    public static List<FoundBand> find(List<TintTrace> tints, ContrastSensitivity viewing) {
        List<BandTrace> inked = new ArrayList<>();
        List<BandTrace> bare = new ArrayList<>();
        for (TintTrace tint : tints) {
            if (tint.lengthMm() >= SHORTEST_TINT_MM) {
                (tint.bare() ? bare : inked).add(BandTrace.of(tint));
            }
        }
        if (inked.isEmpty()) {
            return List.of();
        }
        List<BandTrace> looked = new ArrayList<>(inked);
        if (inked.size() > 1) {
            looked.add(BandTrace.mean(inked));
        }
        List<Peak> peaks = new ArrayList<>();
        looked.forEach(trace -> peaks.addAll(peaks(trace)));
        peaks.sort(Comparator.comparingDouble(Peak::strength).reversed());
        List<Peak> kept = new ArrayList<>();
        for (Peak peak : peaks) {
            if (kept.size() < MOST && kept.stream().noneMatch(other -> follows(peak, other))) {
                kept.add(peak);
            }
        }
        List<Peak> all = List.copyOf(kept);
        kept.removeIf(peak -> all.stream().anyMatch(slower -> isHarmonic(peak, slower)));
        List<FoundBand> found = new ArrayList<>();
        kept.forEach(peak -> found.add(band(peak, inked, bare, viewing)));
        return found;
    }

    private static List<Peak> peaks(BandTrace trace) {
        List<Peak> peaks = new ArrayList<>();
        double[] power = trace.power();
        double step = trace.frequencyStep();
        double longest =
                Math.min(BandTrace.LONGEST_MM, trace.lengthMm() / BandTrace.FEWEST_PERIODS);
        int first = Math.max(1, (int) Math.ceil(1 / longest / step));
        for (int k = first; k < power.length - 1; k++) {
            if (power[k] < power[k - 1] || power[k] <= power[k + 1]) {
                continue;
            }
            BandTrace.Noise noise = trace.noise(k);
            double strength = power[k] / noise.mean();
            if (power[k] >= noise.exceeded(ALONE) && power[k] >= SMALLEST_L * SMALLEST_L) {
                double left = Math.log(power[k - 1]);
                double middle = Math.log(power[k]);
                double right = Math.log(power[k + 1]);
                double bend = left - 2 * middle + right;
                double shift = bend < 0 ? 0.5 * (left - right) / bend : 0;
                double frequency = (k + shift) * step;
                peaks.add(new Peak(trace, frequency, strength, Math.sqrt(power[k])));
            }
        }
        return peaks;
    }

    /** Whether a peak is another one again, or a harmonic or sidelobe of it. */
    private static boolean follows(Peak peak, Peak other) {
        double ratio = peak.frequency / other.frequency;
        double lobe = 2.5 / other.trace.lengthMm();
        if (Math.abs(ratio - 1) < SAME || Math.abs(peak.frequency - other.frequency) < lobe) {
            return true;
        }
        double nearest = Math.round(ratio);
        return nearest >= 2
                && nearest <= HIGHEST_HARMONIC
                && Math.abs(ratio / nearest - 1) < HARMONIC
                && peak.amplitude < other.amplitude;
    }

    /**
     * Whether a peak belongs to a slower one, as narrow seams give: a whole multiple of its
     * frequency, not clearly larger in the same tint.
     */
    private static boolean isHarmonic(Peak peak, Peak slower) {
        double ratio = peak.frequency / slower.frequency;
        double nearest = Math.round(ratio);
        return nearest >= 2
                && nearest <= HIGHEST_HARMONIC
                && Math.abs(ratio / nearest - 1) < HARMONIC
                && peak.amplitude < LARGER * peak.trace.amplitude(1 / slower.frequency);
    }

    /**
     * Whether tints show a band that was found in another scan of the same sheet.
     *
     * @param tints where it was found, as the other scan shows them
     * @return empty when it may be there too faintly to be told
     */
    public static Optional<Boolean> shows(List<TintTrace> tints, FoundBand band) {
        boolean absent = false;
        for (TintTrace tint : tints) {
            if (tint.lengthMm() < SHORTEST_TINT_MM) {
                continue;
            }
            BandTrace trace = BandTrace.of(tint);
            BandTrace.Noise noise =
                    trace.noise((int) Math.round(1 / band.periodMm() / trace.frequencyStep()));
            double here = trace.amplitude(band.periodMm());
            if (here * here >= noise.exceeded(SHOWS)) {
                return Optional.of(true);
            }
            double there = band.amplitudeDeltaL();
            absent |= there * there >= noise.exceeded(ALONE);
        }
        return absent ? Optional.of(false) : Optional.empty();
    }

    private static FoundBand band(
            Peak peak, List<BandTrace> inked, List<BandTrace> bare, ContrastSensitivity viewing) {
        double period = 1 / peak.frequency;
        List<String> shows = new ArrayList<>();
        double amplitude = 0;
        double modulation = 0;
        double over = 0;
        double weights = 0;
        for (BandTrace trace : inked) {
            int k = (int) Math.round(peak.frequency / trace.frequencyStep());
            double here = trace.amplitude(period);
            if (here * here < trace.noise(k).exceeded(SHOWS) && peak.trace != trace) {
                continue;
            }
            shows.add(trace.tint().id());
            double weight = trace.lengthMm();
            double ratio = modulation(here, trace.tint());
            double reflectance = Lab.luminanceFactor(trace.tint().lightness());
            over = Math.max(over, ratio * viewing.at(period, reflectance));
            amplitude += weight * here;
            modulation += weight * ratio;
            weights += weight;
        }
        if (weights == 0) {
            // Too weak in each tint, but the same in all of them.
            TintTrace tint = peak.trace.tint();
            amplitude = peak.amplitude;
            modulation = modulation(amplitude, tint);
            over = modulation * viewing.at(period, Lab.luminanceFactor(tint.lightness()));
            weights = 1;
        }
        boolean onPaper = false;
        for (BandTrace trace : bare) {
            double there = modulation(trace.amplitude(period), trace.tint());
            onPaper |= there > ON_PAPER * modulation / weights;
        }
        return new FoundBand(
                peak.trace.tint().along(),
                period,
                amplitude / weights,
                over >= 1,
                over,
                shows,
                onPaper);
    }

    /** Amplitude in L* to modulation of luminance: dY/Y = 3 dL / (L + 16). */
    private static double modulation(double amplitudeL, TintTrace tint) {
        return 3 * amplitudeL / (tint.lightness() + 16);
    }
}
