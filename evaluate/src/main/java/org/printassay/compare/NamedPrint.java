package org.printassay.compare;

import org.printassay.evaluation.Evaluation;

/**
 * One print to compare.
 *
 * @param source what it was read from, as people named it; used where nobody named the paper
 */
public record NamedPrint(String source, Evaluation evaluation) {}
