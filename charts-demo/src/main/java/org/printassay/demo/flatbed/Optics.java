package org.printassay.demo.flatbed;

/**
 * What the light path does. Stray light has two parts, both from the reflectance of the
 * neighbourhood weighted with the same kernel: light that the sheet throws back onto itself by way
 * of the glass and the lamp's housing (multiplies), and glare in the lens (adds). The kernel is a
 * core, exponential or Gaussian, plus a broad tail, (1 + (r/b)^2)^(-3/2).
 *
 * @param blurSigmaUm standard deviation of the blur, micrometres on the sheet; below about half a
 *     pixel the pixel itself is the limit
 * @param returnedLight share of light returned, 0 to about 0.15
 * @param glare share of light spread, 0 to about 0.03
 * @param core shape of the core
 * @param coreMm length a of the core exp(-r/a), or standard deviation of a Gaussian one
 * @param tailMm length b of the tail
 * @param tailShare share of the tail in the whole, 0 to 1
 * @param surround reflectance of the surround amid which a colour reads true: what the scanner was
 *     set up with, 0 to 1
 * @param sharpening strength of the halo of an unsharp mask, 0 for none
 * @param sharpeningSigmaUm its width
 */
public record Optics(
        double blurSigmaUm,
        double returnedLight,
        double glare,
        Core core,
        double coreMm,
        double tailMm,
        double tailShare,
        double surround,
        double sharpening,
        double sharpeningSigmaUm) {
    /** A surround as a usual picture or reference target makes it. */
    public static final double USUAL_SURROUND = 0.55;

    /** Shapes of the core of the stray light's kernel. */
    public enum Core {
        /** exp(-r/a). */
        EXPONENTIAL,
        /** exp(-r^2 / 2 a^2). */
        GAUSSIAN
    }

    /** No stray light, no more blur than the pixels make. */
    public static final Optics CLEAR =
            new Optics(0, 0, 0, Core.EXPONENTIAL, 2.5, 14, 0.45, USUAL_SURROUND, 0, 100);

    public Optics {
        if (blurSigmaUm < 0 || returnedLight < 0 || glare < 0 || glare > 0.5 || sharpening < 0) {
            throw new IllegalArgumentException("optics: a share or width is out of range");
        }
        if (coreMm <= 0
                || tailMm <= 0
                || tailShare < 0
                || tailShare > 1
                || surround < 0
                || surround > 1) {
            throw new IllegalArgumentException("optics: the stray light kernel is out of range");
        }
    }

    /** These optics with another blur. */
    public Optics withBlur(double sigmaUm) {
        return new Optics(
                sigmaUm,
                returnedLight,
                glare,
                core,
                coreMm,
                tailMm,
                tailShare,
                surround,
                sharpening,
                sharpeningSigmaUm);
    }

    /** These optics with other amounts of stray light. */
    public Optics withStrayLight(double returned, double spread) {
        return new Optics(
                blurSigmaUm,
                returned,
                spread,
                core,
                coreMm,
                tailMm,
                tailShare,
                surround,
                sharpening,
                sharpeningSigmaUm);
    }

    /** These optics with another kernel of stray light. */
    public Optics withKernel(Core shape, double coreLength, double tail, double share) {
        return new Optics(
                blurSigmaUm,
                returnedLight,
                glare,
                shape,
                coreLength,
                tail,
                share,
                surround,
                sharpening,
                sharpeningSigmaUm);
    }

    /** These optics in a scanner that was set up amid another surround. */
    public Optics withSurround(double reflectance) {
        return new Optics(
                blurSigmaUm,
                returnedLight,
                glare,
                core,
                coreMm,
                tailMm,
                tailShare,
                reflectance,
                sharpening,
                sharpeningSigmaUm);
    }

    /** These optics with an unsharp mask. */
    public Optics withSharpening(double strength, double sigmaUm) {
        return new Optics(
                blurSigmaUm,
                returnedLight,
                glare,
                core,
                coreMm,
                tailMm,
                tailShare,
                surround,
                strength,
                sigmaUm);
    }
}
