package org.printassay.sheet;

/**
 * A fiducial: a square binary marker, BoofCV {@code HammingDictionary.ARUCO_OCV_6x6_1000}.
 *
 * @param id number in the dictionary, unique in the chart
 * @param area the black square, border included, quiet zone not
 */
public record Marker(int id, RectMm area) {}
