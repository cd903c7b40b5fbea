package org.printassay.prints;

/**
 * A file or folder that was not read.
 *
 * @param name without the folders above the one that was named
 * @param why it was not, to follow the name and a colon
 */
public record Skipped(String name, String why) {}
