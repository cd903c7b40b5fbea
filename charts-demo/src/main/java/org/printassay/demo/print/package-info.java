/**
 * A simulated print: the rendered page, what the printer does to it, and the sheet that comes out.
 * Start with {@link org.printassay.demo.print.Print}.
 */
package org.printassay.demo.print;
