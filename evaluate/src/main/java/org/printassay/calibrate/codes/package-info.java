/**
 * What a scan's codes mean. {@link org.printassay.calibrate.codes.ScanColour} is a profile, a
 * calibration, or neither; {@link org.printassay.calibrate.codes.PatchColour} the colour of each
 * patch in one scan, with what its light ({@code light}) and its coding ({@code CodeErrors}, {@code
 * ToneEdit}) leave unsure of it.
 */
package org.printassay.calibrate.codes;
