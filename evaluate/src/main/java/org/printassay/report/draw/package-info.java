/**
 * A plot as a list of marks in its own units (about a screen pixel), with pens named by meaning.
 * {@link org.printassay.report.draw.Drawing} collects marks; {@link
 * org.printassay.report.draw.SvgWriter} turns them into SVG whose colours come from the page's
 * style sheet, so that light, dark and print need one drawing only.
 */
package org.printassay.report.draw;
