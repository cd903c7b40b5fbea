/**
 * The simulated print room: it takes a real PDF, prints it on a described paper and scans it with a
 * described flatbed. Start with {@link org.printassay.demo.PrintRoom}; {@link
 * org.printassay.demo.DemoScenario} is an invented room with three papers. Everything made here is
 * simulated and says so. Shares no code with the evaluation, so that it can prove it wrong.
 *
 * <p>Units: millimetres on paper and bed, x to the right, y down; light 0-1 with 1 for the perfect
 * reflecting diffuser; CIELAB D50.
 */
package org.printassay.demo;
