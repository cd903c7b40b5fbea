/**
 * One class a metric; each takes readings and returns a result record with its uncertainty. All
 * deltas are measured minus aim. Metrics key readings by RGB, so readings of any RGB chart work.
 */
package org.printassay.metric;
