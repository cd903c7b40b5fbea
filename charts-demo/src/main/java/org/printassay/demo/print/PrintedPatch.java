package org.printassay.demo.print;

import org.printassay.chart.Patch;
import org.printassay.chart.RectMm;
import org.printassay.colour.Lab;

/**
 * A patch as it came out.
 *
 * @param patch as designed
 * @param onSheet where it stands on the printed sheet
 * @param expected true colour of its code on this paper
 * @param spread the same with this patch's own departure
 * @param printed the same with the slow drift of the sheet at its place too: what an instrument
 *     would read
 */
public record PrintedPatch(Patch patch, RectMm onSheet, Lab expected, Lab spread, Lab printed) {}
