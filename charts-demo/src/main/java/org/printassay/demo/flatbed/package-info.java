/**
 * A simulated flatbed scanner. {@link org.printassay.demo.flatbed.Flatbed} describes it, {@link
 * org.printassay.demo.flatbed.Exposure} makes the pixels.
 */
package org.printassay.demo.flatbed;
