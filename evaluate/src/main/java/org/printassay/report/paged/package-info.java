/**
 * Paged documents as PDF: text that flows over pages, lists, tables, drawings and pictures, every
 * one of them tagged for people who have it read to them. Start at {@link
 * org.printassay.report.paged.PagedDocument}, which is filled from top to bottom as a sequence of
 * pieces, and {@link org.printassay.report.paged.PageBreaks}, which makes pages of it; {@link
 * org.printassay.report.paged.Type} names kinds of text, {@link org.printassay.report.paged.Table}
 * holds rows, and drawings come from {@link org.printassay.report.draw.Drawing}. Lengths are
 * points, 1/72 inch, y grows downwards from the top of the page. Aims at ISO 14289-1 (PDF/UA-1).
 */
package org.printassay.report.paged;
