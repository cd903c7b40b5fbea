/**
 * Simulated papers: which colour a printer makes of a code on a paper, faults included. Start with
 * {@link org.printassay.demo.paper.PaperModel}.
 */
package org.printassay.demo.paper;
