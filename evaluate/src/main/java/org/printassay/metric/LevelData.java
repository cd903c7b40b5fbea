package org.printassay.metric;

import java.util.List;
import org.printassay.colour.Lab;

/**
 * All readings of one neutral level together.
 *
 * @param level 8-bit code
 * @param fileL L* of the code in its RGB encoding
 * @param mean mean colour of the readings that were kept
 * @param count how many
 * @param kept the readings' colours
 */
record LevelData(int level, double fileL, Lab mean, int count, List<Lab> kept) {}
