/**
 * Colour measurement files as text (ISO 28178, the successor of CGATS.17): {@link
 * org.printassay.measurement.MeasurementReader} with the dialects found in practice, {@link
 * org.printassay.measurement.MeasurementWriter} for chart references and readings. CIELAB is D50, 2
 * degree; XYZ has Y = 100 for the perfect diffuser; reflectance factors have 1.
 */
package org.printassay.measurement;
