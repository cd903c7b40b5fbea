/** From samples to readings: even light, stray light removed, colour by trust level. */
package org.printassay.calibrate;
