/** Measurement files: ISO 28178 text, read by field names, and written. */
package org.printassay.measurement;
