/**
 * Makes calibrations: from scans of a print and an instrument's measurement of the same print, or
 * from a scanned reference target and its data file. Start with {@code
 * Calibrator.calibrate(request)}.
 */
package org.printassay.scannercalibration;
