package org.printassay.demo.flatbed;

import java.util.Arrays;
import java.util.Comparator;
import org.printassay.demo.print.Print;

/**
 * A driver's stretch of codes: the darkest and lightest 0.5 % of the page are clipped.
 *
 * @param low encoded value (0-1) that becomes code 0
 * @param gain factor on what is above it
 */
record AutoLevels(float low, float gain) {
    private static final double CLIPPED = 0.005;
    private static final AutoLevels OFF = new AutoLevels(0, 1);

    static AutoLevels of(Print print, Inks inks, Flatbed flatbed) {
        if (!flatbed.sensor().autoLevels()) {
            return OFF;
        }
        int codes = print.sheet().codes();
        Integer[] order = new Integer[codes];
        long total = 0;
        for (int n = 0; n < codes; n++) {
            order[n] = n;
            total += print.sheet().dotsOf(n);
        }
        Arrays.sort(order, Comparator.comparingDouble(n -> inks.light[3 * n + 1]));
        double low = at(order, print, inks, CLIPPED * total);
        double high = at(order, print, inks, (1 - CLIPPED) * total);
        Sensor sensor = flatbed.sensor();
        low = sensor.encoding().encode(Math.min(1, Math.max(0, low * sensor.exposure())));
        high = sensor.encoding().encode(Math.min(1, Math.max(0, high * sensor.exposure())));
        return high > low ? new AutoLevels((float) low, (float) (1 / (high - low))) : OFF;
    }

    private static double at(Integer[] order, Print print, Inks inks, double dots) {
        long seen = 0;
        for (int n : order) {
            seen += print.sheet().dotsOf(n);
            if (seen >= dots) {
                return inks.light[3 * n + 1];
            }
        }
        return 1;
    }
}
