/**
 * The fine structure of a print: grain and mottle, sharpness of edges, steps in vignettes. Pure
 * functions over pixels and profiles in linear light; frequencies in cycles per millimetre.
 */
package org.printassay.texture;
