/**
 * What a printer's ICC profile promises of a print, how far the print is from it, and whether a
 * mistake in colour management explains the distance. Start at {@link
 * org.printassay.promise.PromiseJudge}. Colours are CIELAB, D50; differences are CIEDE2000,
 * measured against promised.
 */
package org.printassay.promise;
