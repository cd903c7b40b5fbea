/**
 * Many prints at once: which files there are ({@link org.printassay.prints.ScanFolder}, {@link
 * org.printassay.prints.ListFile}), which of them belong together ({@link
 * org.printassay.prints.Grouping}), work on all of them within a memory bound ({@link
 * org.printassay.prints.ManyPrints}, the way in), and what came of it ({@link
 * org.printassay.prints.Summary}, {@link org.printassay.prints.CheckSummary}).
 */
package org.printassay.prints;
