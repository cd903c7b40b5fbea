/**
 * Every result for one print. Start with {@code Evaluator.evaluate(request)}; the result is {@link
 * org.printassay.evaluation.Evaluation}.
 */
package org.printassay.evaluation;
