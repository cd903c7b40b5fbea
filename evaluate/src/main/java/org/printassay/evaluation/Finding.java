package org.printassay.evaluation;

/**
 * One plain finding.
 *
 * @param topic tone, shadows, highlights, neutrality, white, black, scan, print or route
 * @param text what was found
 * @param sureness how sure, in words with figures
 * @param advice what to do; empty when nothing
 */
public record Finding(String topic, String text, String sureness, String advice) {}
