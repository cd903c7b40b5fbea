/**
 * The light of one scan, and its patches freed from it. Start at {@link
 * org.printassay.calibrate.light.LightFit#of}; what it finds stands there, in {@code StrayEstimate}
 * and in {@code LeakedLight}, and the rest serves it.
 *
 * <ul>
 *   <li><b>The model.</b> {@code ScanLight} makes a scan ready: for each channel ({@code
 *       ChannelLight}) its twins ({@code TwinData}) and its neighbourhood ({@code SurroundGrid}).
 *       {@code LightFitter} fits a {@code LightSurface} and stray light ({@code StrayKind}) to the
 *       twins ({@code TwinFit}) at widths that {@code WidthSearch} tries with {@code Blur}; {@code
 *       Significance} says what of it is there. {@code PrintGradient} tells a print that gets
 *       lighter over the sheet from light that falls off.
 *   <li><b>Its shapes and errors.</b> {@code KernelChoice} weighs other shapes of stray light
 *       (longer ones on a {@code LineGrid}), {@code ChannelsTogether} joins the channels, {@code
 *       AveragedRemoval} and {@code LightRemoval} take the light off and say what each cause
 *       leaves. Where twins are too few, {@code OrdinaryStray} stands in.
 *   <li><b>Light from outside</b> comes off before: {@code LeakSearch} by twins ({@code
 *       TwinResiduals}), {@code BlackLeak} by the black of the markers ({@code BlackWitnesses}).
 * </ul>
 */
package org.printassay.calibrate.light;
