package org.printassay.demo.flatbed;

import org.printassay.demo.print.InkSet;

/** What a flatbed's three channels see of a spectrum, with its lamp; invented. */
public enum Filters {
    /** As eyes do: the channels are those of the encoding, and no calibration is needed. */
    AS_EYES(0, 1, 0, 1, 0, 1),
    /** Three broad filters before a white lamp. */
    BROAD(602, 30, 538, 32, 456, 26),
    /** Three coloured lamps: far from any eye. */
    LAMPS(630, 11, 525, 17, 465, 12);

    private final int redNm;
    private final int redWidthNm;
    private final int greenNm;
    private final int greenWidthNm;
    private final int blueNm;
    private final int blueWidthNm;

    Filters(int redNm, int redWidthNm, int greenNm, int greenWidthNm, int blueNm, int blueWidthNm) {
        this.redNm = redNm;
        this.redWidthNm = redWidthNm;
        this.greenNm = greenNm;
        this.greenWidthNm = greenWidthNm;
        this.blueNm = blueNm;
        this.blueWidthNm = blueWidthNm;
    }

    /** Light of the three channels; 1 each for the perfect diffuser. */
    float[] light(double[] spectrum) {
        return new float[] {
            (float) band(spectrum, redNm, redWidthNm),
            (float) band(spectrum, greenNm, greenWidthNm),
            (float) band(spectrum, blueNm, blueWidthNm)
        };
    }

    private static double band(double[] spectrum, double centreNm, double widthNm) {
        double sum = 0;
        double total = 0;
        for (int i = 0; i < spectrum.length; i++) {
            double away = (InkSet.nm(i) - centreNm) / widthNm;
            double weight = Math.exp(-away * away / 2);
            sum += weight * spectrum[i];
            total += weight;
        }
        return sum / total;
    }
}
