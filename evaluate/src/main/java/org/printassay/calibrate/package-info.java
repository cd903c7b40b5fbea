/**
 * From samples to readings: even light, stray light removed, colour by trust. Start at {@link
 * org.printassay.calibrate.ScanReadings#of}; each scan goes through {@code PartResult.of}. Here
 * several scans become one print: {@code PrintIdentity} (is it one print?), {@code ScanLights},
 * {@code Merging}, {@code Unevenness} (whose is it?), {@code SharedErrors}, {@code ProfileDoubt},
 * {@code UnsureReadings}; {@code ScanWarnings} puts into words what the user must know. The rooms
 * below know nothing of those that follow them:
 *
 * <ul>
 *   <li>{@code light}: even light, stray light, light from outside;
 *   <li>{@code codes}: what codes mean as colour, and what coding loses;
 *   <li>{@code outlier}: patches that are unlike others;
 *   <li>{@code part}: one scan with its light and colours, and its faults.
 * </ul>
 */
package org.printassay.calibrate;
