/**
 * From samples to readings: even light, stray light removed, colour by trust level. Start at {@link
 * org.printassay.calibrate.ScanReadings#of}; each scan goes through {@code PartResult.of}.
 *
 * <ul>
 *   <li><b>Light</b> ({@code LightFit.of}). {@code ScanLight} makes a scan ready: for each channel
 *       its twins ({@code TwinData}) and its neighbourhood ({@code SurroundGrid}). {@code
 *       LightFitter} fits a surface and stray light to the twins ({@code TwinFit}) at widths that
 *       {@code WidthSearch} tries with {@code Blur}; {@code Significance} says what of it is there.
 *       {@code KernelChoice} weighs other shapes of stray light, {@code ChannelsTogether} joins the
 *       channels, {@code AveragedRemoval} and {@code LightRemoval} take the light off and say what
 *       each cause leaves. Where twins are too few, {@code OrdinaryStray} stands in.
 *   <li><b>Light from outside</b> comes off before: {@code LeakSearch} by twins, {@code BlackLeak}
 *       by the black of the markers ({@code LeakedLight}).
 *   <li><b>Colour</b>: {@code ScanColour} (a profile, a calibration, or neither) and {@code
 *       PatchColour}, with the errors of {@code CodeErrors} and {@code ProfileDoubt}.
 *   <li><b>Doubt</b> about patches, in this order: {@code TwinCheck}, {@code LocalCheck}, {@code
 *       LoneCheck}, {@code TwinScatter}.
 *   <li><b>Several scans</b>: {@code PrintIdentity} (is it one print?), {@code ScanLights}, {@code
 *       Merging}, {@code Unevenness} (whose is it?), {@code SharedErrors}.
 *   <li><b>Health</b>: {@code ScanHealth} with {@code RangeHealth}, {@code ToneEdit}, {@code
 *       PaperBalance}, {@code MarginLight}, {@code ChannelOrder}, {@code ChartItself}; {@code
 *       ScanWarnings} puts all of it into words.
 * </ul>
 */
package org.printassay.calibrate;
