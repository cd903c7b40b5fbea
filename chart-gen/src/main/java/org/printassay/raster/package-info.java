/**
 * A sheet as an RGB image of exact codes, for programs that print pictures: flat areas on whole
 * pixels, slanted edges and text by area coverage, the same bytes on every machine.
 */
package org.printassay.raster;
