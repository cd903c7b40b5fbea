package org.printassay.reading;

/**
 * Light that reached the sensor from elsewhere, by the model of the design, section 6.6.
 *
 * @param fraction glare g, green channel
 * @param standardError of it
 * @param returned light returned by the neighbourhood, c, green channel
 * @param widthMm Gaussian width; NaN for glare along the lines of the scan
 * @param corrected whether it was significant and removed
 * @param blackWithout L* the black would have read without the correction
 */
public record StrayLight(
        double fraction,
        double standardError,
        double returned,
        double widthMm,
        boolean corrected,
        double blackWithout) {}
