/** Readings: the colour of each patch with its standard error. What every metric starts from. */
package org.printassay.reading;
