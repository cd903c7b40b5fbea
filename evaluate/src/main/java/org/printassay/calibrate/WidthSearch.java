package org.printassay.calibrate;

import org.jspecify.annotations.Nullable;

/**
 * The width of the stray light: every width tried on every channel.
 *
 * @param widths the best, and how sure
 * @param amounts for each channel and part, the amount at each tried width
 */
@SuppressWarnings("ArrayRecordComponent") // numbers on their way, never compared
record WidthSearch(Widths widths, double[][][] amounts) {

    /**
     * Tries all widths.
     *
     * @param around for each channel and tried width, light around each patch
     * @param start index of the width that the spread of twins is estimated with
     * @return null when the twins do not determine the numbers asked for
     */
    static @Nullable WidthSearch of(
            ScanLight scan, Kind[] kinds, int surfaceTerms, double[][][] around, int start) {
        int channels = scan.channels().size();
        int count = Widths.TRIED.length;
        double[] misfits = new double[count];
        double[][][] amounts = new double[channels][kinds.length][count];
        for (int c = 0; c < channels; c++) {
            ChannelLight channel = scan.channels().get(c);
            TwinFit.Result first =
                    TwinFit.fit(
                            channel.data(),
                            kinds,
                            neighbourhood(channel, kinds, around[c][start]),
                            surfaceTerms,
                            null);
            if (first == null) {
                return null;
            }
            for (int w = 0; w < count; w++) {
                TwinFit.Result fit =
                        TwinFit.fit(
                                channel.data(),
                                kinds,
                                neighbourhood(channel, kinds, around[c][w]),
                                surfaceTerms,
                                first.scales());
                if (fit == null) {
                    return null;
                }
                // Channels share the printer's spread: three are not three times the evidence.
                misfits[w] += fit.misfit() / channels;
                for (int t = 0; t < kinds.length; t++) {
                    amounts[c][t][w] = fit.amounts()[t];
                }
            }
        }
        return new WidthSearch(Widths.of(misfits), amounts);
    }

    /** What the parts need to know of each patch's neighbourhood. */
    static double[][] neighbourhood(ChannelLight channel, Kind[] kinds, double[] around) {
        double[][] neighbourhood = new double[kinds.length][];
        for (int t = 0; t < kinds.length; t++) {
            neighbourhood[t] = kinds[t] == Kind.GLARE ? around : channel.lessReference(around);
        }
        return neighbourhood;
    }

    /** Standard error of an amount, the width's error included. */
    double error(TwinFit.Result fit, int channel, int part) {
        return Math.hypot(fit.error(part), widths.errorOf(amounts[channel][part]));
    }
}
