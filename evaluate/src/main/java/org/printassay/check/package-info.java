/**
 * A print held against a baseline (one print, or the mean of several) of the same printer, paper
 * and chart: what has not changed, what has, and what cannot be told, by tolerances that users can
 * edit. Start with {@link org.printassay.check.Checker}; {@link org.printassay.check.DecisionRule}
 * says how a change, its uncertainty and a tolerance become an outcome. Changes are the print's
 * figure minus the baseline's; units are those of {@link org.printassay.check.Quantity}.
 */
package org.printassay.check;
