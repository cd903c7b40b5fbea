/**
 * What a scanner's light means in colour, learned from patches that were both scanned and measured:
 * curves of the channels, a root polynomial, what is left over made smooth, and how far all this
 * can be trusted. {@link org.printassay.scannermodel.ModelFit} makes a model, {@link
 * org.printassay.scannermodel.CalibrationFile} keeps it. Light is linear device light, 0 to 1;
 * colour is CIELAB under D50 (2 degrees), XYZ with Y = 100 for the perfect diffuser.
 */
package org.printassay.scannermodel;
