package org.printassay.evaluation;

import org.printassay.surface.FoundBand;

/**
 * Periodic unevenness of a print.
 *
 * @param sheet it was found on
 * @param band how
 * @param cause whose it is
 */
public record PrintBand(int sheet, FoundBand band, SurfaceCause cause) {}
