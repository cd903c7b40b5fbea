/**
 * An evaluation as files for people and scripts: {@code evaluation.json}, one self-contained HTML
 * page, CSV and ISO 28178 text. Start with {@link org.printassay.report.Reports}; every number
 * comes from the {@link org.printassay.evaluation.Evaluation} and nothing is measured here.
 */
package org.printassay.report;
