package org.printassay.evaluation;

import java.util.List;
import org.printassay.surface.FoundLine;

/**
 * A line on a print.
 *
 * @param sheet it was found on
 * @param line where and how
 * @param cause whose it is
 * @param inks suspect inks; empty when the tints tell nothing
 */
public record PrintLine(int sheet, FoundLine line, SurfaceCause cause, List<String> inks) {
    public PrintLine {
        inks = List.copyOf(inks);
    }
}
