/**
 * Scan files to pixels: TIFF, PNG, JPEG and scanned PDF read as a stream of rows, memory
 * independent of size. Start with {@link org.printassay.scan.ScanImage}.
 */
package org.printassay.scan;
