/**
 * ICC profiles (ISO 15076-1): {@link org.printassay.colour.icc.RgbProfiles} writes those of our own
 * encodings, {@link org.printassay.colour.icc.IccProfile} reads anybody's. Device values and light
 * are fractions 0-1, XYZ has Y = 100 for white. Offsets in errors count bytes from the start of the
 * profile.
 */
package org.printassay.colour.icc;
