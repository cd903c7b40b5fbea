/**
 * The plots of the report, one class each: results in, {@link org.printassay.report.draw.Drawing}
 * out. Each takes its width, because a plot made for a wide screen is unreadable on a phone.
 */
package org.printassay.report.plot;
