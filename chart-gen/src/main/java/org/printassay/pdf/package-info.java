/** Charts as PDF: exact codes in one ICC-based RGB space, the same bytes for the same chart. */
package org.printassay.pdf;
