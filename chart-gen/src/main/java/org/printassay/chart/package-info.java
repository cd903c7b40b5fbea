/**
 * Charts: made from a recipe, named by a sheet code, kept in a chart file. Start with {@link
 * org.printassay.chart.Charts}.
 */
package org.printassay.chart;
