/**
 * Scan files to pixels: TIFF, PNG and JPEG read as a stream of rows, memory independent of size.
 * Start with {@link org.printassay.scan.ScanImage}.
 */
package org.printassay.scan;
