package org.printassay.demo.print;

import org.printassay.colour.Lab;
import org.printassay.sheet.Patch;
import org.printassay.sheet.RectMm;

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
