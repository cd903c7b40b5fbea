/**
 * One sheet: what is printed where, in millimetres from the top left corner of the page, x to the
 * right, y down. Immutable records. Start with {@link org.printassay.sheet.Sheet}.
 */
package org.printassay.sheet;
