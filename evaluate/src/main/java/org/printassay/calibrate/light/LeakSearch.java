package org.printassay.calibrate.light;

import java.util.EnumSet;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import org.printassay.colour.Lab;
import org.printassay.sample.SheetSamples;

/**
 * Looks for light that leaks in along the edges of a sheet, by dark twins, on sheets that have
 * enough of them, and holds it against prints with less ink there; on others by the black of the
 * markers ({@link BlackLeak}). Light that comes in at a corner or a part of an edge is not looked
 * for.
 */
final class LeakSearch {
    /** Standard errors from which it is taken for real. */
    private static final double SIGNIFICANT = 10;

    /** What it must explain better than a print with less ink there, chi-square. */
    private static final double CLEARLY = 50;

    /** It matters from this many L* in the patch that it changes most. */
    private static final double LEAST_L = 2;

    /** Lengths in which it dies away to 1/e, millimetres, at once or by the square of depth. */
    static final double[] DEPTHS_MM = {8, 15, 30, 55, 100};

    static final double[] POWERS = {1, 2};
    static final double[] NO_LIGHT = new double[LightRemoval.CHANNELS];

    /** How often it is looked for again in what is left, for it hides behind stray light. */
    private static final int ROUNDS = 5;

    /** Shares of channels are not taken from darker patches, paper 1. */
    private static final double DARKEST = 1e-4;

    /** How often light is followed further, and a print with less ink instead. */
    private static final int FURTHER = 4;

    private LeakSearch() {}

    /**
     * Samples, and what was found of their light.
     *
     * @param leak what was taken off them already
     * @param perhaps one standard deviation of what may leak in all the same
     */
    record Cleared(
            SheetSamples samples,
            ScanLight scan,
            LightFitter.Outcome found,
            Optional<LeakedLight> leak,
            Optional<LeakedLight> perhaps) {
        private Cleared with(Optional<LeakedLight> doubt) {
            return new Cleared(samples, scan, found, leak, doubt);
        }

        private static Cleared of(SheetSamples samples, Optional<LeakedLight> leak) {
            LightFitter.Fitted light = LightFitter.fit(ScanLight.of(samples));
            return new Cleared(samples, light.scan(), light.outcome(), leak, Optional.empty());
        }

        /** The same, its light fitted anew, as if the print were even. */
        Cleared evened(PrintGradient print) {
            LightFitter.Fitted light = LightFitter.fit(print.evened(scan));
            return new Cleared(samples, light.scan(), light.outcome(), leak, perhaps);
        }

        /**
         * What the print itself does, where twins tell; no light that leaks in, which looks alike.
         */
        Optional<PrintGradient> print() {
            LightFitter.Outcome full = found.full();
            return full == null || leak.isPresent()
                    ? Optional.empty()
                    : PrintGradient.of(scan, full);
        }

        /** The model with everything in it, where the twins carry it. */
        private LightRemoval removal() {
            LightFitter.Outcome full = found.full();
            return LightRemoval.of(samples, scan, full == null ? found : full);
        }
    }

    /** Samples without the light that leaks in, as far as twins show any. */
    static Cleared cleared(SheetSamples given) {
        Cleared first = Cleared.of(given, Optional.empty());
        if (given.located().photographed()) {
            // Its light is uneven in any way, and told so.
            return first;
        }
        if (first.found.full() == null) {
            return clearedByBlacks(first);
        }
        Cleared light = first;
        for (int round = 0; round < ROUNDS; round++) {
            Optional<LeakedLight> more = strongest(light, Looking.FOR_WHAT_MATTERS);
            if (more.isEmpty()) {
                break;
            }
            LeakedLight sum = light.leak.map(one -> one.and(more.get())).orElse(more.get());
            light = Cleared.of(sum.removedFrom(given), Optional.of(sum));
        }
        if (light.leak.isEmpty()) {
            return light;
        }
        TwinResiduals left = residuals(followed(light));
        double enough = left.loss(left.scale()) + CLEARLY;
        double shaped = shaped(first).loss(left.scale());
        if (shaped < left.loss(left.scale())) {
            return first;
        }
        if (shaped >= enough
                && clearlyLight(first, light.leak.get().edges(), left.scale(), enough)) {
            return light;
        }
        Optional<LeakedLight> inDoubt = light.leak.map(LeakedLight::inDoubt);
        return new Cleared(light.samples, light.scan, light.found, inDoubt, light.perhaps);
    }

    /** Where twins are too few, what is printed in black elsewhere tells. */
    private static Cleared clearedByBlacks(Cleared first) {
        BlackLeak.Found found =
                BlackLeak.found(new BlackWitnesses(first.samples, first.scan, first.found));
        Optional<LeakedLight> leak =
                found.told().stream()
                        .map(beam -> LeakedLight.of(inDevice(beam, first), first.samples, false))
                        .reduce(LeakedLight::and);
        Cleared cleared =
                leak.map(light -> Cleared.of(light.removedFrom(first.samples), leak)).orElse(first);
        return cleared.with(
                found.perhaps()
                        .map(one -> one.beam().times(Math.sqrt(one.probability())))
                        .map(beam -> LeakedLight.of(inDevice(beam, first), first.samples, false)));
    }

    private static LeakedLight.Beam inDevice(LeakedLight.Beam beam, Cleared so) {
        double[] amounts = beam.amounts().clone();
        for (int c = 0; c < amounts.length; c++) {
            amounts[c] *= so.scan.paper()[Math.min(c, so.scan.paper().length - 1)];
        }
        return beam.withAmounts(amounts);
    }

    /** What leaks in at the same edges, followed as far as it goes. */
    private static Cleared followed(Cleared light) {
        Set<LeakedLight.Edge> edges = light.leak.orElseThrow().edges();
        Cleared most = light;
        for (int round = 0; round < FURTHER; round++) {
            Optional<LeakedLight> more = strongest(most, new Looking(edges, false));
            if (more.isEmpty()) {
                break;
            }
            most = Cleared.of(more.get().removedFrom(most.samples), Optional.empty());
        }
        return most;
    }

    /** What the likeliest shape of stray light leaves, no light leaking in. */
    private static TwinResiduals shaped(Cleared first) {
        LightFitter.Outcome full = Objects.requireNonNull(first.found.full(), "no full model");
        List<KernelChoice.Weighed> weighed = new KernelChoice(first.scan, full).weigh(first.found);
        LightFitter.Outcome likeliest =
                AveragedRemoval.of(first.samples, first.scan, weighed).likeliest().outcome();
        return residuals(
                first,
                LightRemoval.of(first.samples, first.scan, likeliest),
                first.scan.channels().size() / 2);
    }

    /**
     * Whether light explains the twins better than any print with less ink at the same edges, both
     * followed as far as they go.
     *
     * @param scale spread of twins that losses are weighed with
     * @param enough loss of prints from which light is clear
     */
    private static boolean clearlyLight(
            Cleared first, Set<LeakedLight.Edge> edges, double scale, double enough) {
        for (LessInk way : LessInk.values()) {
            Cleared print = first;
            for (int round = 0; round < FURTHER; round++) {
                Optional<Cleared> next = withMoreInk(print, edges, way);
                if (next.isEmpty()) {
                    break;
                }
                print = next.get();
            }
            if (residuals(print).loss(scale) < enough) {
                return false;
            }
        }
        return true;
    }

    /**
     * Samples as if more ink lay where the print is lighter, by the shape that fits best; empty
     * where none does.
     */
    private static Optional<Cleared> withMoreInk(
            Cleared so, Set<LeakedLight.Edge> edges, LessInk way) {
        TwinResiduals residuals = residuals(so);
        TwinResiduals.Fit best = TwinResiduals.Fit.NONE;
        double[] shape = new double[so.samples.samples().size()];
        for (LeakedLight.Edge edge : edges) {
            for (double depth : DEPTHS_MM) {
                for (double power : POWERS) {
                    double[] lighter =
                            lighter(
                                    residuals,
                                    new LeakedLight.Beam(edge, depth, power, NO_LIGHT)
                                            .at(so.samples),
                                    way);
                    TwinResiduals.Fit fit = residuals.fit(lighter);
                    if (fit.gain() > best.gain()) {
                        best = fit;
                        shape = lighter;
                    }
                }
            }
        }
        if (best.gain() <= 0) {
            return Optional.empty();
        }
        LightRemoval removal = so.removal();
        double[][] added = new double[LightRemoval.CHANNELS][shape.length];
        for (int c = 0; c < added.length; c++) {
            double paper = so.scan.paper()[Math.min(c, so.scan.channels().size() - 1)];
            for (int i = 0; i < shape.length; i++) {
                // Of each channel in proportion to that in which the departure was seen, then back
                // to light with stray light in it.
                double seen = Math.max(DARKEST, residuals.light(i));
                double share = removal.corrected()[c][i] / paper / seen;
                double more = best.amount() * shape[i] * Math.max(0, Math.min(2, share)) * paper;
                added[c][i] = more / removal.gain()[c][i];
            }
        }
        // What surrounds the patches is as light as the print is, and stays.
        SheetSamples inked =
                so.samples.withLight(
                        LeakedLight.patchesWithout(so.samples, added), so.samples.page());
        return Optional.of(Cleared.of(inked, Optional.empty()));
    }

    /**
     * What to look for.
     *
     * @param edges where
     * @param mattering whether it must be significant and change what is read
     */
    private record Looking(Set<LeakedLight.Edge> edges, boolean mattering) {
        static final Looking FOR_WHAT_MATTERS =
                new Looking(EnumSet.allOf(LeakedLight.Edge.class), true);
    }

    private static Optional<LeakedLight> strongest(Cleared so, Looking looking) {
        if (so.found.full() == null) {
            return Optional.empty();
        }
        TwinResiduals residuals = residuals(so);
        TwinResiduals.Fit best = TwinResiduals.Fit.NONE;
        LeakedLight.Edge where = LeakedLight.Edge.LEFT;
        double depthMm = 0;
        double powerOfDepth = 1;
        double[] shape = {};
        for (LeakedLight.Edge edge : looking.edges) {
            for (double depth : DEPTHS_MM) {
                for (double power : POWERS) {
                    double[] tried =
                            new LeakedLight.Beam(edge, depth, power, NO_LIGHT).at(so.samples);
                    TwinResiduals.Fit fit = residuals.fit(tried);
                    if (fit.gain() > best.gain() && fit.amount() > 0) {
                        best = fit;
                        where = edge;
                        depthMm = depth;
                        powerOfDepth = power;
                        shape = tried;
                    }
                }
            }
        }
        boolean matters = best.significance() >= SIGNIFICANT && best.largestL() >= LEAST_L;
        if (looking.mattering ? !matters : best.gain() <= 0) {
            return Optional.empty();
        }
        int channels = so.scan.channels().size();
        double[] amounts = new double[LightRemoval.CHANNELS];
        for (int c = 0; c < amounts.length; c++) {
            int from = Math.min(c, channels - 1);
            TwinResiduals.Fit fit = residuals(so, from).fit(shape);
            if (fit.equals(TwinResiduals.Fit.NONE)) {
                // What one channel rules out is no light.
                return Optional.empty();
            }
            amounts[c] = Math.max(0, fit.amount()) * so.scan.paper()[from];
        }
        LeakedLight.Beam beam = new LeakedLight.Beam(where, depthMm, powerOfDepth, amounts);
        return Optional.of(LeakedLight.of(beam, so.samples, true));
    }

    /** How a print with less ink at a place is lighter there, by tone. */
    enum LessInk {
        ALIKE,
        BY_INK,
        BY_SQUARE,
        DARKS;

        /** L* by which a tone is lighter, against others. */
        double at(double lightness) {
            double ink = Math.max(0, 1 - lightness / 100);
            return switch (this) {
                case ALIKE -> 1;
                case BY_INK -> ink;
                case BY_SQUARE -> ink * ink;
                case DARKS -> Math.max(0, 1 - lightness / 40);
            };
        }
    }

    private static TwinResiduals residuals(Cleared so) {
        return residuals(so, so.scan.channels().size() / 2);
    }

    private static TwinResiduals residuals(Cleared so, int channel) {
        return residuals(so, so.removal(), channel);
    }

    private static TwinResiduals residuals(Cleared so, LightRemoval removal, int channel) {
        double[] light = removal.corrected()[channel].clone();
        for (int i = 0; i < light.length; i++) {
            light[i] /= so.scan.paper()[channel];
        }
        return new TwinResiduals(so.scan.channels().get(channel).data(), light);
    }

    /** Light that a print with less ink throws back more. */
    private static double[] lighter(TwinResiduals residuals, double[] shape, LessInk way) {
        double[] lighter = new double[shape.length];
        for (int i = 0; i < shape.length; i++) {
            double deltaL = shape[i] * way.at(Lab.lightness(residuals.light(i)));
            lighter[i] = residuals.lightOf(i, deltaL);
        }
        return lighter;
    }
}
