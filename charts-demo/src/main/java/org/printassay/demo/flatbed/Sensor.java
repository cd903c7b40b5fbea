package org.printassay.demo.flatbed;

/**
 * From light to codes.
 *
 * @param electronsAtWhite full well: shot noise at reflectance 1 is one over its root; 0 for none
 * @param readNoise noise in the dark, as a fraction of reflectance 1
 * @param exposure gain; 1 makes the perfect reflecting diffuser the highest code
 * @param autoLevels whether the driver stretches the page to the full range of codes
 * @param encoding primaries and curve
 * @param filters what the channels see of the spectra of inks
 */
public record Sensor(
        double electronsAtWhite,
        double readNoise,
        double exposure,
        boolean autoLevels,
        Encoding encoding,
        Filters filters) {
    /** No noise, right exposure, sRGB. */
    public static final Sensor NOISELESS = new Sensor(0, 0, 1, false, Encoding.SRGB);

    public Sensor {
        if (electronsAtWhite < 0 || readNoise < 0 || exposure <= 0) {
            throw new IllegalArgumentException("sensor: noise below 0 or no exposure");
        }
    }

    /** A sensor that sees as eyes do. */
    public Sensor(
            double electronsAtWhite,
            double readNoise,
            double exposure,
            boolean autoLevels,
            Encoding encoding) {
        this(electronsAtWhite, readNoise, exposure, autoLevels, encoding, Filters.AS_EYES);
    }

    /** This sensor with other filters. */
    public Sensor withFilters(Filters other) {
        return new Sensor(electronsAtWhite, readNoise, exposure, autoLevels, encoding, other);
    }

    /** This sensor with another encoding. */
    public Sensor withEncoding(Encoding other) {
        return new Sensor(electronsAtWhite, readNoise, exposure, autoLevels, other, filters);
    }

    /** This sensor with other noise. */
    public Sensor withNoise(double electrons, double read) {
        return new Sensor(electrons, read, exposure, autoLevels, encoding, filters);
    }

    /** This sensor with another gain. */
    public Sensor withExposure(double gain) {
        return new Sensor(electronsAtWhite, readNoise, gain, autoLevels, encoding, filters);
    }

    /** This sensor with automatic levels on or off. */
    public Sensor withAutoLevels(boolean on) {
        return new Sensor(electronsAtWhite, readNoise, exposure, on, encoding, filters);
    }

    boolean noisy() {
        return electronsAtWhite > 0 || readNoise > 0;
    }
}
