package org.printassay.reading;

import java.util.List;
import org.printassay.colour.RgbSpace;

/**
 * All readings of one print.
 *
 * @param readings in chart order
 * @param space encoding of the codes that were printed
 * @param trust how colour was obtained
 * @param colour false when only lightness was read (grey scan)
 */
public record ReadingSet(List<Reading> readings, RgbSpace space, Trust trust, boolean colour) {
    public ReadingSet {
        readings = List.copyOf(readings);
    }
}
