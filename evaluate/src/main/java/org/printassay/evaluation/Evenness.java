package org.printassay.evaluation;

/** Largest dE00 between twins after evening out (print and scanner together). */
public record Evenness(double maxDeltaE00, double lightFalloffPercent) {}
