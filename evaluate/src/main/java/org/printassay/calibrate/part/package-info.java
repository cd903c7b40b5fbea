/**
 * One scan: {@link org.printassay.calibrate.part.PartResult} has its light and its colours, {@link
 * org.printassay.calibrate.part.ScanHealth} says what is wrong with it, by its range ({@code
 * RangeHealth}), its tones ({@code ToneDoubt}), its paper ({@code PaperBalance}, {@code
 * MarginLight}). {@link org.printassay.calibrate.part.ChartItself} and {@link
 * org.printassay.calibrate.part.ChannelOrder} tell what is no scan at all, or has its channels
 * mixed up.
 */
package org.printassay.calibrate.part;
