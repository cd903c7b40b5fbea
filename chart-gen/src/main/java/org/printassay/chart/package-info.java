/**
 * The chart model: what is printed where, in millimetres from the top left corner of the page, x to
 * the right, y down. Immutable. Start with {@link org.printassay.chart.Chart}.
 */
package org.printassay.chart;
