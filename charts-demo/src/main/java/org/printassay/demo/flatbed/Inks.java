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

    /** Change of light (dR/R) of code n per unit of grain, of ink L* and of a line's contrast. */
    final float[] grain;

    final float[] ink;
    final float[] line;

    /** Change of light (dR/R) per unit of paper texture. */
    final float[] texture;

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
        grain = new float[codes];
        ink = new float[codes];
        line = new float[codes];
        texture = new float[codes];
        for (int n = 0; n < codes; n++) {
            Rgb8 code = sheet.code(n);
            Lab lab = print.colourOf(code);
            float[] device = light(lab);
            System.arraycopy(device, 0, light, 3 * n, 3);
            double perL = perLightness(lab.l());
            grain[n] = (float) (perL * print.grainWeight(lab) * print.paper().surface().grain());
            ink[n] = (float) (perL * print.ink(lab));
            line[n] = (float) print.ink(lab);
            texture[n] = (float) (perL * print.paper().surface().texture());
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
