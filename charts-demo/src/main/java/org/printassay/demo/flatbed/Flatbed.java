package org.printassay.demo.flatbed;

/**
 * A flatbed scanner and how a sheet lies in it, simulated. Start from {@link #perfect} or {@link
 * #ordinary} and change what matters.
 *
 * @param samplesPerInch true sampling, 72 to 1200
 * @param placing how the sheet lies, and what of the bed is scanned
 * @param optics blur, stray light, sharpening
 * @param light evenness of the lamp
 * @param sensor noise, exposure, encoding
 * @param dirt dust and hairs
 * @param file what is written
 */
public record Flatbed(
        double samplesPerInch,
        Placing placing,
        Optics optics,
        Light light,
        Sensor sensor,
        Dirt dirt,
        ScanFile file) {
    public Flatbed {
        if (samplesPerInch < 72 || samplesPerInch > 1200) {
            throw new IllegalArgumentException(
                    "samples per inch go from 72 to 1200, got " + samplesPerInch);
        }
    }

    /** Without any fault: straight, even, noiseless, 16 bit TIFF in sRGB. */
    public static Flatbed perfect(double samplesPerInch) {
        return new Flatbed(
                samplesPerInch,
                Placing.STRAIGHT,
                Optics.CLEAR,
                Light.EVEN,
                Sensor.NOISELESS,
                Dirt.NONE,
                ScanFile.TIFF16);
    }

    /** A decent office flatbed: slightly turned, mild blur, stray light, fall-off, noise, dust. */
    public static Flatbed ordinary(double samplesPerInch) {
        return new Flatbed(
                samplesPerInch,
                Placing.STRAIGHT.withDegrees(0.7).withOffset(1.3, -0.8).withWobble(0.04, 90),
                Optics.CLEAR.withBlur(45).withStrayLight(0.04, 0.006),
                new Light(0.03, Light.Shape.ENDS, 20),
                new Sensor(30_000, 0.0004, 1, false, Encoding.SRGB),
                new Dirt(25, 2),
                ScanFile.TIFF16);
    }

    /** This flatbed with another sampling. */
    public Flatbed withSamplesPerInch(double other) {
        return new Flatbed(other, placing, optics, light, sensor, dirt, file);
    }

    /** This flatbed with the sheet placed otherwise. */
    public Flatbed withPlacing(Placing other) {
        return new Flatbed(samplesPerInch, other, optics, light, sensor, dirt, file);
    }

    /** This flatbed with other optics. */
    public Flatbed withOptics(Optics other) {
        return new Flatbed(samplesPerInch, placing, other, light, sensor, dirt, file);
    }

    /** This flatbed with another lamp. */
    public Flatbed withLight(Light other) {
        return new Flatbed(samplesPerInch, placing, optics, other, sensor, dirt, file);
    }

    /** This flatbed with another sensor. */
    public Flatbed withSensor(Sensor other) {
        return new Flatbed(samplesPerInch, placing, optics, light, other, dirt, file);
    }

    /** This flatbed with other dirt. */
    public Flatbed withDirt(Dirt other) {
        return new Flatbed(samplesPerInch, placing, optics, light, sensor, other, file);
    }

    /** This flatbed writing another file. */
    public Flatbed withFile(ScanFile other) {
        return new Flatbed(samplesPerInch, placing, optics, light, sensor, dirt, other);
    }
}
