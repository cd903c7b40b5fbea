package org.printassay.evaluation;

/**
 * A finding and what it weighs among others.
 *
 * @param kind what it is about
 * @param weight about L* of picture lost
 */
record Weighed(FindingKind kind, double weight, Finding finding) {}
