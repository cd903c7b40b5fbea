/**
 * What two prints can be compared by, and by how much they differ, with uncertainty. Start with
 * {@link org.printassay.compare.PrintFigures}: the figures of one evaluation; {@link
 * org.printassay.compare.Comparability} says which prints may be compared at all; {@link
 * org.printassay.compare.Differences} holds sides of one or several prints against each other.
 * Whole curves and all patches are compared by {@link org.printassay.compare.WedgeShift} and {@link
 * org.printassay.compare.PatchDrift}. Units: CIELAB, levels 0-255, millimetres. Differences are the
 * second minus the first.
 */
package org.printassay.compare;
