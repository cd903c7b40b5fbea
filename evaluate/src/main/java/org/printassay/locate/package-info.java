/**
 * From scan pixels to a placed sheet: markers, sheet code, and the map from chart millimetres to
 * pixels. Pixel coordinates: the centre of the top left pixel is (0.5, 0.5), its outer corner (0,
 * 0).
 */
package org.printassay.locate;
