/**
 * Where everything stands on a sheet. Lengths inside this package are whole dots of 1/300 inch from
 * the top left corner of the printable area ({@code ...Px} or plain {@code x, y}), so that a 300
 * dpi picture of the sheet has its patch edges on whole pixels; {@link
 * org.printassay.layout.SheetBuilder} alone turns them into millimetres on the page. Start with
 * {@link org.printassay.layout.PaperLayout}; the rules of a released layout version never change.
 */
package org.printassay.layout;
