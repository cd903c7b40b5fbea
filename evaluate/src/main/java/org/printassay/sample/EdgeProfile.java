package org.printassay.sample;

/**
 * How the scanner drew the edges of markers, black on paper: the mean profile in linear light
 * (green channel), by distance from the edge, sampled finer than pixels because edges fall on
 * pixels anyhow (idea of ISO 12233, edge-based response).
 *
 * @param widthMm distance from 10 % to 90 % of the step; NaN when there were too few edges
 * @param overshoot how far the light side rises above its own level beside the edge, as share of
 *     the step; near 0 without sharpening
 * @param edges how many edges it is from
 */
public record EdgeProfile(double widthMm, double overshoot, int edges) {
    /** Nothing measured. */
    public static final EdgeProfile NONE = new EdgeProfile(Double.NaN, 0, 0);
}
