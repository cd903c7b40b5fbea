package org.printassay.sheet;

import java.util.List;

/**
 * One page of a chart.
 *
 * @param number from 1
 * @param page size; x and y are 0
 * @param printable the page less its margins; the TIFF of the sheet covers exactly this
 * @param patches in reading order
 * @param markers in order of id
 * @param code where the sheet code's modules stand, without its quiet zone
 * @param codeText what the sheet code says
 * @param artwork what else is drawn, under the patches, in order
 */
public record Sheet(
        int number,
        RectMm page,
        RectMm printable,
        List<Patch> patches,
        List<Marker> markers,
        RectMm code,
        String codeText,
        List<Artwork> artwork) {
    public Sheet {
        patches = List.copyOf(patches);
        markers = List.copyOf(markers);
        artwork = List.copyOf(artwork);
    }
}
