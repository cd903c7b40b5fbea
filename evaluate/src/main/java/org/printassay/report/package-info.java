/** An evaluation as HTML, JSON, CSV and ISO 28178 text. */
package org.printassay.report;
