package org.printassay.demo.flatbed;

import org.printassay.colour.Lab;
import org.printassay.colour.Rgb8;
import org.printassay.colour.Xyz;
import org.printassay.demo.print.InkSet;
import org.printassay.demo.print.Print;
import org.printassay.demo.print.RenderedSheet;

/**
 * Every code of a print as the sensor sees it, in linear device light, and how much each kind of
 * unevenness moves it.
 */
final class Inks {
    /** Device light of code n at 3n, 3n + 1, 3n + 2. */
    final float[] light;

    /**
     * Change of light (dR/R) of code n: per unit of grain at 4n, of paper texture at 4n + 1, of ink
     * L* at 4n + 2, of a line's contrast at 4n + 3.
     */
    final float[] moves;

    /** Bare paper in device light. */
    final float[] paper;

    private final double[] fromXyz;
    private final Filters filters;
    private final InkSet inks;

    Inks(Print print, Sensor sensor) {
        this.fromXyz = sensor.encoding().fromXyz();
        this.filters = sensor.filters();
        this.inks = print.printing().inks();
        RenderedSheet sheet = print.sheet();
        int codes = sheet.codes();
        light = new float[3 * codes];
        moves = new float[4 * codes];
        for (int n = 0; n < codes; n++) {
            Rgb8 code = sheet.code(n);
            Lab lab = print.colourOf(code);
            float[] device = light(lab);
            System.arraycopy(device, 0, light, 3 * n, 3);
            double perL = perLightness(lab.l());
            moves[4 * n] =
                    (float) (perL * print.grainWeight(lab) * print.paper().surface().grain());
            moves[4 * n + 2] = (float) (perL * print.ink(lab));
            moves[4 * n + 3] = (float) print.ink(lab);
            moves[4 * n + 1] = (float) (perL * print.paper().surface().texture());
        }
        paper = light(print.paper().white());
    }

    /** Linear device light of a colour; not clipped. */
    float[] light(Lab lab) {
        if (filters != Filters.AS_EYES) {
            return filters.light(inks.spectrum(lab));
        }
        Xyz xyz = lab.toXyz(Xyz.PCS_WHITE);
        float[] device = new float[3];
        for (int i = 0; i < 3; i++) {
            device[i] =
                    (float)
                            ((fromXyz[3 * i] * xyz.x()
                                            + fromXyz[3 * i + 1] * xyz.y()
                                            + fromXyz[3 * i + 2] * xyz.z())
                                    / 100);
        }
        return device;
    }

    /** dY/Y for one L*. */
    private static double perLightness(double l) {
        double y = Lab.luminanceFactor(l);
        return (Lab.luminanceFactor(l + 0.01) - Lab.luminanceFactor(l - 0.01)) / 0.02 / y;
    }
}
