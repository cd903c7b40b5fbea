package org.printassay.check;

import java.util.List;
import org.printassay.evaluation.PrintBand;
import org.printassay.evaluation.PrintLine;

/**
 * Lines and bands, matched by place with those of the baseline.
 *
 * @param linesCompared whether both prints were looked at for lines
 * @param newLines lines that the baseline has not
 * @param worseLines lines that were there before and are stronger now
 * @param oldLines lines of the print that were there before
 * @param goneLines lines of the baseline that the print has not
 * @param bandsCompared whether both prints were looked at for bands
 * @param newBands visible bands that the baseline has not
 * @param worseBands visible bands that were there before and are stronger now
 * @param oldBands visible bands that were there before
 * @param goneBands visible bands of the baseline that are not visible any more
 * @param unlooked what the tolerances ask for and tints on a sheet could have told, but a scan did
 *     not: "lines", "bands"
 * @param found what follows from those that were looked at
 */
public record SurfaceChange(
        boolean linesCompared,
        List<PrintLine> newLines,
        List<Grown<PrintLine>> worseLines,
        List<PrintLine> oldLines,
        List<PrintLine> goneLines,
        boolean bandsCompared,
        List<PrintBand> newBands,
        List<Grown<PrintBand>> worseBands,
        List<PrintBand> oldBands,
        List<PrintBand> goneBands,
        List<String> unlooked,
        Outcome found) {
    public SurfaceChange {
        newLines = List.copyOf(newLines);
        worseLines = List.copyOf(worseLines);
        oldLines = List.copyOf(oldLines);
        goneLines = List.copyOf(goneLines);
        newBands = List.copyOf(newBands);
        worseBands = List.copyOf(worseBands);
        oldBands = List.copyOf(oldBands);
        goneBands = List.copyOf(goneBands);
        unlooked = List.copyOf(unlooked);
    }

    /** Of lines and bands together: what was not looked at cannot be told. */
    public Outcome outcome() {
        return unlooked.isEmpty() ? found : found.or(Outcome.CANNOT_TELL);
    }
}
