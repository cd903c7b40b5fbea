package org.printassay.recipe;

/**
 * A page as it leaves the printer, portrait or landscape.
 *
 * @param name name for people and options: {@code A4}, {@code Letter}, {@code 13x19in}, {@code
 *     200x300mm}
 * @param widthMm width, millimetres
 * @param heightMm height, millimetres
 */
public record PageSize(String name, double widthMm, double heightMm) {}
