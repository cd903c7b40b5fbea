/**
 * Lines and bands: what repeats or runs across a print. Pure functions over profiles, light along
 * one axis of the page averaged over a tint. Start with {@link org.printassay.surface.TintTrace}.
 * Positions are page millimetres, contrasts are dR/R in linear light, amplitudes are L*.
 */
package org.printassay.surface;
