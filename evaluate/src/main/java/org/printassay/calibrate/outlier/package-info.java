/**
 * Patches that are unlike others, flagged one check after another: a patch beside its twins ({@link
 * org.printassay.calibrate.outlier.TwinCheck}), beside what lies around it on the sheet ({@link
 * org.printassay.calibrate.outlier.LocalCheck}), and, without twins, beside codes near its own
 * ({@link org.printassay.calibrate.outlier.LoneCheck}). Where twins lie apart everywhere none is
 * odd, and each is unsure ({@link org.printassay.calibrate.outlier.TwinScatter}).
 */
package org.printassay.calibrate.outlier;
