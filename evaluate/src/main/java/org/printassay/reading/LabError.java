package org.printassay.reading;

/** Standard errors (one sigma) of L*, a* and b*, random part. */
public record LabError(double l, double a, double b) {}
