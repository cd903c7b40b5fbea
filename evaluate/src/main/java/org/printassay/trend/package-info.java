/**
 * One quantity of one printer, paper and route over time: control limits, jumps and drifts. Pure
 * arithmetic, no files. Start with {@link org.printassay.trend.Trend}; the formulas are those of
 * NIST/SEMATECH e-Handbook of Statistical Methods, sections 6.3.2.2 (individuals chart) and 6.3.2.4
 * (exponentially weighted moving average).
 */
package org.printassay.trend;
