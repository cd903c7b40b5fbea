package org.printassay.measurement;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import org.printassay.colour.DeltaE;
import org.printassay.colour.Lab;
import org.printassay.colour.Spectrum;
import org.printassay.colour.Xyz;
import org.printassay.problem.Problem;

/**
 * CIELAB of what a file has for a patch: from the spectrum, else from XYZ, else as stated. Refuses
 * values that no print has. Mutable: learns the scales first, then makes colours; one for each
 * table.
 */
final class ColourMaker {
    /** Less than this below zero is the rounding of an instrument's dark reading. */
    private static final double ZERO_SLACK = 0.0005;

    /** CIELAB in the file that is this far from what its own data give used other conditions. */
    private static final double LAB_SLACK = 1;

    private static final double LIGHTEST = 130;
    private static final double MOST_CHROMA = 200;

    private final List<String> notes;
    private int startNm;
    private int stepNm;
    private double spectral = 1;
    private double tristimulus = 1;
    private double difference;
    private int compared;

    ColourMaker(List<String> notes) {
        this.notes = notes;
    }

    /** A patch's colour. */
    record Made(Lab lab, @Nullable Xyz xyz, @Nullable Spectrum spectrum) {}

    /** Checks wavelengths: even, no gap, enough of the visible. */
    void bands(String where, Collection<Integer> wavelengths) throws Problem {
        List<Integer> nm = List.copyOf(wavelengths);
        int step = Integer.MAX_VALUE;
        for (int i = 1; i < nm.size(); i++) {
            step = Math.min(step, nm.get(i) - nm.get(i - 1));
        }
        for (int i = 1; i < nm.size(); i++) {
            if (nm.get(i) != nm.get(0) + i * step) {
                throw Problem.input(
                        where,
                        "the spectral columns are not evenly spaced: "
                                + (nm.get(i - 1) + step)
                                + " nm is missing. Export every band.");
            }
        }
        grid(where, nm.get(0), step, nm.size());
    }

    /** As {@link #bands} where the file gives start and step. */
    void grid(String where, int start, int step, int count) throws Problem {
        String why = Spectrum.whyNot(start, step, count);
        if (!why.isEmpty()) {
            throw Problem.input(where, why + ". Export 380 to 730 nm.");
        }
        startNm = start;
        stepNm = step;
        int end = start + step * (count - 1);
        notes.add(
                "CIELAB (D50, 2 degree) computed from the spectra, "
                        + start
                        + " to "
                        + end
                        + " nm every "
                        + step
                        + " nm"
                        + (start > 360 || end < 780
                                ? "; weights beyond them added to the end bands (ASTM E308)."
                                : "."));
    }

    /** Percent or fraction, as {@link ValueScale} or the header says. */
    void spectralScale(boolean percent) {
        notes.add(
                percent
                        ? "Spectral values are percent in the file."
                        : "Spectral values are fractions of 1 in the file.");
        spectral = percent ? 0.01 : 1;
    }

    void xyzScale(boolean hundred) {
        notes.add("CIELAB computed from XYZ with white 96.42 100 82.49.");
        if (!hundred) {
            notes.add("XYZ runs from 0 to 1 in the file and was multiplied by 100.");
            tristimulus = 100;
        }
    }

    void labAsStated() {
        notes.add("CIELAB as the file has it; D50 and 2 degree are assumed.");
    }

    /**
     * The colour of one patch.
     *
     * @param where file and line, for messages
     * @param bands empty when there is no spectrum
     */
    Made make(String where, double[] bands, @Nullable Xyz fileXyz, @Nullable Lab stated)
            throws Problem {
        if (stated != null) {
            check(where, stated);
        }
        Spectrum spectrum = bands.length == 0 ? null : spectrum(where, bands);
        Xyz xyz = null;
        Lab lab;
        if (spectrum != null) {
            xyz = spectrum.toXyz();
            lab = spectrum.toLab();
            check(where, lab);
        } else if (fileXyz != null) {
            xyz = fileXyz.times(tristimulus);
            if (Math.min(xyz.x(), Math.min(xyz.y(), xyz.z())) < -100 * ZERO_SLACK) {
                throw Problem.input(
                        where, "XYZ is below 0, which no print has. Measure this patch again.");
            }
            lab = Lab.of(xyz, Xyz.PCS_WHITE);
            check(where, lab);
        } else if (stated != null) {
            return new Made(stated, null, null);
        } else {
            throw new IllegalStateException("a table without colour was let through");
        }
        if (stated != null) {
            difference += DeltaE.cie1976(lab, stated);
            compared++;
        }
        return new Made(lab, xyz, spectrum);
    }

    private Spectrum spectrum(String where, double[] bands) throws Problem {
        List<Double> factors = new ArrayList<>();
        for (int i = 0; i < bands.length; i++) {
            double factor = bands[i] * spectral;
            if (factor < -ZERO_SLACK || factor > ValueScale.FRACTION_LIMIT) {
                throw Problem.input(
                        where,
                        String.format(
                                Locale.ROOT,
                                "the reflectance at %d nm is %s, %s. Measure this patch again.",
                                startNm + i * stepNm,
                                plain(bands[i]),
                                factor < 0 ? "below 0" : "more than any paper has"));
            }
            factors.add(Math.max(0, factor));
        }
        return new Spectrum(startNm, stepNm, factors);
    }

    private static void check(String where, Lab lab) throws Problem {
        if (lab.l() < -100 * ZERO_SLACK || lab.l() > LIGHTEST || lab.chroma() > MOST_CHROMA) {
            throw Problem.input(
                    where,
                    String.format(
                            Locale.ROOT,
                            "no print has L* %.1f a* %.1f b* %.1f. Check the columns, or measure"
                                    + " this patch again.",
                            lab.l(),
                            lab.a(),
                            lab.b()));
        }
    }

    private static String plain(double value) {
        String text = String.format(Locale.ROOT, "%.6f", value);
        return text.replaceAll("0+$", "").replaceAll("[.]$", "");
    }

    /** Notes a difference to the file's own CIELAB, once all patches are made. */
    void noteDoubts() {
        double mean = compared == 0 ? 0 : difference / compared;
        if (mean > LAB_SLACK) {
            notes.add(
                    String.format(
                            Locale.ROOT,
                            "The file's own CIELAB differs by %.1f on average: it was probably"
                                    + " computed for another light or observer and was not used.",
                            mean));
        }
    }
}
